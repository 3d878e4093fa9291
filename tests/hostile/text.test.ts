/** Files that mean harm, or are no plans at all: one fault inside the text each, and bounded work. */
import { expect, it } from 'vitest'
import { setValue } from '../../src/text/edit.js'
import { plain } from '../../src/text/plain.js'
import { readText } from '../../src/text/read.js'
import type { TextNode } from '../../src/text/tree.js'
import { quantities } from '../../src/units/quantities.js'

const mebibyte = 2 ** 20
const filled = (piece: string, head = ''): string =>
  head + piece.repeat(Math.floor((mebibyte - head.length) / piece.length))

/** Ten aliases to ten aliases to …: a small file that stands for ten to the ninth values. */
const aliasBomb = Array.from({ length: 9 }, (_, depth) =>
  depth === 0
    ? 'a0: &a0 [x, x, x, x, x, x, x, x, x, x]'
    : `a${depth}: &a${depth} [${`*a${depth - 1}, `.repeat(10)}]`,
).join('\n')

const mergeBomb = [
  `m0: &m0 { ${Array.from({ length: 200 }, (_, n) => `k${n}: ${n}`).join(', ')} }`,
  ...Array.from({ length: 400 }, (_, n) => `m${n + 1}: { <<: *m0 }`),
].join('\n')

const refused: readonly (readonly [string, string, RegExp])[] = [
  ['an alias bomb', aliasBomb, /over 50000 values/],
  ['a bomb of merge keys', mergeBomb, /over 50000 values/],
  ['an alias inside itself', 'a: &a [*a]\n', /never end/],
  ['an alias inside itself by way of another', 'a: &a { b: &b [*a] }\n', /never end/],
  ['a merge key of the map itself', 'a: &a\n  <<: *a\n', /never end/],
  ['two mebibytes', `a: ${'x'.repeat(2 * mebibyte)}`, /over 1 MiB/],
  ['a mebibyte of characters that take two bytes', `a: ${'é'.repeat(mebibyte - 10)}`, /over 1 MiB/],
  ['brackets a mebibyte deep', filled('['), /more than 32 deep/],
  ['braces a mebibyte deep', filled('{a: '), /more than 32 deep/],
  ['dashes a mebibyte deep', filled('- '), /more than 32 deep/],
  ['question marks a mebibyte deep', filled('? '), /more than 32 deep/],
  [
    '33 maps inside one another',
    Array.from({ length: 33 }, (_, n) => `${' '.repeat(n)}a:`).join('\n'),
    /more than 32 deep/,
  ],
  ['33 lists inside one another', `${'['.repeat(33)}${']'.repeat(33)}`, /more than 32 deep/],
  [
    '32 deep once an alias is followed',
    `a: &a ${'['.repeat(20)}${']'.repeat(20)}\nb: ${'['.repeat(20)}*a${']'.repeat(20)}`,
    /more than 32 deep/,
  ],
  ['a mebibyte of short entries', filled('a: 1\n'), /over 50000 values/],
  ['a mebibyte of commas', filled(',', '['), /over 50000 values/],
  ['a mebibyte of empty items', filled('-\n'), /over 50000 values/],
  ['a mebibyte of aliases', filled('  - *a\n', 'a: &a 1\nb:\n'), /over 50000 values/],
  ['a mebibyte of anchors', filled('&a '), /over 50000 values/],
  ['a mebibyte of tags', filled('!a '), /over 50000 values/],
  ['a mebibyte of empty maps', filled('{}'), /already complete/],
  ['a mebibyte of closing braces', filled('a: }\n'), /closes nothing/],
  ['a mebibyte of documents', filled('---\n'), /second YAML document/],
  ['a mebibyte of directives', filled('%a\n'), /too many % lines/],
  ['a mebibyte within one quote', filled('\\n', '"'), /quote is not closed/],
  ['a mebibyte of blank lines', filled('\n'), /the file is empty/],
  ['a mebibyte of comments', filled('#\n'), /the file is empty/],
  ['a name of a mebibyte', `${'a'.repeat(mebibyte - 2)}:`, /over 1024 characters|a name/],
  ['bytes that are no text', '\u0000\u0001\u0002\uFFFD\u0089PNG', /not UTF-8/],
  ['UTF-16 read as UTF-8', 'p\u0000l\u0000a\u0000n\u0000', /not UTF-8/],
  ['a NUL in a value', 'title: a\u0000b\n', /no character of a text \(U\+0000\)/],
  ['an escape character', 'title: \u001B[31mred\n', /no character of a text \(U\+001B\)/],
  ['half a surrogate pair', 'title: \uD83D\n', /no character of a text \(U\+D83D\)/],
  ['the other half', 'title: \uDCA1\uD83D\n', /no character of a text \(U\+DCA1\)/],
]

it.each(refused)('%s', (_what, text, says) => {
  const { root, faults } = readText('x', text)
  expect(root).toBeUndefined()
  expect(faults.length).toBe(1)
  expect(faults[0]!.says).toMatch(says)
  expect(faults[0]!.says.length).toBeLessThan(200)
  expect(faults[0]!.start).toBeGreaterThanOrEqual(0)
  expect(faults[0]!.end).toBeGreaterThanOrEqual(faults[0]!.start)
  expect(faults[0]!.end).toBeLessThanOrEqual(text.length)
})

it('what is just within the limits is read', () => {
  expect(readText('x', `${'['.repeat(32)}${']'.repeat(32)}`).faults).toEqual([])
  expect(readText('x', Array.from({ length: 32 }, (_, n) => `${' '.repeat(n)}a:`).join('\n')).faults).toEqual(
    [],
  )
  const many = readText('x', `[${'1,'.repeat(49_999)}]`)
  expect(many.faults).toEqual([])
  expect((plain(many.root!) as unknown[]).length).toBe(49_999)
  expect(readText('x', `[${'1,'.repeat(50_000)}]`).faults.length).toBe(1)
  expect(readText('x', `a: ${'x'.repeat(mebibyte - 3)}`).faults).toEqual([])
  expect(readText('x', `a: ${'x'.repeat(mebibyte - 2)}`).faults.length).toBe(1)
  expect(plain(readText('x', 'title: \u{1F4A1} \u0085 \uFEFF ok\n').root!)).toEqual({
    title: '\u{1F4A1} \u0085 \uFEFF ok',
  })
})

it('no name reaches a prototype', () => {
  const text =
    '{ constructor: { prototype: { polluted: 1 } }, toString: x, hasOwnProperty: y, __proto__: { polluted: 2 } }'
  const { root, faults } = readText('x', text)
  expect(faults.map((fault) => fault.says)).toEqual(['the name __proto__ cannot be used: take another'])
  const value = plain(root!) as Record<string, unknown>
  expect(Object.getPrototypeOf(value)).toBe(Object.prototype)
  expect(Object.keys(value)).toEqual(['constructor', 'toString', 'hasOwnProperty'])
  expect(({} as Record<string, unknown>).polluted).toBeUndefined()
  // Even a tree that was not read here.
  const scalar = {
    kind: 'scalar',
    file: 'x',
    start: 0,
    end: 0,
    value: 1,
    source: '1',
    quoted: false,
  } as const
  const made: TextNode = {
    kind: 'map',
    file: 'x',
    start: 0,
    end: 0,
    flow: true,
    entries: new Map([['__proto__', { key: { ...scalar, value: '__proto__' }, value: scalar }]]),
  }
  expect(Object.getOwnPropertyNames(plain(made))).toEqual(['__proto__'])
})

it('quantities refuse long and strange texts in a short sentence', () => {
  const texts = [
    '9'.repeat(100_000),
    `${'9'.repeat(400)} m`,
    ' '.repeat(100_000),
    `${' '.repeat(50_000)}2.4 m`,
    `1${' 1/1'.repeat(20_000)} ft`,
    `1,${'1'.repeat(100_000)} m`,
    '-'.repeat(100_000),
    'NaN',
    'Infinity m',
    '-Infinity',
    '1e308 m',
    '\u0000',
    '\uD83D',
    '__proto__',
  ]
  for (const { read, pattern } of Object.values(quantities))
    for (const text of texts) {
      const result = read(text)
      expect(result.ok).toBe(false)
      if (!result.ok) expect(result.says.length).toBeLessThan(200)
      expect(new RegExp(pattern, 'u').test(text)).toBe(false)
    }
})

it('an edit of a hostile file is refused', () => {
  expect(setValue(aliasBomb, '/a0/0', 'y')).toMatchObject({ ok: false })
  expect(setValue('a: 1\n', '/__proto__', 'y')).toMatchObject({ ok: false })
  expect(setValue('a: 1\n', '/a', '\u0000')).toMatchObject({ ok: true, text: 'a: "\\u0000"\n' })
})
