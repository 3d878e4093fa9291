/** The shape of a front on its own plane: corners, area, and the dark middle of a ring. */
import type { Face } from '../scene/scene.js'
import { dot, subtract, type Vec3 } from '../scene/vector.js'
import { polygonSolidAngle } from './polygon.js'

/** Even in all four quarters, so that mirrored sets give mirrored figures. Of equal area it is within 0.05 % of a disc. */
const discSides = 32

/** The deflector of a beauty dish, against its rim. Common practice, no source. */
const ringHole = 0.3

export interface Outline {
  readonly corners: readonly number[]
  readonly area: number
  readonly hole: number
}

/**
 * Corners as `AreaSource.outline` wants them. An octagon's size is from tip to tip of its ribs, as umbrellas are sold;
 * a disc or ring of unlike width and height is an ellipse.
 */
export const outlineOf = (face: Pick<Face, 'outline' | 'width' | 'height'>): Outline => {
  const a = face.width / 2
  const b = face.height / 2
  switch (face.outline) {
    case 'rectangle':
      return { corners: [-a, -b, a, -b, a, b, -a, b], area: 4 * a * b, hole: 0 }
    case 'octagon':
      return { corners: around(8, a, b), area: 2 * Math.SQRT2 * a * b, hole: 0 }
    case 'disc':
    case 'ring': {
      const hole = face.outline === 'ring' ? ringHole : 0
      const turn = (2 * Math.PI) / discSides
      const widened = Math.sqrt(turn / Math.sin(turn))
      return {
        corners: around(discSides, a * widened, b * widened),
        area: Math.PI * a * b * (1 - hole * hole),
        hole,
      }
    }
  }
}

/** Corners half a step off the axes. */
const around = (count: number, a: number, b: number): number[] => {
  const corners: number[] = []
  for (let i = 0; i < count; i++) {
    const angle = ((i + 0.5) * 2 * Math.PI) / count
    corners.push(a * Math.cos(angle), b * Math.sin(angle))
  }
  return corners
}

/** The corners in space. */
export const inSpace = (face: Face, corners: readonly number[]): readonly Vec3[] => {
  const points: Vec3[] = []
  for (let i = 0; i < corners.length; i += 2) {
    const u = corners[i]!
    const v = corners[i + 1]!
    points.push([
      face.centre[0] + u * face.across[0] + v * face.up[0],
      face.centre[1] + u * face.across[1] + v * face.up[1],
      face.centre[2] + u * face.across[2] + v * face.up[2],
    ])
  }
  return points
}

/** Corners of a ring's dark middle; a point where there is none. */
export const holeOf = ({
  outline,
  hole,
}: {
  readonly outline: readonly number[]
  readonly hole: number
}): readonly number[] => outline.map((one) => one * hole)

/** Of a front from a place on either side of it, steradians. */
export const solidAngleOf = (face: Face, from: Vec3): number => {
  const d = subtract(from, face.centre)
  return polygonSolidAngle(
    outlineOf(face).corners,
    dot(d, face.across),
    dot(d, face.up),
    Math.abs(dot(d, face.normal)),
  )
}
