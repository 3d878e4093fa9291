import type { Light } from '../../language/plan.js'
import type { Solid } from '../../scene/scene.js'
import { dot, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobRange } from '../../set/knob-range.js'
import { pointer } from '../../text/place.js'
import { turn } from '../gear.js'
import { type Moved, movedEitherWay, movedUntil } from '../moved.js'
import { lightPointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import {
  type Beyond,
  depthGuess,
  depthText,
  mostBeyond,
  type RoomSide,
  reachOfAll,
  reachOfFace,
  roomMissing,
  sideText,
} from './room-sides.js'

const small = (
  light = 'angle: 35 deg left, distance: 1.3 m, height: 2 m',
  width = '2.2 m',
  panels = '',
): string => `plan: 1
title: A small room
room: { width: 2.6 m, length: 5 m, height: 2.6 m }
camera: { lens: 85 mm, at: { distance: 2.4 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, width: ${width}, behind: 1.5 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { ${light} } }
${panels}wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`

interface Outside extends Evidence {
  readonly what: 'light' | 'panel' | 'subject' | 'operator' | 'camera' | 'table' | 'backdrop'
  readonly name: string
  readonly through: Beyond
  readonly perhaps: boolean
  /** Of a light: its front by itself reaches through. */
  readonly front: boolean
}

export const outsideRoom = rule<Outside>({
  id: 'outside-room',
  family: 'room',
  level: 'error',
  finds: 'a light, panel, person, table or backdrop that does not fit between the walls',
  limits: {
    through: { value: 5, unit: 'cm', says: 'of it through a wall: less is set right by hand' },
  },
  why: 'A plan draws through walls. On the day a box stands as far off the wall as it is deep, and everything that was metered from its place is different.',
  formula:
    'how far the thing reaches toward a side of the room, less where that side lies; lights with their depth, from front to mount',
  sources: [
    { kind: 'derived', says: 'the corners of fronts and backs, the outlines of people' },
    { kind: 'memory', says: 'depths of modifiers by their kind, where no kit says them' },
  ],
  basis: 'geometry; the depth of a modifier is from memory unless the kit says it',
  fires: [
    { title: 'a box in the wall', plan: small('angle: 80 deg left, distance: 1.2 m, height: 2 m') },
    { title: 'a full roll in a narrow room', plan: small(undefined, '2.72 m') },
    {
      title: 'a board with its end in the wall',
      plan: small(
        undefined,
        undefined,
        'panels:\n  board: { kind: reflector, surface: white board, size: 1 x 1 m, at: { right: 90 cm, height: 1.3 m }, faces: camera }\n',
      ),
    },
  ],
  passes: [
    { title: 'everything between the walls', plan: small() },
    { title: 'turned along the wall', plan: small('angle: 60 deg left, distance: 90 cm, height: 2 m') },
  ],

  needs: ({ plan }) => roomMissing(plan),

  detect: (context) => outside(context, context.limits.through! / 100),

  tell: ({ what, name, through, perhaps, front }, words, { plan }) => {
    const thing = {
      light: name,
      panel: name,
      backdrop: 'the backdrop',
      table: 'the table',
      camera: 'the camera',
      operator: 'whoever holds the camera',
      subject: plan.subject.kind === 'person' ? 'the subject' : whom(plan),
    }[what]
    return {
      message: `${perhaps ? 'perhaps ' : ''}${thing} does not fit: ${words.small(through.by)} of it would be in ${sideText[through.side]}`,
      why: whyOf(what, plan.lights.get(name), words, front),
    }
  },

  mend: ({ what, name, through }, words, context) => {
    const byHand = { title: `${name} ${words.small(through.by)} off ${sideText[through.side]}` }
    const crowded = outside(context, context.limits.through! / 100).length > mostTried
    switch (what) {
      case 'light':
        return crowded ? [byHand] : lightMoved(context.plan.lights.get(name)!, context)
      case 'panel':
        return crowded ? [byHand] : [...panelMoved(name, context), byHand]
      case 'backdrop':
        return narrower(context)
      default:
        return [{ title: `the set ${words.small(through.by)} off ${sideText[through.side]}` }]
    }
  },

  inShort: ({ what, name, through }) =>
    `${what === 'light' || what === 'panel' ? name : what} is in ${sideText[through.side]}`,
})

/** Of more things outside than these none is moved for trial: the room is too small for the set. */
const mostTried = 6

const whyOf = (what: Outside['what'], light: Light | undefined, words: Words, front: boolean): string => {
  if (what === 'light' && light !== undefined) return depthText(light, words, front)
  if (what === 'backdrop') return 'it hangs on the centre line'
  return 'the room is measured from the backdrop and from the centre line'
}

const walls: readonly RoomSide[] = ['left', 'right', 'front', 'back']

/** What reaches further than this through a wall, metres. The ceiling over lights and people has a rule of its own. */
const outside = (context: RuleContext, limit: number): readonly Outside[] => {
  const { set, plan, limits } = context
  const { room, solids, panels, camera, backdrop } = set.scene
  if (room === undefined) return []
  const solidsOf = (of: Solid['of'], name?: string) =>
    solids.filter((one) => one.of === of && (name === undefined || one.name === name))
  const asked = (
    what: Outside['what'],
    at: string,
    sides: readonly RoomSide[],
    reach: ((outward: Vec3) => number) | undefined,
    name = '',
  ): readonly Outside[] => {
    const through = reach && mostBeyond(room, reach, sides)
    return through === undefined || through.by <= limit
      ? []
      : [
          {
            pointer: at,
            also: [{ pointer: '/room', says: 'in this room' }],
            beyond: 'certain',
            level: 'error',
            measured: {
              through: { value: through.by * 100, unit: 'cm', limit: limits.through!, side: 'at-most' },
            },
            what,
            name,
            through,
            perhaps: false,
            front: false,
          },
        ]
  }
  const all = (...args: Parameters<typeof solidsOf>) => {
    const bodies = solidsOf(...args).map(({ body }) => body)
    return bodies.length === 0 ? undefined : reachOfAll(bodies)
  }

  const lights = [...plan.lights.values()]
    .filter(({ at }) => at.by !== 'camera')
    .flatMap((light) =>
      asked('light', lightPointer(light.name, 'at'), walls, all('light', light.name), light.name).map((one) =>
        doubted(one, light, context),
      ),
    )
  const boards = [...panels.keys()].flatMap((name) =>
    asked('panel', pointer('panels', name, 'at'), [...walls, 'ceiling'], all('panel', name), name),
  )
  // How far the camera's end is from the wall behind it is asked by the rule on the length of the room.
  const eye = asked('camera', '/camera/at', ['left', 'right', 'back', 'ceiling'], (n) => dot(camera.eye, n))
  const widthStated = plan.places.stated('/backdrop/width')
  const paper =
    backdrop === undefined || plan.backdrop?.sky !== undefined
      ? []
      : asked('backdrop', widthStated ? '/backdrop/width' : '/backdrop', ['left', 'right'], (n) =>
          n[0] < 0 ? -backdrop.left : backdrop.right,
        )
  return [
    ...lights,
    ...boards,
    ...asked('subject', '/subject', walls, all('figure')),
    ...asked('table', '/subject/stands-on', walls, all('table')),
    ...(eye.length > 0 ? eye : asked('operator', '/camera/at', ['left', 'right'], all('operator'))),
    // Which roll it is may not be settled yet.
    ...paper.map((one): Outside => (widthStated ? one : { ...one, level: 'note', perhaps: true })),
  ]
}

/** A light whose front is inside, and of which only a guessed depth is not. */
const doubted = (one: Outside, light: Light, { set: { scene } }: RuleContext): Outside => {
  const front = scene.lights.get(light.name)?.front
  const limit = one.measured.through!.limit! / 100
  const inside = front === undefined || mostBeyond(scene.room, reachOfFace(front), walls).by <= limit
  return inside && one.through.by <= limit + depthGuess(light)
    ? { ...one, level: 'warning', perhaps: true }
    : { ...one, front: !inside }
}

const told = (moved: Moved | undefined, costs?: string): readonly Mend[] =>
  moved === undefined
    ? []
    : [
        {
          title: moved.title,
          gives: 'it fits',
          ...(costs === undefined ? {} : { costs }),
          after: moved.after,
        },
      ]

const fits =
  (what: Outside['what'], name: string, context: RuleContext) =>
  (after: ComputedSet): boolean =>
    outside({ ...context, set: after, plan: after.plan }, 0).every(
      (one) => one.what !== what || one.name !== name,
    )

const lightMoved = (light: Light, context: RuleContext): Iterable<Mend> => {
  const { set } = context
  const { name } = light
  const clear = fits('light', name, context)
  return inTurn(
    () => told(movedEitherWay(set, { knob: 'light-angle', light: name }, clear), 'light from another side'),
    () =>
      told(
        movedUntil(set, { knob: 'light-distance', light: name }, -1, clear),
        'faster fall-off, less power',
      ),
    () => told(movedEitherWay(set, { knob: 'light-right', light: name }, clear), 'light from another place'),
    () =>
      told(movedEitherWay(set, { knob: 'light-height', light: name }, clear), 'light from another height'),
    () => (light.modifier === undefined ? [] : [{ title: `a shallower modifier on ${name}` }]),
  )
}

const panelMoved = (name: string, context: RuleContext): readonly Mend[] => {
  const clear = fits('panel', name, context)
  for (const knob of ['panel-right', 'panel-height'] as const) {
    const moved = movedEitherWay(context.set, { knob, panel: name }, clear)
    if (moved !== undefined) return told(moved)
  }
  return []
}

/** The widest roll that hangs between the walls. */
const narrower = ({ set, plan }: RuleContext): readonly Mend[] => {
  const { room } = set.scene
  const knob = { knob: 'backdrop-width' } as const
  const widest = 2 * Math.min(-room!.left, room!.right)
  const roll = knobRange(plan, knob)?.marks?.findLast((width) => width <= widest + 1e-9)
  const turned = roll === undefined ? undefined : turn(plan, knob, roll, 'nearest')
  return turned === undefined
    ? []
    : [{ title: turned.title, gives: 'it hangs between the walls', after: set.with(turned.change) }]
}
