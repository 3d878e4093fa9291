/** Casts and the gels against them, in the trade's words. */
import { colourNames, readColour } from '../../language/catalogue/colours.js'
import { type GelRow, gelRow, gelTable, greenTable } from '../../language/catalogue/gels.js'
import type { Surface } from '../../language/plan.js'
import { labOfRgb } from '../../light/colour/lab.js'
import { linearRgb } from '../../light/colour/linear.js'
import { miredOf, shiftBetween } from '../../light/colour/mired.js'
import { type Apart, colourApart } from '../../light/colour/mix.js'
import { usualDuv, type White, xyzOfWhite } from '../../light/colour/white.js'

/** A share of the whole from which on a part of a cast is worth a word. */
const worth = 0.4

/** `warmer`, `cooler`, `greener`, `warmer and greener`: of the first against the second. */
export const castText = ({ warmer, greener, mired }: Apart): string => {
  const plain = warmer > 0 ? 'warmer' : 'cooler'
  const green = greener > 0 ? 'greener' : 'more magenta'
  const temperature = Math.abs(warmer) / mired
  const tint = Math.sqrt(Math.max(0, 1 - temperature ** 2))
  if (tint < worth) return plain
  return temperature < worth ? green : `${plain} and ${green}`
}

export const miredText = (mired: number): string => `${Math.round(mired)} mired`

/** To tens; as colour temperatures are written. */
export const kelvinText = (kelvin: number): string => `${Math.round(kelvin / 10) * 10} K`

/** `34 mired`, and what of a gel would take a tint that is worth a word: `34 mired (about 1/2 minus-green)`. */
export const apartText = (apart: Apart): string =>
  `${miredText(apart.mired)}${isGreen(apart) ? ` (${greenText(-apart.greener)})` : ''}`

/** Eighths of a full sheet, as gels are spoken of. */
const strengths: readonly (readonly [eighths: number, name: string])[] = [
  [1, '1/8'],
  [2, '1/4'],
  [4, '1/2'],
  [6, '3/4'],
  [8, 'full'],
]

const fullGreen = gelRow('full plus-green')!.duv

const greenText = (duv: number): string => {
  const eighths = (8 * Math.abs(duv)) / fullGreen
  const off = ([one]: readonly [number, string]): number => Math.abs(one - eighths)
  const [most, name] = strengths.reduce((best, one) => (off(one) < off(best) ? one : best))
  return `${most === 8 && eighths > 10 ? 'more than' : 'about'} ${name} ${duv > 0 ? 'plus' : 'minus'}-green`
}

const isGreen = ({ warmer, greener, mired }: Apart): boolean =>
  greener !== 0 && Math.abs(warmer) / mired < Math.sqrt(1 - worth ** 2)

const isWarm = ({ warmer, mired }: Apart): boolean => Math.abs(warmer) / mired >= worth

interface Sheets {
  /** `full and 1/4 CTO`. */
  readonly name: string
  readonly value: number
  /** Stops. */
  readonly loss: number
}

/** Less than this no gel mends: mired, and in the 1960 diagram. */
const least = { shift: 5, duv: 0.0015 } as const
/** As near as this one sheet is near enough: mired, and in the 1960 diagram. */
const near = { shift: 10, duv: 0.003 } as const

/** One sheet or two of a kind; undefined where nothing that is sold brings it half way. */
const sheetsFor = (rows: readonly GelRow[], wanted: number, of: 'shift' | 'duv'): Sheets | undefined => {
  if (Math.abs(wanted) < least[of]) return undefined
  const way = rows.filter((row) => row[of] * wanted > 0).sort((a, b) => Math.abs(b[of]) - Math.abs(a[of]))
  const one = way.map((row): Sheets => ({ name: row.name, value: row[of], loss: row.loss }))
  const two = way.flatMap((a, i) =>
    way.slice(i).map(
      (b): Sheets => ({
        name: a === b ? `two sheets of ${a.name}` : `${a.name.split(' ')[0]} and ${b.name}`,
        value: a[of] + b[of],
        loss: a.loss + b.loss,
      }),
    ),
  )
  const off = ({ value }: Sheets): number => Math.abs(value - wanted)
  const nearest = (all: readonly Sheets[]): Sheets =>
    all.reduce((best, each) => (off(each) < off(best) ? each : best))
  const single = nearest(one)
  const best = off(single) <= near[of] ? single : nearest([...one, ...two])
  return off(best) > Math.abs(wanted) / 2 ? undefined : best
}

const greenGel = (duv: number): Sheets | undefined => sheetsFor(greenTable, duv, 'duv')

export interface GelAdvice {
  /** `3/4 CTO`, `1/2 minus-green`, `1/4 CTO and 1/8 minus-green`. */
  readonly name: string
  /** `+131 of +134 mired`; empty for green alone. */
  readonly come: string
  /** Stops. */
  readonly loss: number
}

/** Gels that take a light from one colour to another; undefined where none that are sold bring it half way. */
export const gelBetween = (from: White, to: White): GelAdvice | undefined => {
  const apart = colourApart(asLight(from), asLight(to))
  if (apart.mired === 0) return undefined
  const shift = shiftBetween(from.kelvin, to.kelvin)
  const warm = isWarm(apart) ? sheetsFor(gelTable, shift, 'shift') : undefined
  // A gel that converts keeps what a light is greener than usual.
  const green = isGreen(apart) ? greenGel(greenerThanUsual(to) - greenerThanUsual(from)) : undefined
  const sheets = [warm, green].filter((one) => one !== undefined)
  if (sheets.length === 0) return undefined
  return {
    name: sheets.map(({ name }) => name).join(' and '),
    come: warm === undefined ? '' : `${signed(warm.value)} of ${signed(shift)} mired`,
    loss: sheets.reduce((sum, { loss }) => sum + loss, 0),
  }
}

/** A light of this colour. */
export const asLight = (white: White) => ({ ...white, xyz: xyzOfWhite(white), mired: miredOf(white.kelvin) })

/** How much greener than light of its temperature usually is. */
export const greenerThanUsual = ({ kelvin, duv }: White): number => duv - usualDuv(kelvin)

const signed = (value: number): string => `${value < 0 ? '-' : '+'}${Math.abs(Math.round(value))}`

/** The colour of a surface: as its name says, else the named one that it looks most like. */
export const colourWord = ({ name, colour }: Pick<Surface, 'name' | 'colour'>): string => {
  const said = name.split(' ').find((word) => colourNames.includes(word))
  if (said !== undefined) return said
  if (colour === undefined) return 'grey'
  const own = labOfRgb(linearRgb(colour))
  const off = (name: string): number => {
    const { l, a, b } = labOfRgb(linearRgb(readColour(name)!))
    return Math.hypot(l - own.l, a - own.a, b - own.b)
  }
  return colourNames
    .filter((name) => !greys.has(name))
    .reduce((best, name) => (off(name) < off(best) ? name : best))
}

const greys: ReadonlySet<string> = new Set(['white', 'grey', 'black'])
