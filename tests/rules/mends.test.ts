/** Solved figures do what they say: what a mend names is written into the plan, and the plan is checked again. */
import { describe, expect, it } from 'vitest'
import { rules } from '../../src/rules/index.js'
import { setValue } from '../../src/text/edit.js'
import { pointer } from '../../src/text/place.js'
import { checkText, findingsOf } from './check-text.js'

const heights = { note: 1, warning: 2, error: 3 }

/** `lights.paper.power → 1/8 + 0.3, lights.other.power → full`: the edits that a title names; undefined for a sentence. */
const edits = (title: string): readonly (readonly [string, string])[] | undefined => {
  const parts = title
    .split(/, (?=lights\.|panels\.|camera\.|backdrop\.)/)
    .map((part) => part.replace(/, (exactly|or) .*$/, ''))
  const found = parts.map((part) => /^((?:lights|panels|camera|backdrop)[\w.-]+) → ([^,]+)$/.exec(part))
  return found.every((one) => one !== null)
    ? found.map((one) => [pointer(...one![1]!.split('.')), one![2]!] as const)
    : undefined
}

const applied = (text: string, title: string): string | undefined => {
  const list = edits(title)
  if (list === undefined) return undefined
  return list.reduce<string | undefined>((changed, [at, source]) => {
    if (changed === undefined) return undefined
    const edited = setValue(changed, at, source)
    return edited.ok ? edited.text : undefined
  }, text)
}

/** Rules whose mends are alternatives that each do the job alone. */
const each = [
  'backdrop-off-tone',
  'backdrop-not-black',
  'frame-past-backdrop',
  'subject-cropped',
  'shutter-beyond-sync',
  'trigger-margin',
  'high-speed-short',
  'leaf-cuts-flash',
  'flicker-bands',
  'motion-blur',
  'electronic-shutter',
  'power-beyond-range',
  'power-off-step',
  'unit-too-weak',
  'aperture-off-key',
  'depth-short',
  'group-uneven',
  'backdrop-uneven',
  'power-differs',
  'beam-short',
  'light-without-effect',
  'kit-short',
  'triggers-tied',
  'shadow-in-frame',
  'shadows-crossed',
  'camera-off-source-axis',
  'operator-blocks-source',
  'shadow-on-person',
  'light-in-frame',
  'panel-in-frame',
  'stand-in-frame',
  'in-collision',
  'outside-room',
  'room-short',
  'ceiling-low',
  'aim-blocked',
  'source-small',
  'front-unfilled',
  'recycle-slow',
  'charge-short',
  'automatic-exposure',
  'slave-false-start',
  'diffraction',
  'glasses-mirror-light',
  'backdrop-mirrors-light',
  'gloss-shows',
  'backdrop-colour-washed',
  'white-balance-off',
]

/** Rules that any change of a set may upset. */
const watched = rules.filter(({ inShort }) => inShort !== undefined).map(({ id }) => id)

describe('what a mend names settles its finding, or brings it a level down', () => {
  const trials = rules
    .filter(({ id }) => each.includes(id) || id === 'backdrop-below-white' || id === 'backdrop-above-limit')
    .flatMap((rule) =>
      rule.fires.flatMap(({ title, plan }) =>
        findingsOf(rule.id, plan).flatMap((finding) =>
          finding.advice.flatMap((advice) => {
            const after = applied(plan, advice.title)
            const partial = /still|as far as|as low as|end of the range|beside the readings/.test(
              `${advice.gives} ${advice.costs}`,
            )
            return after === undefined || partial
              ? []
              : [
                  {
                    name: `${rule.id}, ${title}: ${advice.title}`,
                    rule: rule.id,
                    plan,
                    finding,
                    advice,
                    after,
                  },
                ]
          }),
        ),
      ),
    )

  it('there are plenty to try', () => {
    expect(trials.length).toBeGreaterThan(30)
    expect(new Set(trials.map(({ rule }) => rule)).size).toBeGreaterThan(10)
  })

  // These hand over the set that their advice makes.
  const tried = trials.filter(({ rule }) =>
    [...each.slice(0, 13), 'backdrop-below-white', 'backdrop-above-limit'].includes(rule),
  )
  it.each(tried)('$name: what new it brings is named', ({ rule, plan, advice, after }) => {
    const before = new Map(checkText(plan).findings.map((one) => [one.rule, heights[one.level]]))
    const brought = checkText(after).findings.filter(
      (one) =>
        watched.includes(one.rule) && one.rule !== rule && heights[one.level] > (before.get(one.rule) ?? 0),
    )
    // A light that goes on metering what it is to meter is turned as well, where the text alone would not turn it.
    if (brought.length > 0) expect(advice.costs).toMatch(/\bthen\b|power|less light/)
  })

  it.each(trials)('$name', ({ rule, finding, after }) => {
    const { findings } = checkText(after)
    expect(findings.filter((one) => one.rule === 'plan-unreadable').map((one) => one.message)).toEqual([])
    const left = findings.filter((one) => one.rule === rule)
    for (const one of left)
      expect(heights[one.level]).toBeLessThan(heights[finding.level] + (finding.level === 'note' ? 1 : 0))
  })
})
