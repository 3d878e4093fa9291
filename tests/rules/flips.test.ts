/**
 * Where each rule turns, worked out by hand: closed forms, published values, situations that photographers reported.
 * `beyond` is how far past the limit a figure lies, in stops; facts have none.
 */
import { describe, expect, it } from 'vitest'
import { ruleNamed } from '../../src/rules/index.js'
import type { Evidence } from '../../src/rules/rule.js'
import { contextOf, findingsOf, planOf } from './check-text.js'

const evidence = <E extends Evidence = Evidence>(rule: string, text: string): readonly E[] =>
  ruleNamed(rule)!.detect(contextOf(rule, planOf(text))) as readonly E[]

const beyond = (rule: string, text: string): number => {
  const found = evidence(rule, text)[0]
  if (found === undefined || found.beyond === 'certain') throw new Error('no figure')
  return found.beyond.stops
}

/** One person, key on the camera's axis at the height of the face (so that the dome toward it faces the camera too). */
const set = (parts: {
  readonly aperture?: string
  readonly shutter?: string
  readonly lens?: string
  readonly camera?: string
  readonly backdrop?: string
  readonly key?: string
  readonly lights?: string
  readonly wanted?: string
  readonly rest?: string
  readonly subject?: string
}): string => `plan: 1
title: Worked by hand
camera: { lens: ${parts.lens ?? '24 mm'}, at: { distance: 4 m }, aperture: ${parts.aperture ?? 'f/5.6'}, shutter: ${parts.shutter ?? '1/125'}, iso: 100${parts.camera ?? ''} }
subject: ${parts.subject ?? '{ kind: person, faces-at: 1.5 m }'}
${parts.backdrop ?? ''}
lights:
  key: { unit: head 600 Ws, modifier: softbox 20 x 20 cm, ${parts.key ?? 'meters: f/5.6'}, at: { angle: 0 deg left, distance: 1.5 m, height: 1.5 m } }
${parts.lights ?? ''}
wanted: { ${parts.wanted ?? 'backdrop: any'} }
${parts.rest ?? ''}
`

/** Lit from well before it, so far behind the subject that the key hardly counts. */
const paper = (meters: string, reflectance = 0.9) => ({
  backdrop: `backdrop: { surface: { reflectance: ${reflectance} }, behind: 12 m }`,
  lights: `  paper: { role: backdrop, unit: head 600 Ws, modifier: softbox 20 x 20 cm, meters: ${meters}, at: { left: 0 m, before-backdrop: 6 m, height: 1.5 m } }`,
})

describe('backdrop-off-tone', () => {
  // sRGB (IEC 61966-2-1) of 0.9·2^x: paper of 0.9 under a key of f/5.6. The wide lens costs 0.02 stop close up.
  it.each([
    ['f/5.6', 243],
    ['f/5.0', 220],
    ['f/4.5', 198],
    ['f/4', 179],
  ])('paper that meters %s records %i beside a key of f/5.6', (meters, srgb) => {
    const [found] = evidence(
      'backdrop-off-tone',
      set({ ...paper(meters), wanted: 'backdrop: { tone: 100 }' }),
    )
    expect(Math.abs(found!.measured.middle!.value - srgb)).toBeLessThanOrEqual(2)
  })

  it('turns a third outside the range: grey ends at sRGB 180, which is 0.456 linear', () => {
    // 0.456/0.9 is −0.98 stop, plus a third: −0.65. Tenths on a meter: f/4.5 is −0.67, f/4.5 + 0.1 is −0.57.
    const at = (meters: string) =>
      beyond('backdrop-off-tone', set({ ...paper(meters), wanted: 'backdrop: grey' }))
    expect(at('f/4 + 0.2')).toBeLessThan(0)
    expect(at('f/4.5 + 0.1')).toBeGreaterThan(0)
  })

  it('also judges what is wanted over the key, downward', () => {
    const at = (meters: string) =>
      beyond(
        'backdrop-off-tone',
        set({ ...paper(meters), wanted: 'backdrop: any, backdrop-over-key: 1/2..1 stop' }),
      )
    expect(at('f/5.6 + 0.3')).toBeLessThan(0)
    expect(at('f/5.6')).toBeGreaterThan(0)
  })
})

describe('backdrop-below-white', () => {
  it('asks 0.40 stop over the camera of paper of 0.9: log2(2^0.25 / 0.9)', () => {
    const [found] = evidence('backdrop-below-white', set({ ...paper('f/8'), wanted: 'backdrop: white' }))
    expect(found!.measured['darkest-over-camera']!.limit).toBeCloseTo(0.25 - Math.log2(0.9), 6)
  })

  it('turns there, at the darkest point in frame', () => {
    // Cosine to the fifth over 1.28 × 1.32 m seen from 6 m: the corners lie 2.5·log2(1 + 3.4/36) ≈ 0.33 under the middle.
    const at = (meters: string) =>
      beyond('backdrop-below-white', set({ ...paper(meters), wanted: 'backdrop: white' }))
    expect(at('f/5.6 + 0.6')).toBeGreaterThan(0)
    expect(at('f/5.6 + 0.9')).toBeLessThan(0)
  })

  it('more headroom asks for more light', () => {
    const at = (headroom: string) =>
      beyond(
        'backdrop-below-white',
        set({ ...paper('f/5.6 + 0.9'), wanted: 'backdrop: white', camera: `, headroom: ${headroom}` }),
      )
    expect(at('1/2 stop') - at('1/4 stop')).toBeCloseTo(0.25, 6)
  })
})

describe('backdrop-above-limit', () => {
  it('turns at one stop over the key: f/8 over f/5.6 (common practice, no source)', () => {
    const at = (meters: string) =>
      beyond('backdrop-above-limit', set({ ...paper(meters), wanted: 'backdrop: white' }))
    expect(at('f/7.1')).toBeLessThan(0)
    expect(at('f/9')).toBeGreaterThan(0)
    expect(Math.abs(at('f/8'))).toBeLessThan(0.03)
  })
})

describe('backdrop-not-black', () => {
  // sRGB of 0.03·2^x: 48 level with the key, 33 a stop under, 21 two under (IEC 61966-2-1).
  it.each([
    ['f/5.6', 48, 'warning'],
    ['f/4', 33, 'note'],
    ['f/2.8', 21, 'note'],
  ] as const)('a black of 0.03 that meters %s records %i: %s', (meters, srgb, level) => {
    const [found] = evidence('backdrop-not-black', set({ ...paper(meters, 0.03), wanted: 'backdrop: black' }))
    expect(Math.abs(found!.measured.brightest!.value - srgb)).toBeLessThanOrEqual(1)
    expect(found!.level).toBe(level)
  })

  it('is quiet at 20', () => {
    expect(
      beyond('backdrop-not-black', set({ ...paper('f/2.5', 0.03), wanted: 'backdrop: black' })),
    ).toBeLessThan(0)
  })
})

describe('backdrop-uneven', () => {
  it('a small box square to the wall falls off by the fifth power of the cosine: its own cos², the wall’s, the distance', () => {
    // Seen whole: 2.72 × 2.8 m, 3 % of either side left out all round.
    const [found] = evidence<Evidence>(
      'backdrop-uneven',
      `plan: 1
title: One small box on the wall
camera: { lens: 24 mm, at: { distance: 4 m, height: 1.4 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.4 m }
backdrop: { surface: grey paper, behind: 3 m }
lights:
  wall: { role: backdrop, unit: head 600 Ws, modifier: softbox 10 x 10 cm, meters: f/5.6, at: { left: 0 m, before-backdrop: 2.5 m, height: 1.4 m } }
wanted: { backdrop: grey }
`,
    )
    const r2 = (0.94 * 1.36) ** 2 + (0.94 * 1.4) ** 2
    expect(found!.measured.spread!.value).toBeCloseTo(2.5 * Math.log2(1 + r2 / 2.5 ** 2), 2)
  })
})

describe('frame-past-backdrop', () => {
  // Reported: 50 mm on a 23.6 × 15.7 mm sensor, upright, 6 m from the roll: 1.88 m wide (geometry), not 1.35.
  const roll = (width: string) => `plan: 1
title: How wide a roll
camera: { lens: 50 mm, sensor: 23.6 x 15.7 mm, frame: vertical, focus: 1000 m, at: { distance: 5 m, height: 1.2 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: ${width}, height: 3.5 m, behind: 1 m }
lights: { key: { unit: flashgun, at: camera } }
`
  it('turns at the width of the frame', () => {
    expect(findingsOf('frame-past-backdrop', roll('1.87 m')).length).toBe(1)
    expect(findingsOf('frame-past-backdrop', roll('1.89 m')).length).toBe(0)
    const [narrow] = findingsOf('frame-past-backdrop', roll('1.35 m'))
    expect(narrow!.measured['past-left']!.value).toBeCloseTo((188.4 - 135) / 2, 0)
  })
})

describe('subject-cropped', () => {
  // Reported: a frame of 2.1 m with 85 mm takes 5.0 m (distance = height × focal length / 36 mm, and one focal length).
  const tall = (distance: string) => `plan: 1
title: How far back
camera: { lens: 85 mm, at: { distance: ${distance}, height: 1.05 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, height: 2.1 m }
lights: { key: { unit: flashgun, at: camera } }
wanted: { framing: full length }
`
  it('turns near it: the body stands a little behind the face', () => {
    expect(findingsOf('subject-cropped', tall('4.8 m')).length).toBe(1)
    expect(findingsOf('subject-cropped', tall('5.2 m')).length).toBe(0)
  })
})

describe('aperture-off-key', () => {
  const at = (aperture: string, wanted = 'backdrop: any') =>
    beyond('aperture-off-key', set({ aperture, wanted }))
  it('one stop off is one stop off (ISO 517: f/5.6 and f/8), and the limit for a warning half a stop', () => {
    expect(at('f/8')).toBeCloseTo(0.5, 1)
    expect(at('f/4')).toBeCloseTo(0.5, 1)
  })
  it('a third of a stop is let pass, two are not', () => {
    // Over and under in thirds; the close-up takes 0.02.
    expect(at('f/5.0')).toBeLessThan(0)
    expect(at('f/4.5')).toBeGreaterThan(0)
    expect(at('f/7.1')).toBeGreaterThan(0)
  })
  it('counts what is placed over on purpose', () => {
    expect(at('f/4.5', 'exposure: +2/3 stop')).toBeLessThan(0)
    expect(at('f/5.6', 'exposure: +2/3 stop')).toBeGreaterThan(0)
  })
  it('leaves alone a key that comes from behind', () => {
    const rim = set({ aperture: 'f/16' }).replace('angle: 0 deg left', 'angle: 120 deg left')
    expect(findingsOf('aperture-off-key', rim)).toEqual([])
  })
})

describe('group-uneven', () => {
  // Inverse square: two faces a metre apart along the light's way differ by 2·log2((d + 1)/d); a third takes 8.2 m.
  const rows = (distance: string) => `plan: 1
title: One behind the other
camera: { lens: 50 mm, at: { distance: 9 m, height: 1.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: group, rows: [ { people: 1, spacing: 50 cm, faces-at: 1.5 m }, { people: 1, spacing: 50 cm, behind: 1 m, faces-at: 1.5 m } ] }
lights:
  key: { unit: head 600 Ws, modifier: softbox 20 x 20 cm, meters: f/5.6, at: { angle: 0 deg left, distance: ${distance}, height: 1.5 m } }
`
  it('gives 0.90 stop at 2.74 m (reported)', () => {
    const [found] = evidence('group-uneven', rows('2.74 m'))
    expect(found!.measured.spread!.value).toBeCloseTo(2 * Math.log2(3.74 / 2.74), 2)
    expect(found!.level).toBe('warning')
  })
  it('turns at 8.2 m', () => {
    expect(beyond('group-uneven', rows('8 m'))).toBeGreaterThan(0)
    expect(beyond('group-uneven', rows('8.4 m'))).toBeLessThan(0)
  })
})

describe('depth-short', () => {
  // Thin lens, c = 28.84 µm: 208 mm for 85 mm at 2.2 m and f/5.6; 138 mm for 105 mm at 1.6 m and 11.0, which is 142 mm
  // for the exact 11.31 of f/11.
  it.each([
    ['85 mm', '2.2 m', 'f/5.6', 20.8],
    ['105 mm', '1.6 m', 'f/11', 14.2],
  ])('%s at %s and %s: %f cm', (lens, distance, aperture, depth) => {
    const plan = (sharp: number) => `plan: 1
title: How deep
camera: { lens: ${lens}, at: { distance: ${distance} }, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights: { key: { unit: flashgun, at: camera } }
wanted: { sharp: ${sharp.toFixed(1)} cm }
`
    // Short by less than half a millimetre is not told.
    expect(findingsOf('depth-short', plan(depth + 0.4)).length).toBe(1)
    expect(findingsOf('depth-short', plan(depth - 0.3)).length).toBe(0)
  })

  it('two rows 61 cm apart at 9 m with 135 mm: soft at f/2.2, sharp at f/4 with the focus between (reported)', () => {
    const plan = (aperture: string, focus: string) => `plan: 1
title: Which row
camera: { lens: 135 mm, at: { distance: 9 m, height: 1.4 m }, focus: ${focus}, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject: { kind: group, rows: [ { people: 2, spacing: 50 cm, faces-at: 1.4 m }, { people: 2, spacing: 50 cm, behind: 61 cm, faces-at: 1.4 m } ] }
lights: { key: { unit: flashgun, at: camera } }
wanted: { sharp: rows }
`
    expect(findingsOf('depth-short', plan('f/2.2', '9.28 m')).length).toBe(1)
    expect(findingsOf('depth-short', plan('f/4', '9.28 m')).length).toBe(0)
  })
})

describe('depth-short, close up', () => {
  const thing = (camera: string, subject: string) => `plan: 1
title: A small thing
camera: { lens: 100 mm, ${camera}, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, ${subject}, stands-on: { height: 90 cm } }
lights: { key: { unit: head 400 Ws, modifier: softbox 60 x 60 cm, meters: f/22, at: { left: 40 cm, behind: 10 cm, height: 1.3 m } } }
wanted: { shadow: any, sharp: subject }
`
  const watch = thing(
    'at: { distance: 35 cm, height: 1.05 m }, aim: subject, aperture: f/22',
    'height: 4 cm, width: 4 cm, depth: 1 cm',
  )

  it('advises no aperture that no lens has: more frames, or from further off', () => {
    const titles = findingsOf('depth-short', watch)[0]!.advice.map(({ title }) => title)
    expect(titles.some((title) => title.startsWith('several frames with the focus moved'))).toBe(true)
    expect(titles.some((title) => title.startsWith('camera.at.distance → '))).toBe(true)
    for (const title of titles) {
      const closed = /f\/(\d+)/.exec(title)
      expect(closed === null || Number(closed[1]) <= 32).toBe(true)
    }
  })

  it('shows by how much it falls short where that is millimetres, and is a note where no focus is stated', () => {
    // By hand: H = 0.1² / (11.31 · 28.84 µm) = 30.7 m; far = s·H / (H - (s - f)), the back of the bottle at 1.64 m.
    const bottle = (focus: string) =>
      findingsOf(
        'depth-short',
        thing(
          `at: { distance: 1.6 m, height: 95 cm }${focus}, aperture: f/11`,
          'height: 30 cm, width: 8 cm, depth: 8 cm',
        ),
      )[0]!
    const [s, reach] = [1.56, 0.1 ** 2 / (11.314 * 28.84e-6)]
    const far = (s * reach) / (reach - (s - 0.1))
    const short = (1.64 - far) * 100
    expect(bottle('').message).toContain(`the last ${(Math.round(short * 10) / 10).toFixed(1)} cm of it`)
    expect(bottle('').level).toBe('note')
    expect(bottle(', focus: 1.56 m').level).toBe('warning')
  })
})

describe('ambient-in-exposure', () => {
  const at = (reads: string, shutter = '1/125', wanted = 'ambient: none') =>
    beyond(
      'ambient-in-exposure',
      set({
        aperture: 'f/8',
        key: 'meters: f/8',
        shutter,
        wanted,
        rest: `ambient: { reads: ${reads}, shutter: 1/125, iso: 100 }`,
      }),
    )
  it('turns at four stops under the key: f/2 beside f/8 at one shutter', () => {
    expect(at('f/2')).toBeLessThanOrEqual(1e-6)
    expect(at('f/2.2')).toBeCloseTo(1 / 3, 2)
    expect(at('f/1.8')).toBeCloseTo(-1 / 3, 2)
  })
  it('a stop of shutter is a stop of ambient', () => {
    expect(at('f/2', '1/60')).toBeCloseTo(1, 2)
  })
  it('asks five for frozen motion', () => {
    expect(at('f/2', '1/125', 'motion: frozen, ambient: none')).toBeCloseTo(1, 2)
  })
  it('a lit room is out of it: EV 6 against f/8, 1/125, ISO 100, which is EV 13 (reported)', () => {
    // EV 6 at 1/125 is f/0.7 (2^((6 - 7)/2)).
    expect(at('f/0.7')).toBeCloseTo(4 - 7, 0)
    expect(
      findingsOf(
        'ambient-in-exposure',
        set({
          aperture: 'f/8',
          key: 'meters: f/8',
          wanted: 'ambient: none',
          rest: 'ambient: { reads: f/0.7, shutter: 1/125, iso: 100 }',
        }),
      ),
    ).toEqual([])
  })
})

describe('shutter-beyond-sync', () => {
  // Open share of the frame = t/T with T = 4 ms (geometry of the focal-plane shutter, published).
  it.each([
    ['1/320', 0.78125],
    ['1/500', 0.5],
    ['1/1000', 0.25],
  ])('at %s with a travel of 4 ms %f of the frame is open', (shutter, open) => {
    const [found] = evidence('shutter-beyond-sync', set({ shutter, camera: ', sync: 1/250, curtain: 4 ms' }))
    expect(1 - found!.measured['dark-share']!.value).toBeCloseTo(open, 6)
  })
  it('turns at the mark', () => {
    const at = (shutter: string) =>
      findingsOf('shutter-beyond-sync', set({ shutter, camera: ', sync: 1/200' })).length
    expect([at('1/160'), at('1/200'), at('1/250')]).toEqual([0, 0, 1])
  })
  it('is less sure of a sync speed that the plan does not state', () => {
    const [first] = findingsOf('shutter-beyond-sync', set({ shutter: '1/200' }))
    expect(first?.certainty).toBe('possible')
    expect(findingsOf('shutter-beyond-sync', set({ shutter: '1/800' }))[0]?.certainty).toBe('sure')
  })
})

describe('trigger-margin (common practice, no source)', () => {
  const at = (by: string, shutter: string) =>
    findingsOf(
      'trigger-margin',
      set({ shutter, camera: ', sync: 1/200', key: `meters: f/5.6, trigger: { by: ${by} }` }),
    ).length
  it('cable 0, radio a third, basic radio two thirds, optical groups a stop', () => {
    expect([at('cable', '1/200'), at('optical', '1/200')]).toEqual([0, 0])
    expect([at('radio', '1/200'), at('radio', '1/160')]).toEqual([1, 0])
    expect([at('basic radio', '1/160'), at('basic radio', '1/125')]).toEqual([1, 0])
    expect([at('optical groups', '1/125'), at('optical groups', '1/100')]).toEqual([1, 0])
  })
})

describe('power-beyond-range', () => {
  // Reported: GN 38 m, least power 1/8, an umbrella that takes 2 stops, 1.5 m, ISO 200: f/6.3, so f/2.8 is 2.3 stops away.
  it('a head that goes down three stops only', () => {
    const [found] = evidence(
      'power-beyond-range',
      `plan: 1
title: Too strong
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/2.8, shutter: 1/160, iso: 200 }
subject: { kind: person, faces-at: 1.5 m }
lights:
  key: { unit: { guide-number: 38 m at 35 mm, rated-as: measured, power: { from: 1/8, to: full, step: 1/10 stop } }, modifier: { kind: white umbrella, size: 30 cm, loss: 2 stops }, meters: f/2.8, at: { angle: 0 deg left, distance: 1.5 m, height: 1.5 m } }
`,
    )
    expect(found!.measured['outside-range']!.value).toBeCloseTo(2.3, 1)
  })
})

describe('power-off-step', () => {
  const at = (power: string) =>
    findingsOf(
      'power-off-step',
      set({}).replace('meters: f/5.6', `power: ${power}`).replace('head 600 Ws', 'flashgun'),
    ).length
  it('thirds are steps, halves are not, and a display’s 0.3 means a third', () => {
    expect([at('1/4'), at('1/4 + 0.3'), at('1/4 + 0.7'), at('1/4 + 1/3')]).toEqual([0, 0, 0, 0])
    expect([at('1/4 + 0.5'), at('1/4 + 0.1')]).toEqual([1, 1])
  })
})

describe('unit-too-weak', () => {
  // A calibration at full power says what it can: f/5.6 at 2 m. Another stop is a stop too much.
  const at = (meters: string) => {
    const [found] = evidence(
      'unit-too-weak',
      ruleNamed('unit-too-weak')!.fires[0]!.plan.replaceAll('f/11', meters),
    )
    return found!.measured.short!.value
  }
  it('counts in stops from what was measured', () => {
    expect(at('f/5.6')).toBeCloseTo(0, 2)
    expect(at('f/8')).toBeCloseTo(1, 2)
    expect(at('f/4')).toBeCloseTo(-1, 2)
  })
})
