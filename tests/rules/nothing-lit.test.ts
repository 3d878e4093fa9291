/** A plan of which nothing is lit is told so, whatever is or is not known of its lights. */
import { describe, expect, it } from 'vitest'
import { checkReading } from '../../src/checker/check-plan.js'
import { readPlan } from '../../src/language/read-plan.js'
import { keySentence } from '../../src/reports/meter-rows.js'
import { computeSet } from '../../src/set/compute-set.js'
import { meterCard } from '../../src/tasks/meter.js'
import { photometricText, steps } from '../helpers/photometric-text.js'
import { memoryPort } from '../language/reading.js'
import { findingsOf } from './check-text.js'

const plan = (key: string, more = ''): string => `plan: 1
title: Who has the light
camera: { lens: 85 mm, at: { distance: 2.4 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
${more}lights:
  key: { ${key}, at: { angle: 35 deg left, distance: 1.4 m, height: 2 m } }
wanted: { framing: head and shoulders, shadow: any }
`
const white = 'backdrop: { surface: white paper, behind: 2 m }\n'

describe('nothing-lit', () => {
  it('needs no backdrop, and no strength of what is off', () => {
    expect(findingsOf('nothing-lit', plan('unit: head 400 Ws, off: true'))).toHaveLength(1)
    expect(findingsOf('nothing-lit', plan('unit: head 400 Ws, power: 1/4, off: true', white))).toHaveLength(1)
  })

  it('a light of which nothing tells how strong it is may light all: it is not judged', () => {
    expect(findingsOf('nothing-lit', plan('unit: head 400 Ws'))).toEqual([])
  })

  it('one that lights only the backdrop lights something', () => {
    const silhouette = plan('role: backdrop, unit: head 400 Ws, power: 1/4', white).replace(
      'at: { angle: 35 deg left, distance: 1.4 m, height: 2 m }',
      'at: { left: 1 m, before-backdrop: 1 m, height: 1.5 m }',
    )
    expect(findingsOf('nothing-lit', silhouette)).toEqual([])
  })

  it('a lamp whose file shines backwards alone is told, and its strength is not called unknown', () => {
    const backwards = photometricText({
      vertical: steps(100, 140, 10),
      horizontal: [0],
      candela: () => 5000,
    })
    const text = plan('unit: { photometric-file: lamp.ies }', white)
    const files = memoryPort({ 'set/lamp.ies': backwards })
    const reading = readPlan('set/own.plan.yaml', text, files)
    const found = checkReading(reading).findings
    expect(found.filter(({ rule }) => rule === 'nothing-lit')).toHaveLength(1)
    expect(found[0]!.message).toContain('nothing of key falls on the face')
    const card = meterCard(computeSet(reading.plan!), [])
    expect(card.unknown).toEqual([])
    expect(keySentence(card)).toBe('no key reading: nothing of key reaches the subject')
  })
})
