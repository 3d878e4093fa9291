/** What the frame goes past, by triangles worked by hand: a camera at 3 m, backdrop 2 m behind, the field 5 m off. */
import { describe, expect, it } from 'vitest'
import { backdropMargins } from '../../src/picture/backdrop-in-frame.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { makePlan, type PlanOverrides } from '../helpers/make-plan.js'

/**
 * 36 mm lens on a sensor of 36 × 24 mm, horizontal, focused so far off that the extension is a thousandth: at 5 m the
 * field is 5 m wide and 3.33 m high.
 */
const plan = (more: PlanOverrides = {}) =>
  makePlan({
    ...more,
    camera: {
      lens: 0.036,
      frame: 'horizontal',
      at: { distance: 3, height: 1.2, right: 0 },
      focus: { on: 'distance', distance: 100 },
      ...more.camera,
    },
    backdrop: { behind: 2, width: 2.72, height: 2.8, ...(more.backdrop as object) },
  })
const margins = (more?: PlanOverrides) => backdropMargins(buildScene(plan(more)))!

describe('margins past the backdrop', () => {
  it('counts metres past each side, and paper to spare as negative', () => {
    const { left, right, top, bottom, floor } = margins()
    expect(left).toBeCloseTo(2.5 - 1.36, 2)
    expect(right).toBeCloseTo(2.5 - 1.36, 2)
    expect(top).toBeCloseTo(1.2 + 5 / 3 - 2.8, 2)
    expect(bottom).toBeCloseTo(5 / 3 - 1.2, 2)
    // The lower edge of the frame falls 1 m in 3 m: from 1.2 m it meets the floor 3.6 m before the camera.
    expect(floor!.nearest).toBeCloseTo(0.6, 2)
    expect(floor!.covered).toBe(false)
  })

  it('a camera moved to the right sees more past the right edge, as much less past the left', () => {
    const aside = margins({ camera: { at: { distance: 3, height: 1.2, right: 0.4 } } })
    expect(aside.right - margins().right).toBeCloseTo(0.4, 6)
    expect(aside.left - margins().left).toBeCloseTo(-0.4, 6)
  })

  it('a sweep counts along the floor: covered when it comes forward past what the frame sees', () => {
    const short = margins({ backdrop: { sweep: { front: -1 } } })
    expect(short.bottom).toBeCloseTo(1 - 0.6, 2)
    expect(short.floor!.covered).toBe(false)
    const long = margins({ backdrop: { sweep: { front: 0.5 } } })
    expect(long.bottom).toBeCloseTo(-0.5 - 0.6, 2)
    expect(long.floor!.covered).toBe(true)
  })

  it('a tight frame sees no floor and has paper to spare all round', () => {
    const tight = margins({ camera: { lens: 0.2 } })
    expect(tight.floor).toBeUndefined()
    expect(Math.max(tight.left, tight.right, tight.top, tight.bottom)).toBeLessThan(0)
  })

  it('has nothing to say without a backdrop, or with the camera turned from it', () => {
    expect(backdropMargins(buildScene(makePlan({ backdrop: 'none' })))).toBeUndefined()
    const behind = makePlan({ camera: { at: { distance: -2.5, height: 1.2, right: 0 } } })
    expect(backdropMargins(buildScene(behind))).toBeUndefined()
  })
})
