/** Lights mixed at one place: they add in tristimulus values, never in kelvin or mired. */
import type { Mired } from '../../units/quantity.js'
import { add, type Causes, independent } from '../causes.js'
import { addXyz, apartUv, uvOfXyz, type Xyz } from './chromaticity.js'
import type { LightColour } from './light-colour.js'
import { miredOf } from './mired.js'
import { uvPerMired, type White, whiteOfXyz } from './white.js'

/** What one light gives at a place. */
export interface MixPart {
  readonly light: string
  /** Y in lx·s; off the light's own colour by what surfaces added to it. */
  readonly xyz: Xyz
  readonly colour: LightColour
}

export interface Mix extends White {
  /** Y in lx·s. */
  readonly xyz: Xyz
  readonly mired: Mired
  readonly parts: readonly MixPart[]
  /** Share of the light there whose colour nothing tells; it is left out of all else. */
  readonly unknown: number
  /** What makes it uncertain, mired by cause. */
  readonly causes: Causes
  /** ∂mired/∂(log₂ strength) by light. */
  readonly gradient: ReadonlyMap<string, number>
}

/** Undefined where there is no light of known colour. */
export const mixOf = (parts: readonly MixPart[], unknown: number): Mix | undefined => {
  const xyz = addXyz(parts.map((part) => part.xyz))
  if (!(xyz[1] > 0)) return undefined
  const white = whiteOfXyz(xyz)
  const mired = miredOf(white.kelvin)
  const causes = new Map<string, number>()
  const gradient = new Map<string, number>()
  for (const part of parts) {
    const share = part.xyz[1] / xyz[1]
    for (const [cause, by] of part.colour.causes) add(causes, cause, share * by)
    // To first order mixtures lie between in mireds by their shares.
    add(gradient, part.light, Math.LN2 * share * (part.colour.mired - mired))
  }
  return { ...white, xyz, mired, parts, unknown, causes, gradient }
}

/** How far one light is from another in colour. */
export interface Apart {
  /** Warmer, mired. */
  readonly warmer: number
  /** Greener: difference of the distances from the locus. */
  readonly greener: number
  /** As far apart as two lights on the locus so many mired apart, in the 1960 diagram. Never negative. */
  readonly mired: number
}

type Coloured = Pick<Mix, 'xyz' | 'mired' | 'duv'>

/** How far the first is from the second. */
export const colourApart = (a: Coloured, b: Coloured): Apart => ({
  warmer: a.mired - b.mired,
  greener: a.duv - b.duv,
  mired: apartUv(uvOfXyz(a.xyz), uvOfXyz(b.xyz)) / uvPerMired((a.mired + b.mired) / 2),
})

/** Standard uncertainty of the difference of two colours by what their lights' colours are known to, mired: shared parts cancel. */
export const uOfColours = (a: Causes, b: Causes): number => {
  const row = new Map(a)
  for (const [cause, by] of b) add(row, cause, -by)
  return Math.sqrt(independent.product(row, row))
}
