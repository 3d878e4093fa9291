/**
 * How well the program knows what it says: true strengths drawn from the priors as the project's table states them
 * (`gear.ts`), readings with a meter's error, all from seeds. The table of `npm run calibration` is the long form.
 */
import { describe, expect, it } from 'vitest'
import { draws } from './draw.js'
import {
  disturbedSet,
  measureFalse,
  measureFaults,
  measureIntervals,
  plannedSet,
  riggedSet,
  type Stage,
} from './measure.js'
import { metersAlone, setOf } from './plan.js'
import { count } from './report.js'
import { sketches } from './sketches.js'

describe('the draws', () => {
  it('are normal: mean 0, standard deviation 1, one in twenty beyond two', () => {
    const draw = draws(5)
    const drawn = Array.from({ length: 20_000 }, () => draw.normal())
    const mean = drawn.reduce((sum, one) => sum + one, 0) / drawn.length
    const variance = drawn.reduce((sum, one) => sum + (one - mean) ** 2, 0) / drawn.length
    expect(Math.abs(mean)).toBeLessThan(0.03)
    expect(Math.abs(variance - 1)).toBeLessThan(0.04)
    // 4.55 % of a normal distribution lies beyond two standard deviations (any table).
    expect(drawn.filter((one) => Math.abs(one) > 2).length / drawn.length).toBeCloseTo(0.0455, 2)
  })
})

describe('a true set', () => {
  it('gives what its lights truly give, to a millionth, however they share gear', () => {
    const set = disturbedSet(sketches[8]!, draws(11))
    const truth = setOf(set.truth)
    const paper = metersAlone(set.sketch, set.settings)
    set.sketch.lights.forEach((light, i) => {
      const at = light.role === 'backdrop' ? 'backdrop' : light.role === 'rim' ? 'subject-back' : 'subject'
      const { reads } = truth.plan.readings[i]!.read as { reads: number }
      const given = truth.reading({ at, of: [light.name] })!.fNumber * Math.sqrt(100 / set.settings.iso)
      expect(given / reads).toBeCloseTo(1, 6)
      // The gear is off its rating, else nothing would be hidden.
      expect(Math.abs(2 * Math.log2(reads / paper[i]!))).toBeGreaterThan(1e-3)
    })
  })
})

describe('faults of over half a stop', () => {
  const shares = measureFaults(3, 2)
  const at = (stage: Stage): number => shares.all.get(stage)!.atLevel / count(shares.all.get(stage)!)

  it('are many enough to tell', () => {
    expect(count(shares.all.get('all')!)).toBeGreaterThan(30)
  })
  it('are told at their level where every light was read, and none is missed', () => {
    expect(at('all')).toBeGreaterThanOrEqual(0.95)
    expect(shares.all.get('all')!.missed).toBe(0)
  })
  it('are told the better the more was read', () => {
    expect(at('none')).toBeGreaterThan(0.55)
    expect(at('key')).toBeGreaterThan(at('none'))
    expect(at('all')).toBeGreaterThanOrEqual(at('key'))
  })
  it('are not missed without readings where the plan shows them on paper', () => {
    const onPaper = shares.onPaper.get('none')!
    expect(onPaper.atLevel / count(onPaper)).toBeGreaterThanOrEqual(0.8)
    expect(onPaper.missed).toBe(0)
  })
})

/** With one or two lights a draw is sound often enough. */
const single = sketches.filter(({ lights }) => lights.length <= 2 && !lights.some(({ meters }) => meters))

describe('sound sets', () => {
  it.each([
    ['right on paper too', plannedSet],
    ['rigged by meter, then written down', riggedSet],
  ])('%s get hardly a false warning', (_, drawOne) => {
    const found = measureFalse(4, 10, drawOne, single)
    expect(found.sets).toBe(10)
    expect(found.byStage.get('none')).toBeLessThanOrEqual(2)
    expect(found.byStage.get('all')).toBeLessThanOrEqual(1)
  })
})

describe('the uncertainty that is told', () => {
  it('holds the truth as often as it says: about two in three within u, 19 in 20 within 2u', () => {
    for (const { figures, one, two } of measureIntervals(6, 2).values()) {
      expect(one / figures).toBeGreaterThan(0.55)
      expect(two / figures).toBeGreaterThan(0.9)
      // No wider than it need be: not all within one u.
      expect(one / figures).toBeLessThan(0.92)
    }
  })
})
