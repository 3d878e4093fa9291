import { describe, expect, it } from 'vitest'
import { asClaimed, type CheckValue, checkValues, type Evaluate, standing } from './check-values.js'
import { section1 } from './evaluators/section-1.js'
import { section2 } from './evaluators/section-2.js'
import { section3 } from './evaluators/section-3.js'
import { section4 } from './evaluators/section-4.js'
import { section5 } from './evaluators/section-5.js'
import { section6 } from './evaluators/section-6.js'
import { section7 } from './evaluators/section-7.js'
import { section8 } from './evaluators/section-8.js'
import { section9 } from './evaluators/section-9.js'
import { section10 } from './evaluators/section-10.js'
import { section11 } from './evaluators/section-11.js'
import { section13 } from './evaluators/section-13.js'
import { section14 } from './evaluators/section-14.js'
import { section15 } from './evaluators/section-15.js'

const sections = [
  section1,
  section2,
  section3,
  section4,
  section5,
  section6,
  section7,
  section8,
  section9,
  section10,
  section11,
  section13,
  section14,
  section15,
]

/** Sections whose functions come with later work, as a whole. */
const later: Readonly<Record<string, string>> = {
  '12': 'mains and rigging',
}

const same = (value: CheckValue, key: string, got: unknown, want: unknown): void => {
  if (Array.isArray(want)) {
    expect(Array.isArray(got), `${value.id} ${key} is a list`).toBe(true)
    expect((got as unknown[]).length).toBe(want.length)
    want.forEach((one, i) => {
      same(value, `${key}[${i}]`, (got as unknown[])[i], one)
    })
  } else if (typeof want === 'number') {
    expect(typeof got, `${value.id} ${key} is a number`).toBe('number')
    const allowed = Math.max(value.tolerance.abs ?? 0, (value.tolerance.rel ?? 0) * Math.abs(want))
    expect(
      Math.abs((got as number) - want),
      `${value.id} ${key}: got ${got}, expected ${want} (${value.source})`,
    ).toBeLessThanOrEqual(allowed + 1e-15)
  } else expect(got, `${value.id} ${key}`).toStrictEqual(want)
}

describe.each(sections)('check values, section $section', (section) => {
  const of = checkValues.filter((value) => value.section === section.section)
  const answered = of.filter((value) => typeof standing(section, value.id) === 'function')

  it.each(answered)('$id ($provenance): $quantity', (value) => {
    const got = (standing(section, value.id) as Evaluate)(value.inputs, value)
    for (const [key, want] of Object.entries(value.expected))
      same(asClaimed(section, value), key, got[key], want)
  })
})

describe('no check value is lost', () => {
  it('each is answered or waits with a reason, never both', () => {
    const lost = checkValues.filter((value) => {
      if (later[value.section] !== undefined) return false
      const section = sections.find((one) => one.section === value.section)
      return section === undefined || standing(section, value.id) === 'lost'
    })
    expect(lost.map((value) => value.id)).toEqual([])
  })

  it('counts per section', () => {
    const counts = [...new Set(checkValues.map((value) => value.section))].map((name) => {
      const of = checkValues.filter((value) => value.section === name)
      const section = sections.find((one) => one.section === name)
      const covered = of.filter(
        (value) => section !== undefined && typeof standing(section, value.id) === 'function',
      )
      return { section: name, of: of.length, covered: covered.length, waiting: of.length - covered.length }
    })
    expect(counts.reduce((sum, one) => sum + one.of, 0)).toBe(checkValues.length)
    expect(counts).toMatchInlineSnapshot(`
      [
        {
          "covered": 69,
          "of": 87,
          "section": "1",
          "waiting": 18,
        },
        {
          "covered": 41,
          "of": 55,
          "section": "2",
          "waiting": 14,
        },
        {
          "covered": 58,
          "of": 63,
          "section": "3",
          "waiting": 5,
        },
        {
          "covered": 101,
          "of": 104,
          "section": "4",
          "waiting": 3,
        },
        {
          "covered": 78,
          "of": 86,
          "section": "5",
          "waiting": 8,
        },
        {
          "covered": 10,
          "of": 13,
          "section": "6",
          "waiting": 3,
        },
        {
          "covered": 13,
          "of": 13,
          "section": "7",
          "waiting": 0,
        },
        {
          "covered": 33,
          "of": 34,
          "section": "8",
          "waiting": 1,
        },
        {
          "covered": 29,
          "of": 32,
          "section": "9",
          "waiting": 3,
        },
        {
          "covered": 56,
          "of": 61,
          "section": "10",
          "waiting": 5,
        },
        {
          "covered": 19,
          "of": 19,
          "section": "11",
          "waiting": 0,
        },
        {
          "covered": 0,
          "of": 37,
          "section": "12",
          "waiting": 37,
        },
        {
          "covered": 7,
          "of": 7,
          "section": "13",
          "waiting": 0,
        },
        {
          "covered": 9,
          "of": 26,
          "section": "14",
          "waiting": 17,
        },
        {
          "covered": 23,
          "of": 31,
          "section": "15",
          "waiting": 8,
        },
      ]
    `)
  })
})
