/** Haze: the mean over frame and surround against a fine count, and against plain cases. */
import { describe, expect, it } from 'vitest'
import { beyondFrame, rayThrough } from '../../src/scene/camera-view.js'
import { firstHit } from '../../src/scene/first-hit.js'
import type { Vec3 } from '../../src/scene/vector.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import { planOf } from '../rules/check-text.js'

const text = (more = '', width = '2.72 m', lens = '85 mm') => `plan: 1
title: Bright paper
camera: { lens: ${lens}, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
backdrop: { surface: { reflectance: 0.9 }, width: ${width}, height: 3 m, behind: 2.4 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 35 deg left, distance: 1.3 m, height: 2 m } }
  paper-left: { role: backdrop, unit: head 600 Ws, modifier: standard reflector, meters: f/8, at: { left: 2 m, before-backdrop: 1.2 m, height: 1.6 m } }
  paper-right: { like: paper-left, mirrored: true }
${more}wanted: { backdrop: any, shadow: any }
`
const setOf = (...of: Parameters<typeof text>): ComputedSet => computeSet(planOf(text(...of)))

/** What a perfect reflector records per lx·s, from a reading of the set. */
const perLuxSecond = (set: ComputedSet): number => 2 ** set.key!.overCamera.stops / set.key!.luxSeconds

/** The mean over the frame, pixel by pixel, each metered for itself. */
const counted = (set: ComputedSet, across: number, up: number): number => {
  const { scene, plan } = set
  const except = new Set(scene.lights.keys())
  let sum = 0
  for (let i = 0; i < across; i++)
    for (let j = 0; j < up; j++) {
      const ray = rayThrough(scene.camera, (2 * i + 1) / across - 1, (2 * j + 1) / up - 1)
      const hit = firstHit(scene, scene.camera.eye, ray, except)
      if (hit === undefined) continue
      const reflectance = hit.on === 'figure' ? plan.subject.reflectance : (hit.surface?.reflectance ?? 0)
      const got = set.exposure({ at: hit.at, normal: hit.normal, kind: 'flat', against: hit.normal }, 'all')
      sum += reflectance * (got?.luxSeconds ?? 0) * perLuxSecond(set)
    }
  return sum / (across * up)
}

describe('the mean of the frame', () => {
  it('agrees with a count of 900 places within a tenth', () => {
    const set = setOf()
    const fine = counted(set, 25, 36)
    expect(Math.abs(set.haze!.frame / fine - 1)).toBeLessThan(0.1)
  })

  it('is made of what each light gives', () => {
    const { haze } = setOf()
    expect([...haze!.byLight.values()].reduce((sum, one) => sum + one, 0)).toBeCloseTo(haze!.mean, 9)
    expect(haze!.byLight.get('paper-left')! + haze!.byLight.get('paper-right')!).toBeGreaterThan(
      haze!.byLight.get('key')!,
    )
  })

  it('doubles with all light', () => {
    const set = setOf()
    const twice = set.with({ knob: { knob: 'aperture' }, to: 8 / Math.SQRT2 })
    expect(twice.haze!.mean / set.haze!.mean).toBeCloseTo(2, 6)
  })
})

describe('what surrounds the frame', () => {
  it('counts: a narrower paper hazes less, with the same in frame', () => {
    const [wide, narrow] = [setOf('', '3.5 m'), setOf('', '1.5 m')]
    expect(narrow.haze!.frame).toBeCloseTo(wide.haze!.frame, 1)
    expect(narrow.haze!.mean).toBeLessThan(wide.haze!.mean)
    expect(wide.haze!.backdropOutside).toBeGreaterThan(narrow.haze!.backdropOutside)
  })

  it('holds a light that looks into the lens, and not one that looks away', () => {
    const rim = (aim: string) =>
      setOf(
        `  rim: { unit: head 400 Ws, modifier: standard reflector, power: 1/4, at: { angle: 160 deg left, distance: 1.6 m, height: 1.8 m }, aim: ${aim} }\n`,
      ).haze!.byLight.get('rim')!
    expect(rim('camera')).toBeGreaterThan(4 * rim('backdrop-left'))
  })

  it('is how far a direction lies off the frame', () => {
    const { camera } = setOf().scene
    expect(beyondFrame(camera, rayThrough(camera, 0.9, -0.9))).toBe(0)
    const behind: Vec3 = [0, -1, 0]
    expect(beyondFrame(camera, behind)).toBe(Math.PI)
    // Ten degrees past the right edge, at the height of the axis.
    const off = Math.atan(camera.tanHalfWidth) + Math.PI / 18
    expect(beyondFrame(camera, [Math.sin(off), Math.cos(off), 0])).toBeCloseTo(Math.PI / 18, 9)
  })
})

describe('how sure', () => {
  it('a black lifted by a veil as strong as itself is uncertain by half of the half stop of the index, at least', () => {
    const { haze } = setOf()
    const share = 1 - 2 ** -haze!.lift.stops
    expect(Math.sqrt(haze!.lift.variance)).toBeGreaterThanOrEqual(share * 0.5)
    expect(Math.sqrt(haze!.lift.variance)).toBeLessThan(share * 0.6)
  })
})
