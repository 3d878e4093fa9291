/**
 * A whole check for people: first the plans with findings, then one line for each that nothing was found against.
 * Findings that share a cause stand under it.
 */
import type { CheckedPlan, Finding } from '../checker/finding.js'
import type { CheckRun } from '../tasks/check.js'
import { findingText } from './finding-text.js'
import { type Look, labelled, labelledWidth } from './look.js'
import { count } from './notation.js'
import { findingsSentence, levelCounts, notCheckedSentence, runSentence } from './sentences.js'
import { wrap } from './width.js'

export const text = (run: CheckRun, look: Look, all = false): string => {
  const several = run.plans.length > 1
  const isClean = (plan: CheckedPlan): boolean => several && plan.findings.length === 0
  const faulty = run.plans.filter((plan) => !isClean(plan)).map((plan) => planText(plan, look, all))
  const clean = run.plans.filter(isClean).flatMap((plan) => cleanLines(plan, look, all))
  const closing = [
    ...(all ? [] : remarksOfRun(run.plans, look)),
    ...(several || run.counts.accepted > 0 ? hanging(runSentence(run.counts), look) : []),
  ]
  const blocks = [...faulty, ...(clean.length === 0 ? [] : [['nothing found against:', ...clean]])]
  // A lone plan of one line and what is said of its light stand together.
  const apart = blocks.length > 1 || (blocks[0]?.length ?? 0) > 1 ? [''] : []
  return [
    ...blocks.flatMap((block, index) => (index === 0 ? block : ['', ...block])),
    ...(closing.length > 0 ? [...apart, ...closing] : []),
  ]
    .map((line) => `${line}\n`)
    .join('')
}

/** A line that is broken hangs from its start. */
const hanging = (says: string, look: Look): string[] =>
  wrap(look.show(says), look.columns, 4).map((line, index) => (index === 0 ? line : `    ${line}`))

/** One of several plans that nothing was found against. */
const cleanLines = (plan: CheckedPlan, look: Look, all: boolean): string[] => {
  const besides = [
    ...(plan.caveats ?? []),
    ...acceptedSentence(plan),
    ...(plan.notChecked.length === 0 ? [] : [`${count(plan.notChecked.length, 'rule')} not checked`]),
  ]
  const says = besides.length === 0 ? plan.file : `${plan.file} (${besides.join('; ')})`
  return [
    ...wrap(look.show(says), look.columns - 2, 4).map(
      (line, index) => `${index === 0 ? '  ' : '      '}${line}`,
    ),
    ...(all ? inFull(plan, look) : []),
  ]
}

const acceptedSentence = ({ accepted }: CheckedPlan): string[] =>
  accepted.length === 0 ? [] : [`${count(accepted.length, 'finding')} accepted`]

const planText = (plan: CheckedPlan, look: Look, all: boolean): string[] => {
  const lines: string[] = []
  const saidRules = new Set<string>()
  const saidSides = new Map<string, string>()
  let advised = new Set<string>()
  let last: Finding | undefined
  const add = (finding: Finding): void => {
    const sameLine = last !== undefined && samePlace(last, finding)
    const sameRule = saidRules.has(finding.rule)
    const before = saidSides.get(eitherSide(finding))
    const asOther = before !== undefined && before !== finding.message
    lines.push(...findingText(finding, plan, look, { sameLine, sameRule, asOther, advised }))
    saidRules.add(finding.rule)
    saidSides.set(eitherSide(finding), before ?? finding.message)
    for (const { title } of finding.advice) advised.add(title)
    last = finding
  }
  for (const group of byCause(plan.findings)) {
    if (lines.length > 0) lines.push('')
    last = undefined
    advised = new Set()
    if (group.length > 1) {
      const head = `${plan.file}: ${count(group.length, 'finding')} of one cause: ${group[0]!.cause}`
      lines.push(...hanging(head, look).map(look.paint.strong))
    }
    group.forEach(add)
  }

  const found = findingsSentence(levelCounts(plan))
  const says = found === '' ? 'nothing found against it' : found
  const hint = plan.notChecked.length === 0 || all || found === '' ? '' : ' (--all lists them)'
  const left = notCheckedSentence(plan.notChecked)
  const parts = [
    says,
    ...(plan.caveats ?? []),
    ...acceptedSentence(plan),
    ...(left === undefined ? [] : [left]),
  ]
  const summary = `${plan.file}: ${parts.join('; ')}${hint}`
  return [
    ...lines,
    ...(lines.length > 0 ? [''] : []),
    ...hanging(summary, look),
    ...(all ? inFull(plan, look) : []),
  ]
}

/** What `--all` adds: accepted findings, how the light was computed, what was not checked and what would let it. */
const inFull = (plan: CheckedPlan, look: Look): string[] => {
  const words = (label: string, says: string): string[] =>
    labelled(label, wrap(look.show(says), labelledWidth(look)), look)
  return [
    ...plan.accepted.flatMap(({ rule, because, finding }) =>
      words('accepted', `${rule} (line ${finding.place.line}): ${finding.message}; because ${because}`),
    ),
    ...plan.remarks.flatMap((remark) => words('light', remark)),
    ...((plan.notJudged ?? []).length === 0
      ? []
      : words('left out', `not judged yet: ${(plan.notJudged ?? []).join(', ')}`)),
    ...plan.notChecked.flatMap(({ rule, because, enable }) =>
      words('left out', `${rule}: ${because}${enable === undefined ? '' : `; write ${enable.text}`}`),
    ),
  ]
}

/** Each remark once for the run, and what is not judged yet. */
const remarksOfRun = (plans: readonly CheckedPlan[], look: Look): string[] => {
  const words = (label: string, says: string): string[] =>
    labelled(label, wrap(look.show(says), labelledWidth(look)), look)
  const notJudged = counted(plans, (plan) => plan.notJudged ?? [])
  return [
    ...counted(plans, (plan) => plan.remarks).flatMap((remark) => words('light', remark)),
    ...(notJudged.length === 0 ? [] : words('left out', `not judged yet: ${notJudged.join(', ')}`)),
  ]
}

/** Each text once, with the number of plans where it does not hold for all. */
const counted = (plans: readonly CheckedPlan[], of: (plan: CheckedPlan) => readonly string[]): string[] => {
  const counts = new Map<string, number>()
  for (const one of plans.flatMap(of)) counts.set(one, (counts.get(one) ?? 0) + 1)
  return [...counts].map(([one, number]) =>
    number === plans.length ? one : `${one} (${count(number, 'plan')})`,
  )
}

/** What is found, whichever side it is found on: `paper-left` and `paper-right` as in a mirror are told alike. */
const eitherSide = ({ rule, message }: Finding): string => `${rule}\n${message.replace(/left|right/g, '|')}`

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
