/** One rule over one computed set: what it finds, told and placed, or why it does not run. */
import type { Plan } from '../language/plan.js'
import type { Advice, Evidence, NotNeeded, OtherRules, RuleContext } from '../rules/rule.js'
import type { Words } from '../rules/words.js'
import { lazy } from '../scene/lazy.js'
import type { ComputedSet } from '../set/computed-set.js'
import { movesForMends, WorkSpent } from '../set/work.js'
import type { Place } from '../text/place.js'
import { judge, worded } from './certainty.js'
import type { Draft } from './draft.js'
import type { RuleDefect } from './finding.js'
import { contextOf } from './rule-context.js'
import type { HousedRule, Trial, Tried } from './trial.js'

export type Ran =
  | (RanRule & { readonly ran: true; readonly drafts: readonly Draft[] })
  | { readonly ran: false; readonly because: NotNeeded | undefined }

export interface RanRule {
  readonly evidence: readonly Evidence[]
  /** What it would find were figures as sure as `u` says. */
  were(u: RuleContext['u']): readonly Evidence[]
}

/** Told of a rule that fails after it has run, when its advice is asked for. */
export type Failed = (defect: RuleDefect) => void

/** What rules are run with on one plan. */
export interface Run {
  readonly set: ComputedSet
  readonly words: Words
  readonly trial: Trial
  readonly failed: Failed
}

export const runRule = (own: HousedRule, run: Run, others?: OtherRules): Ran => {
  const { rule } = own
  const alone = contextOf(rule, run.set, own.house)
  const context: RuleContext = others === undefined ? alone : { ...alone, others }
  const missing = rule.needs(context)
  if (missing !== undefined) return { ran: false, because: missing === 'silent' ? undefined : missing }
  const evidence = rule.detect(context)
  return {
    ran: true,
    evidence,
    were: (u) => rule.detect({ ...context, u }),
    drafts: evidence.flatMap((one) => tell(own, one, context, run) ?? []),
  }
}

/** More than these nobody weighs against each other. */
const mostAdvice = 3

const noMoreTried: Advice = {
  title: 'no further move is tried in so crowded a set: mend what stands above first, then check again',
}

/** What makes worse than it mends is said only where nothing else helps. */
const worthSaying = (tried: readonly Tried[]): readonly Advice[] => {
  const good = tried.filter(({ worse }) => !worse)
  return (good.length > 0 ? good : tried).map(({ advice }) => advice)
}

/** A rule that finds but cannot mend is a defect of the program, told as such; its finding stands. */
const mended = (
  own: HousedRule,
  evidence: Evidence,
  context: RuleContext,
  { set, words, trial, failed }: Run,
): readonly Advice[] => {
  const { rule } = own
  const tried: Tried[] = []
  set.work.mostMoves = movesForMends
  try {
    for (const mend of rule.mend(evidence, words, context)) {
      const one = trial(own, evidence, mend)
      if (one !== undefined) tried.push(one)
      if (tried.length === mostAdvice) break
    }
    return worthSaying(tried)
  } catch (error) {
    if (error instanceof WorkSpent) return [...worthSaying(tried), noMoreTried]
    failed({ rule: rule.id, error })
    return []
  }
}

const tell = (own: HousedRule, evidence: Evidence, context: RuleContext, run: Run): Draft | undefined => {
  const { rule, house } = own
  const { words } = run
  const ruleLevel = house.level ?? evidence.level ?? rule.level
  const judged = judge(evidence.beyond, ruleLevel)
  if (judged === undefined) return undefined
  const { message, why } = rule.tell(evidence, words, context)
  const { plan } = context
  const place = plan.places.of(evidence.pointer)
  return {
    pointer: evidence.pointer,
    finding: {
      rule: rule.id,
      family: rule.family,
      level: judged.level,
      ruleLevel,
      certainty: judged.certainty,
      message: worded(message, judged.certainty),
      why,
      place,
      also: related(plan, evidence, place),
      measured: finite(evidence.measured),
      mends: [],
      basis: rule.basis,
      ...(evidence.cause === undefined ? {} : { cause: evidence.cause }),
      ...(evidence.scale !== undefined && Object.values(evidence.scale).every(drawable)
        ? { scale: evidence.scale }
        : {}),
    },
    advice: lazy(() => mended(own, evidence, context, run)),
  }
}

/** What has no end (a depth of field beyond the hyperfocal distance) is no figure. */
const finite = (measured: Evidence['measured']): Evidence['measured'] =>
  Object.fromEntries(
    Object.entries(measured).filter(
      ([, { value, limit }]) => Number.isFinite(value) && (limit === undefined || Number.isFinite(limit)),
    ),
  )

const drawable = (value: number | string): boolean => typeof value === 'string' || Number.isFinite(value)

/** Related places; one for what was written elsewhere and is used in this plan; none twice. */
const related = (
  plan: Plan,
  evidence: Evidence,
  main: Place,
): readonly (Place & { readonly says: string })[] => {
  const used = plan.places.usedAt(evidence.pointer)
  const all = [
    ...(used === undefined ? [] : [{ ...used, says: 'used here' }]),
    ...(evidence.also ?? []).map(({ pointer, says }) => ({ ...plan.places.of(pointer), says })),
  ]
  const seen = new Set([spot(main)])
  return all.filter((place) => {
    const at = spot(place)
    if (seen.has(at)) return false
    seen.add(at)
    return true
  })
}

const spot = ({ file, start, end }: Place): string => `${start} ${end} ${file}`
