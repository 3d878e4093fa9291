/**
 * Gear of the twenty sets, and how far what it gives may be off its rating: standard deviations in stops of the
 * project's table of priors, written down here once more so that a slip in the program shows as a wrong share.
 */
import type { Draw } from './draw.js'

export interface Gear {
  /** Keys of the light in the plan. */
  readonly text: string
  /** Lowest share of full power that it can be set to. */
  readonly least: number
  /** Parts that all lights of one entry have alike. */
  readonly shared: readonly { readonly entry: string; readonly u: number }[]
}

/** What two lights of one entry do not share. */
const own = 0.15

const units = {
  flashgun: { u: 0.35, least: 1 / 128 },
  'head 200 Ws': { u: 0.4, least: 1 / 32 },
  'head 400 Ws': { u: 0.4, least: 1 / 32 },
  'head 600 Ws': { u: 0.4, least: 1 / 32 },
  'own-gun': { u: 0.35, least: 1 / 128 },
  'own-head': { u: 0.2, least: 1 / 256 },
} as const

/** Losses that nobody measured; those of `own-…` are stated by the kit. */
const builtIn = 0.6
const stated = 0.2

export const kit = `kit:
  units:
    own-gun: { guide-number: 40 m at 35 mm, power: { from: 1/128, to: full, step: 1/3 stop }, zoom: 24..105 mm }
    own-head: { energy: 500 Ws, reflector: 60 deg, meters: f/16 at 2 m, power: { from: 1/256, to: full, step: 0.1 stop } }
  modifiers:
    own-box: { kind: softbox, size: 70 x 100 cm, loss: 2.2 stops }
    own-umbrella: { kind: white umbrella, size: 1 m, loss: 2 stops }`

export const gear = (unit: keyof typeof units, modifier?: string): Gear => {
  const { u, least } = units[unit]
  return {
    text: `unit: ${unit}${modifier === undefined ? '' : `, modifier: ${modifier}`}`,
    least,
    shared: [
      { entry: `unit ${unit}`, u: Math.sqrt(u ** 2 - own ** 2) },
      ...(modifier === undefined
        ? []
        : [{ entry: `modifier ${modifier}`, u: modifier.startsWith('own-') ? stated : builtIn }]),
    ],
  }
}

/** Stops that each light truly gives over its rating: what an entry is off by, all its lights are. */
export const offRatings = (lights: readonly { readonly gear: Gear }[], draw: Draw): readonly number[] => {
  const entries = new Map<string, number>()
  return lights.map(({ gear: { shared } }) =>
    shared.reduce((sum, { entry, u }) => {
      const drawn = entries.get(entry) ?? draw.normal()
      entries.set(entry, drawn)
      return sum + u * drawn
    }, own * draw.normal()),
  )
}
