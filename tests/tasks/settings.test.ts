import { describe, expect, it } from 'vitest'
import { rules } from '../../src/rules/index.js'
import { readSettings } from '../../src/tasks/settings.js'

const read = (text: string) => readSettings('thirdstop.yaml', text)
const said = (text: string) => read(text).problems.map(({ file, says }) => `${file} ${says}`)

describe('readSettings', () => {
  it('reads levels, limits in their own unit, patterns and what fails', () => {
    const { settings, problems } = read(
      `thirdstop: 1
levels: { power-off-step: 'off', backdrop-uneven: note }
limits:
  backdrop-uneven: { ${Object.keys(rules.find(({ id }) => id === 'backdrop-uneven')!.limits)[0]}: 1/2 stop }
plans: ['**/*.yaml']
ignore: [old]
fail-on: error
`,
    )
    expect(problems).toEqual([])
    expect(settings.levels).toEqual({ 'power-off-step': 'off', 'backdrop-uneven': 'note' })
    expect(Object.values(settings.limits['backdrop-uneven']!)).toEqual([0.5])
    expect(settings).toMatchObject({ plans: ['**/*.yaml'], ignore: ['old'], failOn: 'error' })
  })

  it('takes every limit of every rule in its own unit, as its page shows it', () => {
    const spelled = {
      stop: '1 stop',
      cm: '1 cm',
      m: '1 m',
      deg: '1 deg',
      share: '100 %',
      sRGB: '1',
      count: '1',
      mired: '1 mired',
    }
    for (const rule of rules) {
      for (const [name, limit] of Object.entries(rule.limits)) {
        const { settings, problems } = read(
          `thirdstop: 1\nlimits: { ${rule.id}: { ${name}: ${spelled[limit.unit]} } }\n`,
        )
        expect(problems, `${rule.id} ${name}`).toEqual([])
        expect(settings.limits[rule.id]![name], `${rule.id} ${name}`).toBeCloseTo(1, 9)
      }
    }
  })

  it('says where a name or a value is wrong, and keeps what is right', () => {
    expect(said('thirdstop: 1\nlevels: { power-of-step: note }\n')).toEqual([
      'thirdstop.yaml:2:26 there is no rule power-of-step; did you mean power-off-step?',
    ])
    const { settings, problems } = read(
      'thirdstop: 1\nlevels: { nothing-at-all: note, depth-short: note }\nlimits: { depth-short: { none: 1 stop } }\n',
    )
    expect(problems).toHaveLength(2)
    expect(settings.levels).toEqual({ 'depth-short': 'note' })
  })

  it('refuses a limit without its unit', () => {
    const [rule, name] = rules.flatMap((one) =>
      Object.entries(one.limits)
        .filter(([, { unit }]) => unit === 'stop')
        .map(([limit]) => [one.id, limit] as const),
    )[0]!
    expect(said(`thirdstop: 1\nlimits: { ${rule}: { ${name}: 1 } }\n`)[0]).toMatch(
      /^thirdstop\.yaml:2:\d+ .*stop/,
    )
    expect(said(`thirdstop: 1\nlimits: { ${rule}: { ${name}: 1 m } }\n`)[0]).toMatch(/stop/)
  })

  it('never takes a name of every object for one of its own', () => {
    expect(said('thirdstop: 1\nlimits: { constructor: { name: 1 } }\n')).toHaveLength(1)
    expect(said('thirdstop: 1\nlimits: { depth-short: { constructor: 1 } }\n')).toHaveLength(1)
  })

  it.each([
    ['', 'the file is empty'],
    ['[1', 'thirdstop.yaml:1:1'],
    ['thirdstop: 2\n', 'thirdstop.yaml:1:'],
    ['thirdstop: 1\nlevel: {}\n', 'did you mean levels'],
    ['just words', 'thirdstop.yaml:1:1'],
  ])('refuses %j with its place', (text, part) => {
    const { settings, problems } = read(text)
    expect(problems.length).toBeGreaterThan(0)
    expect(said(text).join('\n')).toContain(part)
    expect(settings.levels).toEqual({})
  })
})
