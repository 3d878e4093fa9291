/**
 * Where the rules on key, fill, rim and outline turn, worked out by hand: closed forms, published values, situations
 * that photographers reported.
 */
import '../helpers/empty-space.js'
import { describe, expect, it } from 'vitest'
import { ruleNamed } from '../../src/rules/index.js'
import type { Evidence } from '../../src/rules/rule.js'
import { applied } from './apply-advice.js'
import { checkText, contextOf, findingsOf, planOf } from './check-text.js'

const evidence = (rule: string, text: string): readonly Evidence[] =>
  ruleNamed(rule)!.detect(contextOf(rule, planOf(text)))

const measured = (rule: string, text: string, figure: string): number => {
  const found = evidence(rule, text).find((one) => one.measured[figure] !== undefined)
  if (found === undefined) throw new Error(`${rule} has no ${figure}`)
  return found.measured[figure]!.value
}

const levels = (rule: string, text: string): readonly string[] =>
  findingsOf(rule, text).map((one) => one.level)

/** A box of 20 cm stands for a small light; everything at the height of the face, 1.5 m. */
const small = (meters: string, at: string, more = ''): string =>
  `{ unit: head 600 Ws, modifier: softbox 20 x 20 cm, meters: ${meters}${more}, at: ${at} }`

const set = (parts: {
  readonly camera?: string
  readonly subject?: string
  readonly backdrop?: string
  readonly lights: readonly string[]
  readonly wanted?: string
}): string => `plan: 1
title: Worked by hand
camera: { lens: 24 mm, at: { ${parts.camera ?? 'distance: 6 m'} }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.5 m${parts.subject ?? ''} }
${parts.backdrop ?? ''}
lights:
${parts.lights.map((light) => `  ${light}`).join('\n')}
wanted: { ${parts.wanted ?? 'backdrop: any'} }
`

const onAxis = (distance: string): string => `{ angle: 0 deg, distance: ${distance}, height: 1.5 m }`

describe('ratio-off', () => {
  const ratio = (fill: string, wanted: string): string =>
    set({
      lights: [`key: ${small('f/8', onAxis('2 m'))}`, `fill: ${small(fill, onAxis('3 m'))}`],
      wanted: `ratio: { ${wanted} }`,
    })

  // Both conventions by stops of key over fill: an encyclopaedia's "Lighting ratio", newer and older text.
  it.each([
    ['f/8', 1, 2],
    ['f/5.6', 2, 3],
    ['f/4', 4, 5],
    ['f/2.8', 8, 9],
  ])('a key of f/8 over a fill of %s is %f:1 light to light, %f:1 side to side', (fill, light, side) => {
    expect(measured('ratio-off', ratio(fill, 'key-to-fill: "2:1"'), 'ratio')).toBeCloseTo(light, 6)
    expect(measured('ratio-off', ratio(fill, 'lit-to-shadow: "2:1"'), 'ratio')).toBeCloseTo(side, 6)
  })

  it('turns at a third and at two thirds of a stop', () => {
    const off = (fill: string) => measured('ratio-off', ratio(fill, 'key-to-fill: "2:1"'), 'off-ratio')
    expect(off('f/5.0')).toBeCloseTo(1 / 3, 6)
    expect(levels('ratio-off', ratio('f/5.0', 'key-to-fill: "2:1"'))).toEqual([])
    expect(levels('ratio-off', ratio('f/5.6 + 0.4', 'key-to-fill: "2:1"'))).toEqual(['note'])
    expect(levels('ratio-off', ratio('f/8', 'key-to-fill: "2:1"'))).toEqual(['warning'])
  })

  it('a key 35 degrees aside, its fill a stop under on the axis: 2.8:1 with the dome to the camera', () => {
    const aside = set({
      lights: [
        `key: ${small('f/8', '{ angle: 35 deg left, distance: 2 m, height: 1.5 m }')}`,
        `fill: ${small('f/5.6', onAxis('3 m'))}`,
      ],
      wanted: 'ratio: { lit-to-shadow: "3:1" }',
    })
    expect(measured('ratio-off', aside, 'ratio')).toBeCloseTo(2.8, 1)
  })

  it('says in words which ratio it means, and what it asks where no ratio is wanted or no fill is there', () => {
    const [found] = findingsOf('ratio-off', ratio('f/8', 'lit-to-shadow: "4:1"'))
    expect(found!.message).toMatch(/lit side to shadow side stands at 2:1/)
    const asked = (text: string) =>
      checkText(text).notChecked.find((one) => one.rule === 'ratio-off')?.because
    expect(asked(ratio('f/8', 'key-to-fill: "2:1"').replace(/ratio: \{.*?\}/, 'backdrop: any'))).toMatch(
      /does not say what ratio/,
    )
    expect(asked(ratio('f/8', 'key-to-fill: "2:1"').replace(/\n {2}fill:.*/, ''))).toMatch(
      /no light is the fill/,
    )
  })
})

describe('falloff-steep', () => {
  const key = (distance: number, wanted = 'framing: full length'): string =>
    set({
      camera: 'distance: 12 m, height: 1.5 m',
      subject: ', height: 1.6 m, depth: 18 cm',
      lights: [`key: ${small('f/8', onAxis(`${distance} m`))}`],
      wanted,
    })

  // A small box (cos² of its own) level with the face: at the knees the light is further, off its axis, and steep to the
  // dome. Knees at 0.285/0.94 of the face's height, on the front of the body: 9.04 cm behind the face, less 9 cm.
  it.each([1, 2, 4])('agrees with the inverse square and the cosines at %f m', (distance) => {
    const drop = 1.5 * (1 - 0.285 / 0.94)
    const cosine = distance / Math.hypot(distance, drop)
    const toCamera = Math.atan(drop / 12)
    const dome = (1 + Math.cos(Math.acos(cosine) - toCamera)) / 2
    const knees = (cosine ** 2 * dome) / (distance ** 2 + drop ** 2)
    expect(measured('falloff-steep', key(distance), 'face-over-knees')).toBeCloseTo(
      Math.log2(1 / distance ** 2 / knees),
      1,
    )
  })

  it('a spot on the face leaves the legs dark', () => {
    const spot = key(2).replace('softbox 20 x 20 cm,', 'softbox 20 x 20 cm, grid: 20 deg,')
    const [found] = findingsOf('falloff-steep', spot)
    expect(found!.message).toMatch(/the legs stay dark beside the face/)
    expect(found!.certainty).toBe('sure')
  })

  it('is asked of a full length only', () => {
    expect(levels('falloff-steep', key(1))).toEqual(['warning'])
    expect(levels('falloff-steep', key(1, 'framing: waist'))).toEqual([])
    expect(levels('falloff-steep', key(4))).toEqual([])
  })

  it('finds legs that are lighter too', () => {
    const low = set({
      lights: [`key: ${small('f/8', '{ angle: 0 deg, distance: 1.3 m, height: 60 cm }', ', aim: floor')}`],
      wanted: 'framing: full length',
    })
    const [found] = findingsOf('falloff-steep', low)
    expect(found!.message).toMatch(/the legs come out .* lighter than the face/)
  })
})

describe('leaves-the-light', () => {
  const moving = (area: string, more: { paper?: string; camera?: string } = {}): string =>
    set({
      camera: more.camera ?? 'distance: 6 m',
      subject: `, area: ${area}`,
      backdrop: `backdrop: { surface: grey paper, width: ${more.paper ?? '8 m'}, behind: 2 m }`,
      lights: [`key: ${small('f/8', onAxis('3 m'))}`],
    })

  it('a metre nearer to a light three metres off is 1.17 stops more (reported)', () => {
    expect(measured('leaves-the-light', moving('1 x 200 cm'), 'edge-over-middle')).toBeCloseTo(
      2 * Math.log2(3 / 2),
      1,
    )
    expect(levels('leaves-the-light', moving('1 x 200 cm'))).toEqual(['warning'])
  })

  it('turns at two thirds: 3 − x/2 = 3·2^(−1/3), an area 1.24 m deep', () => {
    const beyond = (depth: string) =>
      measured('leaves-the-light', moving(`2 x ${depth} cm`), 'edge-over-middle') - 2 / 3
    expect(beyond('120')).toBeLessThan(0)
    expect(beyond('127')).toBeGreaterThan(0)
  })

  it('a spot leaves all but the middle dark', () => {
    const spot = moving('2 x 0.1 m').replace('softbox 20 x 20 cm,', 'softbox 20 x 20 cm, grid: 10 deg,')
    const [found] = findingsOf('leaves-the-light', spot)
    expect(found!.message).toMatch(/^the subject gets none of the light/)
  })

  it('sees the edge of the paper past the subject: similar triangles', () => {
    // Half of 2.72 m, 8 m from the camera; the subject, 22.5 cm to either side, stands 6.1 m from it.
    const edge = (width: number) =>
      findingsOf('leaves-the-light', moving(`${width} x 2 cm`, { paper: '2.72 m' })).length
    const half = (1.36 * 6.1) / 8 - 0.225
    expect([edge(Math.round(200 * half) - 3), edge(Math.round(200 * half) + 3)]).toEqual([0, 1])
  })

  it('tells the edge without any light', () => {
    const dark = moving('300 x 10 cm', { paper: '2.72 m' }).replace('meters: f/8, ', '')
    expect(findingsOf('leaves-the-light', dark).map((one) => one.certainty)).toEqual(['sure'])
  })

  it('asks for the area of one who moves', () => {
    const text = moving('1 x 1 m').replace('area: 1 x 1 m', 'moves: 2 m/s')
    expect(checkText(text).notChecked.some((one) => one.rule === 'leaves-the-light')).toBe(true)
  })
})

describe('subject-over-white', () => {
  const dress = (reflectance: number, aperture: string, angle = '0 deg', headroom = ''): string =>
    set({
      subject: `, reflectance: ${reflectance}`,
      lights: [`key: ${small('f/8', `{ angle: ${angle}, distance: 8 m, height: 1.5 m }`)}`],
    })
      .replace('aperture: f/8', `aperture: ${aperture}`)
      .replace('iso: 100 }', `iso: 100${headroom} }`)
  const over = (...of: Parameters<typeof dress>) => measured('subject-over-white', dress(...of), 'over-white')

  it('cloth of 0.85 facing the camera and its light: log2 0.85 − 1/4 over white (ISO 12232, ISO 2720)', () => {
    expect(over(0.85, 'f/8')).toBeCloseTo(Math.log2(0.85) - 1 / 4, 1)
    // One stop of aperture is one stop (ISO 517).
    expect(over(0.85, 'f/5.6') - over(0.85, 'f/8')).toBeCloseTo(1, 6)
    expect(over(0.85, 'f/8', '0 deg', ', headroom: 1/2 stop') - over(0.85, 'f/8')).toBeCloseTo(-1 / 4, 6)
  })

  it('turns between a third and two thirds open', () => {
    expect(levels('subject-over-white', dress(0.85, 'f/7.1'))).toEqual([])
    expect(over(0.85, 'f/6.3')).toBeGreaterThan(0)
    expect(levels('subject-over-white', dress(0.85, 'f/5.0'))).toEqual(['warning'])
  })

  it('skin does not clip before 1.76 stops, and no skin is as white as a dress', () => {
    expect(over(0.35, 'f/4.5')).toBeLessThan(0)
    expect(over(0.35, 'f/4')).toBeGreaterThan(0)
    const [found] = findingsOf('subject-over-white', dress(0.85, 'f/5.0'))
    expect(found!.message).not.toMatch(/cheek/)
  })

  it('a surface that faces a far light 60 degrees aside gets 0.42 stop more than the dome shows: log2(4/3)', () => {
    const overKey = (angle: string) => {
      const text = dress(0.5, 'f/8', angle)
      const key = contextOf('subject-over-white', planOf(text)).set.key!.overCamera.stops
      return measured('subject-over-white', text, 'over-camera') - key
    }
    expect(overKey('0 deg')).toBeCloseTo(0, 1)
    // What is a little nearer to the light than the face gets a little more.
    expect(overKey('60 deg left')).toBeGreaterThan(Math.log2(4 / 3) - 0.02)
    expect(overKey('60 deg left')).toBeLessThan(Math.log2(4 / 3) + 0.08)
  })

  it('says nothing of glossy and clear things', () => {
    const glossy = dress(0.85, 'f/5.0').replace('reflectance', 'finish: glossy, reflectance')
    expect(levels('subject-over-white', glossy)).toEqual([])
  })

  it('says why: they show what is around them', () => {
    for (const finish of ['glossy', 'clear', 'satin', 'matte']) {
      const text = dress(0.85, 'f/5.0').replace('reflectance', `finish: ${finish}, reflectance`)
      const because = checkText(text).notChecked.find(({ rule }) => rule === 'subject-over-white')?.because
      if (finish === 'glossy' || finish === 'clear') expect(because).toMatch(/its own tone is not judged/)
      else expect(because).toBeUndefined()
    }
  })
})

describe('rim-hot (common practice, no source)', () => {
  const hair = (meters: string, tone: string): string =>
    set({
      subject: tone === '' ? '' : `, hair: ${tone}`,
      lights: [
        `key: ${small('f/8', onAxis('2 m'))}`,
        `hair: ${small(meters, '{ angle: 180 deg, distance: 1.3 m, height: 2.2 m }')}`,
      ],
    })
  const fires = (meters: string, tone: string) => findingsOf('rim-hot', hair(meters, tone)).length

  it('is measured where the light arrives, against the key reading', () => {
    expect(measured('rim-hot', hair('f/11', 'dark'), 'over-key')).toBeCloseTo(1, 6)
    expect(measured('rim-hot', hair('f/4', 'fair'), 'over-key')).toBeCloseTo(-2, 6)
  })
  it('turns at +1 on dark hair, level on brown, −1 on fair', () => {
    expect([fires('f/11', 'dark'), fires('f/13', 'dark')]).toEqual([0, 1])
    expect([fires('f/8', 'brown'), fires('f/9', 'brown')]).toEqual([0, 1])
    expect([fires('f/5.6', 'fair'), fires('f/6.3', 'fair')]).toEqual([0, 1])
    expect([fires('f/11', ''), fires('f/13', '')]).toEqual([0, 1])
  })
  it('names the level to begin at', () => {
    const [found] = findingsOf('rim-hot', hair('f/8', 'fair'))
    expect(found!.advice.map(({ title }) => title)).toContain('lights.hair.meters → f/4')
  })
})

describe('key-height', () => {
  const at = (placing: string) => set({ lights: [`key: ${small('f/8', placing)}`] })

  it('1.2 m away and 60 cm over the eyes is 30 degrees along the tape, 26.6 along the floor', () => {
    const wide = ruleNamed('key-height')!
    const limits = { ...contextOf('key-height', planOf(at(onAxis('2 m')))).limits, lowest: 80, highest: 81 }
    const up = (placing: string) =>
      wide.detect({ ...contextOf('key-height', planOf(at(placing))), limits })[0]!.measured.up!.value
    expect(up('{ angle: 45 deg left, distance: 1.2 m, height: 2.1 m }')).toBeCloseTo(30, 6)
    expect(up('{ left: 0 m, front: 1.2 m, height: 2.1 m }')).toBeCloseTo(26.57, 2)
  })

  it('turns at 10 and at 50 degrees: a metre off, 17.6 cm and 1.19 m up', () => {
    const fires = (height: string) =>
      findingsOf('key-height', at(`{ left: 60 cm, front: 80 cm, height: ${height} }`)).length
    expect([fires('1.67 m'), fires('1.68 m')]).toEqual([1, 0])
    expect([fires('2.69 m'), fires('2.7 m')]).toEqual([0, 1])
  })

  it('tells light from below apart', () => {
    const [found] = findingsOf('key-height', at('{ left: 50 cm, front: 1 m, height: 1 m }'))
    expect(found!.message).toMatch(/^shadows fall upward on the face: key stands 24 deg under/)
  })

  // atan 51/193 is 14.8 degrees, atan 53/193 is 15.4.
  it('says nothing within 15 degrees of the lens, of a front that the lens looks out of, or where flat is wanted', () => {
    const fires = (text: string) => levels('key-height', text).length
    const level = (left: string) => at(`{ left: ${left}, front: 1.93 m, height: 1.5 m }`)
    expect([fires(level('51 cm')), fires(level('53 cm'))]).toEqual([0, 1])
    // Behind a camera 6 m off, 20 degrees aside: 2.2 m from the axis.
    const large = (size: string) =>
      at('{ angle: 20 deg left, distance: 6.5 m, height: 1.5 m }').replace('20 x 20 cm', `${size} x 90 cm`)
    expect([fires(large('500 cm')), fires(large('400 cm'))]).toEqual([0, 1])
    const wanting = (ratio: string) => level('1.5 m').replace('backdrop: any', `ratio: { ${ratio} }`)
    expect(
      ['lit-to-shadow: "2:1"', 'key-to-fill: "1:1"', 'lit-to-shadow: "3:1"', 'key-to-fill: "2:1"'].map(
        (ratio) => fires(wanting(ratio)),
      ),
    ).toEqual([0, 0, 1, 1])
    // Overhead is overhead, whatever the ratio.
    expect(
      fires(
        wanting('lit-to-shadow: "2:1"').replace('front: 1.93 m, height: 1.5 m', 'front: 0.1 m, height: 4 m'),
      ),
    ).toBe(1)
  })

  it('says nothing of a light from behind, nor of one who lies', () => {
    expect(levels('key-height', at('{ left: 50 cm, behind: 1 m, height: 1.5 m }'))).toEqual([])
    expect(levels('key-height', at(onAxis('2 m')).replace('faces-at: 1.5 m', 'pose: lying'))).toEqual([])
  })
})

describe('two-nose-shadows', () => {
  const pair = (fill: string, meters: string, camera = 'distance: 6 m'): string =>
    set({
      camera,
      lights: [
        `key: ${small('f/8', '{ angle: 40 deg left, distance: 2 m, height: 1.5 m }')}`,
        `fill: ${small(meters, `{ angle: ${fill}, distance: 2 m, height: 1.5 m }`)}`,
      ],
    })

  it('turns at 1.5 stops under the key', () => {
    expect(measured('two-nose-shadows', pair('40 deg right', 'f/5.6'), 'under-key')).toBeCloseTo(1, 6)
    expect(levels('two-nose-shadows', pair('40 deg right', 'f/4 + 0.6'))).toEqual(['note'])
    expect(levels('two-nose-shadows', pair('40 deg right', 'f/4 + 0.4'))).toEqual([])
  })

  it('turns at 20 degrees on the other side, and there only', () => {
    const fires = (fill: string) => findingsOf('two-nose-shadows', pair(fill, 'f/5.6')).length
    expect([fires('19 deg right'), fires('21 deg right')]).toEqual([0, 1])
    expect([fires('21 deg left'), fires('60 deg left')]).toEqual([0, 0])
  })

  it('counts from the camera, wherever that stands: 2 m aside at 6 m is 18.4 degrees', () => {
    const fires = (fill: string) =>
      findingsOf('two-nose-shadows', pair(fill, 'f/5.6', 'distance: 6 m, aside: 2 m right')).length
    expect([fires('38 deg right'), fires('39 deg right')]).toEqual([0, 1])
  })
})

describe('edge-merges', () => {
  const grey = (meters: string, subject = 'reflectance: 0.18', surface = '{ reflectance: 0.18 }'): string =>
    set({
      subject: `, ${subject}`,
      backdrop: `backdrop: { surface: ${surface}, width: 8 m, height: 3 m, behind: 12 m }`,
      lights: [
        `key: ${small('f/8', onAxis('8 m'))}`,
        `paper: ${small(meters, '{ left: 0 m, before-backdrop: 6 m, height: 1.5 m }', ', role: backdrop')}`,
      ],
    })
  const apart = (...of: Parameters<typeof grey>) => {
    const wide = contextOf('edge-merges', planOf(grey(...of)))
    return ruleNamed('edge-merges')!.detect({ ...wide, limits: { ...wide.limits, apart: 20 } })[0]!.measured
      .apart!.value
  }

  it('clothes turned 45 degrees from light on the axis are half a stop under it: cos 45', () => {
    // The key adds 0.16 of itself to the wall, (8/20)². The wall's own light falls off by the fifth power of the cosine,
    // to 0.94 where the camera looks past a shoulder: 18/6.1 × (22 cm, 23 cm) from the middle.
    const own = (1 + ((18 / 6.1) ** 2 * (0.22 ** 2 + 0.23 ** 2)) / 6 ** 2) ** -2.5
    const wall = (level: number) => Math.log2((level * own + 0.16) / Math.SQRT1_2)
    expect(apart('f/8')).toBeCloseTo(wall(1), 1)
    expect(apart('f/4')).toBeCloseTo(-wall(1 / 4), 1)
    expect(apart('f/5.6 + 0.1')).toBeLessThan(0.15)
    expect(levels('edge-merges', grey('f/5.6 + 0.1'))).toEqual(['note'])
    expect([...levels('edge-merges', grey('f/8')), ...levels('edge-merges', grey('f/4'))]).toEqual([])
  })

  it('two blacks are one black, and two whites one white', () => {
    expect(apart('f/8', 'reflectance: 0.003', '{ reflectance: 0.005 }')).toBe(0)
    const burnt = grey('f/16', 'reflectance: 0.9', '{ reflectance: 0.9 }').replace(
      'aperture: f/8',
      'aperture: f/4',
    )
    expect(levels('edge-merges', burnt)).toEqual(['note'])
  })

  it('light from behind draws a line on dark hair before black: starting level, level with the key', () => {
    const dark = grey('f/1.4', 'hair: dark', '{ reflectance: 0.02 }')
    const behind = (meters: string) =>
      dark.replace(
        '  paper:',
        `  rim-left: ${small(meters, '{ angle: 130 deg left, distance: 1.5 m, height: 2 m }')}\n  rim-right: { like: rim-left, mirrored: true }\n  paper:`,
      )
    const shadowed = dark.replace('angle: 0 deg', 'angle: 60 deg left')
    expect(levels('edge-merges', shadowed)).toEqual(['note'])
    expect(levels('edge-merges', behind('f/8').replace('angle: 0 deg', 'angle: 60 deg left'))).toEqual([])
  })

  it('does not judge hair and clothes that the plan does not describe, groups, nor what no paper is behind', () => {
    expect(levels('edge-merges', grey('f/5.6 + 0.5', 'width: 45 cm'))).toEqual([])
    expect(levels('edge-merges', grey('f/5.6 + 0.5').replace('width: 8 m', 'width: 10 cm'))).toEqual([])
  })
})

describe('what a mend names settles its finding', () => {
  const ids = [
    'ratio-off',
    'falloff-steep',
    'subject-over-white',
    'leaves-the-light',
    'rim-hot',
    'key-height',
    'two-nose-shadows',
    'edge-merges',
  ]
  const trials = ids.flatMap((id) =>
    ruleNamed(id)!.fires.flatMap(({ title, plan }) =>
      findingsOf(id, plan).flatMap(({ advice }) =>
        advice.flatMap((one) => {
          const after = applied(plan, one.title)
          return after === undefined || /still/.test(`${one.costs}`)
            ? []
            : [{ name: `${id}, ${title}: ${one.title}`, id, after }]
        }),
      ),
    ),
  )

  it('there are plenty to try, of every rule', () => {
    expect(trials.length).toBeGreaterThan(25)
    expect([...new Set(trials.map(({ id }) => id))].sort()).toEqual([...ids].sort())
  })

  it.each(trials)('$name', ({ id, after }) => {
    const { findings } = checkText(after)
    expect(findings.filter((one) => one.rule === 'plan-unreadable').map((one) => one.message)).toEqual([])
    expect(findings.filter((one) => one.rule === id).map((one) => one.message)).toEqual([])
  })
})
