/** The truth table of verdicts: how far beyond a limit, how sure, and what is then said. */
import { describe, expect, it } from 'vitest'
import { judge, worded } from '../../src/checker/certainty.js'

const u = 0.2

describe('judge', () => {
  it.each([
    // stops beyond the limit, then what a warning becomes
    [0.41, 'warning', 'sure'],
    [0.4, 'warning', 'probable'],
    [0.21, 'warning', 'probable'],
    [0.2, 'note', 'possible'],
    [0.01, 'note', 'possible'],
  ] as const)('%f stop beyond, ± 0.2: %s, %s', (stops, level, certainty) => {
    expect(judge({ stops, u }, 'warning')).toEqual({ level, certainty })
  })

  it.each([0, -0.1, -0.2, -1])('%f stop beyond: no finding', (stops) => {
    expect(judge({ stops, u }, 'error')).toBeUndefined()
  })

  it('lowers an error to a warning and leaves a note a note', () => {
    expect(judge({ stops: 0.1, u }, 'error')).toEqual({ level: 'warning', certainty: 'possible' })
    expect(judge({ stops: 0.1, u }, 'note')).toEqual({ level: 'note', certainty: 'possible' })
    expect(judge({ stops: 0.3, u }, 'error')).toEqual({ level: 'error', certainty: 'probable' })
  })

  it('takes a fact as sure, and a figure without doubt as one', () => {
    expect(judge('certain', 'error')).toEqual({ level: 'error', certainty: 'sure' })
    expect(judge({ stops: 1e-3, u: 0 }, 'warning')).toEqual({ level: 'warning', certainty: 'sure' })
    expect(judge({ stops: 0, u: 0 }, 'warning')).toBeUndefined()
  })

  it('lets no last digit decide: figures meet a limit rounded to a millionth', () => {
    expect(judge({ stops: 1e-9, u: 0 }, 'warning')).toBeUndefined()
    expect(judge({ stops: 0.1 + 0.2 - 0.3, u: 0 }, 'warning')).toBeUndefined()
  })
})

describe('worded', () => {
  it('says doubt first', () => {
    expect([
      worded('the face is dark', 'sure'),
      worded('the face is dark', 'probable'),
      worded('the face is dark', 'possible'),
    ]).toEqual(['the face is dark', 'probably the face is dark', 'perhaps the face is dark'])
  })
})
