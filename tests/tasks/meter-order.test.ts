import { describe, expect, it } from 'vitest'
import { computeSet } from '../../src/set/compute-set.js'
import { meterOrder } from '../../src/tasks/meter-order.js'
import { planOf } from '../rules/check-text.js'

const studio = (triggers: Readonly<Record<string, string>>, more = '') => `plan: 1
title: Four lights
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2.5 m }
${more}
lights:
  paper: { role: backdrop, unit: head 200 Ws, meters: f/11, ${triggers.paper ?? ''}at: { left: 1.2 m, before-backdrop: 1.5 m, height: 1.5 m } }
  fill: { unit: head 200 Ws, modifier: white umbrella 1 m, meters: f/4, ${triggers.fill ?? ''}at: { angle: 10 deg right, distance: 2 m, height: 1.8 m } }
  key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/8, ${triggers.key ?? ''}at: { angle: 35 deg left, distance: 1.5 m, height: 2 m } }
  hair: { unit: head 200 Ws, modifier: strip 30 x 120 cm, meters: f/5.6, ${triggers.hair ?? ''}at: { angle: 170 deg right, distance: 1.5 m, height: 2.4 m } }
wanted: { framing: head and shoulders }
`
const steps = (text: string) =>
  meterOrder(computeSet(planOf(text))).map(
    ({ fires, figure, without, sets }) =>
      `${fires ?? '-'}: ${figure.of === 'all' ? 'all' : figure.of.join('+')} at ${figure.point}${without.length === 0 ? '' : ` without ${without.join('+')}`} (${sets})`,
  )
const by = (trigger: string) => `trigger: { ${trigger} }, `

describe('the order of metering', () => {
  it('each light alone, the key first and the backdrop last; then what sets the camera, then the backdrop as it is', () => {
    expect(steps(studio({}))).toEqual([
      '-: key at subject (light)',
      '-: fill at subject (light)',
      '-: hair at hair (light)',
      '-: paper at backdrop (light)',
      '-: fill+key at subject (camera)',
      '-: all at backdrop (nothing)',
    ])
  })

  it('one group after the other: what is fired together is metered one after the other, the rest of it off', () => {
    const text = studio({
      key: by('by: radio, group: A'),
      fill: by('by: radio, group: B'),
      hair: by('by: radio, group: A'),
      paper: by('by: radio, group: B, channel: 4'),
    })
    expect(steps(text).slice(0, 4)).toEqual([
      'radio A: key at subject without hair (light)',
      'radio A: hair at hair without key (light)',
      'radio B: fill at subject (light)',
      'radio B, channel 4: paper at backdrop (light)',
    ])
  })

  it('the ambient light first, while the flashes are off; no flash no step', () => {
    const ambient = steps(studio({}, 'ambient: { reads: f/2, shutter: 1/30, iso: 100 }'))
    expect(ambient[0]).toBe('-: ambient at subject (light)')
    expect(steps(studio({}).replaceAll(/meters: \S+, /g, ''))).toEqual([])
  })

  it('expects of each what it is set to meter', () => {
    const [key] = meterOrder(computeSet(planOf(studio({}))))
    expect(key!.figure.fNumber).toBeCloseTo(8, 6)
    expect(key!.u).toBeGreaterThan(0.1)
  })
})
