/** Rules on colour: what counts and what does not, and that mends hold. */
import { describe, expect, it } from 'vitest'
import { ruleNamed } from '../../src/rules/index.js'
import { computeSet } from '../../src/set/compute-set.js'
import { shadowSide } from '../../src/set/shadow-side.js'
import { contextOf, findingsOf, planOf } from './check-text.js'

const plan = (lights: string, more = '') => `plan: 1
title: Colours
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
${lights}
${more}
`
const box = (unit: string, side: string, more: string) =>
  `{ unit: ${unit}, modifier: softbox 60 x 90 cm, at: { angle: 50 deg ${side}, distance: 1.4 m, height: 1.8 m }, ${more} }`
const pair = (key: string, fill: string, unit = 'head 400 Ws') =>
  plan(`  key: ${box(unit, 'left', key)}\n  fill: ${box(unit, 'right', fill)}`)
const mixed = (text: string) => findingsOf('colour-mixed', text)

describe('colour-mixed', () => {
  it('says what is warmer than what, and which way round', () => {
    const [warm] = mixed(pair('meters: f/5.6, colour: 5600 K', 'meters: f/4, colour: 4300 K'))
    expect(warm!.message).toMatch(/^one side of the face comes out warmer than the other: \d\d mired/)
    const [cold] = mixed(pair('meters: f/5.6, colour: 4300 K', 'meters: f/4, colour: 5600 K'))
    expect(cold!.message).toContain('cooler')
    const [green] = mixed(pair('meters: f/5.6, colour: 5600 K', 'meters: f/4, colour: 5600 K, duv: 0.02'))
    expect(green!.message).toContain(' greener than')
    const [magenta] = mixed(pair('meters: f/5.6, colour: 5600 K, duv: 0.02', 'meters: f/4, colour: 5600 K'))
    expect(magenta!.message).toContain('more magenta')
  })

  it('is the same whichever side the lights stand on', () => {
    const text = pair('meters: f/5.6, colour: 5600 K', 'meters: f/4, colour: 4700 K')
    const turned = text
      .replaceAll(' left', ' LEFT')
      .replaceAll(' right', ' left')
      .replaceAll(' LEFT', ' right')
    const [one, other] = [mixed(text)[0]!, mixed(turned)[0]!]
    expect(one.measured.apart!.value).toBeCloseTo(other.measured.apart!.value, 6)
  })

  it('counts no light that is too weak to show', () => {
    expect(mixed(pair('meters: f/5.6, colour: 5600 K', 'meters: f/1, colour: 3200 K'))).toEqual([])
  })

  it('is silent on guesses alone, whatever they are', () => {
    const window =
      '  window: { role: fill, unit: window, size: 1 x 1.2 m, at: { right: 1.6 m, front: 30 cm, height: 1.5 m }, faces: left, reads: f/4, shutter: 1/125, iso: 100 }'
    expect(mixed(plan(`  key: ${box('flashgun', 'left', 'meters: f/5.6')}\n${window}`))).toEqual([])
    expect(mixed(pair('power: 1/2', 'power: 1/16'))).toEqual([])
  })

  it('says perhaps, and a note, where one light is known and the other is guessed', () => {
    const [found] = mixed(
      plan(
        `  key: ${box('flashgun', 'left', 'meters: f/5.6, colour: 5000 K')}\n  fill: ${box('head 400 Ws', 'right', 'meters: f/4')}`,
      ),
    )
    expect(found).toMatchObject({ level: 'note', certainty: 'possible' })
  })

  it('follows the power of voltage-regulated heads', () => {
    const head =
      '{ energy: 400 Ws, regulated: voltage, colour: 5500 K, power: { from: 1/64, step: 1/10 stop } }'
    const [found] = mixed(
      pair('power: full', 'power: 1/64', head)
        .replace('distance: 1.4 m', 'distance: 2.4 m')
        .replace(/(fill: .*)distance: 1.4 m/, '$1distance: 70 cm'),
    )
    expect(found?.level ?? 'none').toBe('note')
    expect(mixed(pair('power: 1/8', 'power: 1/8', head))).toEqual([])
  })

  it('takes no part in lights for outline and effect, nor in colours that are meant', () => {
    for (const odd of [
      'rim: { unit: head 400 Ws, colour: 3200 K, meters: f/5.6, at: { angle: 140 deg right, distance: 1.5 m, height: 2 m } }',
      'effect: { unit: head 400 Ws, colour: 3200 K, meters: f/5.6, at: { angle: 60 deg right, distance: 1.5 m, height: 2 m } }',
      'fill: { unit: head 400 Ws, gel: { colour: red, loss: 3 stops }, meters: f/4, at: { angle: 60 deg right, distance: 1.5 m, height: 2 m } }',
    ])
      expect(
        mixed(plan(`  key: ${box('head 400 Ws', 'left', 'meters: f/5.6, colour: 5500 K')}\n  ${odd}`)),
        odd,
      ).toEqual([])
  })

  it('judges the ambient at the darkest side that is wanted', () => {
    const inRoom = (ratio: string) =>
      mixed(
        plan(
          `  key: ${box('head 400 Ws', 'left', 'meters: f/5.6, colour: 5500 K')}`,
          `backdrop: { surface: grey paper, behind: 1.5 m }\nambient: { reads: f/2, shutter: 1/60, iso: 100, colour: 2900 K }\nwanted: { ratio: { lit-to-shadow: ${ratio} } }`,
        ),
      )[0]
    const [flat, deep] = [inRoom('1.5:1'), inRoom('8:1')]
    expect(deep!.measured.apart!.value).toBeGreaterThan(2 * (flat?.measured.apart?.value ?? 0))
    expect(deep!.message).toMatch(/^the shadow side comes out warmer/)
  })

  it('makes no more than a note of ambient that may be in the exposure', () => {
    const text = plan(
      `  key: ${box('head 400 Ws', 'left', 'meters: f/5.6, colour: 5500 K')}`,
      'ambient: { reads: f/4, shutter: 1/60, iso: 100, colour: 2900 K }\nwanted: { ambient: any }',
    )
    const [any] = mixed(text)
    const [none] = mixed(text.replace('ambient: any', 'ambient: none'))
    expect([any!.level, none!.level]).toEqual(['note', 'warning'])
    // Without a backdrop the room is behind the subject, which `any` lets be.
    expect([any!.message, none!.message]).toEqual([
      expect.stringMatching(/^the shadow side/),
      expect.stringMatching(/^(the shadow side|what lies behind)/),
    ])
    expect(mixed(text.replace('colour: 2900 K', 'colour: 5400 K'))).toEqual([])
  })

  it('lets the room behind fade as it goes dark, without a step', () => {
    const beyond = (under: number): number => {
      const reads = `f/${(5.6 * 2 ** (-under / 2)).toFixed(4)}`
      const context = contextOf(
        'colour-mixed',
        planOf(
          plan(
            `  key: ${box('head 400 Ws', 'left', 'meters: f/5.6, colour: 5500 K')}`,
            `ambient: { reads: ${reads}, shutter: 1/125, iso: 100, colour: 2900 K }\nwanted: { ambient: none }`,
          ),
        ),
      )
      const [found] = ruleNamed('colour-mixed')!.detect(context)
      return found?.measured.apart?.value ?? 0
    }
    const all = Array.from({ length: 41 }, (_, i) => beyond(1.5 + i * 0.05))
    for (let i = 1; i < all.length; i++) expect(Math.abs(all[i]! - all[i - 1]!)).toBeLessThan(12)
    expect(all[0]!).toBeGreaterThan(100)
    expect(all.at(-1)!).toBeLessThan(60)
  })

  it('says what is taken and what is stated', () => {
    const text = plan(
      `  key: ${box('head 400 Ws', 'left', 'meters: f/5.6')}`,
      'ambient: { reads: f/4, shutter: 1/60, iso: 100, colour: 2900 K }',
    )
    expect(mixed(text)[0]!.why).toContain('the key taken as 5500 K')
    expect(mixed(text.replace('meters: f/5.6', 'meters: f/5.6, colour: 5500 K'))[0]!.why).toContain(
      'the key 5500 K',
    )
  })

  const atBalance = (balance: string, text: string) =>
    text.replace('iso: 100 }', `iso: 100, white-balance: ${balance} }`)
  const gels = (text: string) =>
    mixed(text)[0]!
      .advice.map(({ title }) => title)
      .filter((title) => /CT|green/.test(title))

  it('gels the light that is off, not the one that fits the balance', () => {
    const text = pair('meters: f/5.6, colour: 3200 K', 'meters: f/4, colour: 5600 K')
    // 1e6/3200 - 1e6/5600 = 133.9: check value col.need.5600_3200.
    expect(gels(atBalance('3200 K', text))).toEqual(['3/4 CTO on fill'])
    expect(gels(atBalance('5600 K', text))).toEqual(['full CTB on key'])
    expect(findingsOf('white-balance-off', atBalance('3200 K', text))).toEqual([])
  })

  it('names what to write, and it settles the finding', () => {
    for (const [balance, key, fill] of [
      ['3200 K', '3200 K', '5600 K'],
      ['3200 K', '3200 K', '9000 K'],
      ['5600 K', '5600 K', '3000 K'],
      ['5600 K', '5600 K, duv: 0.003', '5600 K, duv: 0.023'],
      ['5600 K', '5600 K, duv: 0.003', '5600 K, duv: -0.007'],
      ['3200 K', '3200 K', '4300 K, duv: 0.02'],
    ] as const) {
      const text = atBalance(balance, pair(`meters: f/5.6, colour: ${key}`, `meters: f/4, colour: ${fill}`))
      const [title] = gels(text)
      const name = /^(.+) on fill$/.exec(title!)![1]!
      const kind = name.split(' ').at(-1)!
      // `full and 1/4 CTO`, `1/4 CTO and 1/2 minus-green`, `two sheets of full CTO`
      const sheets = name
        .replace(/^two sheets of (.+)$/, '$1 and $1')
        .split(' and ')
        .map((one) => (one.includes(' ') ? one : `${one} ${kind.includes('green') ? 'CTO' : kind}`))
      const gelled = text.replace(/(fill: .*)meters: f\/4/, `$1gel: [${sheets.join(', ')}], meters: f/4`)
      expect(gelled).not.toBe(text)
      expect(
        mixed(gelled).filter(({ level }) => level !== 'note'),
        `${fill} through ${name}`,
      ).toEqual([])
    }
  })

  it('gels no window', () => {
    const window =
      '  key: { unit: window, colour: 7000 K, size: 1.2 x 1.5 m, at: { left: 1.6 m, front: 30 cm, height: 1.5 m }, faces: right, reads: f/5.6, shutter: 1/125, iso: 100 }'
    const text = plan(`${window}\n  fill: ${box('led panel', 'right', 'meters: f/4, colour: 3200 K')}`)
    for (const one of [text, atBalance('3200 K', text), atBalance('5600 K', text)]) {
      expect(gels(one)).toEqual([expect.stringMatching(/CTB on fill$/)])
      for (const { title } of findingsOf('white-balance-off', one).flatMap(({ advice }) => advice))
        expect(title).not.toMatch(/CT[OB] on key/)
    }
  })

  it('takes off a gel that is the cause', () => {
    const text = pair('meters: f/5.6, colour: 5500 K', 'meters: f/4, colour: 5500 K, gel: 1/2 CTB')
    expect(mixed(text)[0]!.advice[0]!.title).toBe('fill without its gel')
  })

  it('has two heads of one entry at one power, and speaks of makes elsewhere', () => {
    const head =
      '{ energy: 400 Ws, regulated: voltage, colour: 5500 K, power: { from: 1/64, step: 1/10 stop } }'
    const kit = (text: string) => text.replace('subject:', `kit: { units: { old: ${head} } }\nsubject:`)
    const [found] = mixed(
      kit(
        pair('power: full', 'power: 1/64', 'old')
          .replace('distance: 1.4 m', 'distance: 2.4 m')
          .replace(/(fill: .*)distance: 1.4 m/, '$1distance: 70 cm'),
      ),
    )
    const titles = found!.advice.map(({ title }) => title).join('\n')
    expect(titles).toContain('at about the same power')
    expect(titles).not.toContain('make')
  })

  it('is no side effect where it was there before', () => {
    const cropped = `plan: 1
title: A chef
ambient: { reads: f/2.8, shutter: 1/30, iso: 800, colour: 2800 K }
room: { width: 6 m, length: 9 m, height: 3 m, walls: white paint, ceiling: white paint, floor: grey carpet }
camera: { lens: 50 mm, frame: horizontal, at: { distance: 2.2 m }, aperture: f/4, shutter: 1/60, iso: 800, sync: 1/200 }
subject: { kind: person }
lights:
  key: { unit: flashgun, modifier: softbox 60 x 60 cm, meters: f/4, at: { angle: 40 deg left, distance: 1.3 m, height: 2 m } }
wanted: { framing: waist, shadow: any }
`
    const advice = findingsOf('subject-cropped', cropped).flatMap((one) => one.advice)
    expect(advice.length).toBeGreaterThan(1)
    expect(mixed(cropped).length).toBe(1)
    for (const { costs } of advice) expect(costs ?? '').not.toContain('colours mix')
  })
})

describe('white-balance-off', () => {
  const at = (balance: string, key: string) =>
    findingsOf(
      'white-balance-off',
      plan(`  key: ${box('head 400 Ws', 'left', `meters: f/5.6, ${key}`)}`).replace(
        'iso: 100 }',
        `iso: 100, white-balance: ${balance} }`,
      ),
    )

  it('is quiet with the balance that it names', () => {
    for (const key of [
      'colour: 3200 K',
      'colour: 5500 K, gel: { shift: +64 mired, loss: 1/3 stop }',
      'colour: 7500 K',
    ]) {
      const [found] = at('5000 K', key)
      const named = /camera\.white-balance → (\d+ K)/.exec(found!.advice[0]!.title)![1]!
      expect(at(named, key), named).toEqual([])
    }
  })
})

describe('white-balance-off, of all light at the face', () => {
  const found = (ambient: string, key = 'colour: 5500 K', more = '') =>
    findingsOf(
      'white-balance-off',
      plan(
        key === '' ? '  {}' : `  key: ${box('head 400 Ws', 'left', `meters: f/5.6, ${key}`)}`,
        `ambient: { reads: ${ambient}, shutter: 1/125, iso: 100, colour: 2900 K }\n${more}`,
      )
        .replace('lights:\n  {}', 'lights: {}')
        .replace('iso: 100 }', 'iso: 100, white-balance: 5500 K }'),
    )

  it('counts the light of the place by its share, mixed in tristimulus values', () => {
    // 5500 and 2900 K in equal parts: chromaticities of CIE 15 daylight and of Kang’s locus, added by hand.
    const [even] = found('f/5.6')
    expect(even!.message).toMatch(/^the face comes out warmer than neutral: the light there is 3[6-9]\d0 K/)
    const off = (ambient: string) => found(ambient)[0]?.measured.off?.value ?? 0
    expect(off('f/8')).toBeGreaterThan(off('f/5.6'))
    expect(off('f/4')).toBeLessThan(off('f/5.6'))
    // Where flash dominates nothing changes.
    expect(found('f/1')).toEqual([])
  })

  it('leaves the key alone that fits', () => {
    for (const { title } of found('f/4')[0]!.advice) expect(title).not.toMatch(/on key/)
    expect(found('f/4', 'colour: 5500 K', 'wanted: { ambient: any }')[0]!.level).toBe('note')
  })

  it('judges sets that only the place lights', () => {
    const [only] = found('f/5.6', '')
    // 1e6/2900 - 1e6/5500 = 163 by hand.
    expect(only!.measured.off!.value).toBeGreaterThan(150)
    expect(only!.measured.off!.value).toBeLessThan(175)
    expect(only!.level).toBe('warning')
  })

  it('tells green by the gel that would take it', () => {
    const [green] = found('f/1', 'colour: 5500 K, duv: 0.013')
    expect(green!.message).toMatch(/greener than neutral: .*\(about 1\/2 minus-green\)/)
    expect(green!.advice.map(({ title }) => title)).toContain('1/2 minus-green on key')
  })
})

describe('wall-cast', () => {
  const inRoom = (surfaces: string, key: string, more = '') => `plan: 1
title: A room with colours
room: { width: 4 m, length: 5 m, height: 2.6 m, ${surfaces} }
camera: { lens: 50 mm, at: { distance: 1.8 m }, aperture: f/4, shutter: 1/125, iso: 400 }
subject: { kind: person }
lights:
  key: { unit: flashgun, ${key} }
${more}
`
  const green = '{ reflectance: 0.35, colour: "#60a050" }'
  const walls = (right: string, others = 'white paint') =>
    `walls: { left: ${others}, right: ${right}, front: ${others}, back: ${others} }, ceiling: white paint`
  const offWall = 'power: 1/2, at: camera, aim: spot'
  const spot = 'points: { spot: { right: 2 m, front: 80 cm, height: 1.9 m } }'
  const cast = (text: string) => findingsOf('wall-cast', text)[0]
  const value = (text: string) => cast(text)?.measured.cast?.value ?? 0

  it('blames what it takes grey paint on to end the cast', () => {
    const grey = { wall: '0.35', floor: '0.30' }
    for (const [wall, key, more] of [
      [green, offWall, spot],
      [green, 'power: 1/2, at: camera, aim: { at: subject }', ''],
      ['"yellow wall"', offWall, spot],
    ] as const) {
      const text = (right: string, floor: string) => inRoom(`${walls(right)}, floor: ${floor}`, key, more)
      const whole = cast(text(wall, 'wooden floor'))
      if (whole === undefined) continue
      const left = {
        'right wall': value(text(wall === green ? grey.wall : '0.4', 'wooden floor')),
        floor: value(text(wall, grey.floor)),
      }
      const blamed = left['right wall'] < left.floor ? 'right wall' : 'floor'
      expect(whole.message).toMatch(new RegExp(`mostly by the \\w+ ${blamed}$`))
    }
    expect(cast(inRoom(`${walls(green)}, floor: wooden floor`, offWall, spot))!.message).toMatch(
      /greener .* mostly by the green right wall$/,
    )
  })

  it('blames the other wall in the mirrored plan', () => {
    const text = inRoom(`${walls(green)}, floor: wooden floor`, offWall, spot)
    const turned = text.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'))
    const [one, other] = [cast(text)!, cast(turned)!]
    expect(other.measured.cast!.value).toBeCloseTo(one.measured.cast!.value, 6)
    expect([one.place.pointer, other.place.pointer]).toEqual(['/room/walls/right', '/room/walls/left'])
    expect(other.message).toBe(one.message.replace('right wall', 'left wall'))
  })

  it('counts the light of the place, as the meter does', () => {
    const lit = (ambient: string) =>
      inRoom(
        'walls: yellow wall, ceiling: white paint, floor: wooden floor',
        'modifier: softbox 60 x 60 cm, meters: f/4, at: { angle: 45 deg left, distance: 1.2 m, height: 2 m }',
        ambient === '' ? '' : `ambient: { reads: ${ambient}, shutter: 1/125, iso: 400, colour: 5500 K }`,
      )
    const [some, more] = [lit('f/2'), lit('f/2.8')]
    expect(cast(some)!.message).toContain('the shadow side')
    const thrown = (text: string) => cast(text)!.measured.thrown!.value
    const { shadow } = shadowSide(computeSet(planOf(some)))!
    expect(thrown(some)).toBeCloseTo(1 - shadow.byPath.direct / shadow.luxSeconds, 6)
    expect(value(more)).toBeLessThan(value(some))
    // Twice the light of the place, about half the share of what was thrown, and of the cast.
    expect(value(more) / value(some)).toBeGreaterThan(0.4)
    expect(value(more) / value(some)).toBeLessThan(0.9)
    expect(cast(lit('f/8'))).toBeUndefined()
  })
})

describe('backdrop-colour-washed', () => {
  const kept = (more: string, surface = 'white paper') =>
    findingsOf(
      'backdrop-colour-washed',
      plan(
        `  key: ${box('head 400 Ws', 'left', 'meters: f/5.6')}\n  wall: { role: backdrop, unit: head 400 Ws, gel: { colour: blue, loss: 3 stops }, at: { left: 60 cm, before-backdrop: 1.6 m, height: 1.4 m }, ${more} }`,
        `backdrop: { surface: ${surface}, behind: 3 m }\nwanted: { framing: head and shoulders }`,
      ),
    )[0]?.measured['chroma-kept']?.value

  it('keeps less the brighter the gelled light, and on grey keeps it', () => {
    const [over, level] = [kept('meters: f/8'), kept('meters: f/4')]
    expect(over!).toBeLessThan(0.1)
    expect(level ?? 1).toBeGreaterThan(over! + 0.2)
    expect(kept('meters: f/2.8')).toBeUndefined()
    expect(kept('meters: f/5.6', 'grey paper')).toBeUndefined()
  })
})
