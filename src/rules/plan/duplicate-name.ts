import { type Evidence, rule } from '../rule.js'
import { foundElsewhere } from './found-by-reader.js'

const plan = (first: string, second: string): string => `plan: 1
title: Headshot
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  ${first}: { unit: flashgun, modifier: white umbrella 1 m, meters: f/5.6, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
  ${second}: { role: fill, unit: flashgun, modifier: white umbrella 1 m, meters: f/2.8, at: { angle: 5 deg right, distance: 2.2 m, height: 1.8 m } }
wanted: { framing: head and shoulders }
`

export const duplicateName = rule<Evidence>({
  id: 'duplicate-name',
  family: 'plan',
  level: 'error',
  finds: 'one name or key written twice',
  limits: {},
  why: 'Of two lights of one name the second would silently take the place of the first.',
  formula: 'keys of a YAML map are unique',
  sources: [{ kind: 'standard', says: 'YAML 1.2: keys of a map are unique' }],
  basis: 'YAML 1.2',
  fires: [
    { title: 'two lights called key', plan: plan('key', 'key') },
    { title: 'the same, one in quotes', plan: plan('key', '"key"') },
  ],
  passes: [
    { title: 'two names', plan: plan('key', 'fill') },
    { title: 'names that only look alike', plan: plan('key', 'key-2') },
  ],
  ...foundElsewhere,
})
