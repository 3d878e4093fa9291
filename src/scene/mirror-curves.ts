/**
 * A round thing as the eye sees it, as curves beside each other: of a cylinder its upright lines from its left edge to
 * its right one, of a ball the arcs from its middle out to its edge. What its mirror shows of a flat convex thing is one
 * stretch of each.
 */
import type { MirrorPlace } from './mirror.js'
import type { RoundSubjectMirror } from './subject-mirror.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from './vector.js'

export interface MirrorCurve {
  readonly from: number
  readonly to: number
  at(along: number): MirrorPlace
}

export interface MirrorCurves {
  /** Radians. Round the line of sight camera-right of upright on a ball; round the axis, camera-right of the eye, on a cylinder. */
  readonly from: number
  readonly to: number
  /** The last curve is the first. */
  readonly closed: boolean
  curve(angle: number): MirrorCurve
  /** Of the curve on which the normal lies. */
  angleOf(normal: Vec3): number
}

export const mirrorCurves = (mirror: RoundSubjectMirror, eye: Vec3): MirrorCurves =>
  mirror.shape === 'ball' ? arcs(mirror, eye) : uprights(mirror, eye)

/** Radians by which the normal may turn until the surface no longer looks at the eye. */
const edgeOf = (eye: Vec3, at: (angle: number) => MirrorPlace): number => {
  let [sees, not] = [0, Math.PI / 2]
  for (let round = 0; round < 40; round++) {
    const half = (sees + not) / 2
    const place = at(half)
    if (dot(place.normal, subtract(eye, place.at)) > 0) sees = half
    else not = half
  }
  return sees
}

/** The last places that the eye sees at the height of its middle, camera-left and camera-right. */
export const edgePlaces = (mirror: RoundSubjectMirror, eye: Vec3): readonly [MirrorPlace, MirrorPlace] => {
  const { turned } = mirror
  return [
    turned(eye, -edgeOf(eye, (angle) => turned(eye, -angle))),
    turned(
      eye,
      edgeOf(eye, (angle) => turned(eye, angle)),
    ),
  ]
}

const uprights = (mirror: RoundSubjectMirror, eye: Vec3): MirrorCurves => {
  const ahead = mirror.turned(eye, 0).normal
  const right = mirror.turned(eye, Math.PI / 2).normal
  return {
    from: -edgeOf(eye, (angle) => mirror.turned(eye, -angle)),
    to: edgeOf(eye, (angle) => mirror.turned(eye, angle)),
    closed: false,
    curve: (angle) => {
      const {
        at: [x, y],
        normal,
      } = mirror.turned(eye, angle)
      return { from: mirror.from, to: mirror.to, at: (height) => ({ at: [x, y, height], normal }) }
    },
    angleOf: (normal) => Math.atan2(dot(normal, right), dot(normal, ahead)),
  }
}

const arcs = (mirror: RoundSubjectMirror, eye: Vec3): MirrorCurves => {
  const ahead = unit(subtract(eye, mirror.middle))
  const right = unit(cross([0, 0, 1], ahead), [1, 0, 0])
  const up = cross(ahead, right)
  return {
    from: -Math.PI,
    to: Math.PI,
    closed: true,
    curve: (angle) => {
      const out = add(scale(up, Math.cos(angle)), scale(right, Math.sin(angle)))
      const at = (turned: number): MirrorPlace => {
        const normal = add(scale(ahead, Math.cos(turned)), scale(out, Math.sin(turned)))
        return { at: mirror.at(normal), normal }
      }
      return { from: 0, to: edgeOf(eye, at), at }
    },
    angleOf: (normal) => Math.atan2(dot(normal, right), dot(normal, up)),
  }
}
