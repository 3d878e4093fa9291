/**
 * What holds the lights, as far as a plan tells: a pole from the light's mount to the floor with its legs spread, or a
 * boom whose pole stands aside. Sizes here are common practice, no source.
 */
import type { Light, Plan } from '../language/plan.js'
import type { Metres } from '../units/quantity.js'
import type { Scene, SceneLight, SceneStand } from './scene.js'
import { add, scale, type Vec3 } from './vector.js'

const usualLegs = 0.5 as Metres
const usualArm = 1.5 as Metres
/** The grip sits behind the modifier's mount by about this. */
const grip = 0.1
/** What stands lower than this lies on the floor or on a foot that takes no room. */
const lowest = 0.5
/** Over this few light stands go, so that a boom is what one would expect. */
const tallest = 2.5
/** A light over the top of the subject and as near to it as this hangs from a boom. */
const overhead = 1.2
/** Held by something that does not stand on the floor. */
const hangs = /ceiling|rail|clamp|wall|hand|held|person|assistant/iu
const isBoom = /boom/iu

/** A bounced umbrella is held at its rim, where the head shoots into it; other lights behind their modifier. */
const heldAt = (light: Light, front: NonNullable<SceneLight['front']>): Vec3 => {
  const kind = light.modifier?.kind
  const bounced = kind === 'white umbrella' || kind === 'silver umbrella' || kind === 'deep umbrella'
  return bounced
    ? front.centre
    : add(front.centre, scale(front.normal, -((light.modifier?.depth ?? 0) + grip)))
}

/** Its lowest edge over the head of someone who is near. */
const hangsOver = (
  { figures }: Scene['subject'],
  front: NonNullable<SceneLight['front']>,
  mount: Vec3,
): boolean => {
  const { centre, across, up, width, height } = front
  const foot = Math.min(
    mount[2],
    centre[2] - Math.abs(across[2]) * (width / 2) - Math.abs(up[2]) * (height / 2),
  )
  return figures.some(
    ({ top, face }) => foot > top && Math.hypot(mount[0] - face[0], mount[1] - face[1]) < overhead,
  )
}

const standOf = (
  light: Light,
  plan: Plan,
  { subject, lights }: Pick<Scene, 'subject' | 'lights'>,
): SceneStand | undefined => {
  const front = lights.get(light.name)?.front
  const { stand, unit, at, name } = light
  if (front === undefined || unit.kind === 'sun' || unit.kind === 'window' || at.by === 'camera')
    return undefined
  const mount = heldAt(light, front)
  const base = stand && plan.kit?.stands.get(stand.kind)?.base
  const legs = base === undefined ? usualLegs : ((base / 2) as Metres)
  const holding = (boom: boolean, stated: boolean): SceneStand => ({
    light: name,
    kind: boom ? 'boom' : 'pole',
    stated,
    mount,
    arm: boom ? (stand?.arm ?? usualArm) : (0 as Metres),
    legs,
  })
  if (stand !== undefined) {
    const boom = isBoom.test(stand.kind) || stand.arm !== undefined
    return hangs.test(stand.kind) && !boom ? undefined : holding(boom, true)
  }
  if (mount[2] < lowest || at.height?.over === 'table') return undefined
  return holding(front.centre[2] > tallest || hangsOver(subject, front, mount), false)
}

/** One for each light that stands in the set, in the plan's order. */
export const sceneStands = (plan: Plan, scene: Pick<Scene, 'subject' | 'lights'>): readonly SceneStand[] =>
  [...plan.lights.values()].flatMap((light) => standOf(light, plan, scene) ?? [])

/** Where a stand's pole may stand on the floor: one place under a pole, places all round a boom. */
export const feetOf = ({ mount, arm }: SceneStand): readonly Vec3[] =>
  arm === 0
    ? [[mount[0], mount[1], 0]]
    : Array.from({ length: 24 }, (_, i) => {
        const turn = (i * Math.PI) / 12
        return [mount[0] + arm * Math.sin(turn), mount[1] + arm * Math.cos(turn), 0]
      })
