/** One mistake gives one fault, at its place, in words that say what to write. */
import { describe, expect, it } from 'vitest'
import { lineIndex, placeAt } from '../../src/text/lines.js'
import { plain } from '../../src/text/plain.js'
import { readText } from '../../src/text/read.js'

/** What is wrong, the text, line and column of the fault, the text that it stands on, what it says. */
const mistakes: readonly (readonly [string, string, string, string, RegExp])[] = [
  ['a tab for indent', 'camera:\n\tlens: 85 mm\n\tiso: 100\n', '2:1', '\t', /tabs cannot indent/],
  ['a tab among spaces', 'camera:\n  lens: 85 mm\n\tiso: 100\n', '3:1', '\t', /tabs cannot indent/],
  [
    'no space after a colon, first key',
    'key:\n  power:1/4\n  unit: flashgun\n',
    '2:3',
    'power:1/4',
    /write power: 1\/4$/,
  ],
  [
    'no space after a colon, last key',
    'key:\n  unit: flashgun\n  power:1/4\n',
    '3:3',
    'power:1/4',
    /write power: 1\/4$/,
  ],
  [
    'no space after a colon, in braces',
    'key: { power:1/4, unit: flashgun }\n',
    '1:8',
    'power:1/4',
    /write power: 1\/4$/,
  ],
  [
    'no colon',
    'plan: 1\ntitle Hello\niso: 100\n',
    '2:1',
    'title Hello',
    /colon is missing.*write title: Hello/,
  ],
  [
    'indented too far',
    'camera:\n  lens: 85 mm\n   iso: 100\n',
    '3:4',
    'iso: 100',
    /indented further than the one above/,
  ],
  ['indented too little', 'camera:\n  lens: 85 mm\n iso: 100\n', '3:2', 'iso: 100', /not indented like/],
  [
    'a brace not closed',
    'camera: { lens: 85 mm\nlights:\n  key: { power: 1/4 }\n',
    '1:9',
    '{',
    /this \{ is not closed: write \}/,
  ],
  [
    'an outer brace not closed',
    'key: { power: 1/4, at: { angle: 3 deg left }\nfill: { power: 1/2 }\n',
    '1:6',
    '{',
    /this \{ is not closed/,
  ],
  ['a bracket not closed', 'of: [key, fill\nat: subject\n', '1:5', '[', /this \[ is not closed: write \]/],
  ['cut off within braces', 'lights:\n  key: { unit: fla', '2:8', '{', /this \{ is not closed/],
  ['a brace too many', 'camera: { lens: 85 mm }}\nlights: 1\n', '1:24', '}', /this \} closes nothing/],
  ['a quote not closed', 'title: "Hello\nplan: 1\n', '1:8', '"Hello', /quote is not closed: write "/],
  ['a single quote not closed', "title: 'Hello\nplan: 1\n", '1:8', "'Hello", /quote is not closed: write '/],
  [
    'a colon in a value',
    'title: White: two flashes\nplan: 1\n',
    '1:8',
    'White: two flashes',
    /needs quotes: write "White: two flashes"/,
  ],
  ['a comma missing', 'camera: { lens: 85 mm iso: 100 }\n', '1:17', '85 mm iso: 100', /comma separates/],
  ['a comma too many', 'camera: { lens: 85 mm,, iso: 100 }\n', '1:23', ',', /one comma too many/],
  ['a value that starts with a sign', 'transmits: %45\nplan: 1\n', '1:12', '%45', /cannot start with %/],
  ['words after a quoted value', 'title: "Hello" world\n', '1:16', 'world', /already complete/],
  ['a backslash in double quotes', 'notes: "C:\\dir"\n', '1:11', '\\d', /single quotes/],
  ['an alias to nothing', 'a: *nope\n', '1:4', '*nope', /\*nope refers to nothing/],
  ['an alias before its anchor', 'a: *x\nb: &x 1\n', '1:4', '*x', /refers to nothing/],
  ['an alias inside what it means', 'a: &a [1, *a]\n', '1:11', '*a', /never end/],
  ['a second document', 'a: 1\n---\nb: 2\n', '2:1', '---', /second YAML document/],
  ['a second document after an end', 'a: 1\n...\nfoo: 2\n', '3:1', 'foo', /second YAML document/],
  ['a version line without dashes', '%YAML 1.1\na: 1\n', '2:1', 'a: 1', /three dashes/],
  ['a tag', 'b: !foo 5\n', '1:9', '5', /tag !foo has no meaning/],
  ['a tag that does not fit', 'b: !!int x\n', '1:10', 'x', /tag !!int has no meaning/],
  ['a key among list items', 'a:\n  - 1\n  b: 2\n', '3:3', 'b: 2', /not indented like/],
  ['a list item among keys', 'a:\n  b: 2\n  - 1\n', '3:3', '- 1', /list item cannot stand among keys/],
  ['a list item without its dash', 'a:\n  - x: 1\n   y: 2\n', '3:4', 'y: 2', /without its dash/],
  ['no space after a dash', '- a\n-b\n- c\n', '2:1', '-b', /space is missing after the dash/],
  ['a list for a name', '[a]: b\n', '1:1', '[a]', /a name is a word/],
  ['no name', ': a\n', '1:1', '', /name is missing/],
  ['a name twice', 'a: 1\nb: 2\na: 3\n', '3:1', 'a', /the name a is used twice/],
  ['a name twice in braces', 'x: { a: 1, a: 2 }\n', '1:12', 'a', /the name a is used twice/],
  ['the name __proto__', '__proto__: { x: 1 }\na: 2\n', '1:1', '__proto__', /__proto__ cannot be used/],
  ['<< with a word', 'a:\n  <<: x\n', '2:3', '<<', /takes a map/],
  ['an infinity', 'iso: .inf\n', '1:6', '.inf', /no figure/],
  ['not a number', 'iso: .NaN\n', '1:6', '.NaN', /no figure/],
  ['a number beyond doubles', 'iso: 1e400\n', '1:6', '1e400', /no figure/],
  ['nothing', '', '1:1', '', /the file is empty/],
  ['only comments', '# a\n\n# b\n', '1:1', '', /the file is empty/],
  ['only dashes', '---\n', '1:1', '', /the file is empty/],
  ['lone carriage returns', 'a: 1\rb: 2\r', '1:5', '\r', /lone carriage return/],
]

it.each(mistakes)('%s', (_what, text, place, on, says) => {
  const { faults } = readText('a.plan.yaml', text)
  expect(faults.length).toBe(1)
  const [fault] = faults
  const at = placeAt(lineIndex(text), 'a.plan.yaml', '', fault!.start, fault!.end)
  expect(`${at.line}:${at.column}`).toBe(place)
  expect(text.slice(fault!.start, fault!.end)).toBe(on)
  expect(fault!.says).toMatch(says)
})

describe('what is left where a fault does not break the text', () => {
  it('a name used twice keeps its first value and shows both places', () => {
    const text = 'a: 1\na: 2\na: 3\n'
    const { root, faults } = readText('x', text)
    expect(plain(root!)).toEqual({ a: 1 })
    expect(faults.map((fault) => fault.rule)).toEqual(['duplicate-name', 'duplicate-name'])
    expect(faults[0]!.also).toEqual({ start: 0, end: 1, says: 'first used here' })
  })

  it('refused names and tags leave the rest', () => {
    expect(plain(readText('x', '__proto__: 1\na: 2\n').root!)).toEqual({ a: 2 })
    expect(plain(readText('x', 'a: !x 5\n').root!)).toEqual({ a: 5 })
    expect(readText('x', 'a: &a { b: 1, b: 2 }\nc: *a\nd: *a\n').faults.length).toBe(1)
  })
})
