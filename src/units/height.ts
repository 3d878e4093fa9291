/** Heights: `2 m` from the floor, `20 cm over table`. */
import { gap, reader, space, whole } from './grammar.js'
import { lengthBody, metresOf, readLength, withinLongest } from './length.js'
import { type Parsed, parsed } from './parsed.js'
import type { Metres } from './quantity.js'

export const pattern = whole(
  `(${lengthBody})(?:${space}(?:over|above)${space}(?:the${space})?(table|floor))?`,
)

export interface ReadHeight {
  readonly over: 'floor' | 'table'
  readonly metres: Metres
}

const start = new RegExp(`^${gap}${lengthBody}`, 'u')

export const readHeight: (text: string) => Parsed<ReadHeight> = reader(
  pattern,
  (length, over) => {
    const value = withinLongest(metresOf(length!))
    return value.ok ? parsed({ over: over === 'table' ? 'table' : 'floor', metres: value.value }) : value
  },
  (text) => {
    if (start.test(text)) return 'a height is written 2 m, or 20 cm over table'
    const length = readLength(text)
    return length.ok ? 'a height is written 2 m, or 20 cm over table' : length.says
  },
)
