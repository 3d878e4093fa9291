import { type Evidence, rule } from '../rule.js'

const plan = (wanted: string): string => `plan: 1
title: Headshot
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, meters: f/5.6, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
${wanted}`

export const nothingWanted = rule<Evidence>({
  id: 'nothing-wanted',
  family: 'plan',
  level: 'note',
  finds: 'a plan that does not say what picture is wanted',
  limits: {},
  why: 'Whether a backdrop is too dark or a frame too tight depends on what is wanted. Without it only gear and geometry can be checked.',
  formula: 'the plan has no wanted',
  sources: [{ kind: 'derived', says: 'what a plan states' }],
  basis: 'what the plan states',
  fires: [
    { title: 'no word of the picture', plan: plan('') },
    { title: 'only notes', plan: plan('notes: for the team page\n') },
  ],
  passes: [
    { title: 'framing and backdrop', plan: plan('wanted: { framing: head and shoulders, backdrop: any }\n') },
    { title: 'one wish is enough', plan: plan('wanted: { sharp: face }\n') },
  ],

  needs: () => undefined,
  detect: ({ plan: { places } }) =>
    places.stated('/wanted') ? [] : [{ pointer: '', beyond: 'certain', measured: {} }],
  tell: () => ({
    message: 'the plan does not say what picture is wanted, so only gear and geometry are checked',
    why: 'there is no wanted in it',
  }),
  mend: () => [
    {
      title: 'wanted: { backdrop: white, framing: head and shoulders }',
      gives: 'backdrop, frame and sharpness checked as well',
    },
  ],
})
