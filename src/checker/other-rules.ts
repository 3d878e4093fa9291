/** What the rules made of a set, as a rule about findings asks for it. */
import { isDecided } from '../rules/decided.js'
import type { Evidence, HeldFigure, OtherRules } from '../rules/rule.js'
import type { RanRule } from './run-rule.js'

/** By the name of the rule. */
export const otherRules = (ran: ReadonlyMap<string, RanRule>): OtherRules => ({
  figures: [...ran].flatMap(([rule, { evidence }]) => heldOf(rule, evidence)),
  were: (u) =>
    [...ran].flatMap(([rule, one]) => {
      const now = heldOf(rule, one.evidence)
      return now.every(isDecided) ? now : inOrderOf(now, heldOf(rule, one.were(u)))
    }),
})

/** Facts of the plan are left out: nothing makes them surer. */
const heldOf = (rule: string, evidence: readonly Evidence[]): readonly HeldFigure[] =>
  evidence.flatMap(({ pointer, beyond }) => (beyond === 'certain' ? [] : [{ rule, pointer, beyond }]))

/** Each figure as it would be; as it is where it would not be there at all. */
const inOrderOf = (now: readonly HeldFigure[], were: readonly HeldFigure[]): readonly HeldFigure[] => {
  const left = [...were]
  return now.map((one) => {
    const at = left.findIndex(({ pointer }) => pointer === one.pointer)
    return at < 0 ? one : left.splice(at, 1)[0]!
  })
}
