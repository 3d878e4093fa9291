/** How far what moves is drawn out in the picture, by each light that gives enough of the exposure for it to show. */
import type { Light } from '../../language/plan.js'
import { flashTime } from '../../light/flash-time.js'
import { isHighSpeed } from '../../light/strength.js'
import { motionBlur, overCircle } from '../../picture/motion.js'
import { extension } from '../../scene/camera.js'
import { distance } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { ambientName } from '../../set/transport.js'
import type { Metres, PowerShare, Seconds } from '../../units/quantity.js'
import { powerSet } from './power-set.js'

export interface Blur {
  /** Undefined: the light of the place. */
  readonly light: Light | undefined
  /** t0.1 of a flash; the shutter of what burns on, as marked. */
  readonly lasts: Seconds
  readonly flashes: boolean
  readonly guessed: boolean
  /** The power at which it flashes; undefined where nothing says. */
  readonly power: PowerShare | undefined
  /** On the subject. */
  readonly smear: Metres
  /** Doublings over the circle of confusion, and their u. */
  readonly over: number
  readonly u: number
}

/** @param share of the exposure at the subject that a light has to give */
export const blursOf = (set: ComputedSet, share: number): readonly Blur[] => {
  const { plan } = set
  const speed = plan.subject.moves
  const reading = set.reading({ at: 'subject', of: 'all', dome: 'raised', faces: 'camera' })
  const face = set.scene.points.get('subject')?.at
  if (speed === undefined || speed === 0 || reading === undefined || face === undefined) return []
  const size = extension(plan.camera.lens, distance(set.scene.camera.eye, face)) - 1
  return counted(set).flatMap((light): Blur[] => {
    const part = reading.byLight.get(light?.name ?? ambientName) ?? 0
    if (part < share * reading.luxSeconds) return []
    const { lasts, u, ...how } = burning(set, light)
    return [
      {
        light,
        lasts,
        ...how,
        smear: motionBlur(speed, lasts, 1),
        over: overCircle(motionBlur(speed, lasts, size), plan.camera.sensor),
        u,
      },
    ]
  })
}

/** Lights of the key reading; the light of the place where it may show: what it adds unasked is a ghost, told elsewhere. */
const counted = ({ keyLights, plan }: ComputedSet): readonly (Light | undefined)[] => [
  ...keyLights,
  ...(plan.ambient !== undefined && plan.wanted.ambient === 'any' ? [undefined] : []),
]

const burning = (
  set: ComputedSet,
  light: Light | undefined,
): Pick<Blur, 'lasts' | 'flashes' | 'guessed' | 'power' | 'u'> => {
  const { camera } = set.plan
  const open = { lasts: camera.shutterMarked, flashes: false, guessed: false, power: undefined, u: 0 }
  if (light === undefined || light.unit.kind !== 'flash' || isHighSpeed(light, set.plan)) return open
  const { unit } = light
  const at = powerSet(set, light)
  const { t01, u, known } = flashTime(unit, at.power)
  if (t01 >= camera.shutterMarked) return open
  const more = flashTime(unit, Math.min(unit.power.to, at.power * 2 ** at.u) as PowerShare).t01
  return {
    lasts: t01,
    flashes: true,
    guessed: known === 'guessed',
    power: at.known ? at.power : undefined,
    u: Math.hypot(u, Math.log2(more / t01)),
  }
}
