/** An object as a mirror: flat, round one way, or round every way, as large as the object is. */
import type { Subject } from '../language/plan.js'
import { capsuleAxes, endPoint } from './capsule.js'
import { face } from './facing.js'
import {
  type Axis,
  type Cylinder,
  type MirrorPlace,
  mirrorPlace,
  mirrorPlaceOnCylinder,
  type RoundMirror,
  roundMirror,
} from './mirror.js'
import type { Face, SceneFigure } from './scene.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from './vector.js'

export type SubjectMirror =
  | { readonly shape: 'plane'; readonly face: Face }
  | {
      readonly shape: 'cylinder' | 'ball'
      readonly middle: Vec3
      /** Of its lowest and its highest place, metres. */
      readonly from: number
      readonly to: number
      /** Where it shows to the eye what lies at a place; undefined where the thing itself stands between. */
      place(eye: Vec3, of: Vec3): MirrorPlace | undefined
      /** Where a line of sight (a unit vector) first meets it. */
      meets(eye: Vec3, sight: Vec3): MirrorPlace | undefined
      /** Where its surface, at the height of its middle, has turned by an angle from the eye, camera-right positive. */
      turned(eye: Vec3, angle: number): MirrorPlace
    }

export const subjectMirror = (
  figure: SceneFigure,
  subject: Pick<Subject, 'shape' | 'width' | 'height'>,
): SubjectMirror => {
  const { body, face: front, looks } = figure
  if (subject.shape === 'plane') {
    const middle: Vec3 = [front[0], front[1], (endPoint(body, 1)[2] + endPoint(body, -1)[2]) / 2]
    return { shape: 'plane', face: face('rectangle', middle, looks, subject.width, subject.height) }
  }
  const [low, high] = [endPoint(body, -1), endPoint(body, 1)]
  const middle = scale(add(low, high), 0.5)
  const { across, along, axis } = capsuleAxes(body)
  const section: readonly [Axis, Axis] = [
    { along: across, half: body.across },
    { along, half: body.along },
  ]
  const cylinder: Cylinder = { middle, section }
  const isBall = subject.shape === 'ball'
  const upright: Axis = { along: axis, half: subject.height / 2 }
  const ball = roundMirror(middle, [...section, upright])
  const ring: RoundMirror = roundMirror(middle, section)
  return {
    shape: isBall ? 'ball' : 'cylinder',
    middle,
    from: low[2],
    to: high[2],
    place: (eye, of) => (isBall ? mirrorPlace(ball, eye, of) : mirrorPlaceOnCylinder(cylinder, eye, of)),
    meets: (eye, sight) => {
      const met = meets(middle, isBall ? [...section, upright] : section, eye, sight)
      return met === undefined || met.at[2] < low[2] || met.at[2] > high[2] ? undefined : met
    },
    turned: (eye, angle) => {
      const toEye = subtract(eye, middle)
      const ahead = unit(subtract(toEye, scale(axis, dot(toEye, axis))), [0, -1, 0])
      const right = cross(axis, ahead)
      const normal = add(scale(ahead, Math.cos(angle)), scale(right, Math.sin(angle)))
      return { at: ring.at(normal), normal }
    },
  }
}

/** The root nearer to the eye of the quadric with these half axes; along an axis that is not named it has no end. */
const meets = (middle: Vec3, axes: readonly Axis[], eye: Vec3, sight: Vec3): MirrorPlace | undefined => {
  const start = subtract(eye, middle)
  const by = (p: Vec3, q: Vec3): number =>
    axes.reduce((sum, { along, half }) => sum + (dot(p, along) * dot(q, along)) / half ** 2, 0)
  const [a, b, c] = [by(sight, sight), by(start, sight), by(start, start) - 1]
  const square = b * b - a * c
  if (square < 0 || c < 0 || b > 0) return undefined
  const at = add(eye, scale(sight, (-b - Math.sqrt(square)) / a))
  const d = subtract(at, middle)
  const slope = axes.reduce<Vec3>(
    (sum, { along, half }) => add(sum, scale(along, dot(d, along) / half ** 2)),
    [0, 0, 0],
  )
  return { at, normal: unit(slope) }
}
