/** Whatever a plan holds, checking it ends, with findings that point into its text. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type CheckedPlan, checkPlan } from '../../src/index.js'
import { look } from '../../src/reports/look.js'
import { text as textReport } from '../../src/reports/text.js'
import { runOf } from '../../src/tasks/check.js'
import { planText } from '../bench/plan-texts.js'
import { mutate, mutation } from './mutations.js'

const recipes = join(import.meta.dirname, '../../examples/recipes')
const seeds = [
  ...Array.from({ length: 30 }, (_, number) => planText(number)),
  ...readdirSync(recipes)
    .filter((name) => name.endsWith('.plan.yaml'))
    .map((name) => readFileSync(join(recipes, name), 'utf8').replace(/^(base|kit|room): \.\..*\n/gm, '')),
]

/** Longer than any plan may take on any machine: what takes this long hangs. */
const hangs = 40_000

const expectSound = (checked: CheckedPlan): void => {
  for (const finding of checked.findings) {
    for (const place of [finding.place, ...finding.also]) {
      const text = checked.texts.get(place.file)
      expect(text, place.file).toBeDefined()
      expect(place.start).toBeGreaterThanOrEqual(0)
      expect(place.end).toBeGreaterThanOrEqual(place.start)
      expect(place.end).toBeLessThanOrEqual(text!.length)
      // Counted another way than by the index of lines: a byte-order mark is no column.
      const before = text!.slice(0, place.start).split('\n')
      expect(place.line).toBe(before.length)
      expect(place.column).toBe(before.at(-1)!.replace(/^\uFEFF/, '').length + 1)
    }
    // Advice is solved when it is read, so it is read here.
    const advice = finding.advice.flatMap(({ title, gives, costs }) => [title, gives ?? '', costs ?? ''])
    for (const words of [finding.message, finding.why, ...advice])
      expect(words).not.toMatch(/NaN|Infinity|undefined|\[object/)
  }
  expect(checked.defects ?? []).toEqual([])
}

describe('checkPlan', () => {
  it(
    'ends for mutated plans, and points into the text',
    () => {
      fc.assert(
        fc.property(
          fc.constantFrom(...seeds),
          fc.array(mutation, { minLength: 1, maxLength: 4 }),
          (seed, mutations) => {
            const checked = checkPlan(mutate(seed, mutations))
            expectSound(checked)
            const report = textReport(runOf([checked]), look())
            expect(report).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/)
          },
        ),
        { seed: 20250801, numRuns: 600, interruptAfterTimeLimit: hangs * 3, markInterruptAsFailure: true },
      )
    },
    hangs * 4,
  )

  it('ends for texts that are no plans at all', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.json()), (text) => {
        const checked = checkPlan(text)
        expect(checked.findings.some(({ level }) => level === 'error')).toBe(true)
        expectSound(checked)
      }),
      { seed: 20250802, numRuns: 300 },
    )
  })
})
