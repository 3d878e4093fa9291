/** What every rule must say of itself, and how messages are written. */
import { describe, expect, it } from 'vitest'
import { rules } from '../../src/rules/index.js'
import { checkText } from './check-text.js'

/** The plain texts of a finding: what is read on a terminal. */
const ordinary = /^[\u0020-\u007e–→°µ²√·ρ∞×±]*$/u

describe.each(rules)('$id says what it is', (rule) => {
  it('has a name, a family, one line, a why and a formula', () => {
    expect(rule.id).toMatch(/^[a-z]+(-[a-z]+)*$/)
    expect(rule.finds).toMatch(/^[a-z]/)
    expect(rule.finds).not.toMatch(/[.\n]$/)
    expect(rule.why.length).toBeGreaterThan(40)
    expect(rule.formula.length).toBeGreaterThan(5)
    expect(rule.basis.length).toBeGreaterThan(5)
  })

  it('names its sources for what they are', () => {
    expect(rule.sources.length).toBeGreaterThan(0)
    for (const { says, kind } of rule.sources) {
      expect(['standard', 'published', 'derived', 'common practice', 'memory']).toContain(kind)
      expect(says.length).toBeGreaterThan(5)
    }
  })

  it('has examples on both sides', () => {
    expect(rule.fires.length).toBeGreaterThanOrEqual(2)
    expect(rule.passes.length).toBeGreaterThanOrEqual(2)
    const plans = [...rule.fires, ...rule.passes].map(({ plan }) => plan)
    expect(new Set(plans).size).toBe(plans.length)
  })

  it('states its limits with units', () => {
    for (const [name, { value, unit, says }] of Object.entries(rule.limits)) {
      expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
      expect(Number.isFinite(value)).toBe(true)
      expect(unit.length).toBeGreaterThan(0)
      expect(says.length).toBeGreaterThan(5)
    }
  })
})

describe('messages', () => {
  const findings = rules.flatMap((rule) =>
    rule.fires.flatMap(({ plan }) => checkText(plan).findings.filter((one) => one.rule === rule.id)),
  )

  it.each(findings.map((finding) => [finding.rule, finding] as const))(
    '%s: one sentence in lower case',
    (_, finding) => {
      expect(finding.message).toMatch(/^(\d|[a-z])/)
      expect(finding.message).not.toMatch(/[.!]$|\n|undefined|NaN|null|Infinity|\[object/)
      expect(finding.why).not.toMatch(/\.$|undefined|NaN|Infinity|\[object/)
      expect(finding.message).toMatch(ordinary)
      for (const { title, gives = '', costs = '' } of finding.advice)
        for (const text of [title, gives, costs]) {
          expect(text).not.toMatch(/\.$|\n|undefined|NaN|null|Infinity|\[object/)
          expect(text).toMatch(ordinary)
        }
    },
  )

  it('say camera-left and camera-right of edges and people', () => {
    const text = findings
      .filter((one) => ['frame-past-backdrop', 'group-uneven', 'subject-cropped'].includes(one.rule))
      .map((one) => one.message)
      .join('\n')
    expect(text).toMatch(/camera-left/)
    expect(text).not.toMatch(/(?<!camera-)\b(left|right)\b/)
  })

  it('word doubt first', () => {
    const doubtful = findings.filter((one) => one.certainty !== 'sure')
    expect(doubtful.length).toBeGreaterThan(0)
    for (const { message, certainty } of doubtful)
      expect(message.startsWith(certainty === 'probable' ? 'probably ' : 'perhaps ')).toBe(true)
  })

  it('carry figures with their unit', () => {
    for (const { measured } of findings)
      for (const { value, u, limit } of Object.values(measured)) {
        expect(Number.isFinite(value)).toBe(true)
        if (u !== undefined) expect(u).toBeGreaterThanOrEqual(0)
        if (limit !== undefined) expect(Number.isFinite(limit)).toBe(true)
      }
  })
})
