import { type Evidence, rule } from '../rule.js'
import { foundElsewhere } from './found-by-reader.js'

const plan = (until: string): string => `plan: 1
title: Headshot
camera: { lens: 35 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: 1.35 m, behind: 1 m }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, meters: f/5.6, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { backdrop: any }
accept:
  - { rule: frame-past-backdrop, because: the wide roll is on order, until: ${until} }
`

/** Examples are judged on the last day of 2029: no clock is read. */
export const acceptExpired = rule<Evidence>({
  id: 'accept-expired',
  family: 'plan',
  level: 'note',
  finds: 'a finding accepted until a day that is past; judged only when the day is said (--on)',
  limits: {},
  why: 'Accepting a fault for a while is a promise to look at it again. From that day on the finding counts again.',
  formula: 'until < the day given; the day itself still counts',
  sources: [{ kind: 'standard', says: 'dates as ISO 8601 writes them' }],
  basis: 'ISO 8601 dates, the day given with the call',
  fires: [
    { title: 'long past', plan: plan('2027-06-30') },
    { title: 'the day before', plan: plan('2029-12-30') },
  ],
  passes: [
    { title: 'still to come', plan: plan('2035-01-01') },
    { title: 'on its last day', plan: plan('2029-12-31') },
  ],
  ...foundElsewhere,
})
