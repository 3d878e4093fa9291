/** What the frame cuts off what the wanted framing must hold. */
import { project } from '../../scene/camera-view.js'
import type { Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'

export type Side = 'left' | 'right' | 'top' | 'bottom'

/** Metres at the subject by which the corners of its box lie outside the frame; negative is room to spare. */
export const frameCuts = (set: ComputedSet): readonly { readonly side: Side; readonly cut: number }[] => {
  const { camera, subject } = set.scene
  const { min, max } = subject.bounds
  // Seen from the middle of the subject, so that a deep box is not judged by its nearest corner.
  const y = (min[1] + max[1]) / 2
  const corners: readonly Vec3[] = [
    [min[0], y, min[2]],
    [max[0], y, min[2]],
    [min[0], y, max[2]],
    [max[0], y, max[2]],
  ]
  const seen = corners.map((corner) => project(camera, corner))
  const most = (of: (at: { x: number; y: number; depth: number }) => number) => Math.max(...seen.map(of))
  const across = (depth: number) => Math.max(depth, 0) * camera.tanHalfWidth
  const upward = (depth: number) => Math.max(depth, 0) * camera.tanHalfHeight
  return [
    { side: 'left', cut: most(({ x, depth }) => (-x - 1) * across(depth)) },
    { side: 'right', cut: most(({ x, depth }) => (x - 1) * across(depth)) },
    { side: 'top', cut: most(({ y: up, depth }) => (up - 1) * upward(depth)) },
    { side: 'bottom', cut: most(({ y: up, depth }) => (-up - 1) * upward(depth)) },
  ]
}

/** The most that is cut at any edge; negative is the least room that is left. */
export const worstCut = (set: ComputedSet): number => Math.max(...frameCuts(set).map(({ cut }) => cut))
