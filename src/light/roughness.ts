/**
 * How rough a photometric table is, direction by direction: how steeply its candela rise, how sharply they bend at its
 * angles, and where they end lit. A front is added up finely where that is seen, and coarsely elsewhere.
 */
import type { PhotometricTable } from '../language/photometric/table.js'

const degrees = 180 / Math.PI
/** Sine of the angle from the pole under which planes run together. */
const leastApart = 0.05

/** Along one kind of a table's angles; of all the others the most. */
interface Profile {
  /** Degrees, rising. */
  readonly angles: Float64Array
  /** Candela at each angle. */
  readonly most: Float64Array
  /** Candela a radian from each angle to the next. */
  readonly slope: Float64Array
  /** Candela a radian by which the slope changes at each angle. */
  readonly bend: Float64Array
  /** It ends lit before its first angle, after its last. */
  readonly ends: readonly [before: boolean, after: boolean]
}

interface Profiles {
  readonly inPlane: Profile
  /** Undefined where the planes go all round, or nearly: type C. */
  readonly planes: Profile | undefined
}

const known = new WeakMap<PhotometricTable, Profiles>()

const profilesOf = (table: PhotometricTable): Profiles => {
  const before = known.get(table)
  if (before !== undefined) return before
  const rows = table.inPlane.length
  const { type, planes, inPlane, candela } = table
  const apart = Float64Array.from(inPlane, (angle) => {
    const sine = type === 'C' ? Math.sin(angle / degrees) : Math.cos(angle / degrees)
    return sine > leastApart ? sine : Number.POSITIVE_INFINITY
  })
  const own = profile(inPlane, planes.length, (i, p) => candela[p * rows + i]!)
  const other = profile(planes, rows, (p, i) => candela[p * rows + i]!, apart)
  const [low, high] = type === 'C' ? [0, 180] : [-90, 90]
  const made: Profiles = {
    inPlane: {
      ...own,
      ...(type === 'C' ? withPlanes(own, table, apart) : {}),
      ends: [own.most[0]! > 0 && inPlane[0]! > low, own.most[rows - 1]! > 0 && inPlane[rows - 1]! < high],
    },
    planes:
      type === 'C'
        ? undefined
        : {
            ...other,
            ends: [
              other.most[0]! > 0 && planes[0]! > -180,
              other.most[planes.length - 1]! > 0 && planes[planes.length - 1]! < 180,
            ],
          },
  }
  known.set(table, made)
  return made
}

type Bare = Omit<Profile, 'ends'>

/** @param apart for each of the others, how far a radian about the pole goes */
const profile = (
  angles: Float64Array,
  others: number,
  at: (i: number, other: number) => number,
  apart?: Float64Array,
): Bare => {
  const count = angles.length
  const [most, slope, bend] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)]
  for (let other = 0; other < others; other++) {
    const far = apart === undefined ? 1 : apart[other]!
    let last = 0
    for (let i = 0; i < count; i++) {
      const here = at(i, other)
      most[i] = Math.max(most[i]!, here)
      const rise =
        i + 1 < count ? ((at(i + 1, other) - here) * degrees) / ((angles[i + 1]! - angles[i]!) * far) : 0
      slope[i] = Math.max(slope[i]!, Math.abs(rise))
      if (i > 0 && i + 1 < count) bend[i] = Math.max(bend[i]!, Math.abs(rise - last))
      last = rise
    }
  }
  // Where planes meet on the axis of type C, the candela have a tip like a cone's.
  if (apart === undefined && angles[0] === 0) bend[0] = slope[0]!
  return { angles, most, slope, bend }
}

/** The same, with what rises and bends from plane to plane. */
const withPlanes = (
  { slope, bend }: Bare,
  { planes, inPlane, candela }: PhotometricTable,
  apart: Float64Array,
): Pick<Profile, 'slope' | 'bend'> => {
  const rows = inPlane.length
  const across = new Float64Array(rows)
  const bent = new Float64Array(rows)
  for (let i = 0; i < rows; i++) {
    let last: number | undefined
    for (let p = 0; p + 1 < planes.length; p++) {
      const rise =
        ((candela[(p + 1) * rows + i]! - candela[p * rows + i]!) * degrees) /
        ((planes[p + 1]! - planes[p]!) * apart[i]!)
      across[i] = Math.max(across[i]!, Math.abs(rise))
      if (last !== undefined) bent[i] = Math.max(bent[i]!, Math.abs(rise - last))
      last = rise
    }
  }
  return {
    slope: slope.map((one, i) => Math.max(one, across[i]!, across[Math.min(i + 1, rows - 1)]!)),
    bend: bend.map((one, i) => Math.max(one, bent[i]!)),
  }
}

/** What a table has in some range of directions: candela, and candela a radian. */
export interface Rough {
  most: number
  slope: number
  bend: number
  /** Candela by which they rise and fall all in all. */
  varied: number
  /** It ends there, lit. */
  ends: boolean
}

const over = ({ angles, most, slope, bend, ends }: Profile, from: number, to: number, found: Rough): void => {
  const last = angles.length - 1
  found.most = 0
  found.slope = 0
  found.bend = 0
  found.varied = 0
  found.ends =
    (ends[0] && from < angles[0]! && to >= angles[0]!) ||
    (ends[1] && to > angles[last]! && from <= angles[last]!)
  if (to < angles[0]! || from > angles[last]!) return
  let i = before(angles, from)
  found.most = most[i]!
  for (; i < last && angles[i]! < to; i++) {
    if (angles[i]! > from && bend[i]! > found.bend) found.bend = bend[i]!
    if (slope[i]! > found.slope) found.slope = slope[i]!
    found.varied += (slope[i]! * (Math.min(angles[i + 1]!, to) - Math.max(angles[i]!, from))) / degrees
    if (most[i + 1]! > found.most) found.most = most[i + 1]!
  }
  if (from <= 0 && angles[0] === 0 && bend[0]! > found.bend) found.bend = bend[0]!
}

/** The last of rising angles that is not over this one, at least the first, not the very last. */
export const before = (angles: Float64Array, angle: number): number => {
  let low = 0
  let high = angles.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (angles[middle]! <= angle) low = middle
    else high = middle
  }
  return low
}

const none = (): Rough => ({ most: 0, slope: 0, bend: 0, varied: 0, ends: false })
const within = none()
const about = none()

/**
 * Over directions of a front that stands upright: from `right0` to `right1` and from `up0` to `up1`, `out` along its axis.
 * The answer holds until the next question.
 */
export const roughOver = (
  table: PhotometricTable,
  right0: number,
  right1: number,
  up0: number,
  up1: number,
  out: number,
): Rough => {
  const { inPlane, planes } = profilesOf(table)
  if (planes === undefined) {
    const near = Math.sqrt(nearest(right0, right1) ** 2 + nearest(up0, up1) ** 2)
    const far = Math.sqrt(farthest(right0, right1) ** 2 + farthest(up0, up1) ** 2)
    const [a, b] = [Math.atan2(near, out) * degrees, Math.atan2(far, out) * degrees]
    over(inPlane, Math.min(a, b), Math.max(a, b), within)
    return within
  }
  // Toward the pole, and in the plane that it stands on.
  const [pole0, pole1, side0, side1] =
    table.type === 'A' ? [up0, up1, -right1, -right0] : [-right1, -right0, up0, up1]
  const near = Math.sqrt(nearest(side0, side1) ** 2 + out * out)
  const far = Math.sqrt(farthest(side0, side1) ** 2 + out * out)
  over(
    inPlane,
    Math.atan2(pole0, pole0 < 0 ? near : far) * degrees,
    Math.atan2(pole1, pole1 > 0 ? near : far) * degrees,
    within,
  )
  const [a, b] = [Math.atan2(side0, out) * degrees, Math.atan2(side1, out) * degrees]
  if (out < 0 && side0 < 0 && side1 >= 0) over(planes, -180, 180, about)
  else over(planes, Math.min(a, b), Math.max(a, b), about)
  within.most = Math.min(within.most, about.most)
  within.slope = Math.max(within.slope, about.slope)
  within.bend = Math.max(within.bend, about.bend)
  within.varied += about.varied
  within.ends ||= about.ends
  return within
}

const nearest = (from: number, to: number): number => (from > 0 ? from : to < 0 ? -to : 0)
const farthest = (from: number, to: number): number => Math.max(-from, to)
