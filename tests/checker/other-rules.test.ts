import { describe, expect, it } from 'vitest'
import { otherRules } from '../../src/checker/other-rules.js'
import type { RanRule } from '../../src/checker/run-rule.js'
import type { Figure } from '../../src/light/figure.js'
import { isDecided } from '../../src/rules/decided.js'
import { ruleNamed, rules } from '../../src/rules/index.js'
import type { Evidence } from '../../src/rules/rule.js'
import { checkText } from '../rules/check-text.js'

const figure: Figure = { stops: 0 as Figure['stops'], gradient: new Map(), variance: 0, rendering: 0 }

const at = (pointer: string, stops: number, u: number): Evidence => ({
  pointer,
  beyond: { stops, u },
  measured: {},
})

/** A rule whose figures lie so far beyond their limits, all as sure as what `u` says of a figure. */
const ran = (figures: Readonly<Record<string, number>>, uNow: number): RanRule & { asked: () => number } => {
  let asked = 0
  const with_ = (u: number) => Object.entries(figures).map(([pointer, stops]) => at(pointer, stops, u))
  return {
    evidence: with_(uNow),
    were: (u) => {
      asked++
      return with_(u(figure))
    },
    asked: () => asked,
  }
}

describe('what other rules found', () => {
  it('leaves facts out and names the rule of every figure', () => {
    const fact: RanRule = { evidence: [{ pointer: '/a', beyond: 'certain', measured: {} }], were: () => [] }
    const others = otherRules(
      new Map([
        ['fact', fact],
        ['figure', ran({ '/b': 0.1 }, 0.5)],
      ]),
    )
    expect(others.figures).toEqual([{ rule: 'figure', pointer: '/b', beyond: { stops: 0.1, u: 0.5 } }])
  })

  it('asks a rule again only where something is undecided, and keeps the order', () => {
    const settled = ran({ '/a': 2, '/b': -2 }, 0.1)
    const open = ran({ '/c': 0.3, '/d': -0.1, '/e': 0.02 }, 0.5)
    const others = otherRules(
      new Map([
        ['settled', settled],
        ['open', open],
      ]),
    )
    const were = others.were(() => 0.1)
    expect(settled.asked()).toBe(0)
    expect(open.asked()).toBe(1)
    expect(were.map(({ pointer, beyond }) => [pointer, beyond.u])).toEqual([
      ['/a', 0.1],
      ['/b', 0.1],
      ['/c', 0.1],
      ['/d', 0.1],
      ['/e', 0.1],
    ])
    // Three standard deviations over, one under, a fifth of one over.
    expect(were.map(isDecided)).toEqual([true, true, true, true, false])
  })

  it('keeps a figure as it is that would not be found again', () => {
    const gone: RanRule = {
      evidence: [at('/a', 0.1, 0.5), at('/b', 0.1, 0.5)],
      were: () => [at('/b', 0.1, 0.01)],
    }
    const were = otherRules(new Map([['gone', gone]])).were(() => 0.01)
    expect(were.map(({ pointer, beyond }) => [pointer, beyond.u])).toEqual([
      ['/a', 0.5],
      ['/b', 0.01],
    ])
  })
})

describe('a rule about findings', () => {
  it('runs after all others, wherever it stands in the list', () => {
    const text = ruleNamed('reading-needed')!.fires[0]!.plan
    const said = (list: typeof rules) =>
      checkText(text, { rules: list }).findings.map(({ message }) => message)
    const last = rules.filter(({ about }) => about === 'findings')
    expect(last.map(({ id }) => id)).toEqual(['reading-needed'])
    expect(said([...last, ...rules.filter(({ about }) => about === undefined)])).toEqual(said(rules))
  })
})
