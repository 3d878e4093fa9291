/** An exposure scale in thirds of a stop: where a figure lies, how sure that is, and where it should be. */
import type { ExposureScale } from '../rules/rule.js'
import type { Look } from './look.js'
import { signed } from './notation.js'

const widestThird = 3
/** Beyond this many stops a figure is drawn at the end of the scale, as `<` or `>`. */
const farthest = 5

export const scale = (figure: ExposureScale, look: Look, columns: number): string[] => {
  const wanted = [figure.value - 2 * figure.u, figure.value + 2 * figure.u, figure.needs]
  const from = Math.max(-farthest, Math.min(-2, Math.floor(Math.min(...wanted))))
  const to = Math.min(farthest, Math.max(2, Math.ceil(Math.max(...wanted))))
  const fitting = Math.floor((columns - 2) / (3 * (to - from)))
  const columnsPerStop = 3 * Math.max(1, Math.min(widestThird, fitting))
  const column = (stops: number): number =>
    Math.round((Math.min(to, Math.max(from, stops)) - from) * columnsPerStop) + 1

  const ruler = new Row(column(to) + 1)
  for (let third = from * 3; third <= to * 3; third += 1) {
    const label = third % 3 === 0 ? signed(third / 3, 0) : '.'
    ruler.put(column(third / 3) - label.length + 1, label)
  }

  const marks = new Row(column(to) + 1)
  marks.put(column(figure.needs), '|')
  marks.put(column(figure.value - 2 * figure.u), '[')
  marks.put(column(figure.value + 2 * figure.u), ']')
  marks.put(column(figure.value), figure.value < from ? '<' : figure.value > to ? '>' : '▲')

  const says = `needs ${signed(figure.needs, 1)} ${figure.against}, is ${signed(figure.value, 1)} ± ${(2 * figure.u).toFixed(1)}`
  const marked = look.show(marks.text())
  const said = look.show(says)
  return marked.length + 3 + said.length <= columns
    ? [ruler.text(), `${marked}   ${said}`]
    : [ruler.text(), marked, said]
}

/** Characters at columns; a later one stands over an earlier one. */
class Row {
  private readonly cells: string[]
  constructor(columns: number) {
    this.cells = Array.from({ length: columns }, () => ' ')
  }
  put(column: number, text: string): void {
    for (const [index, one] of [...text].entries()) this.cells[column + index] = one
  }
  text(): string {
    return this.cells.join('').replace(/ +$/, '')
  }
}
