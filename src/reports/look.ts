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
  /** Columns that a report keeps to where it may break a line. */
  readonly columns: number
  /** Whether people read it where it is printed: the first line of a finding is broken only there. */
  readonly terminal: boolean
}

export const look = (
  options: {
    readonly paint?: Paint
    readonly ascii?: boolean
    readonly columns?: number | undefined
    readonly terminal?: boolean
  } = {},
): Look => ({
  paint: options.paint ?? unpainted,
  show: options.ascii ? (text) => ascii(visible(text)) : visible,
  columns: Math.min(pageWidth, Math.max(narrowest, options.columns ?? pageWidth)),
  terminal: options.terminal ?? false,
})

/** Where nothing says how wide the page is, so that reports can be compared. Longer lines are hard to read. */
const pageWidth = 100
/** A narrower page would hold little but breaks. */
const narrowest = 60

/** A labelled line in the look of a finding: `    why · …`, broken below itself. */
export const labelled = (label: string, lines: readonly string[], look: Look): string[] =>
  lines.map((line, index) => {
    const head = `${(index === 0 ? label : '').padStart(labelWidth)} ${index === 0 ? look.show('·') : ' '}`
    return line === '' ? head.trimEnd() : `${look.paint.faint(head)} ${line}`
  })

const labelWidth = 8
/** Columns left for what stands behind a label. */
export const labelledWidth = ({ columns }: Look): number => columns - labelWidth - 3
