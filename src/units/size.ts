/** Sizes, width by height as they stand: `60 x 90 cm`, `1 x 1.4 m`, `1 m x 140 cm`, `5 x 7 ft`. */
import { gap, number, reader, toNumber, whole } from './grammar.js'
import { type LengthStyle, lengthBody, metresOf, unitOf, withinLongest, writeLength } from './length.js'
import { type Parsed, parsed, refused } from './parsed.js'
import type { Metres } from './quantity.js'

const by = `${gap}[x×X]${gap}`

/** Holds no capturing group. */
export const sizeBody = `(?:${lengthBody}|${number})${by}${lengthBody}`
export const pattern = whole(`(${lengthBody}|${number})${by}(${lengthBody})`)

export interface ReadSize {
  readonly width: Metres
  readonly height: Metres
}

const unitMissing = new RegExp(whole(`(${number})${by}(${number})`), 'u')
const single = new RegExp(whole(lengthBody), 'u')

/** Metres, both over zero. A width without a unit takes that of the height. */
export const readSize: (text: string) => Parsed<ReadSize> = reader(
  pattern,
  (a, b) => {
    const width = withinLongest(metresOf(a!, unitOf(b!)))
    const height = withinLongest(metresOf(b!))
    if (!width.ok) return width
    if (!height.ok) return height
    return width.value > 0 && height.value > 0
      ? parsed({ width: width.value, height: height.value })
      : refused('a size is over zero both ways')
  },
  (text) => {
    if (unitMissing.test(text)) {
      const [, a, b] = unitMissing.exec(text)!
      return `a size needs its unit: write ${a} x ${b} ${Math.max(toNumber(a!), toNumber(b!)) > 12 ? 'cm' : 'm'}`
    }
    return single.test(text)
      ? `a size is width by height: write ${text} x ${text}`
      : 'a size is written 60 x 90 cm, width by height as it stands'
  },
)

/** `60 x 90 cm`; both sides in one unit where the style has one. */
export const writeSize = (size: ReadSize, style: LengthStyle = 'cm'): string => {
  const width = writeLength(size.width, style)
  const height = writeLength(size.height, style)
  const [value, unit] = width.split(' ')
  return unit !== undefined &&
    width.split(' ').length === 2 &&
    height.endsWith(` ${unit}`) &&
    height.split(' ').length === 2
    ? `${value} x ${height}`
    : `${width} x ${height}`
}
