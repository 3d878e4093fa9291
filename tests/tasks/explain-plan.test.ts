/** What was understood of a plan is told in one line each. */
import { describe, expect, it } from 'vitest'
import { explainPlan } from '../../src/tasks/explain-plan.js'
import { leastWith, planOf } from '../language/reading.js'

const gelRow = (gel: string) =>
  explainPlan(planOf(leastWith({ key: `  key: { unit: flashgun, at: camera, gel: ${gel} }` })))
    .flatMap(({ rows }) => rows)
    .find(({ name }) => name === 'gel')

describe('a gel', () => {
  it('is told by what it was taken to do, and by its name where it has one', () => {
    expect(gelRow('full CTO')?.value).toBe('full CTO, +159 mired, 2/3 stop of loss')
    expect(gelRow('[1/2 CTO, 1/4 plus-green]')?.value).toMatch(
      /^1\/2 CTO and 1\/4 plus-green, \+109 mired, duv \+0\.005, /,
    )
    expect(gelRow('{ shift: -80 mired, loss: 1 stop }')?.value).toBe('-80 mired, 1 stop of loss')
  })
})
