import { type Evidence, rule } from '../rule.js'
import { foundElsewhere } from './found-by-reader.js'

const plan = (camera: string, subject = 'subject: { kind: person }'): string => `plan: 1
title: Headshot
camera: ${camera}
${subject}
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, power: 1/4, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { framing: head and shoulders }
`

export const planUnreadable = rule<Evidence>({
  id: 'plan-unreadable',
  family: 'plan',
  level: 'error',
  finds:
    'text that is no plan: broken YAML, a wrong kind of value, a missing unit, an unknown key, a file that cannot be read',
  limits: {},
  why: 'What cannot be read cannot be checked. Each mistake is told once, at its place, with what to write; other plans of the call are still checked.',
  formula: 'YAML 1.2 and the plan schema',
  sources: [{ kind: 'standard', says: 'YAML 1.2; JSON Schema draft-07' }],
  basis: 'the plan schema, version 1',
  fires: [
    {
      title: 'a length without its unit',
      plan: plan('{ lens: 85 mm, at: { distance: 2.5 }, aperture: f/5.6, shutter: 1/125, iso: 100 }'),
    },
    {
      title: 'a bracket that is never closed',
      plan: plan('{ lens: 85 mm, at: { distance: 2.5 m, aperture: f/5.6, shutter: 1/125, iso: 100 }'),
    },
    {
      title: 'an f-number without its f',
      plan: plan('{ lens: 85 mm, at: { distance: 2.5 m }, aperture: 5.6, shutter: 1/125, iso: 100 }'),
    },
  ],
  passes: [
    {
      title: 'every value with its unit',
      plan: plan('{ lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }'),
    },
    {
      title: 'other ways to write the same',
      plan: plan('{ lens: 85mm, at: { distance: 8 ft 2 in }, aperture: F5.6, shutter: 1/125 s, iso: 100 }'),
    },
  ],
  ...foundElsewhere,
})
