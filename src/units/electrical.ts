/** Energy, mains and weight: `400 Ws`, `230 V`, `16 A`, `1500 W`, `50 Hz`, `4 kg`. */
import { decimal, gap, reader, refusal, whole } from './grammar.js'
import { type Parsed, parsed, refused } from './parsed.js'
import type { Quantity } from './quantity.js'
import { type Amperes, as, type Kilograms, type Volts, type WattSeconds, type Watts } from './quantity.js'

export const energyPattern = whole(`(${decimal})${gap}(?:Ws|ws|WS|J)`)
export const voltsPattern = whole(`(${decimal})${gap}[Vv]`)
export const amperesPattern = whole(`(${decimal})${gap}(?:A|a|amps?)`)
export const wattsPattern = whole(`(${decimal})${gap}(kW|[Ww])`)
export const mainsPattern = whole(`(50|60)${gap}[Hh][Zz]`)
export const weightPattern = whole(`(${decimal})${gap}(kg|g|lbs?)`)

const kilograms: Readonly<Record<string, number>> = { kg: 1, g: 1 / 1000, lb: 0.45359237, lbs: 0.45359237 }

/** A reader for a number and its unit, from over zero up to `most`. */
const plain = <Q extends Quantity<string>>(
  pattern: string,
  what: string,
  unit: string,
  example: string,
  most: number,
  factor: (unit: string | undefined) => number = () => 1,
): ((text: string) => Parsed<Q>) =>
  reader(
    pattern,
    (text, written) => {
      const value = Number(text) * factor(written)
      return value <= most ? parsed(as<Q>(value)) : refused(`${what} goes up to ${most} ${unit}`)
    },
    refusal({
      what,
      examples: example,
      pattern,
      bare: (text) => `${what} needs its unit: write ${text.replace(/^[-+\u2212]/u, '')} ${unit}`,
    }),
  )

export const readEnergy = plain<WattSeconds>(energyPattern, 'energy', 'Ws', '400 Ws', 100_000)
export const readVolts = plain<Volts>(voltsPattern, 'voltage', 'V', '230 V', 1000)
export const readAmperes = plain<Amperes>(amperesPattern, 'current', 'A', '16 A', 1000)
export const readWatts = plain<Watts>(wattsPattern, 'a load', 'W', '1500 W', 1_000_000, (unit) =>
  unit === 'kW' ? 1000 : 1,
)
/** Hertz: there are no other mains than these two. */
export const readMains = reader<50 | 60>(
  mainsPattern,
  (text) => parsed(text === '50' ? 50 : 60),
  refusal({
    what: 'the frequency of mains',
    examples: '50 Hz or 60 Hz',
    pattern: mainsPattern,
    bare: (text) => (text === '50' || text === '60' ? `write ${text} Hz` : 'mains have 50 Hz or 60 Hz'),
  }),
)
export const readWeight = plain<Kilograms>(
  weightPattern,
  'weight',
  'kg',
  '4 kg',
  10_000,
  (unit) => kilograms[unit ?? 'kg'] ?? 1,
)
