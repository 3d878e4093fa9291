/** Situations that photographers reported, as plans: what the checker must say of each. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkPlan } from '../../src/index.js'
import { ruleNamed } from '../../src/rules/index.js'
import { cases } from './expected.js'

const folder = join(import.meta.dirname, 'plans')
const found = (id: string) => {
  const file = `${id}.plan.yaml`
  return checkPlan(readFileSync(join(folder, file), 'utf8'), { file })
}

describe.each(cases)('$id', ({ id, control, now }) => {
  const { findings } = found(id)
  const said = findings.map(({ rule, level }) => ({ rule, level }))

  it('reads without a mistake', () => {
    expect(
      findings.filter((one) => one.family === 'plan' && one.level === 'error').map((one) => one.message),
    ).toEqual([])
  })

  it.each(now)('gets $rule at $level', (wanted) => {
    expect(said).toContainEqual(wanted)
  })

  if (control === true)
    it('is left in peace: nothing at warning or above', () => {
      expect(
        findings.filter((one) => one.level !== 'note').map((one) => `${one.rule}: ${one.message}`),
      ).toEqual([])
    })
})

describe('the table', () => {
  it('holds every plan, and every plan is in it', () => {
    const plans = readdirSync(folder).map((name) => name.replace('.plan.yaml', ''))
    expect(plans.sort()).toEqual(cases.map((one) => one.id).sort())
    expect(cases.length).toBe(50)
  })

  it('asserts only rules that exist, and lists as later only what does not yet answer', () => {
    for (const { now } of cases) for (const { rule } of now) expect(ruleNamed(rule), rule).toBeDefined()
  })

  it('leaves no situation without an answer now or later, but controls', () => {
    const silent = cases.filter(
      (one) => one.now.length === 0 && one.later.length === 0 && one.control !== true,
    )
    expect(silent.map((one) => one.id)).toEqual([])
  })
})
