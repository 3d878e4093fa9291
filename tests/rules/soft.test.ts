/** How soft a light is: solid angles and edges of shadows in closed form, a head's beam against the light that it throws. */
import { describe, expect, it } from 'vitest'
import { response } from '../../src/light/response.js'
import { filled } from '../../src/rules/soft/filled.js'
import { subtended } from '../../src/rules/soft/subtended.js'
import { add, scale, type Vec3 } from '../../src/scene/vector.js'
import { computeSet } from '../../src/set/compute-set.js'
import { findingsOf, planOf } from './check-text.js'

const set = (key: string, more = 'wanted: { shadow: soft }\n'): string => `plan: 1
title: How soft
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.6 m }
lights: { key: { ${key} } }
${more}`
const head = (modifier: string, at: string) =>
  set(`unit: head 400 Ws, modifier: ${modifier}, meters: f/8, at: { ${at} }`)

describe('how large a front looks', () => {
  const degrees = (text: string): number => {
    const computed = computeSet(planOf(text))
    const light = computed.plan.lights.get('key')!
    return subtended(computed, light, computed.scene.subject.tapeFrom)!.degrees
  }
  const cone = (solidAngle: number) => (360 / Math.PI) * Math.acos(1 - solidAngle / (2 * Math.PI))

  it.each([
    [1, 1],
    [1.5, 2.74],
    [0.5, 3],
  ])('a disc of %d m at %d m: twice the angle of its radius', (size, away) => {
    const text = head(`white umbrella ${size} m`, `angle: 30 deg left, distance: ${away} m, height: 1.9 m`)
    expect(degrees(text)).toBeCloseTo((360 / Math.PI) * Math.atan(size / 2 / away), 1)
  })

  it('a rectangle on its axis: Ω = 4 asin(ab / √((a² + d²)(b² + d²))) with half sides a and b', () => {
    const [a, b, d] = [0.3, 0.45, 1.2]
    const omega = 4 * Math.asin((a * b) / Math.sqrt((a * a + d * d) * (b * b + d * d)))
    expect(
      degrees(head('softbox 60 x 90 cm', 'angle: 50 deg right, distance: 1.2 m, height: 2 m')),
    ).toBeCloseTo(cone(omega), 6)
  })

  it('the sun is half a degree, a scrim before it as large as the scrim', () => {
    const sun = 'unit: sun, at: { angle: 60 deg left, up: 40 deg }, reads: f/8, shutter: 1/125, iso: 100'
    expect(findingsOf('source-small', set(sun))[0]!.message).toContain('0.5 deg large')
  })

  it('through a scrim it is the scrim that counts', () => {
    const bare = 'unit: head 400 Ws, meters: f/8, at: { left: 2 m, height: 1.6 m }'
    const silk =
      'panels: { silk: { kind: scrim, transmits: 45 %, size: 1 x 1 m, at: { left: 1 m, height: 1.6 m }, faces: right } }\nwanted: { shadow: soft }\n'
    expect(findingsOf('source-small', set(bare)).length).toBe(1)
    expect(findingsOf('source-small', set(bare, silk))).toEqual([])
  })
})

describe('a key too small', () => {
  it('tells the edge of a shadow: size × way to where it falls / distance (similar triangles)', () => {
    const [found] = findingsOf(
      'source-small',
      head('white umbrella 1.5 m', 'angle: 30 deg left, distance: 2.74 m, height: 2 m'),
    )
    // 5 cm × 1.5 / 2.74.
    expect(found!.why).toContain('an edge 2.7 cm wide')
    expect(found!.level).toBe('note')
  })

  it('a box as far off as it is wide is soft, a bare head is not (common practice, no source)', () => {
    const near = 'angle: 30 deg left, distance: 90 cm, height: 1.8 m'
    expect(findingsOf('source-small', head('octa 90 cm', near))).toEqual([])
    expect(findingsOf('source-small', head('standard reflector', near)).length).toBe(1)
  })

  it('is silent on a hard light where no soft one is wanted', () => {
    const text = head('standard reflector', 'angle: 30 deg left, distance: 2 m, height: 2 m')
    expect(findingsOf('source-small', text.replace('shadow: soft', 'shadow: any'))).toEqual([])
  })
})

describe('how much of a front a head fills', () => {
  const gun = (modifier: string, zoom: number) =>
    planOf(
      set(
        `unit: flashgun, zoom: ${zoom} mm, modifier: ${modifier}, power: 1/4, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m }`,
      ),
    ).lights.get('key')!

  /** The bare head on a plane square to it: where the light is within two stops of the middle. */
  const lit = (zoom: number, away: number, width: number, height: number, round: boolean): number => {
    const computed = computeSet(
      planOf(
        set(
          `unit: flashgun, zoom: ${zoom} mm, power: 1/4, at: { left: 2 m, height: 1.6 m }, aim: right-wall`,
        ),
      ),
    )
    const source = computed.source('key')!
    const face = computed.scene.lights.get('key')!.front!
    const at = (u: number, v: number): Vec3 =>
      add(face.centre, add(scale(face.normal, away), add(scale(face.across, u), scale(face.up, v))))
    const gives = (place: Vec3) =>
      response(source, { at: place, normal: scale(face.normal, -1), kind: 'flat' })
    const middle = gives(at(0, 0))
    let [inside, all] = [0, 0]
    for (let i = 0; i < 25; i++)
      for (let j = 0; j < 25; j++) {
        const [u, v] = [((i + 0.5) / 25 - 0.5) * width, ((j + 0.5) / 25 - 0.5) * height]
        if (round && Math.hypot(u, v) > width / 2) continue
        all++
        if (gives(at(u, v)) >= middle / 4) inside++
      }
    return inside / all
  }

  it.each([24, 35, 50, 70, 105])(
    'a metre of umbrella at %d mm, against the light of the bare head',
    (zoom) => {
      const found = filled(gun('shoot-through umbrella 1 m', zoom))!
      expect(found.throw).toBeCloseTo(0.6, 9)
      expect(Math.abs(found.share - lit(zoom, 0.6, 1, 1, true))).toBeLessThan(0.04)
    },
  )

  it.each([24, 50])('a box of 60 × 90 cm, 36 cm deep, at %d mm', (zoom) => {
    const found = filled(gun('{ kind: softbox, size: 60 x 90 cm, depth: 36 cm }', zoom))!
    expect(Math.abs(found.share - lit(zoom, 0.36, 0.9, 0.6, false))).toBeLessThan(0.04)
  })

  it('asks of heads with a zoom in a soft front only', () => {
    const studio = planOf(head('softbox 60 x 90 cm', 'angle: 30 deg left, distance: 1.2 m, height: 2 m'))
    expect(filled(studio.lights.get('key')!)).toBeUndefined()
    expect(filled(gun('snoot', 105))).toBeUndefined()
  })

  it('is mended by a wider zoom (common practice, no source)', () => {
    const [found] = findingsOf(
      'front-unfilled',
      set(
        'unit: flashgun, zoom: 105 mm, modifier: shoot-through umbrella 1 m, power: 1/4, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m }',
      ),
    )
    expect(found!.advice[0]!.title).toMatch(/^lights\.key\.zoom → (24|28|35|50) mm$/)
  })
})

describe('a key that is bounced', () => {
  const bounced = (aim: string, ceiling = 'white paint') =>
    findingsOf(
      'source-small',
      `plan: 1
title: Bounced
room: { width: 8 m, length: 10 m, height: 3 m, walls: white paint, ceiling: ${ceiling}, floor: grey carpet }
camera: { lens: 35 mm, frame: horizontal, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 400 }
subject: { kind: person }
backdrop: { surface: white paint, width: 8 m, height: 3 m, behind: 2 m }
lights:
  key: { unit: flashgun, power: 1/8, at: camera, aim: ${aim} }
wanted: { framing: waist, backdrop: any, shadow: any }
`,
    )

  it('so flat that most of it falls on the face straight is as hard as it looks', () => {
    const [white] = bounced('ceiling above subject')
    const [black] = bounced('ceiling above subject', 'black paint')
    const share = (finding: typeof white): number => finding!.measured.straight!.value
    expect(share(white)).toBeGreaterThan(0.5)
    // Nothing to bounce off: what is straight stays, what is thrown back goes but for the walls.
    expect(share(black)).toBeGreaterThan(share(white))
    expect(share(black)).toBeLessThan(1)
    // By hand: a head some 6 cm across at 2.5 m.
    expect(white!.measured.across!.value).toBeCloseTo((0.06 / 2.5) * (180 / Math.PI), 0)
  })

  it('is let alone where it is turned over the camera, as is advised', () => {
    expect(bounced('ceiling above subject')[0]!.advice[0]!.title).toBe(
      'lights.key.aim → ceiling above camera',
    )
    expect(bounced('ceiling above camera')).toEqual([])
  })
})
