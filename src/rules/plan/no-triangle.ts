import type { SceneFault } from '../../scene/scene.js'
import { type Evidence, rule } from '../rule.js'

const plan = (place: string): string => `plan: 1
title: Headshot
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person, pose: seated }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, meters: f/5.6, at: ${place} }
wanted: { framing: head and shoulders }
`

interface NoTriangle extends Evidence {
  readonly fault: SceneFault
}

export const noTriangle = rule<NoTriangle>({
  id: 'no-triangle',
  family: 'plan',
  level: 'error',
  finds: 'a place that cannot be: a tape shorter than the height difference, a light inside the subject',
  limits: {},
  why: 'The tape runs from the face to the front of the light. A light higher over the face than the tape is long cannot hang there, and every figure would be wrong.',
  formula: 'distance along the floor = √(tape² − height difference²)',
  sources: [{ kind: 'derived', says: 'right-angled triangle' }],
  basis: 'right-angled triangle',
  fires: [
    {
      title: 'a tape too short for the height',
      plan: plan('{ angle: 30 deg left, distance: 1.2 m, height: 2.8 m }'),
    },
    { title: 'just too short', plan: plan('{ angle: 30 deg left, distance: 79 cm, height: 2 m }') },
  ],
  passes: [
    { title: 'a tape that reaches', plan: plan('{ angle: 30 deg left, distance: 1.4 m, height: 2 m }') },
    { title: 'straight above the face', plan: plan('{ angle: 30 deg left, distance: 80 cm, height: 2 m }') },
  ],

  needs: () => undefined,

  detect: ({ set }) =>
    set.scene.faults.map((fault) => ({
      pointer: fault.pointer,
      beyond: 'certain' as const,
      measured: {
        ...(fault.figures.tape === undefined
          ? {}
          : { tape: { value: fault.figures.tape, unit: 'm' as const } }),
        ...(fault.figures.needs === undefined
          ? {}
          : {
              needs: {
                value: fault.figures.needs,
                unit: 'm' as const,
                ...(fault.figures.tape === undefined
                  ? {}
                  : { limit: fault.figures.tape, side: 'at-most' as const }),
              },
            }),
      },
      cause: `where ${fault.pointer.startsWith('/camera/') ? 'the camera' : fault.figures.light} stands`,
      fault,
    })),

  tell: ({ fault: { kind, figures, pointer } }, words, { plan }) =>
    kind === 'tape-too-short'
      ? {
          message: `${figures.light} cannot be there: the tape of ${words.length(figures.tape ?? 0)} is shorter than the ${words.length(figures.needs ?? 0)} between the heights`,
          why: `the distance is by tape from ${plan.subject.kind === 'person' ? 'the face' : plan.subject.kind === 'group' ? 'the front row' : 'the middle of the object'} to the front of the light, not along the floor`,
        }
      : pointer.startsWith('/camera/')
        ? {
            message: 'the camera cannot be there: it lies inside the subject',
            why: 'the distance is by tape from the subject to the camera; what is seen from there is not judged',
          }
        : {
            message: `${figures.light} cannot be there: its front lies inside the subject`,
            why: 'the place of a light is the middle of its front',
          },

  mend: ({ fault: { kind, figures, pointer } }, words) =>
    kind === 'tape-too-short' && figures.needs !== undefined && figures.tape !== undefined
      ? [
          {
            title: `a tape of more than ${words.length(figures.needs)}, or the light ${words.length(figures.needs - figures.tape)} lower or more`,
          },
        ]
      : [
          {
            title: `${pointer.startsWith('/camera/') ? 'the camera' : figures.light} further from the subject`,
          },
        ],
})
