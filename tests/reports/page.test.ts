import { describe, expect, it } from 'vitest'
import { look } from '../../src/reports/look.js'
import { type Block, markdownPage, textPage } from '../../src/reports/page.js'
import { rulePage, rulesPage } from '../../src/reports/rule-page.js'
import { width } from '../../src/reports/width.js'
import { rules } from '../../src/rules/index.js'
import { rulesList } from '../../src/tasks/rules-list.js'

const blocks: Block[] = [
  { heading: 'A * heading', level: 2 },
  { paragraph: 'f/5.6 < f/8 & a_b [c](d) `e` | f' },
  { items: ['one', 'two'] },
  { code: 'a: 1\nb: <2>', language: 'yaml' },
  { head: ['a', 'b'], table: [['x | y', 'z']] },
]

describe('markdownPage', () => {
  it('escapes what is text and leaves code alone (CommonMark 0.31; GitHub’s tables)', () => {
    expect(markdownPage(blocks)).toBe(
      `## A \\* heading

f/5.6 \\< f/8 \\& a\\_b \\[c\\](d) \\\`e\\\` | f

- one
- two

\`\`\`yaml
a: 1
b: <2>
\`\`\`

| a | b |
| --- | --- |
| x \\| y | z |
`,
    )
  })
})

describe('textPage', () => {
  it('sets a page for a terminal', () => {
    expect(textPage(blocks, look())).toBe(`A * heading

f/5.6 < f/8 & a_b [c](d) \`e\` | f

  - one
  - two

    a: 1
    b: <2>

  x | y  z
`)
  })
})

describe('pages of rules', () => {
  it.each(rules.map((rule) => [rule.id, rule] as const))('%s', (id, rule) => {
    const page = textPage(rulePage(rule), look())
    for (const part of [id, 'Why', 'How it is computed', 'Sources']) expect(page).toContain(part)
    for (const limit of Object.keys(rule.limits)) expect(page).toContain(limit)
    const prose = page.split('\n').filter((line) => !line.startsWith('    '))
    for (const line of prose) expect(width(line)).toBeLessThanOrEqual(100)
    expect(page).not.toMatch(/undefined|NaN|\[object/)
  })

  it.each(rules.map((rule) => [rule.id, rule] as const))('%s: limits as they are said', (_, rule) => {
    const page = textPage(rulePage(rule), look())
    expect(page).not.toMatch(/\d\.\d{5}/)
    const [before, after] = page.split('Plans that it finds something in')
    for (const heading of ['Why', 'Limits', 'Sources', 'To live with it']) {
      expect(after ?? '').not.toMatch(new RegExp(`^${heading}$`, 'm'))
    }
    if (rule.fires.length > 0) expect(before).toContain('To live with it')
  })

  it('say thirds as thirds, and keep other figures', () => {
    const limit = (value: number, unit: 'stop' | 'share') => ({ value, unit, says: 'so much' })
    const limits = {
      a: limit(1 / 3, 'stop'),
      b: limit(1.5, 'stop'),
      c: limit(0.4, 'stop'),
      d: limit(0.07, 'share'),
      e: limit(2, 'stop'),
      f: limit(-4.5, 'stop'),
    }
    const page = textPage(rulePage({ ...rules[0]!, limits }), look())
    for (const row of [
      'a +1/3 stop',
      'b +1 1/2 stop',
      'c +0.4 stop',
      'd +7 %',
      'e +2 stop',
      'f +-4 1/2 stop',
    ]) {
      expect(page).toMatch(new RegExp(`^ {2}${row} `, 'm'))
    }
  })

  it('show in brief the first example of a kind, and the titles of the others', () => {
    const rule = rules.find(({ fires, passes }) => fires.length > 1 && passes.length > 1)!
    const brief = textPage(rulePage(rule, true), look())
    const whole = textPage(rulePage(rule), look())
    for (const { title } of [...rule.fires, ...rule.passes]) expect(brief).toContain(title.slice(0, 30))
    expect(brief.match(/^ {4}plan: 1$/gm)).toHaveLength(2)
    expect(whole.match(/^ {4}plan: 1$/gm)).toHaveLength(rule.fires.length + rule.passes.length)
  })

  it('list every rule once', () => {
    const page = markdownPage(rulesPage(rulesList()))
    for (const { id } of rules) expect(page.split(`| ${id} |`)).toHaveLength(2)
  })
})
