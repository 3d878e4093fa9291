import { describe, expect, it } from 'vitest'
import { hazeOf, wrapOf } from '../../src/rules/backdrop/wrap-estimate.js'
import type { Vec3 } from '../../src/scene/vector.js'
import { computeSet } from '../../src/set/compute-set.js'
import { makePlan, surface } from '../helpers/make-plan.js'

const setAt = (behind: number) =>
  computeSet(
    makePlan({ backdrop: { surface: surface('white paper', 0.9), width: 2.72, height: 2.5, behind } }),
  )

/** Cosine law summed over small squares of the paper: E = Σ L·cos·cos·dA/r², with L = ρE/π. */
const summed = (set: ReturnType<typeof setAt>, over: number): number => {
  const { backdrop, subject } = set.scene
  const face = subject.figures[0]!.face
  const at: Vec3 = [0.225, face[1], face[2]]
  const step = 0.02
  let sum = 0
  for (let x = backdrop!.left + step / 2; x < backdrop!.right; x += step)
    for (let z = backdrop!.bottom + step / 2; z < backdrop!.top; z += step) {
      const d: Vec3 = [x - at[0], backdrop!.y - at[1], z - at[2]]
      const r2 = d[0] ** 2 + d[1] ** 2 + d[2] ** 2
      const here = (d[0] + d[1]) * Math.SQRT1_2
      if (here > 0) sum += (here * d[1] * step * step) / (r2 * r2)
    }
  return Math.log2((0.9 * 2 ** over * sum) / Math.PI)
}

describe('wrap', () => {
  it.each([0.8, 1.2, 2, 3])('agrees with a sum over the paper, %f m off', (behind) => {
    const set = setAt(behind)
    expect(wrapOf(set, 0.7)).toBeCloseTo(summed(set, 0.7), 2)
  })

  // Levels that keep −1.5 stop at the outline, worked out once by an independent prototype.
  it.each([
    [1.2, -0.1],
    [1.5, 0.2],
    [2, 0.7],
    [2.4, 1.1],
  ])('%f m off, %f over the key wraps by about −1.5', (behind, over) => {
    expect(Math.abs(wrapOf(setAt(behind), over)! + 1.5)).toBeLessThan(0.2)
  })
})

describe('haze', () => {
  // Index 1.5 %, paper of 0.9 a stop over in 80 % of the frame: 1.06 stop on a black of 0.02.
  it('lifts a deep black by what the frame throws in', () => {
    expect(hazeOf(0.9 * 2 * 0.8)).toBeCloseTo(1.06, 2)
    expect(hazeOf(0)).toBe(0)
  })
})
