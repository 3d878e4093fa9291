/**
 * Light that takes on the colour of surfaces, channel by channel beside the tracer: the same set three times over, each
 * time with the reflectances of one channel of linear sRGB. The tracer knows nothing of colour.
 */
import { describe, expect, it } from 'vitest'
import type { Surface } from '../../src/language/plan.js'
import { luminanceOfRgb, rgbOfXyz } from '../../src/light/colour/rgb.js'
import { surfaceShares } from '../../src/light/colour/surface-colour.js'
import type { Scene } from '../../src/scene/scene.js'
import { computeSet } from '../../src/set/compute-set.js'
import { planOf } from '../language/reading.js'
import { judgeOf } from './compare.js'
import { bodiesOf, lampsOf } from './from-scene.js'
import { Tracer } from './trace.js'

const effort = { seed: 2, paths: 256, fewest: 8, most: 96, error: 0.01 }

const sets = {
  'a yellow room': `room: { width: 4 m, length: 6 m, height: 2.7 m, walls: yellow wall, ceiling: white paint, floor: wooden floor }
backdrop: { surface: grey paper, behind: 1.2 m }`,
  'blue paper, a red board and white walls': `room: { width: 4 m, length: 6 m, height: 2.6 m, walls: white paint, ceiling: white paint, floor: 0.3 }
backdrop: { surface: blue paper, behind: 1 m }
panels:
  board: { kind: reflector, surface: { reflectance: 0.3, colour: "#d04030" }, size: 1 x 1.5 m, at: { right: 80 cm, height: 1.5 m }, faces: left }`,
}

const inChannel = (scene: Scene, channel: number): Scene => {
  const of = (surface: Surface): Surface => ({ ...surface, reflectance: surfaceShares(surface)[channel]! })
  return {
    ...scene,
    surfaces: scene.surfaces.map((one) => ({
      ...one,
      front: of(one.front),
      back: one.back === undefined ? undefined : of(one.back),
    })),
  }
}

/** Stops between channels: how much light there is in all is the meter's, and held elsewhere. */
const closest = 0.06

describe('the colour of thrown light is the tracer’s, channel against channel', () => {
  it.each(Object.entries(sets))('%s', (_, more) => {
    // Light that is 1, 1, 1 in linear sRGB: D65.
    const plan = planOf(`plan: 1
title: Colours thrown about
camera: { lens: 85 mm, at: { distance: 2.3 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: white umbrella 1 m, power: 1/4, colour: 6504 K, duv: 0.0032, at: { angle: 45 deg left, distance: 1.2 m, height: 2 m } }
${more}
`)
    const set = computeSet(plan)
    const judge = judgeOf(plan, set, effort.seed)
    const places = judge.places.filter(({ penumbra }) => !penumbra).slice(0, 8)
    const tracers = [0, 1, 2].map(
      (channel) => new Tracer(bodiesOf(inChannel(set.scene, channel)), lampsOf(plan, set.scene), effort.seed),
    )
    const off: string[] = []
    for (const place of places) {
      const { at, normal, kind, against, onSurface } = place
      const receptor = {
        at,
        normal,
        kind,
        ...(against === undefined ? {} : { against }),
        ...(onSurface === true ? { onSurface } : {}),
      }
      const traced = tracers.map((tracer) => tracer.at(place, judge.weights, effort))
      const [r, g, b] = traced.map(({ total }) => total) as [number, number, number]
      const all = luminanceOfRgb([r, g, b])
      const { xyz } = set.colour(receptor, 'all')!
      const got = rgbOfXyz(xyz)
      traced.forEach(({ total, error }, channel) => {
        const by = Math.log2(got[channel]! / xyz[1] / (total / all))
        if (!(Math.abs(by) <= closest + 2 * error))
          off.push(`${place.name}, channel ${channel}: ${by.toFixed(3)} ± ${error.toFixed(3)}`)
      })
    }
    expect(places.length).toBeGreaterThan(4)
    expect(off).toEqual([])
  })
})
