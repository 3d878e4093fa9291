/**
 * Haze: how bright the field is that throws its light into the lens, and how far that lifts a deep black. The frame is
 * looked at over a fixed grid; so is what surrounds it within 30°, where each direction counts less the farther off it
 * lies (`picture/glare`). Matte things count by the light that falls on them, figures with the subject's reflectance;
 * lights whose light reaches the lens count by what they give there.
 */
import type { Figure } from '../light/figure.js'
import { uncertainties } from '../light/how-sure.js'
import type { Receptor } from '../light/receptor.js'
import {
  deepBlack,
  fieldMean,
  glareIndex,
  glareIndexU,
  surroundReach,
  surroundShare,
  surroundWeight,
  veilLift,
} from '../picture/glare.js'
import { beyondFrame } from '../scene/camera-view.js'
import { firstHit, type Hit } from '../scene/first-hit.js'
import type { SceneCamera } from '../scene/scene.js'
import { add, distance, dot, scale, subtract, unit, type Vec3 } from '../scene/vector.js'
import type { BackdropSample } from './backdrop-view.js'
import type { ComputedSet } from './computed-set.js'
import type { Haze } from './wrap-and-haze.js'

/** Cells across and up the frame, and the frame with its surround. */
const frameCells = 8
const surroundCells = 10
/** Edge of the cells, metres, within which a surface is taken as evenly lit: in frame, and outside where it counts less. */
const evenly = { frame: 0.75, surround: 2 }
/** Beyond this no lens looks: tangents stay finite. */
const widest = (80 * Math.PI) / 180

/**
 * @param perLuxSecond recorded linear value of a perfect reflector per lx·s on it
 * @returns undefined where no light is known
 */
export const hazeOf = (set: ComputedSet, perLuxSecond: number): Haze | undefined => {
  if (set.lit.length === 0 && set.plan.ambient === undefined) return undefined
  const { camera } = set.scene
  const rays = [...frameRays(camera), ...surroundRays(camera)]
  const seen = patches(set, rays)
  const sums = { frame: 0, surround: 0, backdropOutside: 0 }
  const byLight = new Map<string, number>()
  const count = (light: string | undefined, linear: number, { frame, surround }: Share) => {
    sums.frame += frame * linear
    sums.surround += surround * linear
    if (light !== undefined)
      byLight.set(light, (byLight.get(light) ?? 0) + linear * fieldMean(frame, surround))
  }
  for (const { hit, share, sky } of seen) {
    if (sky !== undefined) count(undefined, sky, share)
    const reflectance = hit === undefined ? 0 : reflectanceOf(set, hit)
    const got = reflectance > 0 ? set.exposure(receptorAt(hit!), 'all') : undefined
    for (const [light, luxSeconds] of got?.byLight ?? [])
      count(light, reflectance * luxSeconds * perLuxSecond, share)
    if (hit?.on === 'backdrop' || hit?.on === 'sweep')
      sums.backdropOutside +=
        surroundShare * share.surround * reflectance * (got?.luxSeconds ?? 0) * perLuxSecond
  }
  const whole = rays.reduce((sum, ray) => sum + ray.weight, 0)
  for (const { name } of set.lit) {
    const given = atLens(set, name)
    // A front of luminance L is as bright as a perfect reflector under πL.
    if (given !== undefined)
      count(name, Math.PI * given.luxSeconds * perLuxSecond, weightOf(camera, given, whole))
  }
  const mean = fieldMean(sums.frame, sums.surround)
  return { ...sums, mean, byLight, lift: liftFigure(mean, byLight) }
}

/** What a direction counts for in the mean of the frame, and in that of the surround. */
interface Share {
  readonly frame: number
  readonly surround: number
}

interface Ray {
  readonly direction: Vec3
  readonly share: Share
  /** Outside the frame: weight times solid angle. */
  readonly weight: number
}

const direction = ({ forward, right, up }: SceneCamera, a: number, b: number): Vec3 =>
  add(forward, add(scale(right, a), scale(up, b)))

/** Middles of the cells from −1 to 1. */
const middles = (count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => (2 * i + 1) / count - 1)

/** From the middle outward: of two places that are as good, both sides of the picture then take the inner one. */
const middlesOut = (count: number): readonly number[] =>
  [...middles(count)].sort((a, b) => Math.abs(a) - Math.abs(b))

const frameRays = (camera: SceneCamera): readonly Ray[] =>
  middles(frameCells).flatMap((y) =>
    middlesOut(frameCells).map((x) => ({
      direction: direction(camera, x * camera.tanHalfWidth, y * camera.tanHalfHeight),
      share: { frame: 1 / frameCells ** 2, surround: 0 },
      weight: 0,
    })),
  )

/** Even in angle across and up. */
const surroundRays = (camera: SceneCamera): readonly Ray[] => {
  const reach = (half: number) => Math.min(widest, Math.atan(half) + surroundReach)
  const [wide, high] = [reach(camera.tanHalfWidth), reach(camera.tanHalfHeight)]
  const rays = middles(surroundCells).flatMap((y) =>
    middlesOut(surroundCells).flatMap((x) => {
      const [a, b] = [Math.tan(x * wide), Math.tan(y * high)]
      const toward = direction(camera, a, b)
      const beyond = beyondFrame(camera, toward)
      const solidAngle = ((1 + a * a) * (1 + b * b)) / (1 + a * a + b * b) ** 1.5
      const weight = beyond > 0 ? surroundWeight(beyond) * solidAngle * wide * high * cell : 0
      return weight > 0 ? [{ direction: toward, weight }] : []
    }),
  )
  const whole = rays.reduce((sum, ray) => sum + ray.weight, 0)
  return rays.map(({ direction, weight }) => ({
    direction,
    share: { frame: 0, surround: weight / whole },
    weight,
  }))
}
/** Of a range from −1 to 1 in both directions. */
const cell = (2 / surroundCells) ** 2

interface Patch {
  readonly hit: Hit | undefined
  /** Linear value of the sky, where nothing else is met. */
  readonly sky: number | undefined
  readonly share: Share
}

/**
 * Rays that meet the same part of the same thing are metered once, at the middle one of them; on the backdrop in frame at
 * the nearest of the places that are metered anyway.
 */
const patches = (set: ComputedSet, rays: readonly Ray[]): readonly Patch[] => {
  const { scene, plan, backdropView: view } = set
  const except = new Set(['operator', ...scene.lights.keys()])
  const sky = plan.backdrop?.sky === undefined ? undefined : view?.middle.linear
  const groups = new Map<string, { readonly hits: (Hit | undefined)[]; frame: number; surround: number }>()
  for (const { direction: toward, share } of rays) {
    const met = firstHit(scene, scene.camera.eye, toward, except)
    const inside = share.frame > 0
    const known = inside && met?.on === 'backdrop' ? nearest(view?.samples ?? [], met.at) : undefined
    const hit = met !== undefined && known !== undefined ? hitAt(met, known) : met
    const key =
      hit === undefined ? '' : known !== undefined ? known.join(' ') : partOf(hit, scene.camera, inside)
    const group = groups.get(key) ?? { hits: [], frame: 0, surround: 0 }
    groups.set(key, group)
    group.hits.push(hit)
    group.frame += share.frame
    group.surround += share.surround
  }
  return [...groups.values()].map(({ hits, frame, surround }) => {
    const hit = middleOf(hits)
    return { hit, sky: hit === undefined ? sky : undefined, share: { frame, surround } }
  })
}

/** On something flat the middle of all; on a figure the one nearest to it. Mirrored rays give the mirrored place. */
const middleOf = (hits: readonly (Hit | undefined)[]): Hit | undefined => {
  const first = hits[0]
  if (first === undefined) return undefined
  const all = hits as readonly Hit[]
  const at = scale(
    all.reduce<Vec3>((sum, one) => add(sum, one.at), [0, 0, 0]),
    1 / all.length,
  )
  return first.on === 'figure'
    ? all.reduce((best, one) => (distance(one.at, at) < distance(best.at, at) - 1e-9 ? one : best))
    : hitAt(first, at)
}

/** The same hit at another place of the same thing. Written out: hundreds are made, and a spread is slow. */
const hitAt = ({ normal, distance, on, name, pointer, surface }: Hit, at: Vec3): Hit => ({
  at,
  normal,
  distance,
  on,
  name,
  pointer,
  surface,
})

const nearest = (samples: readonly BackdropSample[], to: Vec3): Vec3 | undefined => {
  let best: Vec3 | undefined
  for (const { at } of samples) if (best === undefined || distance(at, to) < distance(best, to)) best = at
  return best
}

/** A figure by its two sides, anything flat by cells; what is in frame apart from what is not. */
const partOf = ({ on, name, at, normal }: Hit, { right }: SceneCamera, inside: boolean): string => {
  const size = inside ? evenly.frame : evenly.surround
  const z = cellOf(at[2], size)
  const where = inside ? 'in' : 'out'
  if (on === 'figure') return `${where} ${name} ${z} ${dot(normal, right) > 0 ? 'right' : 'left'}`
  const looks = `${Math.round(normal[0])} ${Math.round(normal[1])} ${Math.round(normal[2])}`
  return `${where} ${name} ${cellOf(at[0], size)} ${cellOf(at[1], size)} ${z} ${looks}`
}

const cellOf = (along: number, size: number): number => Math.sign(along) * Math.round(Math.abs(along) / size)

const reflectanceOf = ({ plan }: ComputedSet, { on, surface }: Hit): number =>
  on === 'figure' ? plan.subject.reflectance : (surface?.reflectance ?? 0)

const receptorAt = ({ at, normal, on }: Hit): Receptor =>
  on === 'figure'
    ? { at, normal, kind: 'flat', against: normal }
    : { at, normal, kind: 'flat', onSurface: true }

interface Given {
  /** On a plane square to the light, at the lens. */
  readonly luxSeconds: number
  readonly toward: Vec3
}

/** What a light gives the lens straight. */
const atLens = (set: ComputedSet, light: string): Given | undefined => {
  const { lights, camera } = set.scene
  const found = lights.get(light)
  if (found === undefined) return undefined
  const toward =
    found.front === undefined ? scale(found.axis, -1) : unit(subtract(found.front.centre, camera.eye))
  if (beyondFrame(camera, toward) >= surroundReach) return undefined
  const got = set.exposure({ at: camera.eye, normal: toward, kind: 'flat' }, [light], ['direct'])
  return got && { luxSeconds: got.luxSeconds, toward }
}

/** Shares of a small source for each unit of illuminance that it makes: over the frame's area on the sensor, or the surround's weight. */
const weightOf = (camera: SceneCamera, { toward }: Given, whole: number): Share => {
  const beyond = beyondFrame(camera, toward)
  if (beyond > 0) return { frame: 0, surround: whole > 0 ? surroundWeight(beyond) / whole : 0 }
  const area = 4 * camera.tanHalfWidth * camera.tanHalfHeight
  return { frame: 1 / (dot(toward, camera.forward) ** 3 * area), surround: 0 }
}

const liftFigure = (mean: number, byLight: ReadonlyMap<string, number>): Figure => {
  const veil = glareIndex * mean
  const share = veil / (deepBlack + veil)
  const gradient = new Map<string, number>()
  for (const [light, part] of byLight) if (part > 0) gradient.set(light, (share * part) / mean)
  return {
    stops: veilLift(deepBlack, mean),
    gradient,
    variance: share ** 2 * (glareIndexU ** 2 + uncertainties.geometry ** 2),
    rendering: share,
  }
}
