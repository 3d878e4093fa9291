/** Figures far out of the usual are still said as photographers say them, and what a mend names can be written. */
import { describe, expect, it } from 'vitest'
import { readPhotometric } from '../../src/language/photometric/read-photometric.js'
import { secondsText } from '../../src/rules/gear.js'
import { makeWords } from '../../src/rules/make-words.js'
import { setValue } from '../../src/text/edit.js'
import { pointer } from '../../src/text/place.js'
import { photometricText, steps } from '../helpers/photometric-text.js'
import { checkText, findingsOf, planOf } from './check-text.js'

const plan = ({
  camera = '',
  shutter = '1/125',
  key = 'power: 1/4',
  unit = 'head 400 Ws',
  more = '',
  wanted = '',
}): string => `plan: 1
title: Said plainly
camera: { lens: 85 mm, at: { distance: 2.4 m }, aperture: f/5.6, shutter: ${shutter}, iso: 100${camera} }
subject: { kind: person }
lights:
  key: { unit: ${unit}, ${key}, at: { angle: 35 deg left, distance: 1.4 m, height: 2 m } }
${more}wanted: { framing: head and shoulders, shadow: any${wanted} }
`

describe('figures', () => {
  const words = makeWords(planOf(plan({})))

  it('lengths past ten metres are in metres', () => {
    expect(words.small(0.123)).toBe('12 cm')
    expect(words.small(203.87)).toBe('203.87 m')
  })

  it('no time is 0 s', () => {
    expect(secondsText(0.0042)).toBe('0.0042 s')
    expect(secondsText(0.03)).toBe('0.03 s')
    expect(secondsText(2.54)).toBe('2.5 s')
  })

  it('no aperture has an exponent: what hardly anything reaches is not lit', () => {
    const away = plan({ key: 'power: 1/4, modifier: honeycomb 10 deg, faces: left' })
    const texts = checkText(away).findings.map(({ message, why }) => message + why)
    expect(texts.join('\n')).not.toMatch(/e[-+]\d/)
    expect(findingsOf('nothing-lit', away)).toHaveLength(1)
  })

  it('a count that no file holds is not written out', () => {
    const text = photometricText({ vertical: steps(0, 90, 15), horizontal: [0], candela: () => 100 })
    const huge = text.replace(/\b7 1 1\b/, '9007199254740991 9007199254740991 1')
    expect(huge).not.toBe(text)
    const reading = readPhotometric(huge)
    expect(reading.ok).toBe(false)
    if (!reading.ok) expect(reading.says).toMatch(/take more numbers than a file holds, and \d+ follow/)
  })

  it('a power is told as it is written', () => {
    const told = findingsOf(
      'recycle-slow',
      plan({
        unit: '{ energy: 400 Ws, power: { from: 1/2000, to: full }, recycle: 5 s }',
        key: 'power: 1/1000',
        wanted: ', shooting: { every: 0.004 s, frames: 300 }',
      }),
    )
    expect(told).toHaveLength(1)
    expect(told[0]!.message).toContain(
      'at 1/1000 it takes 0.0049 s to recycle, a frame is wanted every 0.004 s',
    )
  })
})

describe('who is named is there', () => {
  const warm = ', white-balance: 5500 K'
  const says = (more: string) => {
    const [found] = findingsOf(
      'white-balance-off',
      plan({ camera: warm, key: 'power: 1/16, colour: 3000 K', more }),
    )
    return `${found!.why}\n${found!.advice.map(({ title }) => title).join('\n')}`
  }

  it('no fill is spoken of where there is none', () => {
    expect(says('')).not.toContain('fill')
    expect(says('')).toMatch(/CTB on key$/m)
  })

  it('a fill is by its name', () => {
    const both = says(
      '  second: { role: fill, unit: head 400 Ws, power: 1/32, colour: 3000 K, at: { angle: 10 deg right, distance: 2 m, height: 2 m } }\n',
    )
    expect(both).toContain('key and second at the subject, mixed')
    expect(both).toMatch(/CTB on key and second$/m)
  })
})

describe('another shutter', () => {
  it('is named by values that mend it', () => {
    const text = plan({ camera: ', shutter-kind: electronic, readout: 1/60', shutter: '1/4000' })
    const [found] = findingsOf('electronic-shutter', text)
    const { title } = found!.advice[0]!
    expect(title).toBe('camera.shutter-kind → focal-plane, camera.shutter → 1/160')
    const after = title.split(', ').reduce((changed, edit) => {
      const [at, to] = edit.split(' → ') as [string, string]
      const edited = setValue(changed, pointer(...at.split('.')), to)
      if (!edited.ok) throw new Error(edit)
      return edited.text
    }, text)
    expect(findingsOf('electronic-shutter', after)).toEqual([])
    expect(findingsOf('shutter-beyond-sync', after)).toEqual([])
    expect(findingsOf('plan-unreadable', after)).toEqual([])
  })
})
