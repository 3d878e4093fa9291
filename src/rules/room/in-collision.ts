import type { Solid } from '../../scene/scene.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Knob } from '../../set/knobs.js'
import { misplaced } from '../known.js'
import { movedEitherWay } from '../moved.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { collisionsIn, collisionsOf, concerns, deepIn, floor, type Pair } from './collisions.js'
import { surelyThere } from './room-sides.js'

const crowded = (lights: string, panels = ''): string => `plan: 1
title: Much gear in little room
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 2 m }
lights:
  ${lights}
${panels}wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`
const box = (name: string, at: string) =>
  `${name}: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { ${at} } }`
const rim = (at: string) =>
  `rim: { unit: head 200 Ws, modifier: strip 30 x 120 cm, meters: f/8, at: { ${at} } }`
const leaf = (at: string) =>
  `panels:\n  v-left: { kind: v-flat, size: 1.2 x 2.4 m, opening: 90 deg, inside: black, outside: white, at: { ${at} }, faces: subject }\n`

interface Collision extends Evidence, Pair {
  readonly perhaps: boolean
}

export const inCollision = rule<Collision>({
  id: 'in-collision',
  family: 'room',
  level: 'warning',
  finds:
    'two things in one place: lights, panels, people, table, backdrop or floor that reach into each other',
  limits: {
    depth: { value: 5, unit: 'cm', says: 'that the one would have to move to come free of the other' },
  },
  why: 'On paper a strip stands in a v-flat and a box in the photographer. On the day one of them moves, and the light with it.',
  formula:
    'the least way by which one of two convex bodies must be moved to come free of the other; lights from front to mount, people as round bodies, panels as plates. Stands are left out: their legs may interleave',
  sources: [
    { kind: 'derived', says: 'penetration depth, from the separating-axis theorem' },
    { kind: 'memory', says: 'depths of modifiers by their kind, where no kit says them' },
  ],
  basis: 'geometry; the depth of a modifier is from memory unless the kit says it',
  fires: [
    {
      title: 'key and fill side by side, wider than the gap',
      plan: crowded(
        `${box('key', 'angle: 20 deg left, distance: 1.6 m, height: 1.9 m')}\n  ${box('fill', 'angle: 8 deg left, distance: 1.6 m, height: 1.9 m')}`,
      ),
    },
    {
      title: 'a strip in a v-flat',
      plan: crowded(
        rim('angle: 130 deg left, distance: 1.5 m, height: 1.6 m'),
        leaf('left: 1.6 m, behind: 1 m'),
      ),
    },
    {
      title: 'a box half in the floor',
      plan: crowded(box('key', 'angle: 10 deg left, distance: 1.6 m, height: 20 cm')),
    },
  ],
  passes: [
    {
      title: 'key and fill well apart',
      plan: crowded(
        `${box('key', 'angle: 40 deg left, distance: 1.6 m, height: 1.9 m')}\n  ${box('fill', 'angle: 15 deg right, distance: 1.6 m, height: 1.9 m')}`,
      ),
    },
    {
      title: 'a v-flat behind the strip, and a flash on the camera',
      plan: crowded(
        `${rim('angle: 130 deg left, distance: 1.2 m, height: 1.6 m')}\n  fill: { unit: flashgun, meters: f/4, at: camera }`,
        leaf('left: 2 m, behind: 1.2 m'),
      ),
    },
  ],

  needs: ({ set }) => (misplaced(set) ? 'silent' : undefined),

  detect: ({ set, plan, limits }) =>
    collisionsIn(plan, set.scene, limits.depth! / 100).map((pair): Collision => {
      const { first, second, depth } = pair
      // How deep a modifier is may be a guess: what meets the back of one only may miss it.
      const sure = deepIn(surelyThere(first, plan), second === floor ? floor : surelyThere(second, plan))
      const sways = second !== floor && second.of === 'operator' ? sway : 0
      const perhaps = (sure - sways) * 100 <= limits.depth!
      return {
        pointer: first.pointer,
        also: second === floor ? [] : [{ pointer: second.pointer, says: 'and this' }],
        beyond: 'certain',
        level: perhaps ? 'note' : 'warning',
        measured: { depth: { value: depth * 100, unit: 'cm', limit: limits.depth!, side: 'at-most' } },
        ...pair,
        perhaps,
      }
    }),

  tell: ({ first, second, depth, perhaps }, words, { plan }) => ({
    message: `${perhaps ? 'perhaps ' : ''}${
      second === floor
        ? `${nameOf(first, plan)} reaches ${words.small(depth)} into the floor`
        : `${nameOf(first, plan)} and ${nameOf(second, plan)} stand in one place: ${words.small(depth)} of the one in the other`
    }`,
    why: perhaps
      ? second !== floor && second.of === 'operator'
        ? 'where exactly whoever holds the camera stands is a guess'
        : 'how deep the modifier is, is a guess'
      : second === floor
        ? 'heights are to the middle of a front, or of a panel'
        : 'one of them must move by that much; stands and their legs are not counted',
  }),

  mend: (evidence, words, context) => {
    const { first, second, depth } = evidence
    const { set, plan, limits } = context
    const found = collisionsIn(plan, set.scene, limits.depth! / 100)
    const by = words.small(Math.ceil(depth * 20 + 1) / 20)
    const byHand: Mend = {
      title:
        second === floor
          ? `${nameOf(first, plan)} ${by} higher`
          : `${nameOf(first, plan)} or ${nameOf(second, plan)} ${by} aside`,
    }
    if (found.length > mostTried) return [byHand]
    // It must come free of what it stands in, and not into something else.
    const freed = (one: Solid) => {
      const of = (pairs: readonly Pair[]) => pairs.filter((pair) => concerns(pair, one)).length
      const before = of(found)
      return (after: ComputedSet) =>
        of(collisionsOf(after.plan, after.scene, limits.depth! / 100, one)) < before
    }
    const gives = second === floor ? 'it clears the floor' : 'they stand apart'
    return inTurn(
      () =>
        moved(first, set, freed(first), gives) ??
        (second === floor ? undefined : moved(second, set, freed(second), gives)) ??
        [],
      () => [byHand],
    )
  },

  inShort: ({ first, second }, _words, { plan }) =>
    `${nameOf(first, plan)} stands in ${second === floor ? 'the floor' : nameOf(second, plan)}`,
})

/** Metres by which whoever holds the camera stands aside of it, or leans. Common practice, no source. */
const sway = 0.15

const nameOf = ({ of, name }: Solid, plan: RuleContext['plan']): string => {
  if (of === 'light' || of === 'panel') return name
  if (of === 'operator') return 'whoever holds the camera'
  return of === 'figure' ? (plan.subject.kind === 'person' ? 'the subject' : whom(plan)) : `the ${name}`
}

/** Of more than these none is moved for trial: the set as a whole is too crowded. */
const mostTried = 2

/** A light or a panel elsewhere, by the first of its knobs that does. */
const moved = (
  { of, name }: Solid,
  set: ComputedSet,
  clear: (after: ComputedSet) => boolean,
  gives: string,
): readonly Mend[] | undefined => {
  const knobs: readonly Knob[] =
    of === 'light'
      ? (['light-angle', 'light-right', 'light-height'] as const).map((knob) => ({
          knob,
          light: name,
        }))
      : of === 'panel'
        ? (['panel-right', 'panel-height'] as const).map((knob) => ({ knob, panel: name }))
        : []
  for (const knob of knobs) {
    const found = movedEitherWay(set, knob, clear)
    if (found !== undefined) return [{ title: found.title, gives, after: found.after }]
  }
  return undefined
}
