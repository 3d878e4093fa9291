/** What is said of the light and left out of it, held against what the rules read of a plan. */
import { describe, expect, it } from 'vitest'
import { caveatsOn, notJudgedIn } from '../../src/checker/remarks.js'
import type { Plan } from '../../src/language/plan.js'
import { rules } from '../../src/rules/index.js'
import { checkText, contextOf, planOf } from '../rules/check-text.js'

const plan = (more = '', wanted = '') => `plan: 1
title: A key
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100, sync: 1/200 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1.5 m }
lights:
  key: { unit: flashgun, power: 1/1, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { backdrop: any${wanted} }
${more}`

const room = 'room: { width: 5 m, length: 7 m, height: 2.6 m }\n'
const panel = `panels:
  v: { kind: reflector, size: 1 m x 1 m, at: { angle: 60 deg right, distance: 1 m, height: 1.5 m }, faces: subject }
`
const everything = plan(
  room.replace(' }', ', circuits: { a: { voltage: 230 V, breaker: 16 A } } }') + panel,
  ', floor: white, shadow: hidden, motion: frozen, shooting: { every: 2 s }',
)
  .replace('backdrop: any', 'backdrop: { colour: blue }')
  .replace('kind: person', 'kind: person, age: newborn')
  .replace('power: 1/1', 'power: 1/1, circuit: a, stand: { kind: boom, arm: 1 m }')

/** Which keys of the plan and of what is wanted the rules read to find something, over all their examples. */
const readByRules = (): Set<string> => {
  const read = new Set<string>()
  const watched = <T extends object>(holder: T, at: string): T =>
    new Proxy(holder, {
      get: (target, key) => {
        if (typeof key === 'string') read.add(at + key)
        return Reflect.get(target, key)
      },
    })
  for (const rule of rules) {
    for (const example of [...rule.fires, ...rule.passes]) {
      let whole: Plan
      try {
        whole = planOf(example.plan)
      } catch {
        continue
      }
      const context = contextOf(rule.id, whole)
      const seen = watched({ ...whole, wanted: watched(whole.wanted, 'wanted.') }, '')
      const set = new Proxy(context.set, {
        get: (target, key) => (key === 'plan' ? seen : Reflect.get(target, key)),
      })
      const watching = { ...context, set, plan: seen }
      if (rule.needs(watching) === undefined) rule.detect(watching)
    }
  }
  return read
}

describe('what no rule judges yet', () => {
  it('is named where the plan states it, and nowhere else', () => {
    expect(notJudgedIn(planOf(plan()))).toEqual([])
    expect(notJudgedIn(planOf(everything))).toEqual([
      'what hangs on room.circuits',
      'whether stands and booms tip',
      'cautions for subject.age',
    ])
    expect(checkText(everything).notJudged).toEqual(notJudgedIn(planOf(everything)))
  })

  it('is what no rule reads; all else that can be wanted is read by one', () => {
    const read = readByRules()
    for (const key of Object.keys(planOf(everything).wanted)) {
      expect(read).toContain(`wanted.${key}`)
    }
  })
})

describe('a light that is to bounce off a room', () => {
  it.each([
    ['{ at: ceiling }', 'the ceiling'],
    ['ceiling', 'the ceiling'],
    ['left-wall', 'the left wall'],
  ])('at %s: its figures are too low where the plan states none', (aim, said) => {
    const text = (around: string) => plan(around).replace('power: 1/1', `power: 1/1, aim: ${aim}`)
    expect(caveatsOn(planOf(text(panel)))).toEqual([
      `key is aimed at ${said}, and the plan states no room: its figures are too low`,
    ])
    expect(caveatsOn(planOf(text(room + panel)))).toEqual([])
  })

  it('but not one that is off, or aimed at somebody', () => {
    expect(caveatsOn(planOf(plan()))).toEqual([])
    const off = plan().replace('power: 1/1', 'power: 1/1, aim: ceiling, off: true')
    expect(caveatsOn(planOf(off))).toEqual([])
  })
})

describe('a reading that is not used', () => {
  it('is named with its line and the reason', () => {
    const read = (reading: string) => checkText(`${plan()}readings:\n  - { ${reading} }\n`).remarks
    expect(read('at: subject, of: [key], reads: f/5.6').join('\n')).not.toContain('not used')
    expect(read('at: backdrop, of: [key], records: 255')).toContainEqual(
      expect.stringMatching(/^the reading in line 10 is not used: .*"at least"$/),
    )
  })
})
