/** One mistake of a plan is one finding: what only follows from it is not told beside it. */
import { describe, expect, it } from 'vitest'
import { checkText } from './check-text.js'

const plan = ({
  camera = 'distance: 2.4 m',
  subject = 'kind: person',
  key = '',
  more = '',
  settings = '',
}): string => `plan: 1
title: One mistake
camera: { lens: 85 mm, at: { ${camera} }, aperture: f/5.6, shutter: 1/125, iso: 100${settings} }
subject: { ${subject} }
lights:
  key: { ${key} }
wanted: { framing: head and shoulders, shadow: any${more} }
`
const thing = 'kind: object, height: 30 cm, width: 40 cm, depth: 40 cm, finish: glossy'
const standing = 'at: { angle: 35 deg left, distance: 1.4 m }'
const rulesOf = (text: string): readonly string[] => checkText(text).findings.map(({ rule }) => rule)

describe('a place that cannot be', () => {
  it('of the camera: nothing that is seen from there is judged', () => {
    const text = plan({
      camera: 'distance: 5 cm',
      subject: thing,
      key: `unit: head 400 Ws, power: 1/4, ${standing}`,
    })
    expect(rulesOf(text)).toEqual(['no-triangle'])
    expect(checkText(text).findings[0]!.message).toBe(
      'the camera cannot be there: it lies inside the subject',
    )
  })

  it('of a light: its beam is not', () => {
    const text = plan({
      subject: thing,
      key: 'unit: head 400 Ws, power: 1/4, at: { angle: 35 deg left, distance: 5 cm }',
    })
    expect(rulesOf(text)).toContain('no-triangle')
    expect(rulesOf(text)).not.toContain('beam-short')
  })
})

describe('a power beyond its range', () => {
  it('recycles and drains as what can be set', () => {
    const measured = (power: string) =>
      checkText(
        plan({
          key: `unit: { guide-number: 36 m at 35 mm }, power: ${power}, at: { angle: 35 deg left, distance: 1.4 m, height: 2 m }`,
          more: ', shooting: { every: 1 s, frames: 400 }',
        }),
      ).findings.flatMap(({ rule, measured }) =>
        rule === 'recycle-slow' || rule === 'charge-short' ? [[rule, measured] as const] : [],
      )
    expect(measured('full')).toHaveLength(2)
    expect(measured('full + 5')).toEqual(measured('full'))
  })
})

describe('exposure by itself', () => {
  const flash = (settings: string) =>
    plan({
      settings,
      key: 'unit: head 400 Ws, meters: f/16, at: { angle: 35 deg left, distance: 1.4 m, height: 2 m }',
    })

  it('is told alone: what it evens out is not told as well', () => {
    expect(rulesOf(flash(''))).toEqual(expect.arrayContaining(['aperture-off-key', 'subject-over-white']))
    for (const exposure of ['auto-iso', 'automatic']) {
      const checked = checkText(flash(`, exposure: ${exposure}`))
      expect(checked.findings.map(({ rule }) => rule)).toEqual(['automatic-exposure'])
      const left = checked.notChecked.find(({ rule }) => rule === 'aperture-off-key')!
      expect(left.because).toContain('by itself')
      expect(left.enable!.text).toBe('exposure: manual')
    }
  })

  it('an automatic flash finds its own power: what is written has no effect, and its light is not known by it', () => {
    const automatic = (power: string) =>
      checkText(
        plan({
          key: `unit: head 400 Ws, mode: automatic, ${power}at: { angle: 35 deg left, distance: 1.4 m, height: 2 m }`,
        }),
      )
    const found = automatic('power: full, ').findings
    expect(found.map(({ rule }) => rule)).toEqual(['value-unused'])
    expect(found[0]!.message).toContain('power of key has no effect')
    expect(automatic('power: full, ').notChecked).toEqual(automatic('').notChecked)
    // What it is to meter holds.
    expect(automatic('power: full, meters: f/11, ').findings.map(({ rule }) => rule)).toContain(
      'aperture-off-key',
    )
  })
})
