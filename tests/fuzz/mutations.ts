/** Changes to a plan's text, from small slips to malice, as data that fast-check can make and shrink. */
import fc from 'fast-check'

export type Mutation =
  | { readonly kind: 'cut'; readonly at: number; readonly length: number }
  | { readonly kind: 'insert'; readonly at: number; readonly text: string }
  | { readonly kind: 'copy'; readonly from: number; readonly length: number; readonly at: number }
  | { readonly kind: 'value'; readonly line: number; readonly text: string }
  | { readonly kind: 'swap'; readonly line: number; readonly with: number }
  | { readonly kind: 'indent'; readonly line: number; readonly by: number }
  | { readonly kind: 'wrap'; readonly text: string }

/** What people mistype, and what people who mean harm type. */
const values = [
  '',
  '~',
  'null',
  'yes',
  '0',
  '-0',
  '-1',
  '1e999',
  '-1e999',
  '.nan',
  '.inf',
  '-.inf',
  '0x7fffffffffffffff',
  '123456789012345678901234567890',
  '1000000000',
  '5.6',
  'f/5,6',
  'f/0',
  'f/0.0001',
  'f/99999',
  '0 m',
  '-1 m',
  '0.0000001 mm',
  '1000 m',
  '1001 m',
  '2.4',
  '6\'6"',
  '1/0',
  '0/1',
  '1/1000000',
  '30 s',
  'full',
  '0 %',
  '1/4 + 99',
  'dial 7.3',
  '0 deg',
  '180 deg left',
  '360 deg left',
  '1e9 deg',
  '45 deg',
  '0 x 0 cm',
  '1 x 1000 m',
  '"\\u0000"',
  '"\\u202e"',
  "'",
  '"',
  '[',
  '{',
  '[]',
  '{}',
  '[[[[[[[[]]]]]]]]',
  '{ a: { a: { a: {} } } }',
  '&a [*a, *a]',
  '*a',
  '*nothing',
  '!!binary aGVsbG8=',
  '!!js/function "x"',
  '| text',
  '>-',
  '# only a comment',
  '__proto__',
  'constructor',
  'toString',
  'all',
  'ambient',
  'subject',
  'camera',
  'backdrop',
  'softbox 60 x 90 cm',
  'softbox 0 x 0 cm',
  'octa 900 m',
  'sun',
  'window',
  'led panel',
  'white paper',
  '/etc/passwd',
  '../../../../etc/passwd',
  'file:///etc/passwd',
  'group',
  'object',
  'lying',
]

const snippets = [
  '\t',
  '\r',
  '\r\n',
  '\n\n',
  '\0',
  '\u001b[31m',
  '\u202e',
  '\uFEFF',
  '\ud800',
  ':',
  ': ',
  ' #',
  '- ',
  '? ',
  '---\n',
  '...\n',
  '%YAML 1.1\n---\n',
  '<<: *a\n',
  '&a ',
  '*a ',
  '__proto__: { x: 1 }\n',
  'constructor: 1\n',
  'plan: 2\n',
  'lights: {}\n',
  'lights:\n  key: *key\n',
  'base: plan.yaml\n',
  'kit: [a, b]\n',
  'camera: { at: camera }\n',
  'rows: [{ people: 1000000000 }]\n',
  'subject: { kind: group, rows: [{ people: 40, spacing: 0 m, faces-at: 0 m }] }\n',
  'room: { width: 0 m, length: 0 m, height: 0 m }\n',
  'ambient: { reads: f/64, shutter: 1/8000, iso: 100 }\n',
  'readings: [{ at: subject, of: all, reads: f/0.5 }, { at: subject, of: all, reads: f/128 }]\n',
  '{'.repeat(200),
  '['.repeat(200),
  'a: '.repeat(200),
  '"'.repeat(3),
  'x'.repeat(5000),
]

const place = fc.nat({ max: 4000 })

export const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  fc.record({ kind: fc.constant('cut' as const), at: place, length: fc.nat({ max: 40 }) }),
  fc.record({
    kind: fc.constant('insert' as const),
    at: place,
    text: fc.oneof(fc.constantFrom(...snippets), fc.string({ maxLength: 5 })),
  }),
  fc.record({
    kind: fc.constant('copy' as const),
    from: place,
    length: fc.nat({ max: 300 }),
    at: place,
  }),
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant('value' as const),
      line: fc.nat({ max: 80 }),
      text: fc.constantFrom(...values),
    }),
  },
  fc.record({
    kind: fc.constant('swap' as const),
    line: fc.nat({ max: 80 }),
    with: fc.nat({ max: 80 }),
  }),
  fc.record({
    kind: fc.constant('indent' as const),
    line: fc.nat({ max: 80 }),
    by: fc.integer({ min: -4, max: 4 }),
  }),
  fc.record({ kind: fc.constant('wrap' as const), text: fc.constantFrom('- ', '? ', '[', '"', 'a: |\n') }),
)

export const mutate = (text: string, mutations: readonly Mutation[]): string =>
  mutations.reduce((before, one) => applied(before, one), text)

const applied = (text: string, one: Mutation): string => {
  switch (one.kind) {
    case 'cut':
      return text.slice(0, one.at % (text.length + 1)) + text.slice((one.at % (text.length + 1)) + one.length)
    case 'insert': {
      const at = one.at % (text.length + 1)
      return text.slice(0, at) + one.text + text.slice(at)
    }
    case 'copy': {
      const at = one.at % (text.length + 1)
      return text.slice(0, at) + text.slice(one.from, one.from + one.length) + text.slice(at)
    }
    case 'wrap':
      return one.text + text
    default: {
      const lines = text.split('\n')
      const line = one.line % lines.length
      if (one.kind === 'swap') {
        const other = one.with % lines.length
        const kept = lines[line]!
        lines[line] = lines[other]!
        lines[other] = kept
      } else if (one.kind === 'indent') {
        lines[line] = one.by < 0 ? lines[line]!.slice(-one.by) : ' '.repeat(one.by) + lines[line]!
      } else {
        lines[line] = lines[line]!.replace(/: [^,}]*/, () => `: ${one.text}`)
      }
      return lines.join('\n')
    }
  }
}
