import { describe, expect, it } from 'vitest'
import { checkReading } from '../../src/checker/check-plan.js'
import { readPlan } from '../../src/language/read-plan.js'
import { ruleNamed, rules } from '../../src/rules/index.js'
import type { Rule } from '../../src/rules/rule.js'
import { checkText, noFiles } from '../rules/check-text.js'

/** Paper too narrow for the frame, key two stops over the aperture, lights past sync: several findings at once. */
const faulty = (more = '') => `plan: 1
title: Several things wrong
camera: { lens: 35 mm, at: { distance: 2.5 m }, aperture: f/2.8, shutter: 1/400, iso: 100, sync: 1/200 }
subject: { kind: person }
backdrop: { surface: white paper, width: 1.35 m, behind: 1 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { backdrop: any }
${more}`

const ids = (text: string, options = {}) => checkText(text, options).findings.map(({ rule }) => rule)

describe('checkReading', () => {
  it('orders findings by place, then by rule', () => {
    const { findings } = checkText(faulty())
    expect(findings.length).toBeGreaterThanOrEqual(3)
    const starts = findings.map(({ place }) => place.start)
    expect(starts).toEqual([...starts].sort((a, b) => a - b))
    const one = findings.find(({ rule }) => rule === 'aperture-off-key')!
    expect(faulty().slice(one.place.start, one.place.end)).toBe('f/2.8')
    expect(one.place).toMatchObject({ file: 'test.plan.yaml', line: 3 })
  })

  it('gives the same bytes each time', () => {
    expect(JSON.stringify(checkText(faulty()).findings)).toBe(JSON.stringify(checkText(faulty()).findings))
  })

  it('keeps ids while lines move and figures change', () => {
    const of = (text: string) => new Map(checkText(text).findings.map(({ rule, id }) => [rule, id]))
    const moved = faulty()
      .replace('title: Several', '# a comment\n\ntitle: Several')
      .replace('f/2.8', 'f/2.5')
    expect(of(moved)).toEqual(of(faulty()))
    expect(new Set(of(faulty()).values()).size).toBe(of(faulty()).size)
  })

  it('gives findings of one cause one cause', () => {
    const { findings } = checkText(`plan: 1
title: Aperture off, paper grey for it
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/11, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2.5 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 10 deg left, distance: 1.4 m, height: 1.8 m } }
  paper: { role: backdrop, unit: head 600 Ws, modifier: softbox 60 x 90 cm, meters: f/13, at: { left: 60 cm, before-backdrop: 2.2 m, height: 1.6 m } }
wanted: { backdrop: white }
`)
    const causes = findings
      .filter(({ cause }) => cause === 'the camera is not set to the key')
      .map(({ rule }) => rule)
    expect(causes).toEqual(['aperture-off-key', 'backdrop-below-white'])
  })

  it('names related places once, each with what it says', () => {
    for (const { also, place } of checkText(faulty()).findings) {
      for (const one of also) {
        expect(one.says.length).toBeGreaterThan(3)
        expect([one.start, one.end]).not.toEqual([place.start, place.end])
      }
      expect(new Set(also.map(({ start, end }) => `${start} ${end}`)).size).toBe(also.length)
    }
  })

  it('reports what is wrong with the text where nothing can be computed', () => {
    const broken = checkText('plan: 1\ntitle: Broken\ncamera: { lens: 85 mm, at: { distance: 2.5 }\n')
    expect(broken.findings.length).toBeGreaterThan(0)
    for (const { rule, level, certainty } of broken.findings)
      expect({ rule, level, certainty }).toEqual({
        rule: 'plan-unreadable',
        level: 'error',
        certainty: 'sure',
      })
    expect(broken).toMatchObject({
      file: 'test.plan.yaml',
      title: '',
      notChecked: [],
      accepted: [],
      remarks: [],
    })
  })

  it('survives an empty text and one that is no map', () => {
    for (const text of ['', '- 1', 'null', '\u0000', '...']) {
      const { findings, defects } = checkText(text)
      expect(findings.length).toBeGreaterThan(0)
      expect(defects).toEqual([])
    }
  })

  it('lists rules that lack something, with the line that would let them run', () => {
    const { notChecked } = checkText(faulty())
    const ambient = notChecked.find(({ rule }) => rule === 'ambient-in-exposure')
    expect(ambient?.enable?.pointer).toBe('/ambient')
    for (const { rule, because } of notChecked) {
      expect(ruleNamed(rule)).toBeDefined()
      expect(because).toMatch(/^[a-z]/)
    }
    // White is not wanted, so the rule for it does not apply and is not listed.
    expect(notChecked.map(({ rule }) => rule)).not.toContain('backdrop-below-white')
  })

  it('says how the light was computed', () => {
    const { remarks } = checkText(faulty())
    expect(remarks).toContain('dark and open: the plan states no room')
    expect(remarks.some((line) => line.startsWith('sync taken as'))).toBe(false)
    expect(checkText(faulty().replace(', sync: 1/200', '')).remarks).toContain(
      'sync taken as 1/160: the plan states none',
    )
  })
})

describe('values from other files', () => {
  const base = `plan: 1
title: Base
camera: { lens: 35 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: 1.35 m, behind: 1 m }
lights: { key: { unit: flashgun, meters: f/5.6, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } } }
`
  const text = 'plan: 1\ntitle: On a base\nbase: narrow.base.yaml\nwanted: { backdrop: any }\n'
  it('are pointed at in their file, with the place where they are used', () => {
    const reading = readPlan('a.plan.yaml', text, {
      read: (path) => ({ ok: true, file: path, text: base }),
    })
    const finding = checkReading(reading).findings.find(({ rule }) => rule === 'frame-past-backdrop')!
    expect(finding.place).toMatchObject({ file: 'narrow.base.yaml', line: 5 })
    expect(base.slice(finding.place.start, finding.place.end)).toBe('1.35 m')
    const used = finding.also.find(({ says }) => says === 'used here')
    expect(used).toMatchObject({ file: 'a.plan.yaml', line: 3 })
  })

  it('come after the plan’s own', () => {
    const reading = readPlan('a.plan.yaml', `${text}camera: { aperture: f/16 }\n`, {
      read: (path) => ({ ok: true, file: path, text: base }),
    })
    const files = checkReading(reading).findings.map(({ place }) => place.file)
    expect(new Set(files).size).toBe(2)
    expect(files.indexOf('a.plan.yaml')).toBe(0)
    expect(files.lastIndexOf('a.plan.yaml')).toBeLessThan(files.indexOf('narrow.base.yaml'))
  })
})

describe('a rule that fails', () => {
  const failing: Rule = {
    ...ruleNamed('nothing-wanted')!,
    id: 'nothing-wanted',
    needs: () => undefined,
    detect: () => {
      throw new TypeError('worked out wrong')
    },
  }
  it('is told as a defect and takes no other down', () => {
    const { findings, defects } = checkText(faulty(), {
      rules: [failing, ...rules.filter(({ id }) => id !== failing.id)],
    })
    expect(defects?.map(({ rule }) => rule)).toEqual(['nothing-wanted'])
    expect((defects![0]!.error as Error).message).toBe('worked out wrong')
    expect(findings.length).toBe(checkText(faulty()).findings.length)
  })

  it('only in its mends is told once they are read, and its finding stands', () => {
    const asked: string[] = []
    const mending: Rule = {
      ...ruleNamed('frame-past-backdrop')!,
      mend: () => {
        asked.push('mend')
        throw new TypeError('mended wrong')
      },
    }
    const { findings, defects } = checkText(faulty(), { rules: [mending] })
    expect(findings.map(({ rule, level }) => `${rule} ${level}`)).toEqual(['frame-past-backdrop warning'])
    expect([asked, defects]).toEqual([[], []])
    expect(findings[0]!.advice).toEqual([])
    expect(findings[0]!.advice).toEqual([])
    expect(asked).toEqual(['mend'])
    expect(defects?.map(({ rule, error }) => `${rule}: ${(error as Error).message}`)).toEqual([
      'frame-past-backdrop: mended wrong',
    ])
  })
})

describe('house limits and levels', () => {
  it('take the place of the rule’s own', () => {
    expect(ids(faulty(), { levels: { 'frame-past-backdrop': 'off' } })).not.toContain('frame-past-backdrop')
    const [frame] = checkText(faulty(), { levels: { 'frame-past-backdrop': 'error' } }).findings.filter(
      ({ rule }) => rule === 'frame-past-backdrop',
    )
    expect(frame).toMatchObject({ level: 'error', ruleLevel: 'error' })
    expect(ids(faulty(), { limits: { 'frame-past-backdrop': { past: 500 } } })).not.toContain(
      'frame-past-backdrop',
    )
    expect(
      ids(faulty(), { limits: { 'frame-past-backdrop': { unknown: 500 }, constructor: { past: 1 } } }),
    ).toContain('frame-past-backdrop')
  })

  it('cannot hide that a plan is unreadable', () => {
    const broken = 'plan: 1\ntitle: Broken\ncamera: 5\n'
    const { findings } = checkText(broken, { levels: { 'plan-unreadable': 'off' } })
    expect(findings.map(({ level }) => level)).toContain('error')
  })

  it('do not write numbers of the house into the rule', () => {
    const limits = JSON.stringify(ruleNamed('frame-past-backdrop')!.limits)
    checkText(faulty(), { limits: { 'frame-past-backdrop': { past: 500 } } })
    expect(JSON.stringify(ruleNamed('frame-past-backdrop')!.limits)).toBe(limits)
  })
})

describe('accepted findings', () => {
  const accept = (entries: string) => faulty(`accept:\n${entries}`)
  const entry = '  - { rule: frame-past-backdrop, because: the edges are cropped in delivery'

  it('are set aside with their reason', () => {
    const { findings, accepted } = checkText(accept(`${entry} }\n`))
    expect(findings.map(({ rule }) => rule)).not.toContain('frame-past-backdrop')
    expect(accepted).toMatchObject([
      {
        rule: 'frame-past-backdrop',
        because: 'the edges are cropped in delivery',
        finding: { rule: 'frame-past-backdrop' },
      },
    ])
  })

  it('count again from the day after, when the day is said', () => {
    const dated = accept(`${entry}, until: 2027-06-30 }\n`)
    expect(ids(dated, { on: '2027-06-30' })).not.toContain('frame-past-backdrop')
    const after = checkText(dated, { on: '2027-07-01' })
    expect(after.findings.map(({ rule }) => rule)).toEqual(
      expect.arrayContaining(['frame-past-backdrop', 'accept-expired']),
    )
    expect(after.accepted).toEqual([])
  })

  it('without a day stand, and the expiry is listed as not checked', () => {
    const reading = readPlan('test.plan.yaml', accept(`${entry}, until: 2027-06-30 }\n`), noFiles)
    const { accepted, notChecked } = checkReading(reading)
    expect(accepted.length).toBe(1)
    expect(notChecked.find(({ rule }) => rule === 'accept-expired')).toMatchObject({
      enable: { pointer: '/accept/0/until' },
    })
  })

  it('that find nothing are told, but not where the rule could not run or is off', () => {
    expect(ids(accept('  - { rule: group-uneven, because: it is a choir }\n'))).not.toContain('accept-unused')
    expect(ids(accept('  - { rule: ambient-in-exposure, because: candles }\n'))).not.toContain(
      'accept-unused',
    )
    expect(ids(accept('  - { rule: subject-cropped, because: tight on purpose }\n'))).not.toContain(
      'accept-unused',
    )
    expect(ids(accept('  - { rule: no-triangle, because: it looks so }\n'))).toContain('accept-unused')
    expect(ids(accept(`${entry} }\n`), { levels: { 'frame-past-backdrop': 'off' } })).not.toContain(
      'accept-unused',
    )
  })

  it('of a rule that is not there get the name that was meant', () => {
    const { findings } = checkText(accept('  - { rule: frame-past-backdrp, because: slip }\n'))
    const unused = findings.find(({ rule }) => rule === 'accept-unused')!
    expect(unused.advice[0]?.title).toMatch(/frame-past-backdrop/)
    expect(unused.place.pointer).toBe('/accept/0/rule')
  })
})
