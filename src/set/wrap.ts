/**
 * Wrap: what the lit backdrop throws back round the subject's outline. At each edge of a figure as the camera sees it,
 * at the height of its face, a surface that has turned 45° past that edge toward the backdrop; what it receives last
 * from the backdrop (its sweep counted), against the key.
 */
import { difference } from '../light/figure.js'
import type { Receptor } from '../light/receptor.js'
import { inFrame } from '../scene/camera-view.js'
import type { SurfacePoint } from '../scene/capsule.js'
import { edges } from '../scene/points.js'
import { add, scale, unit, type Vec3 } from '../scene/vector.js'
import type { ComputedSet } from './computed-set.js'
import type { WrapSide } from './wrap-and-haze.js'

/**
 * Left and right of every figure whose edge lies in frame. Empty without a key reading, and where nothing comes from the
 * backdrop.
 */
export const wrapSides = (set: ComputedSet): readonly WrapSide[] => {
  const { key, scene } = set
  if (key === undefined || scene.backdrop === undefined) return []
  return scene.subject.figures.flatMap((figure) =>
    edges(figure, scene.camera).flatMap((edge, i): WrapSide[] => {
      if (!inFrame(scene.camera, edge.at)) return []
      const receptor = pastEdge(edge)
      const got = set.exposure(receptor, 'all', ['backdrop'])
      return got === undefined
        ? []
        : [
            {
              figure: figure.name,
              side: i === 0 ? 'camera-left' : 'camera-right',
              receptor,
              reKey: difference(got.figure, key.figure),
              byLight: got.byLight,
            },
          ]
    }),
  )
}

/** Skin there is a flat receptor; it lies on its own figure, which hides what is behind its plane and no more. */
const pastEdge = ({ at, normal }: SurfacePoint): Receptor => {
  const turned = past(normal)
  return { at, normal: turned, kind: 'flat', against: turned }
}

/** Halfway between the outline's normal and the direction to the backdrop that is square to it. */
const past = (normal: Vec3): Vec3 => {
  const toBackdrop = unit(add([0, 1, 0], scale(normal, -normal[1])), [0, 1, 0])
  return unit(add(normal, toBackdrop), toBackdrop)
}
