import { ascii, visible } from './visible.js'

/** Colours, given from outside; meaning is never in colour alone. */
export interface Paint {
  readonly error: (text: string) => string
  readonly warning: (text: string) => string
  readonly note: (text: string) => string
  readonly strong: (text: string) => string
  readonly faint: (text: string) => string
}

const same = (text: string): string => text
export const unpainted: Paint = { error: same, warning: same, note: same, strong: same, faint: same }

/** How a text report looks. */
export interface Look {
  readonly paint: Paint
  /** Text as it may be shown: what is hidden made visible, and spelled in ASCII where that is wanted. */
  readonly show: (text: string) => string
}

export const look = (options: { readonly paint?: Paint; readonly ascii?: boolean } = {}): Look => ({
  paint: options.paint ?? unpainted,
  show: options.ascii ? (text) => ascii(visible(text)) : visible,
})

/** Columns that a report keeps to where it may break a line; the same everywhere, so that reports can be compared. */
export const pageWidth = 100

/** A labelled line in the look of a finding: `    why · …`, broken below itself. */
export const labelled = (label: string, lines: readonly string[], look: Look): string[] =>
  lines.map((line, index) => {
    const head = `${(index === 0 ? label : '').padStart(labelWidth)} ${index === 0 ? look.show('·') : ' '}`
    return line === '' ? head.trimEnd() : `${look.paint.faint(head)} ${line}`
  })

export const labelWidth = 8
/** Columns left for what stands behind a label. */
export const labelledWidth = pageWidth - labelWidth - 3
