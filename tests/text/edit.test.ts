/** Edits change what they are for and leave every other byte alone, or are refused in a sentence. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { type Edit, insertEntry, removeEntry, setValue } from '../../src/text/edit.js'
import { pointer } from '../../src/text/place.js'
import { plain } from '../../src/text/plain.js'
import { newValue, quoted } from '../../src/text/quote.js'
import { readText } from '../../src/text/read.js'
import { yamlFile } from './yaml-file.js'

const text = `# a header
plan: 1   # version
title: "White"
camera: { lens: 85 mm, at: { distance: 2.5 m } } # cam
wanted:
lights:
  # the key
  key:
    unit: flashgun
    power: 1/4   # set

  # the second
  fill:
    power: 1/2
    # it was 1/4

  rim: { power: 1/8 }
readings:
  - at: subject
    of: [key]
  - { at: backdrop, of: all }
size: {
  width: 1 m, # across
  height: 2 m
}
notes: |
  one
  two
end: 1
`

const edited = (edit: Edit): string => {
  if (!edit.ok) throw new Error(edit.says)
  return edit.text
}

/** What of the text was replaced by what. */
const change = (edit: Edit, from = text): readonly [string, string] => {
  if (!edit.ok) throw new Error(edit.says)
  return [from.slice(edit.splice.start, edit.splice.end), edit.splice.insert]
}

describe('set', () => {
  it.each([
    ['/lights/key/power', '1/8 + 0.3', '1/4', '1/8 + 0.3'],
    ['/camera/lens', '50 mm', '85 mm', '50 mm'],
    ['/title', 'Grey', '"White"', 'Grey'],
    ['/title', 'White: two flashes', '"White"', "'White: two flashes'"],
    ['/title', '2:1', '"White"', "'2:1'"],
    ['/title', 'on', '"White"', "'on'"],
    ['/title', '2027-06-30', '"White"', "'2027-06-30'"],
    ['/title', '', '"White"', "''"],
    ['/title', 'one\ntwo', '"White"', '"one\\ntwo"'],
    ['/plan', '2', '1', '2'],
    ['/camera/at', '{ distance: 3 m }', '{ distance: 2.5 m }', '{ distance: 3 m }'],
    ['/camera/lens', 'a, b', '85 mm', "'a, b'"],
    ['/wanted', '{ backdrop: white }', '', ' { backdrop: white }'],
    ['/readings/0/of/0', 'fill', 'key', 'fill'],
    ['/readings/1', 'none', '{ at: backdrop, of: all }', 'none'],
    ['/notes', 'short', ' |\n  one\n  two', ' short'],
    ['/readings/0', '{ at: x }', ' at: subject\n    of: [key]', ' { at: x }'],
  ])('%s to %s', (path, source, was, is) => {
    expect(change(setValue(text, path, source))).toEqual([was, is])
  })

  it('refuses what is not there, the root, and a comment in the way', () => {
    expect(setValue(text, '/lights/hair/power', '1')).toMatchObject({
      ok: false,
      says: 'there is no value at /lights/hair/power to set',
    })
    expect(setValue(text, '', '1')).toMatchObject({ ok: false })
    expect(setValue('a: # why\n  b: 1\n', '/a', 'x')).toMatchObject({ ok: false })
    expect(setValue('a: 1\na: 2\n', '/a', 'x')).toMatchObject({
      ok: false,
      says: expect.stringContaining('mistake of its own'),
    })
    expect(setValue('a: [', '/a', 'x')).toMatchObject({ ok: false })
  })
})

describe('insert', () => {
  it.each([
    ['/lights/key', 'zoom', '35 mm', '    zoom: 35 mm\n'],
    ['/lights', 'hair', '{ unit: flashgun }', '  hair: { unit: flashgun }\n'],
    ['', 'tags', '[white]', 'tags: [white]\n'],
    ['/camera', 'iso', '100', ', iso: 100'],
    ['/camera/at', 'height', '1.5 m', ', height: 1.5 m'],
    ['/wanted', 'ratio', '2:1', " { ratio: '2:1' }"],
    ['/readings', '-', '{ at: hair }', '  - { at: hair }\n'],
    ['/readings/0', 'reads', 'f/8', '    reads: f/8\n'],
    ['/readings/0/of', '-', 'fill', ', fill'],
    ['/size', 'lying', 'true', ', lying: true'],
  ])('at %s: %s', (path, key, source, inserted) => {
    expect(change(insertEntry(text, path, key, source))).toEqual(['', inserted])
  })

  it('fills an empty map or list, goes past a last comma, ends a file without a line end', () => {
    expect(edited(insertEntry('a: {}\n', '/a', 'b', '1'))).toBe('a: { b: 1 }\n')
    expect(edited(insertEntry('a: []\n', '/a', '-', '1'))).toBe('a: [1]\n')
    expect(edited(insertEntry('a: { b: 1, }\n', '/a', 'c', '2'))).toBe('a: { b: 1, c: 2 }\n')
    expect(edited(insertEntry('a: 1', '', 'b', '2'))).toBe('a: 1\nb: 2')
    expect(edited(insertEntry('\uFEFFa: 1\r\n', '', 'b', '2'))).toBe('\uFEFFa: 1\r\nb: 2\r\n')
    expect(edited(insertEntry('a: 1\n...\n', '', 'b', '2'))).toBe('a: 1\nb: 2\n...\n')
  })

  it('refuses a name that is there, a single value, and __proto__', () => {
    expect(insertEntry(text, '', 'title', 'x')).toMatchObject({ ok: false, says: '/title is already there' })
    expect(insertEntry(text, '/title', 'x', 'y')).toMatchObject({ ok: false })
    expect(insertEntry(text, '', '__proto__', 'y')).toMatchObject({ ok: false })
  })
})

describe('remove', () => {
  it.each([
    ['/lights/fill', '  # the second\n  fill:\n    power: 1/2\n    # it was 1/4\n'],
    ['/lights/key', '  # the key\n  key:\n    unit: flashgun\n    power: 1/4   # set\n'],
    ['/lights/key/unit', '    unit: flashgun\n'],
    ['/plan', 'plan: 1   # version\n'],
    ['/camera/lens', 'lens: 85 mm, '],
    ['/camera/at', ', at: { distance: 2.5 m }'],
    ['/readings/0', '  - at: subject\n    of: [key]\n'],
    ['/readings/0/at', 'at: subject\n    '],
    ['/readings/1', '  - { at: backdrop, of: all }\n'],
    ['/size/height', '  height: 2 m\n'],
    ['/size/width', '  width: 1 m, # across\n'],
    ['/notes', 'notes: |\n  one\n  two\n'],
    ['/wanted', 'wanted:\n'],
  ])('%s', (path, removed) => {
    expect(change(removeEntry(text, path))).toEqual([removed, ''])
  })

  it('the last entry leaves an empty map or list', () => {
    expect(change(removeEntry(text, '/lights/rim/power'))).toEqual([' power: 1/8 ', ''])
    expect(change(removeEntry(text, '/lights/fill/power'))[1]).toBe(' {}')
    expect(edited(removeEntry('a:\n  - b\n', '/a/0'))).toBe('a: []\n')
    expect(removeEntry('a: 1\n', '/a')).toMatchObject({ ok: false, says: '/a is all that the file holds' })
  })
})

describe('aliases and merge keys', () => {
  const shared = `base: &b { power: 1/4, zoom: 35 mm }
key:
  <<: *b
  unit: x
fill: { power: &p 1/2 }
rim: { power: *p, at: *b }
`
  it('an alias gives way to a value of its own', () => {
    expect(change(setValue(shared, '/rim/power', '1/8'), shared)).toEqual(['*p', '1/8'])
  })
  it('a key of the map overrides what << brings in', () => {
    expect(change(setValue(shared, '/key/power', '1/8'), shared)).toEqual(['', '  power: 1/8\n'])
  })
  it('what other places repeat, or what stands behind an alias, is refused', () => {
    expect(setValue(shared, '/fill/power', '1/8')).toMatchObject({
      ok: false,
      says: expect.stringContaining('alias'),
    })
    expect(setValue(shared, '/rim/at/power', '1/8')).toMatchObject({
      ok: false,
      says: expect.stringContaining('alias'),
    })
    expect(insertEntry(shared, '/rim/at', 'x', '1')).toMatchObject({
      ok: false,
      says: expect.stringContaining('alias'),
    })
    expect(removeEntry(shared, '/rim/at/power')).toMatchObject({
      ok: false,
      says: expect.stringContaining('alias'),
    })
    expect(removeEntry(shared, '/key/power')).toMatchObject({
      ok: false,
      says: expect.stringContaining('<<'),
    })
    expect(removeEntry(shared, '/base')).toMatchObject({ ok: false })
  })
})

describe('new values', () => {
  const trick = fc.oneof(
    fc.constantFrom(
      '2:1',
      'yes',
      'No',
      'on',
      '~',
      'null',
      '1_000',
      '0777',
      '0b1',
      '12:30:45',
      '2027-06-30',
      '=',
      '<<',
      '- a',
      '-',
      '?',
      ': x',
      'a: b',
      'a #b',
      '#5',
      '&a',
      '*a',
      '!x',
      '|',
      '>',
      "'x",
      '"x',
      '%5',
      '@x',
      '`x',
      '{x',
      '[x',
      'x}',
      'x, y',
      '---',
      '... x',
      ' x',
      'x ',
      'x:',
      '\ttab',
      'two\nlines',
      '\u0085',
      '\uFEFFx',
      '\u0000',
      '\u007f',
      "it's",
      '🙂',
      '1/4',
      'f/5.6',
      '+1 stop',
    ),
    fc.string({ maxLength: 12 }),
    fc.string({
      maxLength: 8,
      unit: fc.constantFrom('a', '1', ':', ' ', '-', '#', ',', '{', ']', '"', "'", '\\', '\n', '_', '.'),
    }),
  )

  it('quoted strings read as themselves in both versions, in block and flow', () => {
    fc.assert(
      fc.property(trick, (value) => {
        for (const flow of [false, true]) {
          const source = quoted(value, flow)
          const file = flow ? `[${source}]` : `- ${source}`
          expect(plain(readText('x', file).root!), file).toEqual([value])
          for (const version of ['1.1', '1.2'] as const)
            expect(parse(file, { version }), file).toEqual([value])
        }
      }),
      { numRuns: 1000 },
    )
  })

  it('are scalars as they read, and maps, lists and quoted scalars as they are', () => {
    expect(newValue('100', false)).toEqual({ source: '100', value: 100 })
    expect(newValue('true', false)).toEqual({ source: 'true', value: true })
    expect(newValue('{ a: 1 }', false)).toEqual({ source: '{ a: 1 }', value: { a: 1 } })
    expect(newValue("'2:1'", false)).toEqual({ source: "'2:1'", value: '2:1' })
    expect(newValue('[draft', false)).toEqual({ source: "'[draft'", value: '[draft' })
    expect(newValue("'s all", false)).toEqual({ source: "'''s all'", value: "'s all" })
  })
})

/** Pointers of all values, the root's first. */
const pointers = (value: unknown, keys: readonly string[] = []): string[] => [
  pointer(...keys),
  ...(typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, inner]) => pointers(inner, [...keys, key]))
    : []),
]

/** The files' values may share parts, which a copy must not. */
const copyOf = (value: unknown): unknown => JSON.parse(JSON.stringify(value))

const lookUp = (value: unknown, path: string): unknown =>
  path
    .split('/')
    .slice(1)
    .reduce<unknown>((inner, key) => (inner as Record<string, unknown>)[key], value)

const without = (value: unknown, path: string): unknown => {
  const copy = copyOf(value)
  const holder = lookUp(copy, path.slice(0, path.lastIndexOf('/')))
  const key = path.slice(path.lastIndexOf('/') + 1)
  if (Array.isArray(holder)) holder.splice(Number(key), 1)
  else delete (holder as Record<string, unknown>)[key]
  return copy
}

/** The edit is its splice, and nothing else of the text has changed. */
const spliced = (from: string, edit: Edit): unknown => {
  if (!edit.ok) throw new Error(edit.says)
  const { start, end, insert } = edit.splice
  expect(edit.text).toBe(from.slice(0, start) + insert + from.slice(end))
  const { root, faults } = readText('x', edit.text)
  expect(faults).toEqual([])
  return plain(root!)
}

const comments = (file: string): number => file.split(' # ').length + file.split(/^ *# /mu).length

describe('in any file', () => {
  const anywhere = fc.tuple(yamlFile, fc.nat()).map(([file, pick]) => {
    const paths = pointers(file.value)
    return { ...file, path: paths[pick % paths.length]! }
  })

  it('set changes the value and nothing else, and keeps every comment but those inside what it replaces', () => {
    fc.assert(
      fc.property(
        anywhere,
        fc.constantFrom('1/8 + 0.3', '2:1', 'a, b', '{ x: [1] }', '7'),
        (file, source) => {
          fc.pre(file.path !== '')
          const edit = setValue(file.text, file.path, source)
          const was = lookUp(file.value, file.path)
          // A comment between a key and the block below it stays in the way.
          if (!edit.ok && typeof was === 'object') return
          const want = copyOf(file.value)
          const holder = lookUp(want, file.path.slice(0, file.path.lastIndexOf('/'))) as Record<
            string,
            unknown
          >
          holder[file.path.slice(file.path.lastIndexOf('/') + 1)] = newValue(source, false).value
          expect(spliced(file.text, edit), file.text).toEqual(want)
          if (typeof was !== 'object') expect(comments(edited(edit))).toBe(comments(file.text))
        },
      ),
      { numRuns: 400 },
    )
  })

  it('insert adds at the end and changes nothing else', () => {
    fc.assert(
      fc.property(anywhere, fc.constantFrom('1/8 + 0.3', '2:1', 'a, b', '{ x: [1] }'), (file, source) => {
        const holder = lookUp(file.value, file.path)
        fc.pre(typeof holder === 'object')
        const edit = insertEntry(file.text, file.path, 'new-name', source)
        const want = copyOf(file.value)
        const added = lookUp(want, file.path) as Record<string, unknown>
        if (Array.isArray(added)) added.push(newValue(source, false).value)
        else added['new-name'] = newValue(source, false).value
        expect(spliced(file.text, edit), file.text).toEqual(want)
        expect(comments(edited(edit))).toBe(comments(file.text))
        expect(edit.ok && edit.splice.end - edit.splice.start).toBeLessThanOrEqual(2)
      }),
      { numRuns: 400 },
    )
  })

  it('remove takes the entry out and changes nothing else', () => {
    fc.assert(
      fc.property(anywhere, (file) => {
        fc.pre(file.path !== '')
        const edit = removeEntry(file.text, file.path)
        const holder = lookUp(file.value, file.path.slice(0, file.path.lastIndexOf('/'))) as object
        // The one entry of the file, or of a block below a comment.
        if (!edit.ok && Object.keys(holder).length === 1) return
        expect(spliced(file.text, edit), file.text).toEqual(without(file.value, file.path))
      }),
      { numRuns: 400 },
    )
  })

  it('line ends and the byte-order mark stay what they were', () => {
    fc.assert(
      fc.property(anywhere, (file) => {
        for (const edit of [
          insertEntry(file.text, file.path, 'new-name', '1'),
          removeEntry(file.text, file.path),
        ]) {
          if (!edit.ok) continue
          expect(edit.text.startsWith('\uFEFF')).toBe(file.text.startsWith('\uFEFF'))
          if (file.text.includes('\r\n')) expect(/(?<!\r)\n/u.test(edit.text)).toBe(false)
          else expect(edit.text).not.toContain('\r')
        }
      }),
      { numRuns: 300 },
    )
  })
})
