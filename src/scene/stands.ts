/**
 * What holds the lights, as far as a plan tells: a pole from the light's mount to the floor with its legs spread, or a
 * boom whose pole stands aside. Stands hide nothing to speak of, but they show in a picture. Sizes here are common
 * practice, no source.
 */
import type { Light, Plan } from '../language/plan.js'
import { reachOf } from './reach.js'
import type { Scene, SceneLight } from './scene.js'
import { add, scale, type Vec3 } from './vector.js'

export interface Stand {
  readonly light: string
  /** `boom`: the pole stands aside by `arm`, to a side that the plan does not tell. */
  readonly kind: 'pole' | 'boom'
  /** The plan says what holds the light; else it is what one would expect. */
  readonly stated: boolean
  /** Where the light is held, metres. */
  readonly mount: Vec3
  /** From the mount to the pole along the floor; 0 for a pole right under it. */
  readonly arm: number
  /** From the pole's foot to the tips of its legs. */
  readonly legs: number
}

const usualLegs = 0.5
const usualArm = 1.5
/** The grip sits behind the modifier's mount by about this. */
const grip = 0.1
/** What stands lower than this lies on the floor or on a foot that takes no room. */
const lowest = 0.5
/** Over this few light stands go, so that a boom is what one would expect. */
const tallest = 2.5
/** A light over the top of the subject and as near to it as this hangs from a boom. */
const overhead = 1.2
/** Held by something that does not stand on the floor. */
const hangs = /ceiling|rail|clamp|wall|hand|held|person|assistant|arm\b/iu
const isBoom = /boom/iu

/** A bounced umbrella is held at its rim, where the head shoots into it; other lights behind their modifier. */
const heldAt = (light: Light, front: NonNullable<SceneLight['front']>): Vec3 => {
  const kind = light.modifier?.kind
  const bounced = kind === 'white umbrella' || kind === 'silver umbrella' || kind === 'deep umbrella'
  return bounced
    ? front.centre
    : add(front.centre, scale(front.normal, -((light.modifier?.depth ?? 0) + grip)))
}

const hangsOver = (scene: Scene, name: string, mount: Vec3): boolean => {
  const solid = scene.solids.find((one) => one.of === 'light' && one.name === name)
  if (solid === undefined) return false
  const foot = -reachOf(solid.body, [0, 0, -1])
  return scene.subject.figures.some(
    ({ top, face }) => foot > top && Math.hypot(mount[0] - face[0], mount[1] - face[1]) < overhead,
  )
}

const standOf = (plan: Plan, scene: Scene, light: Light): Stand | undefined => {
  const front = scene.lights.get(light.name)?.front
  const { stand, unit, at } = light
  if (front === undefined || unit.kind === 'sun' || unit.kind === 'window' || at.by === 'camera')
    return undefined
  const mount = heldAt(light, front)
  const kit = stand && plan.kit?.stands.get(stand.kind)
  const legs = kit?.base === undefined ? usualLegs : kit.base / 2
  if (stand !== undefined) {
    if (hangs.test(stand.kind) && !isBoom.test(stand.kind)) return undefined
    const boom = isBoom.test(stand.kind) || stand.arm !== undefined
    return {
      light: light.name,
      kind: boom ? 'boom' : 'pole',
      stated: true,
      mount,
      arm: boom ? (stand.arm ?? usualArm) : 0,
      legs,
    }
  }
  if (mount[2] < lowest || at.height?.over === 'table') return undefined
  const boom = front.centre[2] > tallest || hangsOver(scene, light.name, mount)
  return {
    light: light.name,
    kind: boom ? 'boom' : 'pole',
    stated: false,
    mount,
    arm: boom ? usualArm : 0,
    legs,
  }
}

/** One for each light that stands in the set, in the plan's order. */
export const standsOf = (plan: Plan, scene: Scene): readonly Stand[] =>
  [...plan.lights.values()].flatMap((light) => standOf(plan, scene, light) ?? [])

/** Where a stand's pole may stand on the floor: one place under a pole, places all round a boom. */
export const feetOf = ({ mount, arm }: Stand): readonly Vec3[] =>
  arm === 0
    ? [[mount[0], mount[1], 0]]
    : Array.from({ length: 24 }, (_, i) => {
        const turn = (i * Math.PI) / 12
        return [mount[0] + arm * Math.sin(turn), mount[1] + arm * Math.cos(turn), 0]
      })
