/** Angles: `45 deg`, with a side where they have one: `45 deg left`, `15 deg towards camera`. */
import { decimal, gap, reader, refusal, space, whole } from './grammar.js'
import { type Parsed, parsed, refused } from './parsed.js'
import { degrees, type Radians } from './quantity.js'

/** Holds no capturing group. */
export const angleBody = `${decimal}${gap}(?:°|deg(?:rees?)?)`

export const pattern = whole(`(${decimal})${gap}(?:°|deg(?:rees?)?)`)
/** Straight ahead and straight back have no side. */
export const sidedPattern = whole(
  `(?:(${decimal})${gap}(?:°|deg(?:rees?)?)${gap}(?:camera[- ])?(left|right)|(0|180)${gap}(?:°|deg(?:rees?)?))`,
)
export const featherPattern = whole(
  `(${decimal})${gap}(?:°|deg(?:rees?)?)${gap}towards?${space}(?:the${space})?(left|right|up|down|camera|backdrop)`,
)

export interface ReadAngle {
  readonly radians: Radians
  /** As seen from the camera's end; undefined for an angle without one, and for 0 and 180 degrees. */
  readonly side?: 'left' | 'right'
}

const inRange = (value: number): Parsed<Radians> =>
  value <= 360 ? parsed(degrees(value)) : refused('angles go up to 360 deg')

const unsigned = (text: string): string => text.replace(/^[-+\u2212]/u, '')

/** An angle without a side, in radians; up to a full turn. */
export const readAngle = reader<Radians>(
  pattern,
  (value) => inRange(Number(value)),
  refusal({
    what: 'an angle',
    examples: '45 deg',
    pattern,
    bare: (text) => `write ${unsigned(text)} deg`,
  }),
)

const withoutSide = new RegExp(pattern, 'u')

const sidedRefusal = refusal({
  what: 'an angle to one side',
  examples: '45 deg left or 45 deg right',
  pattern: sidedPattern,
  bare: (text) => `write ${unsigned(text)} deg left or ${unsigned(text)} deg right`,
})

/** An angle to one side, up to 180 degrees. */
export const readSidedAngle = reader<ReadAngle>(
  sidedPattern,
  (value, side, straight) => {
    if (straight !== undefined) return parsed({ radians: degrees(Number(straight)) })
    const size = Number(value)
    return size <= 180
      ? parsed({ radians: degrees(size), side: side === 'left' ? 'left' : 'right' })
      : refused('angles to one side go up to 180 deg: measure from the other side')
  },
  (text) =>
    withoutSide.test(text) ? `say on which side: write ${text} left or ${text} right` : sidedRefusal(text),
)

export type Towards = 'left' | 'right' | 'up' | 'down' | 'camera' | 'backdrop'

/** How far a light's aim is turned off its point, and to where; up to 90 degrees. */
export const readFeather: (text: string) => Parsed<{ readonly by: Radians; readonly towards: Towards }> =
  reader(
    featherPattern,
    (value, towards) => {
      const by = Number(value)
      return by <= 90
        ? parsed({ by: degrees(by), towards: towards as Towards })
        : refused('feathering goes up to 90 deg')
    },
    () => 'feathering is written 15 deg towards camera (or backdrop, left, right, up, down)',
  )

/** Whole degrees with one decimal where it matters. */
export const writeAngle = (radians: Radians, side?: 'left' | 'right'): string =>
  `${Number(((radians * 180) / Math.PI).toFixed(1))} deg${side === undefined ? '' : ` ${side}`}`
