/** Every rule's examples are its tests: what fires does, what passes is left in peace, the plans read without a mistake. */
import { describe, expect, it } from 'vitest'
import { ruleNamed, rules } from '../../src/rules/index.js'
import { checkText } from './check-text.js'

const told = ['plan-unreadable', 'unknown-name', 'duplicate-name']

describe.each(rules)('$id', (rule) => {
  it.each(rule.fires)('fires: $title', ({ plan }) => {
    const { findings, defects } = checkText(plan)
    const own = findings.filter((finding) => finding.rule === rule.id)
    expect(own.length).toBeGreaterThan(0)
    expect(defects).toEqual([])
    for (const finding of own) {
      expect(finding.family).toBe(rule.family)
      expect(finding.place.file).toBe('test.plan.yaml')
      expect(finding.basis).toBe(rule.basis)
    }
    // Nothing else is wrong with the text of an example.
    const mistakes = findings.filter((finding) => told.includes(finding.rule) && finding.rule !== rule.id)
    expect(mistakes.map((finding) => finding.message)).toEqual([])
  })

  it.each(rule.passes)('passes: $title', ({ plan }) => {
    const { findings, defects } = checkText(plan)
    expect(findings.filter((finding) => finding.rule === rule.id).map((one) => one.message)).toEqual([])
    expect(defects).toEqual([])
    expect(findings.filter((finding) => told.includes(finding.rule)).map((one) => one.message)).toEqual([])
  })

  it('reaches its highest level in one of them', () => {
    const levels = rule.fires.flatMap(({ plan }) =>
      checkText(plan)
        .findings.filter((finding) => finding.rule === rule.id)
        .map((finding) => finding.level),
    )
    expect(levels).toContain(rule.level)
  })
})

describe('the index', () => {
  it('holds the first sixteen and the plan family, each once', () => {
    const names = rules.map(({ id }) => id)
    expect(new Set(names).size).toBe(names.length)
    for (const name of [
      'backdrop-below-white',
      'backdrop-above-limit',
      'backdrop-uneven',
      'backdrop-off-tone',
      'backdrop-not-black',
      'frame-past-backdrop',
      'subject-cropped',
      'aperture-off-key',
      'group-uneven',
      'depth-short',
      'ambient-in-exposure',
      'shutter-beyond-sync',
      'trigger-margin',
      'power-beyond-range',
      'power-off-step',
      'unit-too-weak',
      'plan-unreadable',
      'unknown-name',
      'duplicate-name',
      'no-triangle',
      'value-unused',
      'nothing-wanted',
      'accept-unused',
      'accept-expired',
    ])
      expect(ruleNamed(name)?.id).toBe(name)
    expect(ruleNamed('__proto__')).toBeUndefined()
  })
})
