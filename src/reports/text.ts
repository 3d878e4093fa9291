/** A whole check for people. Findings that share a cause stand under it; a plan without findings takes one line. */
import type { CheckedPlan, Finding } from '../checker/finding.js'
import type { CheckRun } from '../tasks/check.js'
import { findingText } from './finding-text.js'
import { type Look, labelled, labelledWidth } from './look.js'
import { count } from './notation.js'
import { findingsSentence, levelCounts, notCheckedSentence, runSentence } from './sentences.js'
import { wrap } from './width.js'

export const text = (run: CheckRun, look: Look, all = false): string => {
  const blocks = run.plans.map((plan) => planText(plan, look, all))
  const closing = [
    ...(all ? [] : remarksOfRun(run.plans, look)),
    ...(run.plans.length > 1 || run.counts.accepted > 0 ? [runSentence(run.counts)] : []),
  ]
  const lines: string[] = []
  for (const [index, block] of blocks.entries()) {
    // One-line plans stand close together; findings get air around them.
    const before = blocks[index - 1]
    if (before !== undefined && (block.length > 1 || before.length > 1)) lines.push('')
    lines.push(...block)
  }
  if (closing.length > 0 && (blocks.at(-1)?.length ?? 0) > 1) lines.push('')
  return [...lines, ...closing].map((line) => `${line}\n`).join('')
}

const planText = (plan: CheckedPlan, look: Look, all: boolean): string[] => {
  const lines: string[] = []
  const saidRules = new Set<string>()
  let last: Finding | undefined
  const add = (finding: Finding): void => {
    const sameLine = last !== undefined && samePlace(last, finding)
    lines.push(...findingText(finding, plan, look, { sameLine, sameRule: saidRules.has(finding.rule) }))
    saidRules.add(finding.rule)
    last = finding
  }
  for (const group of byCause(plan.findings)) {
    if (lines.length > 0) lines.push('')
    last = undefined
    if (group.length > 1) {
      const head = `${plan.file}: ${count(group.length, 'finding')} of one cause: ${group[0]!.cause}`
      lines.push(look.paint.strong(look.show(head)))
    }
    group.forEach(add)
  }

  const head = look.show(plan.file)
  const found = findingsSentence(levelCounts(plan))
  const says = found === '' ? 'nothing found against it' : found
  const accepted = plan.accepted.length === 0 ? [] : [`${count(plan.accepted.length, 'finding')} accepted`]
  const left = notCheckedSentence(plan.notChecked)
  const hint = left === undefined || all || found === '' ? '' : ' (--all lists them)'
  const summary = `${head}: ${[says, ...accepted, ...(left === undefined ? [] : [left])].join('; ')}${hint}`
  return [...lines, ...(lines.length > 0 ? [''] : []), summary, ...(all ? inFull(plan, look) : [])]
}

/** What `--all` adds: accepted findings, how the light was computed, what was not checked and what would let it. */
const inFull = (plan: CheckedPlan, look: Look): string[] => {
  const words = (label: string, says: string): string[] =>
    labelled(label, wrap(look.show(says), labelledWidth), look)
  return [
    ...plan.accepted.flatMap(({ rule, because, finding }) =>
      words('accepted', `${rule} (line ${finding.place.line}): ${finding.message}; because ${because}`),
    ),
    ...plan.remarks.flatMap((remark) => words('light', remark)),
    ...plan.notChecked.flatMap(({ rule, because, enable }) =>
      words('left out', `${rule}: ${because}${enable === undefined ? '' : `; write ${enable.text}`}`),
    ),
  ]
}

/** Each remark once for the run, with the number of plans where it does not hold for all. */
const remarksOfRun = (plans: readonly CheckedPlan[], look: Look): string[] => {
  const remarks = new Map<string, number>()
  for (const plan of plans) {
    for (const remark of plan.remarks) remarks.set(remark, (remarks.get(remark) ?? 0) + 1)
  }
  return [...remarks].flatMap(([remark, number]) => {
    const says = number === plans.length ? remark : `${remark} (${count(number, 'plan')})`
    return labelled('light', wrap(look.show(says), labelledWidth), look)
  })
}

const samePlace = (a: Finding, b: Finding): boolean =>
  a.place.file === b.place.file && a.place.start === b.place.start && a.place.end === b.place.end

/** In order of the findings; those of one cause stand where the first of them stands. */
const byCause = (findings: readonly Finding[]): Finding[][] => {
  const groups: Finding[][] = []
  const causes = new Map<string, Finding[]>()
  for (const finding of findings) {
    const group = finding.cause === undefined ? undefined : causes.get(finding.cause)
    if (group !== undefined) {
      group.push(finding)
      continue
    }
    const fresh = [finding]
    groups.push(fresh)
    if (finding.cause !== undefined) causes.set(finding.cause, fresh)
  }
  return groups
}
