/** What a unit meters at a distance: `f/8 at 2 m`. */
import { apertureBody, readAperture } from './aperture.js'
import { reader, space, whole } from './grammar.js'
import { lengthBody, metresOf, withinLongest } from './length.js'
import { type Parsed, parsed, refused } from './parsed.js'
import type { FNumber, Metres } from './quantity.js'

export const pattern = whole(`(${apertureBody})${space}at${space}(${lengthBody})`)

export interface ReadMetered {
  readonly reads: FNumber
  readonly distance: Metres
}

export const readMetered: (text: string) => Parsed<ReadMetered> = reader(
  pattern,
  (aperture, length) => {
    const reads = readAperture(aperture!)
    if (!reads.ok) return reads
    const distance = withinLongest(metresOf(length!))
    if (!distance.ok) return distance
    return distance.value > 0
      ? parsed({ reads: reads.value, distance: distance.value })
      : refused('a reading is taken at a distance over zero')
  },
  (text) => (readAperture(text).ok ? `say at what distance: write ${text} at 2 m` : 'write f/8 at 2 m'),
)
