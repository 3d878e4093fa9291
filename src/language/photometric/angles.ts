/**
 * Angles of a photometric file, and what its symmetry leaves unsaid. Type C goes round from 0 to 0 (alike all round), 90
 * (alike in each quarter), 180 (alike on both sides of the plane through 0 and 180) or 360; from 90 to 270 it is alike on
 * both sides of the plane through 90 and 270. Types B and A go from −90 or from 0, which is alike on both sides.
 */
import type { PhotometricTable } from './table.js'
import { PhotometricFault, type Word, type Words } from './words.js'

type Type = PhotometricTable['type']

export interface Angles {
  readonly values: Float64Array
  /** Where each is written. */
  readonly words: readonly Word[]
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6

/** @param what kind of angle: `vertical` */
export const readAngles = (words: Words, count: number, what: string, from: number, to: number): Angles => {
  const values = new Float64Array(count)
  const places: Word[] = []
  for (let i = 0; i < count; i++) {
    const word = words.number(`${what} angle ${i + 1} of ${count}`)
    if (word.value < from || word.value > to)
      throw new PhotometricFault(
        word,
        `the ${what} angle ${word.text} is out of range`,
        `${what} angles go from ${from} to ${to} degrees`,
      )
    if (i > 0 && word.value <= values[i - 1]!)
      throw new PhotometricFault(
        word,
        `the ${what} angles do not rise: ${word.text} comes after ${places[i - 1]!.text}`,
        'each angle is larger than the one before',
      )
    values[i] = word.value
    places.push(word)
  }
  return { values, words: places }
}

/** An angle of the whole, and which of the given ones it is alike to. */
type Alike = readonly [angle: number, given: number]

interface Spread {
  readonly angles: Float64Array
  readonly given: readonly number[]
}

const sorted = (pairs: readonly Alike[]): Spread => {
  const rising = [...pairs].sort((a, b) => a[0] - b[0])
  const kept = rising.filter(([angle], i) => i === 0 || !near(angle, rising[i - 1]![0]))
  return { angles: Float64Array.from(kept, ([angle]) => angle), given: kept.map(([, given]) => given) }
}

const asGiven = (angles: Float64Array): readonly Alike[] => [...angles].map((angle, i) => [angle, i])

/** The same again on the other side of a plane. */
const mirrored = (pairs: readonly Alike[], about: number): readonly Alike[] => [
  ...pairs,
  ...pairs.map(([angle, given]): Alike => [2 * about - angle, given]),
]

/** All the way round, the last angle the first again. */
const closed = (pairs: readonly Alike[]): Spread => {
  const turned = pairs.map(([angle, given]): Alike => {
    const within = ((angle % 360) + 360) % 360
    return [near(within, 360) ? 0 : within, given]
  })
  const { angles, given } = sorted(turned)
  const [first, last] = [angles[0]!, angles.at(-1)!]
  return {
    angles: Float64Array.from([...(first > 0 ? [last - 360] : []), ...angles, first + 360]),
    given: [...(first > 0 ? [given.at(-1)!] : []), ...given, given[0]!],
  }
}

const aroundC = ({ values, words }: Angles): Spread => {
  const first = values[0]!
  const last = values.at(-1)!
  if (values.length === 1) return { angles: values, given: [0] }
  const all = asGiven(values)
  if (near(first, 0)) {
    if (near(last, 90)) return closed(mirrored(mirrored(all, 90), 180))
    if (near(last, 180)) return closed(mirrored(all, 180))
    // Older files leave the last angle out, as it is the first again.
    const widest = values.reduce((most, angle, i) => Math.max(most, angle - values[Math.max(0, i - 1)]!), 0)
    if (last > 180 && 360 - last <= 2 * widest) return closed(all)
  }
  if (near(first, 90) && near(last, 270)) return closed(mirrored(all, 90))
  throw new PhotometricFault(
    near(first, 0) ? words.at(-1)! : words[0]!,
    `the horizontal angles go from ${words[0]!.text} to ${words.at(-1)!.text}, which is no way round`,
    'type C goes from 0 to 90, 180 or 360 degrees, or from 90 to 270',
  )
}

const bothSides = ({ values }: Angles): Spread =>
  sorted(near(values[0]!, 0) ? mirrored(asGiven(values), 0) : asGiven(values))

/** The table with its symmetry written out. `candela`: for each horizontal angle one for each vertical angle. */
export const writtenOut = (
  type: Type,
  vertical: Angles,
  horizontal: Angles,
  candela: Float64Array,
): Pick<PhotometricTable, 'type' | 'planes' | 'inPlane' | 'candela'> => {
  if (type !== 'C' && horizontal.values.length === 1)
    throw new PhotometricFault(
      horizontal.words[0]!,
      `type ${type} has one horizontal angle only`,
      'its planes are not alike all round: at least two are needed',
    )
  const around = type === 'C' ? aroundC(horizontal) : bothSides(horizontal)
  const upright = type === 'C' ? sorted(asGiven(vertical.values)) : bothSides(vertical)
  const [planes, inPlane] = type === 'B' ? [upright, around] : [around, upright]
  const rows = vertical.values.length
  const whole = new Float64Array(planes.angles.length * inPlane.angles.length)
  for (const [p, plane] of planes.given.entries())
    for (const [i, one] of inPlane.given.entries())
      whole[p * inPlane.angles.length + i] = candela[type === 'B' ? one * rows + plane : plane * rows + one]!
  return { type, planes: planes.angles, inPlane: inPlane.angles, candela: whole }
}
