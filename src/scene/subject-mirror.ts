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

export type SubjectMirror = { readonly shape: 'plane'; readonly face: Face } | RoundSubjectMirror

export interface RoundSubjectMirror {
  readonly shape: 'cylinder' | 'ball'
  readonly middle: Vec3
  /** Of its lowest and its highest place, metres. */
  readonly from: number
  readonly to: number
  /** Where its surface has a given outward normal; on a cylinder at the height of its middle. */
  at(normal: Vec3): Vec3
  /** Where it shows to the eye what lies at a place; undefined where the thing itself stands between. */
  place(eye: Vec3, of: Vec3): MirrorPlace | undefined
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
    at: (normal) => (isBall ? ball : ring).at(normal),
    place: (eye, of) => (isBall ? mirrorPlace(ball, eye, of) : mirrorPlaceOnCylinder(cylinder, eye, of)),
    turned: (eye, angle) => {
      const toEye = subtract(eye, middle)
      const ahead = unit(subtract(toEye, scale(axis, dot(toEye, axis))), [0, -1, 0])
      const right = cross(axis, ahead)
      const normal = add(scale(ahead, Math.cos(angle)), scale(right, Math.sin(angle)))
      return { at: ring.at(normal), normal }
    },
  }
}
