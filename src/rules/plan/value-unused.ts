import type { Light, Plan } from '../../language/plan.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, rule } from '../rule.js'

const plan = (camera: string, light: string, unit = 'flashgun'): string => `plan: 1
title: Headshot
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100${camera} }
subject: { kind: person }
lights:
  key: { unit: ${unit}, meters: f/5.6${light}, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { framing: head and shoulders }
`

interface Unused extends Evidence {
  readonly what: string
  readonly because: string
}

export const valueUnused = rule<Unused>({
  id: 'value-unused',
  family: 'plan',
  level: 'note',
  finds: 'a value that its neighbours make void: zoom on a fixed head, readout of a focal-plane shutter',
  limits: {},
  why: 'A value that has no effect was meant to have one, or is left over from another set.',
  formula: 'a stated value that nothing reads, given the values beside it',
  sources: [{ kind: 'derived', says: 'what the plan states' }],
  basis: 'what the plan states',
  fires: [
    { title: 'zoom on a fixed head', plan: plan('', ', zoom: 50 mm', 'head 200 Ws') },
    { title: 'readout of a focal-plane shutter', plan: plan(', readout: 1/30', '') },
    { title: 'the power of an automatic flash', plan: plan('', ', mode: automatic, power: 1/4') },
    {
      title: 'early firing with a leaf shutter',
      plan: plan(', shutter-kind: leaf', ', trigger: { by: radio, early: true }'),
    },
    {
      title: 'the shape of a thing that mirrors nothing',
      plan: plan('', '').replace('kind: person', 'kind: object, shape: ball'),
    },
  ],
  passes: [
    { title: 'zoom on a zoom head', plan: plan('', ', zoom: 50 mm') },
    {
      title: 'the shape of a glossy thing',
      plan: plan('', '').replace('kind: person', 'kind: object, finish: glossy, shape: ball'),
    },
    { title: 'curtain of a focal-plane shutter', plan: plan(', curtain: 4 ms', '') },
  ],

  needs: () => undefined,

  detect: ({ plan: given }) =>
    unused(given).map(({ pointer, what, because }) => ({
      pointer,
      beyond: 'certain' as const,
      measured: {},
      what,
      because,
    })),

  tell: ({ what, because }) => ({
    message: `${what} has no effect: ${because}`,
    why: 'the plan comes out the same without it',
  }),
  mend: ({ what }) => [{ title: `take ${what} out, or change what makes it void` }],
})

interface Void {
  readonly pointer: string
  readonly what: string
  readonly because: string
}

const unused = (plan: Plan): readonly Void[] =>
  [
    ...ofCamera(plan),
    ...ofSubject(plan),
    ...ofBackdrop(plan),
    ...[...plan.lights.values()].flatMap((light) => [...ofLight(light), ...ofTrigger(light, plan)]),
  ].filter(({ pointer }) => plan.places.stated(pointer))

const ofCamera = ({ camera: { shutterKind, curtain } }: Plan): readonly Void[] => [
  ...(shutterKind === 'electronic'
    ? []
    : [{ pointer: '/camera/readout', what: 'readout', because: `the shutter is a ${shutterKind} one` }]),
  ...(shutterKind === 'focal-plane' || curtain === undefined
    ? []
    : [{ pointer: '/camera/curtain', what: 'curtain', because: `the shutter is a ${shutterKind} one` }]),
]

const ofSubject = ({ subject }: Plan): readonly Void[] => {
  const shape = (because: string): Void => ({ pointer: '/subject/shape', what: 'shape', because })
  if (subject.kind === 'object')
    return [
      ...['glasses', 'hair', 'pose'].map((key) => ({
        pointer: `/subject/${key}`,
        what: key,
        because: 'the subject is an object',
      })),
      ...(subject.finish === 'glossy' || subject.finish === 'clear'
        ? []
        : [shape('it is what a glossy or clear object is like')]),
    ]
  return [shape(`the subject is a ${subject.kind}`), ...ofPeople(subject)]
}

const ofPeople = (subject: Plan['subject']): readonly Void[] => {
  return subject.kind === 'group'
    ? [{ pointer: '/subject/pose', what: 'pose', because: 'the rows say at what height the faces are' }]
    : [{ pointer: '/subject/rows', what: 'rows', because: 'the subject is one person' }]
}

const ofBackdrop = ({ backdrop }: Plan): readonly Void[] =>
  backdrop?.sky === undefined
    ? []
    : ['width', 'height', 'behind', 'sweep', 'finish'].map((key) => ({
        pointer: `/backdrop/${key}`,
        what: key,
        because: 'the sky stands for the backdrop',
      }))

const ofTrigger = ({ name, trigger }: Light, { camera: { shutterKind } }: Plan): readonly Void[] =>
  trigger?.early === true && shutterKind !== 'focal-plane'
    ? [
        {
          pointer: lightPointer(name, 'trigger', 'early'),
          what: `early of ${name}'s trigger`,
          because: `the shutter is ${shutterKind === 'leaf' ? 'a leaf one' : 'an electronic one'}`,
        },
      ]
    : []

const ofLight = (light: Light): readonly Void[] => {
  const { unit, name, modifier, mode } = light
  const at = (key: string, because: string): Void => ({
    pointer: lightPointer(name, key),
    what: `${key} of ${name}`,
    because,
  })
  const natural = unit.kind === 'sun' || unit.kind === 'window'
  return [
    ...(unit.kind === 'flash' && unit.zoom !== undefined ? [] : [at('zoom', 'its unit has no zoom')]),
    ...(natural
      ? [at('power', 'its unit cannot be set'), at('modelling', 'its unit has no modelling lamp')]
      : []),
    ...(unit.kind === 'flash' && unit.modelling === undefined && light.modelling
      ? [at('modelling', 'its unit states no modelling lamp')]
      : []),
    ...(unit.kind === 'flash' && mode === 'automatic'
      ? [at('power', 'its flash meters itself and finds its own')]
      : []),
    ...(unit.kind === 'flash' ? [] : [at('mode', 'its unit is no flash')]),
    ...(modifier !== undefined &&
    modifier.outline !== 'rectangle' &&
    modifier.size.width === modifier.size.height
      ? [at('lying', `${modifier.name} is round`)]
      : []),
  ]
}
