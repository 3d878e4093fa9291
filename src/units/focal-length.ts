/** Focal lengths of lenses and zoom settings of flash heads: `85 mm`; ranges of them: `24..105 mm`. */
import { decimal, gap, reader, refusal, whole } from './grammar.js'
import { type Parsed, parsed, refused } from './parsed.js'
import { type Metres, metres } from './quantity.js'

const to = `${gap}(?:mm${gap})?(?:\\.\\.|to|–)${gap}`

export const pattern = whole(`(${decimal})${gap}mm`)
export const rangePattern = whole(`(${decimal})${to}(${decimal})${gap}mm`)

const inRange = (millimetres: number): Parsed<Metres> =>
  millimetres >= 1 && millimetres <= 5000
    ? parsed(metres(millimetres / 1000))
    : refused('focal lengths run from 1 mm to 5000 mm')

/** Metres. */
export const readFocalLength = reader(
  pattern,
  (value) => inRange(Number(value)),
  refusal({
    what: 'a focal length',
    examples: '85 mm',
    pattern,
    bare: (text) => `write ${text.replace(/^[-+\u2212]/u, '')} mm`,
  }),
)

/** Metres, shortest first. */
export const readFocalRange: (text: string) => Parsed<{ readonly from: Metres; readonly to: Metres }> =
  reader(
    rangePattern,
    (a, b) => {
      const from = inRange(Number(a))
      const to = inRange(Number(b))
      if (!from.ok) return from
      if (!to.ok) return to
      return from.value <= to.value
        ? parsed({ from: from.value, to: to.value })
        : refused(`write the shorter end first: ${b}..${a} mm`)
    },
    () => 'a zoom range is written 24..105 mm',
  )
