import { type Evidence, rule } from '../rule.js'
import { foundElsewhere } from './found-by-reader.js'

const plan = (accept: string, lens = '85 mm'): string => `plan: 1
title: Headshot
camera: { lens: ${lens}, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: 1.35 m, behind: 1 m }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, meters: f/5.6, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { backdrop: any }
accept:
  - { rule: ${accept}, because: the edges are cropped in delivery }
`

export const acceptUnused = rule<Evidence>({
  id: 'accept-unused',
  family: 'plan',
  level: 'note',
  finds: 'a finding accepted that is not there, or of a rule that does not exist',
  limits: {},
  why: 'What was accepted once and is mended now would hide the same fault when it comes back.',
  formula: 'an entry of accept without a finding of its rule',
  sources: [{ kind: 'derived', says: 'what the plan states' }],
  basis: 'what the plan states',
  fires: [
    { title: 'nothing left to accept', plan: plan('frame-past-backdrop') },
    { title: 'no rule of that name', plan: plan('frame-past-backdrp', '35 mm') },
  ],
  passes: [
    { title: 'the finding is there', plan: plan('frame-past-backdrop', '35 mm') },
    { title: 'a rule that could not run here', plan: plan('ambient-in-exposure') },
  ],
  ...foundElsewhere,
})
