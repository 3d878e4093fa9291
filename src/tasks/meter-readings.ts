/** What a meter did read, beside what all else in the plan tells for it; and which line of the card it belongs to. */
import type { MeterReading, Plan } from '../language/plan.js'
import type { ComputedSet, MeterFigure, UnusedReading } from '../set/computed-set.js'
import { pointer } from '../text/place.js'
import { writeFNumber } from '../units/marks.js'
import type { FNumber, Stops } from '../units/quantity.js'

export interface CardReading {
  /** In the plan's `readings`. */
  readonly index: number
  readonly point: string
  readonly of: MeterReading['of']
  readonly dome: 'raised' | 'flat'
  /** A light's name, `camera`, `out`, `backdrop` or a point; `surface` for one that was read off it. */
  readonly faces: string
  /** As the author writes it: `f/6.7`, `sRGB 243`. */
  readonly reads: string
  /** At other settings than today's, so that it is no figure of today. */
  readonly carried: boolean
  readonly held: HeldAgainst | undefined
  /** Why it tells nothing, where it does not. */
  readonly unused: UnusedReading['because'] | undefined
}

export interface HeldAgainst {
  /** What all that is known without it tells, at the settings of the reading. */
  readonly predicted: FNumber
  readonly difference: Stops
  /** One standard deviation of the difference. */
  readonly u: number
  /** Further off than chance makes it: over a third and over twice its uncertainty. */
  readonly odd: boolean
}

/** A difference that the trade takes for one. Common practice, no source. */
const third = 1 / 3

export const meterReadings = (set: ComputedSet): readonly CardReading[] =>
  set.plan.readings.map((reading, index) => {
    const held = set.readings.find((one) => one.index === index)
    return {
      index,
      point: reading.at,
      of: reading.of,
      dome: reading.dome,
      faces: facesOf(reading),
      reads: readsOf(set.plan, reading, index),
      carried: isCarried(set, reading),
      held: held && {
        predicted: held.predicted,
        difference: held.difference,
        u: held.u,
        odd: Math.abs(held.difference) > Math.max(third, 2 * held.u) + 1e-6,
      },
      unused: set.unusedReadings.find((one) => one.index === index)?.because,
    }
  })

const facesOf = ({ faces, of, kind, read }: MeterReading): string => {
  if (kind === 'reflected' || 'records' in read) return 'surface'
  if (typeof faces !== 'string') return faces.point
  if (faces !== 'light') return faces
  return typeof of !== 'string' && of.length === 1 ? of[0]! : 'camera'
}

const readsOf = ({ places }: Plan, { read }: MeterReading, index: number): string => {
  if ('records' in read) return `sRGB ${read.records}`
  const written = places.written(pointer('readings', index, 'reads'))
  // Quotes of the file are none of the figure's.
  return written !== undefined && /^f/i.test(written) ? written : writeFNumber(read.reads)
}

/** Settings nearer to today's than these are today's: half a tenth of a stop, two centimetres. */
const samePower = 0.05
const samePlace = 0.02

const isCarried = ({ plan, scene }: ComputedSet, { taken }: MeterReading): boolean =>
  [...(taken ?? [])].some(([name, { power, distance }]) => {
    const today = plan.lights.get(name)?.power
    const stands = scene.lights.get(name)?.distance
    return (
      (power !== undefined && today !== undefined && Math.abs(Math.log2(today / power)) > samePower + 1e-6) ||
      (distance !== undefined && stands !== undefined && Math.abs(stands - distance) > samePlace + 1e-6)
    )
  })

/** True for a reading that was taken as this line of the card says: same lights, same place, dome held alike. */
export const isOfLine = ({ point, of, dome, faces }: CardReading, figure: MeterFigure): boolean =>
  point === figure.point && dome === figure.dome && faces === figure.faces && sameLights(of, figure.of)

const sameLights = (a: MeterReading['of'], b: MeterFigure['of']): boolean => {
  if (a === 'all' || b === 'all') return a === b
  const names = a === 'ambient' ? ['ambient'] : a
  return names.length === b.length && names.every((name) => b.includes(name))
}
