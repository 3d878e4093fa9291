/** Left and right swapped everywhere: the same findings with the same figures, the sides swapped in the words. */
import { describe, expect, it } from 'vitest'
import { rules } from '../../src/rules/index.js'
import { checkText } from './check-text.js'

const swapped = (text: string): string =>
  text.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'))

/** Two sides that are equal are named in one order; so words are compared, not their order. */
const words = (text: string): readonly string[] => text.split(/[^\w./+°-]+/u).sort()

describe('the mirrored plan', () => {
  const plans = rules.flatMap((rule) =>
    rule.fires
      .filter(({ plan }) => /left|right/.test(plan))
      .map(({ title, plan }) => ({ name: `${rule.id}: ${title}`, plan })),
  )

  it.each(plans)('$name', ({ plan }) => {
    const said = (text: string, side: (words: string) => string) =>
      checkText(text)
        .findings.map(({ rule, level, certainty, message, place }) => ({
          rule,
          level,
          certainty,
          pointer: side(place.pointer),
          words: words(side(message)),
        }))
        .sort((a, b) => (`${a.rule}${a.words}${a.pointer}` < `${b.rule}${b.words}${b.pointer}` ? -1 : 1))
    expect(said(swapped(plan), (text) => text)).toEqual(said(plan, swapped))
  })

  it('gives the same figures', () => {
    for (const { plan } of plans) {
      const figures = (text: string) =>
        checkText(text)
          .findings.flatMap(({ measured }) => Object.values(measured).map(({ value }) => value.toFixed(4)))
          .sort()
      expect(figures(swapped(plan))).toEqual(figures(plan))
    }
  })
})
