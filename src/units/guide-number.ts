/** Guide numbers at ISO 100: `36 m at 35 mm`, `118 ft at 35 mm`, `36 m` for heads that do not zoom. */
import { decimal, gap, isBare, reader, space, whole } from './grammar.js'
import { metresOf } from './length.js'
import { parsed, refused } from './parsed.js'
import { type Metres, metres } from './quantity.js'

export const pattern = whole(
  `(?:GN${gap})?(${decimal}${gap}(?:m|ft|feet))(?:${space}at${space}(${decimal})${gap}mm)?`,
)

export interface ReadGuideNumber {
  /** Metres times f-number at ISO 100. */
  readonly metres: number
  /** Focal length of the zoom setting; undefined where none is written. */
  readonly zoom: Metres | undefined
}

export const readGuideNumber = reader<ReadGuideNumber>(
  pattern,
  (number, zoom) => {
    const value = metresOf(number!)
    if (!(value >= 0.5 && value <= 1000)) return refused('guide numbers run from 0.5 m to 1000 m')
    if (zoom === undefined) return parsed({ metres: value, zoom: undefined })
    const focal = Number(zoom)
    return focal >= 1 && focal <= 1000
      ? parsed({ metres: value, zoom: metres(focal / 1000) })
      : refused('zoom settings run from 1 mm to 1000 mm')
  },
  (text) =>
    isBare(text)
      ? `a guide number needs its unit and zoom, which matters by over a stop: write ${text.replace(/^[-+\u2212]/u, '')} m at 35 mm`
      : 'a guide number is written 36 m at 35 mm',
)
