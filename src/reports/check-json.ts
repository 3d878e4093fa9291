/** `check --format json`, format 1: a public contract, described by `schemas/check.schema.json`. */
import type { CheckedPlan, Finding } from '../checker/finding.js'
import type { CheckRun } from '../tasks/check.js'
import type { Place } from '../text/place.js'
import { json } from './notation.js'
import { adviceSentence } from './sentences.js'
import { version } from './version.js'

export const checkJson = (run: CheckRun): string =>
  json({
    kind: 'check',
    format: 1,
    thirdstop: version,
    plans: run.plans.map(planData),
    problems: run.problems,
    counts: run.counts,
  })

const planData = (plan: CheckedPlan) => ({
  file: plan.file,
  title: plan.title,
  findings: plan.findings.map(findingData),
  accepted: plan.accepted.map(({ rule, because, finding }) => ({
    rule,
    because,
    finding: findingData(finding),
  })),
  notChecked: plan.notChecked.map(({ rule, because, enable }) => ({ rule, because, enable })),
  remarks: plan.remarks,
  caveats: plan.caveats ?? [],
  notJudged: plan.notJudged ?? [],
})

const findingData = (finding: Finding) => ({
  id: finding.id,
  rule: finding.rule,
  family: finding.family,
  level: finding.level,
  ruleLevel: finding.ruleLevel,
  certainty: finding.certainty,
  message: finding.message,
  why: finding.why,
  place: placeData(finding.place),
  also: finding.also.map((place) => ({ ...placeData(place), says: place.says })),
  measured: finding.measured,
  mends: finding.mends,
  advice: finding.advice.map(adviceSentence),
  cause: finding.cause,
})

const placeData = ({ file, pointer, line, column, endLine, endColumn }: Place) => ({
  file,
  pointer,
  line,
  column,
  endLine,
  endColumn,
})
