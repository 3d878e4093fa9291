/**
 * Shadows of the subject that show in the picture. At a silhouette's edge half of a front is always hidden, so that even
 * a light on the camera's axis leaves a soft halo on both sides alike. A shadow shows where a band of the backdrop next
 * to the figure records darker than the same place would without the figure, by a third of a stop and by six L*, on one
 * side more than on the other, over more than 2 % of the frame's short side. What records as white is white.
 */
import type { SceneFigure } from '../scene/scene.js'
import { type CastsFrom, castsFromFace, castsFromSun, shadowReach } from '../scene/shadow-reach.js'
import type { ComputedSet } from './computed-set.js'
import { pictureField } from './picture-field.js'
import { type Cast, linesPast } from './shadow-lines.js'
import { alike, leastShare, promiseOf, shadowOnLine, type Thrown } from './shadow-on-line.js'
import type { ShadowSeen, ShadowSide } from './shadow-seen.js'

/**
 * @param perLuxSecond recorded linear value of a perfect reflector per lx·s on it
 * @param filled false: in the light that comes straight from the lights alone, in which shadows are at their deepest
 */
export const shadowsOf = (set: ComputedSet, perLuxSecond: number, filled = true): readonly ShadowSeen[] => {
  const { scene, plan } = set
  const { backdrop, camera } = scene
  if (backdrop === undefined || plan.backdrop?.sky !== undefined) return []
  const lights = lightsThatMatter(set)
  if (lights.length === 0) return []
  const field = pictureField(set, perLuxSecond)
  const floors = plan.wanted.floor === 'white' || plan.places.stated('/wanted/shadow')
  return scene.subject.figures.flatMap((figure) => {
    const casts = lights.flatMap((light): Cast[] => {
      const from = castsFrom(set, light, figure)
      return from === undefined ? [] : [{ light, reach: shadowReach(figure, from, backdrop, camera, floors) }]
    })
    return ofFigure({ set, field, figure, floors, filled }, casts)
  })
}

const castsFrom = (set: ComputedSet, light: string, { face }: SceneFigure): CastsFrom | undefined => {
  const source = set.source(light)
  return source?.kind === 'area'
    ? castsFromFace(source.face)
    : source?.kind === 'parallel'
      ? castsFromSun(source.toward, face)
      : undefined
}

/** Those that give enough of the light somewhere on the backdrop in frame. A modelling lamp's shadow is its flash's. */
const lightsThatMatter = ({ backdropView, lit }: ComputedSet): readonly string[] => {
  const enough = new Set<string>()
  for (const { overCamera } of backdropView?.samples ?? [])
    for (const [light, share] of overCamera.gradient) if (share >= leastShare) enough.add(light)
  return lit.map(({ name }) => name).filter((light) => enough.has(light))
}

/** Lines on one side of which one light's shadow is looked at closely. */
const closely = 2
/** Stops at a glance under which no shadow shows anywhere on a line. */
const worthALook = -0.2

const ofFigure = (of: Omit<Thrown, 'light'>, casts: readonly Cast[]): readonly ShadowSeen[] => {
  const lines = linesPast(of.field, of.figure, of.set.scene.camera, casts)
  return casts.flatMap(({ light }) => {
    const thrown = { ...of, light }
    return sides.flatMap((side) => {
      const found = lines
        .filter((line) => line.side === side && line.casts.has(light))
        .map((line) => ({ line, promise: promiseOf(thrown, line) }))
        .filter(({ promise }) => promise > worthALook)
        .sort((a, b) => (Math.abs(b.promise - a.promise) < alike ? 0 : b.promise - a.promise))
        .slice(0, closely)
        .flatMap(({ line }) => shadowOnLine(thrown, line) ?? [])
      return found.length === 0
        ? []
        : [found.reduce((most, one) => (one.margin > most.margin + alike ? one : most))]
    })
  })
}

const sides: readonly ShadowSide[] = ['camera-left', 'camera-right', 'above']
