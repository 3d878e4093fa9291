/** Tries advice: the rules that a change of the set may upset are run before and after it. */
import type { Advice, Evidence, Level, Mend, Rule, RuleContext } from '../rules/rule.js'
import type { Words } from '../rules/words.js'
import { lazy } from '../scene/lazy.js'
import type { ComputedSet } from '../set/computed-set.js'
import { spend } from '../set/work.js'
import { judge, worded } from './certainty.js'
import { contextOf, type House } from './rule-context.js'

/** A rule with what the house says of it. */
export interface HousedRule {
  readonly rule: Rule
  readonly house: House
}

/** The advice as it is shown, and whether something comes of it that is worse than what it mends; undefined where it does not help. Throws `WorkSpent` where the plan is worth no more trials. */
export type Trial = (own: HousedRule, evidence: Evidence, mend: Mend) => Tried | undefined

export interface Tried {
  readonly advice: Advice
  readonly worse: boolean
}

/**
 * @param rules all that run; those that can say what they find in short are watched
 * @param detected what a rule, by its id, has detected in the set; undefined where it does not run
 */
export const makeTrial = (
  rules: readonly HousedRule[],
  set: ComputedSet,
  words: Words,
  detected: (rule: string) => readonly Evidence[] | undefined,
): Trial => {
  const watched = rules.filter(({ rule }) => rule.inShort !== undefined)
  const foundBefore = (one: HousedRule): readonly Found[] =>
    judgedOf(one, contextOf(one.rule, set, one.house), detected(one.rule.id) ?? [])
  const before = lazy(() => new Map(watched.map((one) => [one, worst(foundBefore(one))])))
  const comesOf = (
    own: HousedRule,
    after: ComputedSet,
  ): readonly { readonly says: string; readonly height: number }[] =>
    watched.flatMap((one) => {
      if (one === own) return []
      const now = worst(findings(one, after) ?? [])
      return now === undefined || !worse(now, before().get(one))
        ? []
        : [{ says: `then ${inShort(one, now, words)}`, height: now.height }]
    })
  const heightOf = (own: HousedRule, { beyond, level }: Evidence): number => {
    const judged = judge(beyond, own.house.level ?? level ?? own.rule.level)
    return judged === undefined ? 0 : heights[judged.level]
  }
  return (own, evidence, { title, gives, costs, after, partial }) => {
    const plain = {
      title,
      ...(gives === undefined ? {} : { gives }),
      ...(costs === undefined || costs === '' ? {} : { costs }),
    }
    if (after === undefined) return { advice: plain, worse: false }
    spend(set.work, 'trial', set.plan.lights.size, set.scene.solids.length)
    const left = partial ? undefined : leftOver(own, evidence, foundBefore(own), after)
    if (left === 'as before') return undefined
    const comes = comesOf(own, after)
    const more = [
      ...(left === undefined ? [] : [`a ${left.level} is left of it`]),
      ...comes.map(({ says }) => says),
    ]
    const costly = [...(plain.costs === undefined ? [] : [plain.costs]), ...more].join('; ')
    return {
      advice: more.length === 0 ? plain : { ...plain, costs: costly },
      worse: isWorse(heightOf(own, evidence), comes),
    }
  }
}

/** One or two of its own level for one may be worth it, and are the trade that a set offers; three are not. */
const isWorse = (mended: number, comes: readonly { readonly height: number }[]): boolean =>
  comes.some(({ height }) => height > mended) || comes.filter(({ height }) => height === mended).length > 2

interface Found {
  readonly evidence: Evidence
  readonly context: RuleContext
  readonly level: Level
  readonly height: number
  readonly excess: number
  readonly says: (message: string) => string
}

/** Undefined where the rule does not run. */
const findings = (one: HousedRule, set: ComputedSet): readonly Found[] | undefined => {
  const context = contextOf(one.rule, set, one.house)
  return one.rule.needs(context) === undefined ? judgedOf(one, context, one.rule.detect(context)) : undefined
}

const judgedOf = (
  { rule, house }: HousedRule,
  context: RuleContext,
  detected: readonly Evidence[],
): readonly Found[] =>
  detected.flatMap((evidence) => {
    const judged = judge(evidence.beyond, house.level ?? evidence.level ?? rule.level)
    return judged === undefined
      ? []
      : [
          {
            evidence,
            context,
            level: judged.level,
            height: heights[judged.level],
            excess: excessOf(evidence),
            says: (message) => worded(message, judged.certainty),
          },
        ]
  })

const heights: Readonly<Record<Level, number>> = { note: 1, warning: 2, error: 3 }

/** How far past the limit, in whatever the rule measures. */
const excessOf = ({ beyond, measured }: Evidence): number =>
  beyond === 'certain'
    ? Math.max(
        0,
        ...Object.values(measured).map(({ value, limit = value, side }) =>
          side === 'at-least' ? limit - value : value - limit,
        ),
      )
    : beyond.stops

const worst = (found: readonly Found[]): Found | undefined =>
  found.reduce<Found | undefined>(
    (most, one) =>
      most === undefined ||
      one.height > most.height ||
      (one.height === most.height && one.excess > most.excess)
        ? one
        : most,
    undefined,
  )

/** A little more of the same is no new fault: in stops, and of all else as a share. */
const noticed = 0.15

const worse = (now: Found, was: Found | undefined): boolean =>
  was === undefined || now.height > was.height || now.excess > was.excess + little(was)

const little = ({ evidence, excess }: Found): number => {
  if (evidence.beyond === 'certain') return noticed * excess
  const held = Object.values(evidence.measured).find(({ limit }) => limit !== undefined)
  return held === undefined || held.unit === 'stop' ? noticed : noticed * Math.abs(held.value)
}

const inShort = ({ rule }: HousedRule, { evidence, context, says }: Found, words: Words): string =>
  says(rule.inShort!(evidence, words, context))

/** What the rule itself still finds at the same place. */
const leftOver = (
  own: HousedRule,
  evidence: Evidence,
  before: readonly Found[],
  after: ComputedSet,
): Found | 'as before' | undefined => {
  // What a rule makes of the others' findings is not tried again.
  if (own.rule.about !== undefined) return undefined
  const now = findings(own, after)
  // A rule that cannot run any more proves nothing.
  if (now === undefined) return 'as before'
  const same = (found: readonly Found[]) =>
    worst(found.filter((one) => one.evidence.pointer === evidence.pointer)) ??
    // The pointer follows what is wrong most: a lone finding is the same one, but where it was there besides.
    (found.length === 1 && !before.some((one) => one.evidence.pointer === found[0]!.evidence.pointer)
      ? found[0]
      : undefined)
  const is = same(now)
  const was = same(before)
  return is === undefined || was === undefined ? is : is.height < was.height ? is : 'as before'
}
