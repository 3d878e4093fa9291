/** The tree: values, places, aliases and merge keys. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { coreValue } from '../../src/text/core-scalar.js'
import { lineAndColumn, lineIndex, placeAt } from '../../src/text/lines.js'
import { pointer, pointerKeys } from '../../src/text/place.js'
import { plain } from '../../src/text/plain.js'
import { readText } from '../../src/text/read.js'
import type { TextMap, TextNode } from '../../src/text/tree.js'
import { yamlFile } from './yaml-file.js'

const at = (text: string, path: string): TextNode => {
  let node = readText('x', text).root!
  for (const key of pointerKeys(path))
    node =
      node.kind === 'map'
        ? node.entries.get(key)!.value
        : (node as { items: readonly TextNode[] }).items[Number(key)]!
  return node
}

const written = (text: string, path: string): string => {
  const node = at(text, path)
  return text.slice(node.start, node.end)
}

describe('places of values', () => {
  const text = `# c
plan: 1   # one
title: "White: \\u00e9"
camera: { lens: 85 mm, at: { distance: 2.5 m } } # cam
lights:
  key:
    unit: flashgun
    power: 1/4 # set

  fill: &f
    power: 1/2
of:
  - key
  -   fill
  - { at: x }
notes: |
  one
  two

empty:
none: # nothing
after: 'it''s'
`
  it.each([
    ['/plan', '1'],
    ['/title', '"White: \\u00e9"'],
    ['/camera', '{ lens: 85 mm, at: { distance: 2.5 m } }'],
    ['/camera/at/distance', '2.5 m'],
    ['/lights/key', 'unit: flashgun\n    power: 1/4'],
    ['/lights/key/power', '1/4'],
    ['/lights/fill', 'power: 1/2'],
    ['/of', '- key\n  -   fill\n  - { at: x }'],
    ['/of/1', 'fill'],
    ['/of/2/at', 'x'],
    ['/notes', '|\n  one\n  two'],
    ['/after', `'it''s'`],
  ])('%s', (path, want) => {
    expect(written(text, path)).toBe(want)
  })

  it('an empty value stands right after its colon', () => {
    for (const path of ['/empty', '/none']) {
      const node = at(text, path)
      expect(node).toMatchObject({ value: null, source: '' })
      expect(node.start).toBe(node.end)
      expect(text.slice(0, node.start)).toMatch(new RegExp(`${path.slice(1)}:$`))
    }
  })

  it('values, sources and quotes', () => {
    expect(at(text, '/title')).toMatchObject({ value: 'White: é', quoted: true })
    expect(at(text, '/lights/key/power')).toMatchObject({ value: '1/4', source: '1/4', quoted: false })
    expect(at(text, '/plan')).toMatchObject({ value: 1, quoted: false })
    expect(at(text, '/notes')).toMatchObject({ value: 'one\ntwo\n' })
    expect(at(text, '/after')).toMatchObject({ value: "it's" })
  })

  it('are the same past a byte-order mark and with CRLF', () => {
    const other = `\uFEFF${text.replaceAll('\n', '\r\n')}`
    expect(plain(readText('x', other).root!)).toEqual(plain(readText('x', text).root!))
    expect(written(other, '/camera/at/distance')).toBe('2.5 m')
    const node = at(other, '/camera/at/distance')
    expect(placeAt(lineIndex(other), 'x', '', node.start, node.end)).toMatchObject({
      line: 4,
      column: 40,
      endColumn: 45,
    })
  })
})

describe('versions and schema', () => {
  it('reads the 1.2 core schema whatever version is claimed', () => {
    const text =
      'a: yes\nb: 2:1\nc: 010\nd: 0o10\ne: 0x1F\nf: 1_000\ng: 2027-06-30\nh: ~\ni: True\nj: 1e3\nk: .5\n'
    const want = {
      a: 'yes',
      b: '2:1',
      c: 10,
      d: 8,
      e: 31,
      f: '1_000',
      g: '2027-06-30',
      h: null,
      i: true,
      j: 1000,
      k: 0.5,
    }
    expect(plain(readText('x', text).root!)).toEqual(want)
    expect(plain(readText('x', `%YAML 1.1\n---\n${text}`).root!)).toEqual(want)
    expect(plain(readText('x', `%YAML 1.2\n---\n${text}...\n`).root!)).toEqual(want)
  })

  it("reads plain scalars as the yaml package's core schema does", () => {
    const scalar = fc.oneof(
      fc.constantFrom(
        'null',
        'Null',
        'nULL',
        '~',
        'true',
        'TRUE',
        'tRue',
        'false',
        '.inf',
        '-.INF',
        '+.Inf',
        '.nan',
        '0o17',
        '0o8',
        '0xfF',
        '-0x1',
        '+1',
        '-1',
        '1.',
        '.5',
        '-.5',
        '+.e3',
        '1e5',
        '1E-5',
        '1.5e+3',
        '1e',
        '--1',
        '1-1',
        '1/4',
        '00',
        '0b1',
        '1_0',
        '.',
      ),
      fc.stringMatching(/^[-+.0-9eExob_]{1,8}$/u),
      fc.stringMatching(/^[a-zA-Z~.]{1,6}$/u),
    )
    fc.assert(
      fc.property(scalar, (text) => {
        fc.pre(!/^-+$|^[-?:]$|^\.\.\.|^---|^=$/.test(text))
        const want = parse(text, { schema: 'core', intAsBigInt: false })
        expect(coreValue(text)).toEqual(want)
      }),
      { numRuns: 2000 },
    )
  })

  it('takes the tags of the core schema', () => {
    expect(
      plain(
        readText(
          'x',
          'a: !!str 5\nb: !!int "5"\nc: !!float "1.5"\nd: !!map {x: 1}\ne: !!seq [1]\nf: ! 5\ng: !!null ""\n',
        ).root!,
      ),
    ).toEqual({ a: '5', b: 5, c: 1.5, d: { x: 1 }, e: [1], f: '5', g: null })
  })

  it('names are as written', () => {
    const { root } = readText('x', '24: a\ntrue: b\n"1": c\n1.0: d\n')
    expect([...(root as TextMap).entries.keys()]).toEqual(['24', 'true', '1', '1.0'])
  })
})

describe('aliases and merge keys', () => {
  const text = `base: &b
  power: 1/4
  zoom: 35 mm
more: &m { grid: 40 deg, zoom: 50 mm }
key:
  <<: *b
  unit: flashgun
  power: 1/2
fill:
  <<: [*m, *b]
rim: { power: &p 1/8, at: *b }
hair: *p
`
  it('mean what they refer to; own keys win, then earlier maps', () => {
    expect(plain(readText('x', text).root!)).toMatchObject({
      key: { power: '1/2', zoom: '35 mm', unit: 'flashgun' },
      fill: { grid: '40 deg', zoom: '50 mm', power: '1/4' },
      rim: { power: '1/8', at: { power: '1/4', zoom: '35 mm' } },
      hair: '1/8',
    })
  })

  it('the last anchor of a name counts', () => {
    expect(plain(readText('x', 'a: &x 1\nb: &x 2\nc: *x\n').root!)).toEqual({ a: 1, b: 2, c: 2 })
  })

  it('keep where the value is written and where it is used', () => {
    const merged = at(text, '/key/zoom')
    expect(text.slice(merged.start, merged.end)).toBe('35 mm')
    expect(text.slice(0, merged.start)).toMatch(/base: &b\n {2}power: 1\/4\n {2}zoom: $/)
    expect(text.slice(merged.usedAt!.start, merged.usedAt!.end)).toBe('*b')
    expect(text.slice(0, merged.usedAt!.start)).toMatch(/key:\n {2}<<: $/)
    const deep = at(text, '/rim/at/power')
    expect(text.slice(deep.start, deep.end)).toBe('1/4')
    expect(text.slice(0, deep.usedAt!.start)).toMatch(/rim: \{ power: &p 1\/8, at: $/)
    expect(at(text, '/hair').usedAt).toBeDefined()
    expect(at(text, '/key/power').usedAt).toBeUndefined()
    expect(at(text, '/key/unit').usedAt).toBeUndefined()
  })

  it('the outermost use is kept', () => {
    const nested = 'a: &a 1\nb: &b [*a]\nc: *b\n'
    const inner = at(nested, '/c/0')
    expect(nested.slice(inner.usedAt!.start, inner.usedAt!.end)).toBe('*b')
    expect(nested.slice(inner.start, inner.end)).toBe('1')
  })

  it('a quoted << is a name like any other', () => {
    expect(plain(readText('x', '"<<": 1\n').root!)).toEqual({ '<<': 1 })
  })
})

describe('lines and columns', () => {
  it('count from 1, in UTF-16 units, to the end of the text', () => {
    const text = 'ab\r\n\u{1F4A1}c\n\nd'
    const index = lineIndex(text)
    expect(lineAndColumn(index, 0)).toEqual({ line: 1, column: 1 })
    expect(lineAndColumn(index, 4)).toEqual({ line: 2, column: 1 })
    expect(lineAndColumn(index, 6)).toEqual({ line: 2, column: 3 })
    expect(lineAndColumn(index, 8)).toEqual({ line: 3, column: 1 })
    expect(lineAndColumn(index, 10)).toEqual({ line: 4, column: 2 })
    expect(lineAndColumn(index, 99)).toEqual({ line: 4, column: 2 })
    expect(lineAndColumn(index, -1)).toEqual({ line: 1, column: 1 })
  })

  it('agree with counting line feeds, anywhere in any text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('a', '\n', '\r\n', '\uFEFF', 'é') }),
        fc.nat(60),
        (text, offset) => {
          fc.pre(offset <= text.length)
          const { line, column } = lineAndColumn(lineIndex(text), offset)
          const before = text.slice(0, offset)
          const mark = text.startsWith('\uFEFF') && !before.includes('\n') && offset > 0 ? 1 : 0
          expect(line).toBe(before.split('\n').length)
          expect(column).toBe(before.length - (before.lastIndexOf('\n') + 1) - mark + 1)
        },
      ),
    )
  })

  it('pointers come back from their keys', () => {
    fc.assert(
      fc.property(fc.array(fc.string()), (keys) => {
        expect(pointerKeys(pointer(...keys))).toEqual(keys)
      }),
    )
    expect(pointer('a/b', 'm~n', 0)).toBe('/a~1b/m~0n/0')
  })
})

describe('any file', () => {
  const inside = (node: TextNode, text: string): void => {
    expect(node.start).toBeGreaterThanOrEqual(0)
    expect(node.end).toBeGreaterThanOrEqual(node.start)
    expect(node.end).toBeLessThanOrEqual(text.length)
    if (node.kind === 'scalar') expect(text.slice(node.start, node.end)).toBe(node.source)
    else if (node.kind === 'list') for (const item of node.items) inside(item, text)
    else
      for (const entry of node.entries.values()) {
        inside(entry.key, text)
        inside(entry.value, text)
      }
  }

  it('written from values gives those values, every place inside the text', () => {
    fc.assert(
      fc.property(yamlFile, ({ text, value }) => {
        const { root, faults } = readText('x', text)
        expect(faults, text).toEqual([])
        expect(plain(root!), text).toEqual(value)
        inside(root!, text)
      }),
      { numRuns: 300 },
    )
  })

  it('broken anywhere gives a root or one fault inside the text, never a throw', () => {
    fc.assert(
      fc.property(
        yamlFile,
        fc.nat(),
        fc.nat(8),
        fc.string({
          unit: fc.constantFrom(
            '{',
            '}',
            '[',
            ']',
            ':',
            ' ',
            '\n',
            '\t',
            '"',
            "'",
            '#',
            '&a',
            '*a',
            '-',
            '|',
            '!x',
            '%',
            ',',
            '?',
            'a',
            '\0',
          ),
          maxLength: 3,
        }),
        ({ text }, place, cut, put) => {
          const from = place % (text.length + 1)
          const broken = text.slice(0, from) + put + text.slice(from + cut)
          const { root, faults } = readText('x', broken)
          expect(root !== undefined || faults.length === 1).toBe(true)
          if (root !== undefined) inside(root, broken)
          for (const fault of faults) {
            expect(fault.start).toBeLessThanOrEqual(fault.end)
            expect(fault.start).toBeGreaterThanOrEqual(0)
            expect(fault.end).toBeLessThanOrEqual(broken.length)
          }
        },
      ),
      { numRuns: 1000 },
    )
  })
})
