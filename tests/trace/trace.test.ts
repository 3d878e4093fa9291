/**
 * The program beside the brute-force tracer on all its sets: few places each, few paths, always the same ones. The full
 * run is `npm run trace`. The tracer tells its own standard error, and twice that is allowed on top of the bounds.
 */
import { describe, expect, it } from 'vitest'
import { bounds, compareSet } from './compare.js'
import { planOf, setNames } from './set.js'

const effort = { seed: 2, paths: 128, fewest: 8, most: 96, error: 0.01 }
const few = 16
/** A place that the tracer is less sure of than this, stops, tells nothing. */
const sure = 0.03

describe(`within ${bounds.point} stop at points and ${bounds.penumbra} in penumbra, down to ${bounds.underKey} under the key`, () => {
  it.each(setNames)('%s', (name) => {
    const { places } = compareSet(planOf(name), effort, few)
    const judged = places.filter(({ overKey, error }) => overKey >= -bounds.underKey && error <= sure)
    expect(judged.length).toBeGreaterThanOrEqual(few - 5)
    const beyond = judged.filter(({ off, bound, error }) => !(Math.abs(off) <= bound + 2 * error))
    const told = [...beyond, ...places.filter(({ glows }) => glows)].map(
      ({ place, off, error }) => `${place.name}: ${off.toFixed(3)} ± ${error.toFixed(3)}`,
    )
    expect(told).toEqual([])
  })
})
