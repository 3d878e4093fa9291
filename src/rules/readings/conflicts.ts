/** Readings that cannot all be right, and what would make one of them fit after all. */
import type { MeterReading, Plan } from '../../language/plan.js'
import { luxSecondsFor, luxSecondsOfReflected } from '../../light/exposure.js'
import type { ComputedSet, HeldReading, MeterAsk } from '../../set/computed-set.js'
import { facingOf } from '../../set/read-reading.js'
import { reflectanceAt } from '../../set/surface-at.js'
import type { FNumber } from '../../units/quantity.js'
import { lightMissing } from '../known.js'
import type { Words } from '../words.js'

/** Readings that share lights, and of which one at least is at odds with all that is known without it. */
export interface Conflict {
  /** The one to doubt: the one that fits if it was taken otherwise than written, else the one that is furthest off for what it is worth. */
  readonly doubted: HeldReading
  /** How it would fit; undefined where nothing that was tried does it. */
  readonly fits: Otherwise | undefined
  /** All that share lights with it. */
  readonly others: readonly HeldReading[]
}

/** How else a reading may have been taken. */
export interface Otherwise {
  readonly what: 'kind' | 'dome' | 'faces' | 'iso'
  /** The value to write in place of what stands there. */
  readonly value: string
  /** Stops that it would then show over what is predicted. */
  readonly left: number
}

/** Stops that may be left of a difference where a reading was taken otherwise than it is written. */
export const mayBeLeft = 1 / 4

/**
 * @param limit under which readings do not differ, in stops; nor within twice the uncertainty of the difference
 * @param left see `mayBeLeft`
 */
export const conflicts = (set: ComputedSet, limit: number, left: number = mayBeLeft): readonly Conflict[] =>
  together(comparable(set)).flatMap((held): readonly Conflict[] => {
    const odd = held.filter((one) => Math.abs(one.difference) > Math.max(limit, 2 * one.u) + tiny)
    if (odd.length === 0) return []
    const explained = odd
      .filter(({ u }) => u <= tells)
      .flatMap((one) => {
        const fits = bestOf(otherwise(set, one), left)
        return fits === undefined ? [] : [{ one, fits }]
      })
      .sort((a, b) => rank(a.fits) - rank(b.fits))[0]
    const doubted =
      explained?.one ?? odd.reduce((worst, one) => (oddness(one) >= oddness(worst) - tiny ? one : worst))
    return [{ doubted, fits: explained?.fits, others: held.filter((one) => one !== doubted) }]
  })

const tiny = 1e-6

/** A difference that is less sure than this fits almost anything, and tells nothing of how the reading was taken. */
const tells = 1 / 3

const oddness = ({ difference, u }: HeldReading): number => Math.abs(difference) / u

/** Readings of lights whose figures are known: what cannot be computed cannot be held against them. */
export const comparable = (set: ComputedSet): readonly HeldReading[] =>
  set.readings.filter(({ lights }) =>
    lights.every((name) => {
      const light = set.plan.lights.get(name)
      return light === undefined || lightMissing(set, light) === undefined
    }),
  )

/** Readings by the lights that they share, directly or by way of others. */
const together = (held: readonly HeldReading[]): readonly (readonly HeldReading[])[] => {
  let groups: { readonly lights: Set<string>; readonly held: readonly HeldReading[] }[] = []
  for (const one of held) {
    const shares = groups.filter(({ lights }) => one.lights.some((light) => lights.has(light)))
    const joined = {
      lights: new Set([...one.lights, ...shares.flatMap(({ lights }) => [...lights])]),
      held: [...shares.flatMap((group) => group.held), one],
    }
    groups = [...groups.filter((group) => !shares.includes(group)), joined]
  }
  return groups.map((group) => group.held)
}

// ---------------------------------------------------------------- taken otherwise

/** A wrong ISO fits almost anything by some whole stop, so another way that fits as well is likelier. */
const rank = ({ what, left }: Otherwise): number => Math.abs(left) + (what === 'iso' ? 0.15 : 0)

const bestOf = (ways: readonly Otherwise[], most: number): Otherwise | undefined =>
  ways.filter(({ left }) => Math.abs(left) <= most + tiny).sort((a, b) => rank(a) - rank(b))[0]

/** ISO that meters and cameras are set to by mistake. */
const speeds = { from: 25, to: 25600 }

/** Every other way in which a meter is held or set by mistake, and what would then be left of the difference. */
export const otherwise = (set: ComputedSet, held: HeldReading): readonly Otherwise[] => {
  const { plan } = set
  const reading = plan.readings[held.index]
  if (reading === undefined || !('reads' in reading.read)) return []
  const { reads } = reading.read
  const then = asItWas(set, reading)
  const meter = meterOf(then, held)
  const taken = meter(reading)
  const way = (what: Otherwise['what'], value: string, changed: MeterReading): readonly Otherwise[] => {
    const [was, would] = [taken, meter(changed)]
    if (was === undefined || would === undefined) return []
    const shown = exposureShown(plan, then, reading, reads)
    const wouldShow = exposureShown(plan, then, changed, reads)
    if (shown === undefined || wouldShow === undefined) return []
    const left = held.difference + Math.log2(wouldShow / shown) - Math.log2(would / was)
    return [{ what, value, left }]
  }
  const lone = typeof reading.of !== 'string' && reading.of.length === 1
  const stops = Math.round(held.difference)
  const iso = reading.iso * 2 ** stops
  return [
    ...(reading.kind === 'incident'
      ? way('kind', 'reflected', { ...reading, kind: 'reflected' })
      : way('kind', 'incident', { ...reading, kind: 'incident' })),
    ...(reading.kind === 'incident'
      ? [
          ...(reading.dome === 'raised'
            ? way('dome', 'flat', { ...reading, dome: 'flat' })
            : way('dome', 'raised', { ...reading, dome: 'raised' })),
          ...(reading.faces === 'camera' ? [] : way('faces', 'camera', { ...reading, faces: 'camera' })),
          ...(reading.faces === 'light' || !lone
            ? []
            : way('faces', 'light', { ...reading, faces: 'light' })),
        ]
      : []),
    ...(stops === 0 || iso < speeds.from || iso > speeds.to
      ? []
      : [{ what: 'iso' as const, value: String(Math.round(iso)), left: held.difference - stops }]),
  ]
}

/** The set with the lights where they stood. */
const asItWas = (set: ComputedSet, { taken }: MeterReading): ComputedSet => {
  const moves = [...(taken ?? [])].flatMap(([light, { distance }]) => {
    const today = set.scene.lights.get(light)?.distance
    return distance === undefined || today === undefined || Math.abs(distance - today) < 1e-3
      ? []
      : [{ knob: { knob: 'light-distance', light } as const, to: distance }]
  })
  return moves.length === 0 ? set : set.with(...moves)
}

/** The exposure that arrives at a meter held in this way. */
const meterOf =
  (set: ComputedSet, { lights }: HeldReading) =>
  (reading: MeterReading): number | undefined => {
    const ask: MeterAsk | undefined =
      reading.kind === 'reflected'
        ? { at: reading.at, of: lights, dome: 'flat', faces: 'out' }
        : held(set, reading, lights)
    return ask && set.reading(ask)?.luxSeconds
  }

const held = (set: ComputedSet, reading: MeterReading, lights: readonly string[]): MeterAsk | undefined => {
  const faces = facingOf(set.scene, reading)
  return faces && { at: reading.at, of: lights, dome: reading.dome, faces }
}

/** The exposure that the meter's f-number stands for, if it was of this kind. */
const exposureShown = (
  plan: Plan,
  { scene }: ComputedSet,
  reading: MeterReading,
  reads: FNumber,
): number | undefined => {
  if (reading.kind === 'incident') return luxSecondsFor(reads, reading.iso)
  const point = scene.points.get(reading.at)
  const reflectance = point && reflectanceAt(plan, point.on)
  return reflectance === undefined ? undefined : luxSecondsOfReflected(reads, reading.iso, reflectance)
}

// ---------------------------------------------------------------- words

/** `as a reflected reading of the surface`, `with the meter at ISO 200`. */
export const otherwiseText = ({ what, value }: Otherwise, reading: MeterReading, words: Words): string => {
  switch (what) {
    case 'kind':
      return value === 'reflected' ? 'as a reflected reading of the surface' : 'as an incident reading'
    case 'dome':
      return `with the dome ${value}`
    case 'faces':
      return value === 'camera'
        ? 'with the dome toward the camera'
        : `with the dome toward ${words.list(typeof reading.of === 'string' ? [reading.of] : reading.of)}`
    case 'iso':
      return `with the meter at ISO ${value}`
  }
}

export const leftText = (left: number, words: Words): string =>
  Math.abs(left) < 0.05 ? 'nothing' : words.howMany(left)
