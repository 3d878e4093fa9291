import { type Evidence, rule } from '../rule.js'
import { foundElsewhere } from './found-by-reader.js'

const plan = (unit: string, surface = 'white paper', of = 'key'): string => `plan: 1
title: Headshot
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: ${surface}, behind: 2 m }
lights:
  key: { unit: ${unit}, modifier: white umbrella 1 m, power: 1/4, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
readings:
  - { at: subject, of: [${of}], reads: f/5.6, taken: { key: { power: 1/4, distance: 1.4 m } } }
wanted: { framing: head and shoulders, backdrop: any }
`

export const unknownName = rule<Evidence>({
  id: 'unknown-name',
  family: 'plan',
  level: 'error',
  finds: 'a name that nothing has: a light, a unit, a modifier, a surface, a point',
  limits: {},
  why: 'A name that nothing has is mostly a slip of the finger, and what it was to say would be lost.',
  formula: 'names of the plan, its kit, and what is built in',
  sources: [{ kind: 'derived', says: 'nearest name by edit distance' }],
  basis: 'the names of the plan, its kit and the built-in ones',
  fires: [
    { title: 'a unit that nobody has', plan: plan('flashgnu') },
    { title: 'a surface that is not built in', plan: plan('flashgun', 'white papre') },
    { title: 'a reading of a light that is not there', plan: plan('flashgun', 'white paper', 'kye') },
  ],
  passes: [
    { title: 'all names known', plan: plan('flashgun') },
    { title: 'a surface described in place of named', plan: plan('flashgun', '{ reflectance: 0.6 }') },
  ],
  ...foundElsewhere,
})
