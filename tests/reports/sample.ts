/** Checked plans made by hand, for the reports. */
import type { CheckedPlan, Finding } from '../../src/checker/finding.js'
import type { Place } from '../../src/text/place.js'

export const planText = `plan: 1
title: White paper, two flashes
lights:
  key: { unit: flashgun, power: 1/4 }
  paper:
    power: 1/16
wanted: { backdrop: white }
`

/** Where a word of a text is written. */
export const placeOf = (text: string, word: string, file: string, pointer = ''): Place => {
  const start = text.indexOf(word)
  if (start < 0) throw new Error(`the text has no ${word}`)
  const before = text.slice(0, start).split('\n')
  const inside = word.split('\n')
  const column = before.at(-1)!.length + 1
  return {
    file,
    pointer,
    line: before.length,
    column,
    endLine: before.length + inside.length - 1,
    endColumn: inside.length > 1 ? inside.at(-1)!.length + 1 : column + word.length,
    start,
    end: start + word.length,
  }
}

export const file = 'recipes/white.plan.yaml'

export const short: Finding = {
  id: '9c41d2',
  rule: 'backdrop-below-white',
  family: 'backdrop',
  level: 'warning',
  ruleLevel: 'warning',
  certainty: 'sure',
  message:
    'the backdrop records light grey (sRGB 198) at its lower left, 1.1 stops short of white for certain',
  why: 'camera f/5.6, backdrop f/4.5 at its lower left; paper of 0.90; a quarter stop of headroom',
  place: placeOf(planText, '1/16', file, '/lights/paper/power'),
  also: [{ ...placeOf(planText, 'white', file, '/wanted/backdrop'), says: 'white is wanted here' }],
  measured: {
    'darkest-over-camera': { value: -0.6666666, unit: 'stop', u: 0.15999999, limit: 0.4, side: 'at-least' },
  },
  mends: [],
  advice: [
    { title: 'lights.paper.power → 1/8 + 0.3', gives: 'darkest point +0.6', costs: 'recycle 0.4 s longer' },
    { title: 'a second light on the paper' },
  ],
  basis: 'incident metering, ISO 2720; sRGB, IEC 61966-2-1',
  scale: { value: -0.7, u: 0.16, needs: 0.4, against: 'over the camera' },
}

export const uneven: Finding = {
  ...short,
  id: '77ab01',
  rule: 'backdrop-uneven',
  level: 'note',
  message: 'the backdrop falls by 0.9 stop from its left to its right',
  why: 'one light from one side',
  also: [],
  advice: [],
  measured: {},
  basis: 'incident metering, ISO 2720',
  scale: { value: 0.9, u: 0.1, needs: 0.66, against: 'at most' },
}

export const checked = (over: Partial<CheckedPlan> = {}): CheckedPlan => ({
  file,
  title: 'White paper, two flashes',
  findings: [short],
  accepted: [],
  notChecked: [],
  remarks: [],
  defects: [],
  texts: new Map([[file, planText]]),
  ...over,
})
