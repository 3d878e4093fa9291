import type { Light } from '../../language/plan.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { movedUntil } from '../moved.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Level, type Mend, type RuleContext, rule } from '../rule.js'
import { depthGuess, depthText, mostBeyond, reachOfAll, reachOfFace, roomMissing } from './room-sides.js'

const low = (height: string, more: string, subject = '{ kind: person, height: 1.83 m }'): string => `plan: 1
title: Under a low ceiling
room: { width: 4 m, length: 6 m, height: ${height} }
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: ${subject}
backdrop: { surface: grey paper, height: 3 m, behind: 1.5 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 35 deg left, distance: 1.4 m, height: 1.6 m } }
  ${more}
wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`
const hair = (at: string, more = '') =>
  `hair: { unit: head 200 Ws, modifier: strip 30 x 120 cm, lying: true, meters: f/5.6, at: { ${at} }${more} }`

interface Low extends Evidence {
  readonly kind: 'light' | 'person' | 'hair light' | 'boom'
  readonly name: string
  /** Metres through the ceiling, or missing under it. */
  readonly by: number
  readonly perhaps: boolean
  /** Of a light: its front by itself reaches through. */
  readonly front: boolean
}

export const ceilingLow = rule<Low>({
  id: 'ceiling-low',
  family: 'room',
  level: 'error',
  finds:
    'a ceiling too low for a light with its modifier, a hair light over someone, a boom, or someone standing',
  limits: {
    through: {
      value: 5,
      unit: 'cm',
      says: 'of a light or a head through the ceiling: less is set right by hand',
    },
    hair: { value: 0.9, unit: 'm', says: 'over the head for a hair light: note under this' },
    boom: { value: 0.15, unit: 'm', says: 'over the grip of a boom, to tilt it: note under this' },
  },
  why: 'A box has depth: looking down, it stands up from its front to its mount, and so a hair light wants nearly a metre over the head. Rooms for living are built for neither.',
  formula: 'top of the modifier, from its front to its mount, against the ceiling; ceiling − top of the head',
  sources: [
    { kind: 'common practice', says: 'a hair light over someone wants 0.9 m over the head' },
    { kind: 'derived', says: '1.83 m and 0.9 m make 2.73 m: a ceiling of 2.6 m is for people who sit' },
    { kind: 'memory', says: 'depths of modifiers by their kind, where no kit says them' },
  ],
  basis: 'geometry; the depth of a modifier is from memory unless the kit says it',
  fires: [
    {
      title: 'a box that looks down on the table',
      plan: low(
        '2.11 m',
        'top: { role: fill, unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { left: 0 cm, behind: 0 cm, height: 1.95 m } }',
        '{ kind: object, height: 60 cm, width: 30 cm, depth: 30 cm, stands-on: { height: 80 cm, size: 1 x 1 m } }',
      ),
    },
    {
      title: 'a hair light over someone standing, 2.6 m',
      plan: low('2.6 m', hair('angle: 170 deg right, distance: 90 cm, height: 2.2 m')),
    },
    {
      title: 'someone tall on a platform',
      plan: low(
        '2.3 m',
        hair('angle: 130 deg right, distance: 1 m, height: 1.9 m').replace('hair:', 'rim:'),
        '{ kind: person, height: 1.83 m, stands-on: { height: 60 cm, size: 1 x 1 m } }',
      ),
    },
  ],
  passes: [
    {
      title: 'the same hair light over someone who sits',
      plan: low(
        '2.6 m',
        hair('angle: 170 deg right, distance: 90 cm, height: 1.9 m'),
        '{ kind: person, height: 1.83 m, pose: seated }',
      ),
    },
    {
      title: 'three metres',
      plan: low(
        '3 m',
        hair('angle: 170 deg right, distance: 1 m, height: 2.5 m', ', stand: { kind: boom, arm: 1.2 m }'),
      ),
    },
  ],

  needs: ({ plan }) => roomMissing(plan),

  detect: (context) => {
    const through = lightsThrough(context).filter(({ by }) => by * 100 > context.limits.through!)
    // What is a guess does not stand for what is known.
    const named = new Set(through.filter(({ perhaps }) => !perhaps).map(({ name }) => name))
    return [...through, ...person(context), ...comfort(context).filter(({ name }) => !named.has(name))]
  },

  tell: ({ kind, name, by, perhaps, front }, words, { plan, set, limits }) => {
    const height = words.length(set.scene.room!.height)
    const light = plan.lights.get(name)!
    switch (kind) {
      case 'light':
        return {
          message: `${perhaps ? 'perhaps ' : ''}${name} does not fit under the ceiling of ${height}: ${words.small(by)} of it would be in it`,
          why: depthText(light, words, front),
        }
      case 'person':
        return {
          message: `${plan.subject.kind === 'object' ? 'the object' : 'whoever stands there'} does not fit under the ceiling of ${height}: ${words.small(by)} are missing`,
          why: 'the top of the head, or of the object',
        }
      case 'hair light':
        return {
          message: `a hair light has little room: ${words.small(limits.hair! - by)} over the head, where ${words.small(limits.hair!)} are wanted`,
          why: `under a ceiling of ${height} it comes near the head, and its box into the picture`,
        }
      case 'boom':
        return {
          message: `the boom of ${name} has no room to tilt: ${words.small(Math.max(0, limits.boom! - by))} over it under the ceiling of ${height}`,
          why: 'its far end rises as the light is lowered',
        }
    }
  },

  mend: ({ kind, name }, _words, context) => {
    const { set, plan } = context
    if (kind === 'person') return [{ title: 'someone seated, or a lower platform' }]
    const clear = (after: ComputedSet) =>
      !lightsThrough({ ...context, set: after, plan: after.plan }).some(
        (one) => one.name === name && one.by > 0,
      )
    const lower = (): readonly Mend[] => {
      const moved =
        kind === 'light' ? movedUntil(set, { knob: 'light-height', light: name }, -1, clear) : undefined
      return moved === undefined ? [] : [{ title: moved.title, gives: 'it fits', after: moved.after }]
    }
    const table = plan.subject.standsOn !== undefined
    return inTurn(
      lower,
      () =>
        kind === 'light'
          ? [
              {
                title: table
                  ? `a lower table, and ${name} lower with it`
                  : `a shallower modifier on ${name}, or a bare head through a scrim from the side`,
              },
            ]
          : [],
      () =>
        kind === 'light' && table
          ? [{ title: `a scrim flat over the set and the head of ${name} at its side, aimed up` }]
          : [],
      () =>
        kind === 'hair light' && plan.subject.kind !== 'object' && plan.subject.pose === 'standing'
          ? [
              { title: 'subject.pose → seated', gives: 'more room over the head' },
              { title: 'a rim light from behind at the height of the head, in place of a hair light' },
            ]
          : [],
      () => (kind === 'boom' ? [{ title: `${name} on a stand, or hung from the ceiling` }] : []),
    )
  },

  inShort: ({ kind, name }) => (kind === 'light' ? `${name} is in the ceiling` : 'the ceiling is low for it'),
})

const evidence = (
  kind: Low['kind'],
  name: string,
  at: string,
  by: number,
  measured: Evidence['measured'],
  level: Level,
  perhaps = false,
  front = false,
): Low => ({
  pointer: at,
  also: [{ pointer: '/room/height', says: 'under this ceiling' }],
  beyond: 'certain',
  level,
  measured,
  kind,
  name,
  by,
  perhaps,
  front,
})

const cm = (value: number, limit: number): Evidence['measured'] => ({
  through: { value: value * 100, unit: 'cm', limit, side: 'at-most' },
})

const heightPointer = ({ name, at }: Light): string =>
  at.by !== 'camera' && at.height !== undefined
    ? lightPointer(name, 'at', 'height')
    : lightPointer(name, 'at')

const lightsThrough = ({ set, plan, limits }: RuleContext): readonly Low[] => {
  const { room, lights, solids } = set.scene
  return [...plan.lights.values()].flatMap((light): Low[] => {
    const front = lights.get(light.name)?.front
    const solid = solids.find((one) => one.of === 'light' && one.name === light.name)
    if (front === undefined || solid === undefined || light.at.by === 'camera') return []
    const { by } = mostBeyond(room, reachOfAll([solid.body]), ['ceiling'])
    const ofFront = mostBeyond(room, reachOfFace(front), ['ceiling']).by
    const limit = limits.through! / 100
    const perhaps = ofFront <= limit && by <= limit + depthGuess(light)
    const measured = cm(by, limits.through!)
    return [
      evidence(
        'light',
        light.name,
        heightPointer(light),
        by,
        measured,
        perhaps ? 'warning' : 'error',
        perhaps,
        ofFront > limit,
      ),
    ]
  })
}

const topOf = (set: ComputedSet): number => Math.max(...set.scene.subject.figures.map(({ top }) => top))

const person = ({ set, limits }: RuleContext): readonly Low[] => {
  const by = topOf(set) - set.scene.room!.height
  return by * 100 > limits.through!
    ? [evidence('person', '', '/subject', by, cm(by, limits.through!), 'error')]
    : []
}

const comfort = ({ set, plan, limits }: RuleContext): readonly Low[] => {
  const { height } = set.scene.room!
  const over = height - topOf(set)
  return [...plan.lights.values()].flatMap((light): Low[] => {
    const front = set.scene.lights.get(light.name)?.front
    if (front === undefined || light.at.by === 'camera') return []
    if (light.role === 'hair' && plan.subject.kind !== 'object' && over >= 0 && over < limits.hair! - 1e-6)
      return [
        evidence(
          'hair light',
          light.name,
          heightPointer(light),
          limits.hair! - over,
          { over: { value: over, unit: 'm', limit: limits.hair!, side: 'at-least' } },
          'note',
        ),
      ]
    const stand = set.scene.stands.find((one) => one.light === light.name)
    const free = stand === undefined ? Infinity : height - stand.mount[2]
    return stand?.kind === 'boom' && stand.stated && free < limits.boom! - 1e-6
      ? [
          evidence(
            'boom',
            light.name,
            heightPointer(light),
            limits.boom! - free,
            { over: { value: free, unit: 'm', limit: limits.boom!, side: 'at-least' } },
            'note',
          ),
        ]
      : []
  })
}
