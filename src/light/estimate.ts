/**
 * The strengths of all lights at once, the most probable by what is known of them beforehand and by all readings:
 * Bayes' rule for normal errors in log₂, linearised at the answer (Gauss–Newton), all covariances kept. A reading of one
 * light goes before all that is rated or wanted of it; one of several fixes their sum and leaves each of them open. Readings
 * that are missing, redundant or at odds leave the answer well posed.
 */
import {
  add,
  addParts,
  addShared,
  type Causes,
  type Covariance,
  independent,
  partsOf,
  type SharedPart,
  type UncertainStrength,
} from './causes.js'
import { type Gear, learn, type OffRating } from './gear.js'
import { uncertainties } from './how-sure.js'
import { type Row, type Sum, settle } from './most-probable.js'
import { factored, solved } from './positive.js'

/** What is known of a light before any reading. */
export interface Prior extends UncertainStrength {
  /** log₂ of its strength. */
  readonly stops: number
}

export type PriorOf = (light: string) => Prior | undefined

/** A light's part in a reading. */
export interface ReadLight {
  /** log₂ lx·s from unit strength of today, as it stood and was set then. */
  readonly stops: number
  /** What makes just this light look stronger or weaker to this reading. */
  readonly shared?: readonly SharedPart[]
}

/** A reading of one light or of a sum. */
export interface SumReading {
  /** log₂ lx·s, finite. */
  readonly stops: number
  /** By name; at least one, each with a prior. */
  readonly lights: ReadonlyMap<string, ReadLight>
  /** What is its own, one standard deviation in stops. */
  readonly u: number
  /** What it has in common with other readings or figures. */
  readonly shared?: readonly SharedPart[]
  /** The light for which it goes before all else that is known of it. */
  readonly settles?: string
  /** No reading but a statement: void where a reading settles this light. */
  readonly yields?: string
}

/** A reading against what all else tells. */
export interface Held {
  /** Stops that were read over what all else predicts. */
  readonly difference: number
  /** Of the difference. */
  readonly u: number
}

/** How figures vary together, as the readings leave it, over the parts that `of` gives. */
export interface Estimate extends Covariance {
  /** What a light's uncertainty is made of before these readings are weighed; undefined without a prior. */
  of(light: string): UncertainStrength | undefined
  /** log₂ of the light's strength; undefined without a prior. */
  stops(light: string): number | undefined
  /** Stops by which the readings turn what is built of these causes. */
  turn(causes: Causes): number
  /** Each reading that is no statement, held against all but itself. */
  held(): readonly Held[]
}

/** Deterministic, and finite for any finite readings; the order of readings and lights does not matter. */
export const estimate = (priorOf: PriorOf, readings: readonly SumReading[]): Estimate => {
  const settled = new Set(readings.flatMap(({ settles }) => settles ?? []))
  const used = readings.filter(({ yields }) => yields === undefined || !settled.has(yields))
  const { start, sums, index } = opened(priorOf, used, settled)
  const { causes, known } = settle(sums, index.size)

  const turn = (parts: Iterable<readonly [string, number]>): number => {
    let stops = 0
    for (const [cause, by] of parts) stops += by * (causes[index.get(cause) ?? -1] ?? 0)
    return stops
  }
  return {
    of: start,
    turn,
    stops: (light) => {
      const from = start(light)
      return from && from.stops + turn(partsOf(light, from).map(({ entry, u }) => [entry, u] as const))
    },
    product: (a, b) => {
      const [left, right] = [touched(a, index), touched(b, index)]
      let sum = independent.product(a, b)
      for (const row of known) sum -= along(row, left) * along(row, right)
      return sum
    },
    held: () =>
      readings.flatMap((reading, i) =>
        reading.yields === undefined ? [heldBy(estimate(priorOf, readings.toSpliced(i, 1)), reading)] : [],
      ),
  }
}

// ---------------------------------------------------------------- where to start from

/** No reading is surer than this, so that none can be infinitely sure. */
const leastU = 1e-6

interface Opened {
  readonly start: PriorOf
  readonly sums: readonly Sum[]
  /** Causes by number. */
  readonly index: ReadonlyMap<string, number>
}

/**
 * Lights that a reading settles are open: nothing but readings says what they give. What those readings tell of the gear
 * moves where the other lights start from.
 */
const opened = (priorOf: PriorOf, readings: readonly SumReading[], settled: ReadonlySet<string>): Opened => {
  const alone = readAlone(priorOf, readings)
  let gear: Gear | undefined
  const starts = new Map<string, Prior | undefined>()
  const start: PriorOf = (light) => {
    if (!starts.has(light)) starts.set(light, from(light))
    return starts.get(light)
  }
  const from: PriorOf = (light) => {
    const prior = priorOf(light)
    if (prior === undefined) return undefined
    if (settled.has(light))
      return { stops: prior.stops + (alone.get(light)?.off ?? 0), u: uncertainties.open }
    gear ??= learn([...alone.values()])
    const { by, how } = gear.moved(prior)
    return { ...how, stops: prior.stops + by }
  }
  const index = new Map<string, number>()
  const rowOf = (parts: readonly SharedPart[]): Row =>
    parts.map(({ entry, u }) => {
      if (!index.has(entry)) index.set(entry, index.size)
      return [index.get(entry)!, u] as const
    })
  const sums = readings.map((reading, i): Sum => {
    const { own, shared } = noiseOf(reading, i)
    return {
      read: reading.stops,
      variance: own ** 2,
      lights: [...reading.lights].map(([name, light]) => {
        const from = start(name)!
        return {
          stops: from.stops + light.stops,
          row: rowOf([...partsOf(name, from), ...(light.shared ?? [])]),
        }
      }),
      row: rowOf(shared),
    }
  })
  return { start, sums, index }
}

/** Lights by the readings that settle them and are of nothing else, each against its rating. */
const readAlone = (priorOf: PriorOf, readings: readonly SumReading[]): ReadonlyMap<string, OffRating> => {
  const byLight = new Map<string, AloneReading[]>()
  readings.forEach((reading, i) => {
    const [[light, part] = []] = reading.lights
    if (light === undefined || part === undefined || reading.lights.size > 1 || reading.settles !== light)
      return
    const { own, shared } = noiseOf(reading, i)
    const error = new Map<string, number>()
    addShared(error, [...shared, ...(part.shared ?? [])], 1)
    const stops = reading.stops - part.stops
    byLight.set(light, [...(byLight.get(light) ?? []), { stops, own, error }])
  })
  return new Map(
    [...byLight].map(([light, all]) => {
      const prior = priorOf(light)!
      const { stops, error } = bestOf(all)
      return [light, { light, prior, off: stops - prior.stops, error }] as const
    }),
  )
}

interface AloneReading {
  readonly stops: number
  readonly own: number
  readonly error: Causes
}

/** The mean of several readings of one light that is surest, by what they have in common and what not. */
const bestOf = (all: readonly AloneReading[]): Pick<AloneReading, 'stops' | 'error'> => {
  const size = all.length
  if (size === 1) return all[0]!
  const spread = new Float64Array(size * size)
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) spread[i * size + j] = independent.product(all[i]!.error, all[j]!.error)
    spread[i * size + i]! += all[i]!.own ** 2
  }
  const weights = solved(factored(spread, size), size, new Float64Array(size).fill(1))
  const whole = weights.reduce((sum, one) => sum + one, 0)
  const error = new Map<string, number>()
  let stops = 0
  all.forEach((one, i) => {
    stops += (weights[i]! / whole) * one.stops
    for (const [cause, by] of one.error) add(error, cause, (weights[i]! / whole) * by)
  })
  return { stops, error }
}

/** Of the own part of a reading that settles a light, all but this is a cause by name, as what the gear learns from it has it too. */
const ownShare = 0.05

const noiseOf = ({ u, shared = [], settles }: SumReading, at: number) => {
  const whole = Math.max(u, leastU)
  if (settles === undefined) return { own: whole, shared }
  const noise = { entry: `noise ${at}`, u: whole * Math.sqrt(1 - ownShare ** 2) }
  return { own: whole * ownShare, shared: [...shared, noise] }
}

// ---------------------------------------------------------------- rows

const touched = (causes: Causes, index: ReadonlyMap<string, number>): Row => {
  const row: [number, number][] = []
  for (const [cause, by] of causes) {
    const at = index.get(cause)
    if (at !== undefined) row.push([at, by])
  }
  return row
}

const along = (row: Float64Array, causes: Row): number => {
  let sum = 0
  for (const [cause, by] of causes) sum += row[cause]! * by
  return sum
}

// ---------------------------------------------------------------- readings against each other

/** The reading's own point brings its half of the geometry between two points, as a figure's does. */
const heldBy = (others: Estimate, { stops, lights, u, shared = [] }: SumReading): Held => {
  const given = [...lights].map(([name, light]) => {
    const row = new Map<string, number>()
    addShared(row, light.shared ?? [], 1)
    return { name, row, stops: others.stops(name)! + light.stops + others.turn(row) }
  })
  const most = Math.max(...given.map((one) => one.stops))
  const whole = given.reduce((sum, one) => sum + 2 ** (one.stops - most), 0)
  const row = new Map<string, number>()
  addShared(row, shared, 1)
  const predicted = most + Math.log2(whole) + others.turn(row)
  let variance = u ** 2
  for (const one of given) {
    const share = 2 ** (one.stops - most) / whole
    addParts(row, one.name, others.of(one.name)!, share)
    for (const [cause, by] of one.row) row.set(cause, (row.get(cause) ?? 0) + share * by)
    variance += (share ** 2 * uncertainties.geometry ** 2) / 2
  }
  return { difference: stops - predicted, u: Math.sqrt(variance + others.product(row, row)) }
}
