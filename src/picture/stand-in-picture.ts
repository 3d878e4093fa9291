/** How far the stand of a light reaches into the picture, stood and turned as well as it can be. */
import { firstHit } from '../scene/first-hit.js'
import { lazyOf } from '../scene/lazy.js'
import type { Scene, SceneRoom, SceneStand } from '../scene/scene.js'
import { feetOf } from '../scene/stands.js'
import { add, distance, scale, subtract, type Vec3 } from '../scene/vector.js'
import { cameraSees, type Reaching, reachingIn } from './in-picture.js'

/** Places that are looked at along a pole and an arm, and round the legs. */
const along = 24
const round = 12

const between = (a: Vec3, b: Vec3): readonly Vec3[] =>
  Array.from({ length: along + 1 }, (_, i) => add(a, scale(subtract(b, a), i / along)))

/**
 * All of one standing of it: pole, arm, and the circle that no turn of the legs stays inside of. Of three legs at 120°
 * one reaches to any side by at least cos 60° of its length.
 */
const placesOf = ({ mount, legs }: SceneStand, foot: Vec3): readonly Vec3[] => {
  const top: Vec3 = [foot[0], foot[1], mount[2]]
  const tips = Array.from({ length: round }, (_, i): Vec3 => {
    const turn = (2 * Math.PI * i) / round
    return [foot[0] + (legs / 2) * Math.sin(turn), foot[1] + (legs / 2) * Math.cos(turn), 0]
  })
  return [...between(top, foot), ...(distance(top, mount) > 1e-9 ? between(mount, top) : []), ...tips]
}

const isInRoom = ({ left, right, front, back }: SceneRoom, [x, y]: Vec3): boolean =>
  x >= left && x <= right && y >= front && y <= back

/** Where it can stand: inside the room, if it can stand there at all. */
const placesToStand = ({ room }: Scene, stand: SceneStand): readonly Vec3[] => {
  const feet = feetOf(stand)
  const inside = room === undefined ? feet : feet.filter((foot) => isInRoom(room, foot))
  return inside.length === 0 ? feet : inside
}

/** The least that it reaches in wherever it stands; undefined where it can stand out of the picture. */
const leastReach = (scene: Scene, stand: SceneStand): Reaching | undefined => {
  const own = new Set([stand.light])
  let least: Reaching | undefined
  for (const foot of placesToStand(scene, stand)) {
    const reaching = reachingIn(
      scene.camera,
      placesOf(stand, foot).filter((place) => cameraSees(scene, place, own)),
    )
    if (reaching === undefined) return undefined
    if (least === undefined || reaching.by < least.by) least = reaching
  }
  return least
}

/** Undefined where the camera sees nothing of it. */
export const standReaching = (scene: Scene, stand: SceneStand): Reaching | undefined => {
  const known = reachings(scene)
  if (!known.has(stand.light)) known.set(stand.light, leastReach(scene, stand))
  return known.get(stand.light)
}

const reachings = lazyOf((_: Scene) => new Map<string, Reaching | undefined>())

/** True where the camera sees some of its pole right before someone. */
export const standsBefore = (scene: Scene, stand: SceneStand): boolean =>
  stand.kind === 'pole' &&
  placesOf(stand, feetOf(stand)[0]!)
    .filter((place) => cameraSees(scene, place))
    .some((place) => firstHit(scene, scene.camera.eye, subtract(place, scene.camera.eye))?.on === 'figure')
