/** One finding for people: the line of the plan, the figure on a scale, why, what mends it, what it rests on. */
import type { CheckedPlan, Finding } from '../checker/finding.js'
import type { Place } from '../text/place.js'
import { brokenGnuLine, gnuLine } from './lines.js'
import { type Look, labelled, labelledWidth } from './look.js'
import { scale } from './scale.js'
import { adviceSentence } from './sentences.js'
import { sourceLine } from './source-line.js'
import { width, wrap } from './width.js'

export interface Shown {
  /** Leave the plan's line out: the finding before has shown it. */
  readonly sameLine?: boolean
  /** Leave out what the rule rests on: a finding of the same rule has said it. */
  readonly sameRule?: boolean
  /** The same is found on the other side, and shown in full there: only what and where. */
  readonly asOther?: boolean
  /** What findings of the same cause have advised before: said once, by its title. */
  readonly advised?: ReadonlySet<string>
}

export const findingText = (finding: Finding, plan: CheckedPlan, look: Look, shown: Shown = {}): string[] => {
  const words = (label: string, text: string): string[] =>
    text.trim() === '' ? [] : labelled(label, wrap(look.show(text), labelledWidth(look)), look)
  return [
    ...(look.terminal ? brokenGnuLine(finding, look) : [gnuLine(finding, look)]),
    ...(shown.sameLine ? [] : written(finding.place, plan, look)),
    ...(shown.asOther ? words('mend', 'as above, on the other side') : inFull(finding, look, shown, words)),
  ]
}

const inFull = (
  finding: Finding,
  look: Look,
  shown: Shown,
  words: (label: string, text: string) => string[],
): string[] => [
  ...(finding.scale === undefined
    ? []
    : labelled('stops', scale(finding.scale, look, labelledWidth(look)), look)),
  ...words('why', finding.why),
  ...alsoText(finding).flatMap((says) => words('also', says)),
  ...adviceText(finding, shown.advised).flatMap((says, index) => words(index === 0 ? 'mend' : 'or', says)),
  ...(shown.sameRule ? [] : labelled('basis', basisOf(finding, look), look)),
]

/** What is said of one line stands together. */
const alsoText = ({ also, place }: Finding): readonly string[] => {
  const by = new Map<string, string[]>()
  for (const one of also) {
    const line = where(one, place)
    by.set(line, [...(by.get(line) ?? []), one.says])
  }
  return [...by].map(([line, says]) => `${line}: ${[...new Set(says)].join('; ')}`)
}

const adviceText = ({ advice }: Finding, advised: ReadonlySet<string> = new Set()): readonly string[] => {
  const fresh = advice.filter(({ title }) => !advised.has(title))
  return fresh.length === 0 && advice.length > 0 ? ['as above'] : fresh.map(adviceSentence)
}

/** What it rests on, and the command that tells more, which is never broken. */
const basisOf = ({ basis, rule }: Finding, look: Look): string[] => {
  const command = `thirdstop explain ${rule}`
  const lines = basis === '' ? [] : wrap(look.show(basis), labelledWidth(look))
  const last = lines.at(-1)
  return last !== undefined && width(last) + 4 + command.length <= labelledWidth(look)
    ? [...lines.slice(0, -1), `${last}    ${command}`]
    : [...lines, command]
}

/** The line as written, numbered, and the stroke over what is meant. */
const written = (place: Place, plan: CheckedPlan, look: Look): string[] => {
  const text = plan.texts.get(place.file)
  const source = text === undefined ? undefined : sourceLine(text, place, look)
  if (source === undefined || source.line === '') return []
  const [head, stroke] = labelled(String(place.line), [source.line, source.mark], look)
  return [head!, stroke!]
}

const where = (place: Place, from: Place): string =>
  place.file === from.file ? `line ${place.line}` : `${place.file}:${place.line}:${place.column}`
