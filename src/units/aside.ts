/** Lengths to one side: `30 cm right`. Left and right are as seen from the camera's end. */
import { reader, space, whole } from './grammar.js'
import { lengthBody, metresOf, readLength, withinLongest } from './length.js'
import { type Parsed, parsed } from './parsed.js'
import { type Metres, metres } from './quantity.js'

export const pattern = whole(`(${lengthBody})${space}(?:camera[- ])?(left|right)`)

/** Metres, positive to the right. */
export const readAside: (text: string) => Parsed<Metres> = reader(
  pattern,
  (length, side) => {
    const value = withinLongest(metresOf(length!))
    return value.ok ? parsed(metres(side === 'left' ? -value.value : value.value)) : value
  },
  (text) =>
    readLength(text).ok
      ? `say on which side: write ${text} left or ${text} right`
      : 'write 30 cm left or 30 cm right',
)
