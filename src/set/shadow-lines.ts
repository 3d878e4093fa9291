/** The lines on which a figure's shadow is sought: across the frame to either side of it, and up above its head. */
import { span } from '../scene/backdrop.js'
import { project } from '../scene/camera-view.js'
import { capsuleAxes } from '../scene/capsule.js'
import { figureSpan } from '../scene/figure-span.js'
import type { SceneCamera, SceneFigure } from '../scene/scene.js'
import type { ShadowReach } from '../scene/shadow-reach.js'
import { add, scale, type Vec3 } from '../scene/vector.js'
import type { FieldPlace, PictureField } from './picture-field.js'
import type { ShadowSide } from './shadow-seen.js'

/** A light, and what of the frame its shadow of one figure may reach. */
export interface Cast {
  readonly light: string
  readonly reach: ShadowReach
}

/** One line across or up the frame that goes outward past a figure's outline. Lengths are shares of the frame's short side. */
export interface Line {
  readonly side: ShadowSide
  /** So far beyond the outline. */
  place(s: number): FieldPlace
  /** As far on the other side; undefined above the head. */
  other?(s: number): FieldPlace
  /**
   * By light whose shadow lies farther out than the outline: how far beyond it the light's middle is hidden, and how far
   * any of the light. On all other sides a shadow is shallower than on the one opposite.
   */
  readonly casts: ReadonlyMap<string, { readonly moved: number; readonly end: number }>
  /** The figure's own width on this line. */
  readonly thick: number
}

const lines = { across: 7, up: 3 }
/** A middle hidden no farther out than this is on the camera's axis. */
const onAxis = 0.002

export const linesPast = (
  field: PictureField,
  figure: SceneFigure,
  camera: SceneCamera,
  casts: readonly Cast[],
): readonly Line[] => {
  const head = figure.head ?? figure.body
  const { x: middle, y: level } = project(camera, scale(add(head.from, head.to), 0.5))
  const tall = figureSpan(figure, camera, 'up', middle)
  const wide = figureSpan(figure, camera, 'across', level)
  const lineAt = lineMaker(field, figure, camera, casts)
  return [
    ...(tall === undefined ? [] : levels(figure, camera, tall)).flatMap((y) => lineAt('across', y)),
    ...(wide === undefined ? [] : even(lines.up, ...wide)).flatMap((x) => lineAt('up', x)),
  ].filter((line) => line.casts.size > 0)
}

const even = (count: number, low: number, high: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => low + ((i + 0.5) / count) * (high - low))

/**
 * Of someone upright through head and body, but not the corner between them, which is our figure's and not the person's;
 * else evenly.
 */
const levels = (
  { head, body }: SceneFigure,
  camera: SceneCamera,
  [foot, top]: readonly [number, number],
): readonly number[] => {
  const height = (at: Vec3) => project(camera, at).y
  const low = Math.max(-1, foot)
  if (head === undefined || Math.abs(capsuleAxes(body).axis[2]) < 0.9)
    return even(lines.across, low, Math.min(1, top))
  return [
    ...[head.to, scale(add(head.from, head.to), 0.5), head.from].map(height),
    ...even(lines.across - 3, low, Math.max(low, height(body.to))),
  ]
}

const lineMaker =
  (field: PictureField, figure: SceneFigure, camera: SceneCamera, casts: readonly Cast[]) =>
  (way: 'across' | 'up', fixed: number): readonly Line[] => {
    const own = Math.abs(fixed) < 1 ? figureSpan(figure, camera, way, fixed) : undefined
    if (own === undefined) return []
    const short = Math.min(camera.tanHalfWidth, camera.tanHalfHeight)
    const unit = (2 * short) / (way === 'across' ? camera.tanHalfWidth : camera.tanHalfHeight)
    const place = remembered((at) => (way === 'across' ? field.place(at, fixed) : field.place(fixed, at)))
    return (way === 'across' ? ([-1, 1] as const) : ([1] as const)).flatMap((sign): readonly Line[] => {
      const [edge, opposite] = sign < 0 ? own : [own[1], own[0]]
      if (sign * edge >= 1) return []
      /** How far an outline reaches beyond the figure's own on this side. */
      const beyond = (ends: readonly [number, number] | undefined): number =>
        ends === undefined
          ? Number.NEGATIVE_INFINITY
          : (Math.min(1, sign * ends[sign < 0 ? 0 : 1]) - sign * edge) / unit
      return [
        {
          side: way === 'up' ? 'above' : sign < 0 ? 'camera-left' : 'camera-right',
          place: (s) => place(edge + sign * s * unit),
          ...(way === 'up' ? {} : { other: (s: number) => place(opposite - sign * s * unit) }),
          casts: new Map(
            casts.flatMap(({ light, reach }) => {
              const moved = Math.max(...reach.cores.map((core) => beyond(span(core, way, fixed))))
              if (moved <= onAxis) return []
              const end = beyond(span(reach.all(), way, fixed))
              return [[light, { moved, end: Math.max(moved, end) }] as const]
            }),
          ),
          thick: (own[1] - own[0]) / unit,
        },
      ]
    })
  }

const remembered = (make: (value: number) => FieldPlace): ((value: number) => FieldPlace) => {
  const known = new Map<number, FieldPlace>()
  return (value) => {
    let made = known.get(value)
    if (made === undefined) {
      made = make(value)
      known.set(value, made)
    }
    return made
  }
}
