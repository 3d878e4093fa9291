import { describe, expect, it } from 'vitest'
import { lines } from '../../src/reports/lines.js'
import { look } from '../../src/reports/look.js'
import { text } from '../../src/reports/text.js'
import { runOf } from '../../src/tasks/check.js'
import { checked, file, placeOf, planText, short, uneven } from './sample.js'

const report = (plans: Parameters<typeof runOf>[0], options: { ascii?: boolean; all?: boolean } = {}) =>
  text(runOf(plans), look({ ascii: options.ascii ?? false }), options.all)

const notChecked = [
  { rule: 'backdrop-uneven', because: 'the plan states no backdrop' },
  {
    rule: 'depth-short',
    because: 'the plan states no lens',
    enable: { pointer: '/camera/lens', text: 'lens: 85 mm' },
  },
  { rule: 'aperture-off-key', because: 'no light lights the subject' },
]

describe('text', () => {
  it('shows a finding with its line, scale, why, mends and basis', () => {
    expect(report([checked()])).toBe(
      `recipes/white.plan.yaml:6:12: warning: the backdrop records light grey (sRGB 198) at its lower left, 1.1 stops short of white for certain [backdrop-below-white]
       6 ·     power: 1/16
                      ‾‾‾‾
   stops · -2  .  . -1  .  .  0  .  . +1  .  . +2
                     [  ▲  ]      |   needs +0.4 over the camera, is -0.7 ± 0.3
     why · camera f/5.6, backdrop f/4.5 at its lower left; paper of 0.90; a quarter stop of headroom
    also · line 7: white is wanted here
    mend · lights.paper.power → 1/8 + 0.3: darkest point +0.6; but recycle 0.4 s longer
      or · a second light on the paper
   basis · incident metering, ISO 2720; sRGB, IEC 61966-2-1
           thirdstop explain backdrop-below-white

recipes/white.plan.yaml: one warning
`,
    )
  })

  it('takes one line for a good plan', () => {
    expect(report([checked({ findings: [] })])).toBe('recipes/white.plan.yaml: nothing found against it\n')
    expect(report([checked({ findings: [], caveats: ['key is too low'] })])).toBe(
      'recipes/white.plan.yaml: nothing found against it; key is too low\n',
    )
    expect(report([checked({ findings: [], notChecked })])).toBe(
      'recipes/white.plan.yaml: nothing found against it; not checked: three rules of backdrop and exposure\n',
    )
  })

  it('puts findings of one cause under it, and shows their line and a rule’s basis once', () => {
    const cause = 'the paper light stands close to the paper'
    const plan = checked({
      findings: [
        { ...short, cause },
        { ...uneven, cause },
        { ...uneven, cause },
      ],
    })
    const shown = report([plan])
    expect(shown.split('\n')[0]).toBe(`${file}: three findings of one cause: ${cause}`)
    expect(shown.match(/power: 1\/16/g)).toHaveLength(1)
    expect(shown.match(/explain backdrop-uneven/g)).toHaveLength(1)
    expect(shown).toContain(`${file}: one warning and two notes\n`)
  })

  it('says advice once under a cause, and again under another', () => {
    const [first, second] = [
      { title: 'lights.paper.power → 1/8' },
      { title: 'a second light', gives: 'white' },
    ]
    const of = (cause: string, advice: typeof short.advice) => ({ ...short, cause, advice })
    const shown = report([
      checked({
        findings: [
          of('one', [first, second]),
          of('one', [{ ...second, gives: 'even' }, { title: 'a flag' }]),
          of('one', [second]),
          of('another', [second]),
        ],
      }),
    ])
    const mends = shown.split('\n').filter((line) => /^ +(mend|or) /.test(line))
    expect(mends.map((line) => line.trim())).toEqual([
      'mend · lights.paper.power → 1/8',
      'or · a second light: white',
      'mend · a flag',
      'mend · as above',
      'mend · a second light: white',
    ])
  })

  it('says together what it says of one line', () => {
    const lens = { ...placeOf(planText, 'flashgun', file), says: 'with this lens' }
    const shown = report([
      checked({ findings: [{ ...short, also: [lens, ...short.also, { ...lens, says: 'from here' }] }] }),
    ])
    expect(shown.match(/also · .*/g)).toEqual([
      'also · line 4: with this lens; from here',
      'also · line 7: white is wanted here',
    ])
  })

  it('shows in full one of two that differ in their side alone', () => {
    const on = (side: string, more = '') => ({
      ...short,
      message: `paper-${side} is in the camera-${side} edge${more}`,
    })
    const shown = (...findings: (typeof short)[]) => report([checked({ findings })]).match(/why ·/g)!.length
    expect(shown(on('left'), on('right'))).toBe(1)
    expect(report([checked({ findings: [on('left'), on('right')] })])).toMatch(
      /camera-right edge [\s\S]*mend · as above, on the other side/,
    )
    expect(shown(on('left'), on('right', ' by 3 cm'))).toBe(2)
    expect(shown(on('left'), { ...on('right'), rule: 'other-rule' })).toBe(2)
  })

  it('moves findings of one cause together, and leaves a cause of one finding unsaid', () => {
    const other = { ...uneven, rule: 'other-rule' }
    const shown = report([
      checked({
        findings: [
          { ...short, cause: 'one' },
          { ...other, cause: 'another' },
          { ...uneven, cause: 'one' },
        ],
      }),
    ])
    const order = [...shown.matchAll(/\[([a-z-]+)\]$/gm)].map((found) => found[1])
    expect(order).toEqual(['backdrop-below-white', 'backdrop-uneven', 'other-rule'])
    expect(shown).not.toContain('another')
  })

  it('counts in words over several plans, and says once how the light was computed', () => {
    const good = checked({
      file: 'b.plan.yaml',
      findings: [],
      remarks: ['direct light only', 'no room'],
      notJudged: ['panels'],
      caveats: ['key is too low'],
    })
    const bad = checked({
      remarks: ['direct light only'],
      accepted: [{ rule: 'x', because: 'y', finding: short }],
    })
    const shown = report([good, bad, { ...good, file: 'c.plan.yaml', notChecked: notChecked.slice(1) }])
    expect(
      shown.endsWith(`
recipes/white.plan.yaml: one warning; one finding accepted

nothing found against:
  b.plan.yaml (key is too low)
  c.plan.yaml (key is too low; two rules not checked)

   light · direct light only
   light · no room (two plans)
left out · not judged yet: panels (two plans)
three plans checked: one warning; one finding accepted
`),
    ).toBe(true)
  })

  it('with --all says everything in full', () => {
    const accepted = [{ rule: 'backdrop-uneven', because: 'cropped in delivery', finding: uneven }]
    const shown = report([checked({ findings: [], notChecked, accepted, remarks: ['direct light only'] })], {
      all: true,
    })
    expect(
      shown,
    ).toBe(`recipes/white.plan.yaml: nothing found against it; one finding accepted; not checked: three rules of
    backdrop and exposure
accepted · backdrop-uneven (line 6): the backdrop falls by 0.9 stop from its left to its right;
           because cropped in delivery
   light · direct light only
left out · backdrop-uneven: the plan states no backdrop
left out · depth-short: the plan states no lens; write lens: 85 mm
left out · aperture-off-key: no light lights the subject

one plan checked: nothing found; one finding accepted
`)
  })

  it('in ASCII has nothing else', () => {
    const shown = report([checked({ title: 'Größe' })], { ascii: true })
    expect(shown).toMatch(/^[\n\x20-\x7e]*$/)
    expect(shown).toContain('lights.paper.power -> 1/8 + 0.3')
    expect(shown).toContain('                      ~~~~\n')
  })

  it('lets nothing that a plan holds steer the terminal or forge a line', () => {
    const evil = 'x\u001b]0;y\u0007\u202e\nb.plan.yaml:1:1: error: forged'
    const finding = {
      ...short,
      message: evil,
      why: evil,
      advice: [{ title: evil, gives: evil, costs: evil }],
    }
    const plan = checked({
      file: evil,
      findings: [{ ...finding, place: { ...short.place, file: evil } }],
      remarks: [evil],
    })
    for (const shown of [report([plan]), report([plan], { all: true }), lines([plan])]) {
      expect(shown).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/)
      expect(shown).not.toMatch(/^b\.plan\.yaml:1:1/m)
    }
  })

  it('leaves out what is empty, and marks a tab that is the whole matter', () => {
    const tabbed = planText.replace('  key:', '\tkey:')
    const place = placeOf(tabbed, '\t', file)
    const finding = { ...short, why: '', advice: [{ title: '' }], also: [], place }
    const shown = report([checked({ findings: [finding], texts: new Map([[file, tabbed]]) })])
    expect(shown).not.toMatch(/ ·\s*$/m)
    expect(shown).toContain('       4 ·     key: { unit: flashgun, power: 1/4 }\n           ‾‾‾‾\n')
  })

  it('shows a finding whose text is not at hand without its line', () => {
    expect(report([checked({ texts: new Map() })])).not.toContain('‾')
  })
})

describe('lines', () => {
  it('are GNU error messages, one a finding', () => {
    expect(lines([checked({ findings: [short, uneven] })]).split('\n')).toEqual([
      `${file}:6:12: warning: ${short.message} [backdrop-below-white]`,
      `${file}:6:12: note: ${uneven.message} [backdrop-uneven]`,
      '',
    ])
    expect(lines([checked({ findings: [] })])).toBe('')
  })
})
