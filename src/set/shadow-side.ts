/**
 * The side of the face that the key leaves in shadow, as it is metered by common practice: a hand keeps the key off the
 * dome, which is turned to what fills. That is the camera for a fill light, and the shadow side where most comes off a
 * panel or the walls. Fill lights and the ambient count, and whatever surfaces throw back, of the key itself too; not what
 * comes straight from lights for outline, backdrop and effect, which are kept off on both sides.
 */
import type { Role } from '../language/plan.js'
import { cross, dot, subtract, unit, type Vec3 } from '../scene/vector.js'
import { inDegrees } from '../units/quantity.js'
import type { ComputedSet, MeterAsk, MeterFigure } from './computed-set.js'
import { modellingName } from './transport.js'

export interface ShadowSide {
  /** All that fills. */
  readonly shadow: MeterFigure
  /** The key with it, dome to the camera. */
  readonly lit: MeterFigure
  /** The lights kept off the dome, by name. */
  readonly shaded: readonly string[]
  /** What the dome is turned to. */
  readonly toward: 'camera' | 'camera-left' | 'camera-right'
}

/** Undefined without a known key that comes straight and from before it, or where nothing but the key reaches the face. */
export const shadowSide = (set: ComputedSet): ShadowSide | undefined => {
  const shaded = keysOf(set)
  if (shaded.length === 0 || set.key === undefined || thrownKeys(set).length > 0) return undefined
  if (keyBehind(set) !== undefined) return undefined
  const all = { at: 'subject', of: 'all', dome: 'raised' } as const
  const off = (roles: (role: Role) => boolean) =>
    set.lit.filter(({ role }) => roles(role)).flatMap(({ name }) => [name, modellingName(name)])
  const others = off((role) => role !== 'fill')
  const from = (faces: MeterAsk['faces'] & {}) => set.reading({ ...all, faces, shaded: others })
  const lit = set.reading({
    ...all,
    faces: 'camera',
    shaded: off((role) => role !== 'fill' && role !== 'key'),
  })
  if (lit === undefined) return undefined
  const ahead = from('camera')
  const way = shadowWay(set)
  const aside = way && from({ direction: way.direction })
  const turned =
    aside !== undefined && aside.luxSeconds - aside.byPath.direct > (ahead?.byPath.direct ?? 0)
      ? aside
      : undefined
  const shadow = turned ?? ahead
  return shadow && { shadow, lit, shaded, toward: turned === undefined ? 'camera' : way!.side }
}

/** A key of which less than this share comes straight is a scrim's light, which no hand keeps off. */
const leastStraight = 1 / 4

/** Key lights that work by way of a surface: one cannot tell their light from what fills their shadows. */
export const thrownKeys = (set: ComputedSet): readonly string[] =>
  keysOf(set).filter((name) => {
    const aim = set.plan.lights.get(name)!.aim.at
    if (aim === 'ceiling' || aim === 'wall' || aim === 'panel') return true
    const alone = set.reading({ at: 'subject', of: [name], dome: 'raised', faces: 'camera' })
    return alone !== undefined && alone.byPath.direct < leastStraight * alone.luxSeconds
  })

const keysOf = (set: ComputedSet): readonly string[] =>
  set.keyLights.filter(({ role }) => role === 'key').map(({ name }) => name)

/** A key nearer to the lens than this leaves no side of the face in shadow, degrees. Common practice, no source. */
const leastAside = 15

/** From further round, the camera looks at the shadow side alone, degrees. */
const mostAside = 100

/** Square to the line from the face to the camera, level, away from the strongest key. */
export const shadowWay = (
  set: ComputedSet,
): { readonly direction: Vec3; readonly side: 'camera-left' | 'camera-right' } | undefined => {
  const seen = keySeen(set)
  if (seen === undefined || Math.abs(seen.aside) < leastAside) return undefined
  return seen.aside < 0
    ? { direction: seen.right, side: 'camera-right' }
    : { direction: subtract([0, 0, 0], seen.right), side: 'camera-left' }
}

/** The key, where it lights what is turned from the camera. */
export const keyBehind = (set: ComputedSet): string | undefined => {
  const seen = keySeen(set)
  return seen !== undefined && Math.abs(seen.aside) > mostAside ? seen.key : undefined
}

/** The strongest key from above: degrees from the line to the camera, camera-right positive. */
const keySeen = (
  set: ComputedSet,
): { readonly key: string; readonly aside: number; readonly right: Vec3 } | undefined => {
  const { camera, points, lights } = set.scene
  const face = points.get('subject')?.at
  const [strongest] = [...keysOf(set)].sort((a, b) => gives(set, b) - gives(set, a))
  const key = strongest === undefined ? undefined : lights.get(strongest)
  if (face === undefined || key === undefined) return undefined
  const toKey = level(
    key.front === undefined ? subtract([0, 0, 0], key.axis) : subtract(key.front.centre, face),
  )
  const toCamera = level(subtract(camera.eye, face))
  const right = cross([0, 0, 1], toCamera)
  return {
    key: key.name,
    aside: inDegrees(Math.atan2(dot(toKey, right), dot(toKey, toCamera))),
    right,
  }
}

const gives = (set: ComputedSet, light: string): number => set.key?.byLight.get(light) ?? 0

const level = ([x, y]: Vec3): Vec3 => unit([x, y, 0], [0, -1, 0])
