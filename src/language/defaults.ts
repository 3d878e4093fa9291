/**
 * What a plan means where it says nothing. One table for people to read; the parts that depend on others are functions.
 * Lengths in metres.
 */
import { degrees, metres, powerShare, seconds, stops } from '../units/quantity.js'
import type { Role } from './plan.js'

export const sensors = {
  'full frame': { width: metres(0.036), height: metres(0.024) },
  // From memory; makers differ by a few tenths of a millimetre.
  'aps-c': { width: metres(0.0235), height: metres(0.0156) },
  'four thirds': { width: metres(0.0173), height: metres(0.013) },
} as const

export const camera = {
  sensor: sensors['full frame'],
  sync: seconds(1 / 160),
  shutterKind: 'focal-plane',
  headroom: stops(1 / 4),
  filter: stops(0),
  exposure: 'manual',
  /** Held by a person unless the shutter is slower than this. */
  slowestByHand: seconds(1 / 60),
} as const

export const person = {
  height: metres(1.72),
  width: metres(0.45),
  depth: metres(0.28),
  reflectance: 0.35,
  /** Height of the face as a share of the height, standing. */
  standing: 0.94,
  seated: metres(1.2),
  /** On the back: the depth of a head. */
  lying: metres(0.2),
} as const

/** An object is as wide and as deep as it is high. */
export const object = { height: metres(0.3) } as const

/** What an object that mirrors is like: a bottle where it is taller than wide. */
export const shapeOf = (height: number, width: number): 'cylinder' | 'ball' =>
  height > width ? 'cylinder' : 'ball'

/** A table top that states no size. */
export const table = { surface: 'white board', width: metres(1), depth: metres(1) } as const

export const backdrop = {
  width: metres(2.72),
  height: metres(2.8),
  /** A sky is as far off as the language's lengths go. */
  sky: metres(1000),
} as const

export const room = { walls: 0.5, ceiling: 'white ceiling', floor: 0.3, behindBackdrop: metres(0.4) } as const

/** Settings of a unit whose kit entry states none: of battery flashes with a zoom head, and of other heads. */
export const power = {
  zoomHead: { from: powerShare(1 / 128), to: powerShare(1), step: stops(1 / 3) },
  head: { from: powerShare(1 / 32), to: powerShare(1), step: stops(0.1) },
  lamp: { from: powerShare(0.01), to: powerShare(1), step: stops(0.1) },
} as const

/** A head's standard reflector spreads 55 to 65 degrees. */
export const standardReflector = degrees(60)

/** A zoom head that does not say what it is set to. */
export const zoom = metres(0.035)

/** sRGB codes. */
export const tones = { grey: [50, 180], black: [0, 30] } as const

/** Where a light of a role points, unless it says so itself. */
export const aimOf: Readonly<Record<Role, string>> = {
  key: 'subject',
  fill: 'subject',
  rim: 'subject-back',
  hair: 'hair',
  kicker: 'subject',
  backdrop: 'backdrop',
  effect: 'subject',
}

const roles = Object.keys(aimOf) as readonly Role[]

/** The role that a light's name begins with: `rim`, `rim-left`, `rim 2`. */
export const roleInName = (name: string): Role | undefined => {
  const [first] = name.toLowerCase().split(/[-_ 0-9]/, 1)
  return roles.find((role) => role === first)
}

/**
 * The role of a light that neither says one nor is named by one. The first is the key, unless another light is. Any other is
 * what it is aimed at: the backdrop's; the subject's, and then a fill, since a meter at the face counts it; else an effect.
 */
export const roleByPlace = (
  first: boolean,
  keyElsewhere: boolean,
  aim: string | undefined,
  subjectPoints: (point: string) => boolean,
): Role => {
  if (aim !== undefined && /^backdrop(-|$)/.test(aim)) return 'backdrop'
  if (first && !keyElsewhere) return 'key'
  return aim === undefined || subjectPoints(aim) ? 'fill' : 'effect'
}
