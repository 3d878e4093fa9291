/** Random files like plans: block and flow, comments, blank lines, quotes, CRLF, a byte-order mark; with their values. */
import fc from 'fast-check'

export interface YamlFile {
  readonly text: string
  readonly value: unknown
}

interface Written {
  /** Lines without indent; or, with `flow`, one line. */
  readonly lines: readonly string[]
  readonly flow: boolean
  readonly value: unknown
}

const name = fc.oneof(
  fc.constantFrom(
    'plan',
    'title',
    'camera',
    'at',
    'lights',
    'key',
    'paper-left',
    'power',
    'reads',
    'of',
    'wanted',
    'x',
    '24 mm',
  ),
  fc.stringMatching(/^[a-z][a-z-]{0,8}$/u),
)

const comment = fc.constantFrom('', '', '', ' # set', ' # f/8: metered', '   # - {')

const scalar: fc.Arbitrary<Written> = fc
  .oneof(
    fc.constantFrom<readonly [string, unknown]>(
      ['1/4', '1/4'],
      ['f/5.6', 'f/5.6'],
      ['35 deg left', '35 deg left'],
      ['100', 100],
      ['-1.5 stops', '-1.5 stops'],
      ['true', true],
      ["'2:1'", '2:1'],
      ['2:1', '2:1'],
      [`6'6"`, `6'6"`],
      ['"White: two"', 'White: two'],
      ["'it''s'", "it's"],
      ['"\\u00e9\\n"', 'é\n'],
      ['octa 90 cm', 'octa 90 cm'],
      ['Größe \u{1F4A1}', 'Größe \u{1F4A1}'],
      ['{}', {}],
      ['[]', []],
    ),
    fc.integer({ min: -1000, max: 1000 }).map((number) => [String(number), number] as const),
  )
  .map(([source, value]) => ({ lines: [source], flow: true, value }))

const unique = <T>(entries: readonly (readonly [string, T])[]): readonly (readonly [string, T])[] => [
  ...new Map(entries),
]

const own = (entries: readonly (readonly [string, Written])[]): unknown =>
  Object.fromEntries(entries.map(([key, one]) => [key, one.value]))

const flowMap = (
  entries: readonly (readonly [string, Written])[],
  wide: boolean,
  trailing: boolean,
): Written => {
  const pad = wide ? ' ' : ''
  const inner = entries.map(([key, one]) => `${key}: ${one.lines[0]}`).join(', ')
  return {
    lines: [entries.length === 0 ? '{}' : `{${pad}${inner}${trailing ? ',' : ''}${pad}}`],
    flow: true,
    value: own(entries),
  }
}

const { flow } = fc.letrec<{ flow: Written }>((tie) => ({
  flow: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    scalar,
    fc
      .tuple(fc.array(fc.tuple(name, tie('flow')), { maxLength: 4 }), fc.boolean(), fc.boolean())
      .map(([entries, wide, trailing]) => flowMap(unique(entries), wide, trailing)),
    fc.array(tie('flow'), { maxLength: 4 }).map((items) => ({
      lines: [`[${items.map((one) => one.lines[0]).join(', ')}]`],
      flow: true,
      value: items.map((one) => one.value),
    })),
  ),
}))

const indented = (lines: readonly string[], by: string): string[] =>
  lines.map((line) => (line === '' ? '' : by + line))

/** What a key or a dash holds: on its line, or below. */
const held = (head: string, one: Written, by: string, note: string): string[] =>
  one.flow ? [`${head} ${one.lines[0]}${note}`] : [`${head}${note}`, ...indented(one.lines, by)]

const before = fc.constantFrom<readonly string[]>([], [], [], [''], ['# about it'], ['', '# above', '# it'])

const { block } = fc.letrec<{ block: Written }>((tie) => ({
  block: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    flow,
    fc
      .tuple(
        fc.array(fc.tuple(name, tie('block'), before, comment), { minLength: 1, maxLength: 5 }),
        fc.constantFrom('  ', '    ', ' '),
      )
      .map(([raw, by]): Written => {
        const entries = unique(raw.map(([key, one, above, note]) => [key, { one, above, note }] as const))
        return {
          lines: entries.flatMap(([key, { one, above, note }], place) => [
            ...(place === 0 ? [] : above),
            ...held(`${key}:`, one, by, note),
          ]),
          flow: false,
          value: Object.fromEntries(entries.map(([key, { one }]) => [key, one.value])),
        }
      }),
    fc.array(fc.tuple(tie('block'), before, comment), { minLength: 1, maxLength: 4 }).map(
      (items): Written => ({
        lines: items.flatMap(([one, above, note], place) => {
          const lead = place === 0 ? [] : above
          // A block map may start on the line of its dash.
          return one.flow || one.lines[0]!.startsWith('-') || note !== ''
            ? [...lead, ...held('-', one, '  ', note)]
            : [...lead, `- ${one.lines[0]}`, ...indented(one.lines.slice(1), '  ')]
        }),
        flow: false,
        value: items.map(([one]) => one.value),
      }),
    ),
  ),
}))

export const yamlFile: fc.Arbitrary<YamlFile> = fc
  .tuple(
    block.filter((one) => !one.flow || /^[[{]/u.test(one.lines[0]!)),
    fc.constantFrom<readonly string[]>([], ['# a plan', ''], ['---'], ['%YAML 1.2', '---']),
    fc.boolean(),
    fc.boolean(),
    fc.boolean(),
  )
  .map(([one, head, crlf, mark, lastLine]) => {
    const lines = [...head, ...one.lines].join('\n') + (lastLine ? '\n' : '')
    return {
      text: (mark ? '\uFEFF' : '') + (crlf ? lines.replaceAll('\n', '\r\n') : lines),
      value: one.value,
    }
  })
