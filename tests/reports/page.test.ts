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

  it('list every rule once', () => {
    const page = markdownPage(rulesPage(rulesList()))
    for (const { id } of rules) expect(page.split(`| ${id} |`)).toHaveLength(2)
  })
})
