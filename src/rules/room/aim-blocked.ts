import type { Light } from '../../language/plan.js'
import { firstHit } from '../../scene/first-hit.js'
import { type Ball, ballRound } from '../../scene/reach.js'
import type { Face, Solid } from '../../scene/scene.js'
import { cornersOf } from '../../scene/solids.js'
import { add, distance, dot, scale, subtract, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { meterPlace } from '../../set/receptor-at.js'
import { rolePoint } from '../../set/role-point.js'
import { pointer } from '../../text/place.js'
import { misplaced } from '../known.js'
import { movedEitherWay } from '../moved.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'

const set = (panels: string, lights = ''): string => `plan: 1
title: Something in the way
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 2.5 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 45 deg left, distance: 1.8 m, height: 1.9 m } }
  ${lights}
panels:
  ${panels}
wanted: { framing: head and shoulders, backdrop: any, shadow: any }
`
const flag = (size: string, at: string, faces = 'subject') =>
  `flag: { kind: flag, size: ${size}, at: { ${at} }, faces: ${faces} }`

interface Blocked extends Evidence {
  readonly light: string
  /** What stands there, the most of it first. */
  readonly by: readonly Solid[]
  /** Share of the light that is hidden; undefined where only its axis was looked along. */
  readonly share: number | undefined
  readonly aim: string
}

export const aimBlocked = rule<Blocked>({
  id: 'aim-blocked',
  family: 'room',
  level: 'warning',
  finds: 'a light with a panel, another light, the table or the backdrop between it and what it is aimed at',
  limits: {
    hidden: { value: 0.5, unit: 'share', says: 'of its light, hidden where it does its job' },
  },
  why: 'A flag that keeps a light off the backdrop can keep it off the face too, and a v-flat is soon rolled before a strip. The light fires, and little of it arrives.',
  formula:
    'share of the light that would come straight, at the point of its role, which each thing alone hides; of a light aimed at a panel, a wall or the ceiling, what its axis meets first',
  sources: [
    { kind: 'derived', says: 'lines of sight to the front of the light, weighed as the meter weighs them' },
    { kind: 'common practice', says: 'scrims are there to be shone through, and are not counted' },
  ],
  basis: 'lines of sight; people in the way are judged by other rules',
  fires: [
    {
      title: 'a flag before the key',
      plan: set(flag('60 x 90 cm', 'left: 70 cm, front: 70 cm, height: 1.8 m')),
    },
    {
      title: 'the hair light behind the paper',
      plan: set(
        flag('30 x 30 cm', 'right: 1 m, front: 1 m, height: 1 m'),
        'hair: { unit: flashgun, meters: f/5.6, at: { left: 0 cm, behind: 2.9 m, height: 2.5 m } }',
      ),
    },
    {
      title: 'a board between a light and the ceiling',
      plan: set(
        flag('60 x 60 cm', 'right: 70 cm, front: 50 cm, height: 1.9 m', 'down'),
        'fill: { unit: flashgun, meters: f/4, at: { right: 1 m, front: 50 cm, height: 1.3 m }, aim: ceiling above subject }',
      ),
    },
  ],
  passes: [
    {
      title: 'a flag that keeps the key off the backdrop only',
      plan: set(flag('40 x 60 cm', 'left: 1.1 m, behind: 40 cm, height: 1.6 m')),
    },
    {
      title: 'a scrim before the key',
      plan: set(
        'silk: { kind: scrim, transmits: 45 %, size: 1 x 1.2 m, at: { left: 70 cm, front: 70 cm, height: 1.8 m }, faces: subject }',
      ),
    },
    {
      title: 'a small flag that takes an edge off',
      plan: set(flag('15 x 30 cm', 'left: 70 cm, front: 70 cm, height: 2 m')),
    },
  ],

  needs: ({ plan, set }) => (plan.lights.size === 0 || misplaced(set) ? 'silent' : undefined),

  detect: (context) =>
    [...context.plan.lights.values()].flatMap((light) => (light.on ? (blocked(light, context) ?? []) : [])),

  tell: ({ light, by, share, aim }, words) => {
    const names = words.list(by.map(named))
    const [stand, hide] = by.length === 1 ? ['stands', 'hides'] : ['stand', 'each hide']
    return {
      message:
        share === undefined
          ? `${light} does not get to ${aim}: ${names} ${stand} before it`
          : `${light} ${share > 0.98 ? 'does not reach' : 'hardly reaches'} ${aim}: ${names} ${stand} between and ${hide} ${share > 0.98 ? 'all' : `${Math.round(share * 100)} %`} of it there`,
      why:
        share === undefined
          ? 'looked along the axis of the light'
          : 'of the light that would come straight, where this light does its job',
    }
  },

  mend: (evidence, words, context) => {
    const { light, by } = evidence
    const names = words.list(by.map(named))
    return by.every(({ of }) => of === 'table' || of === 'backdrop')
      ? [{ title: `${light} on the other side of ${names}` }]
      : [
          ...panelMoved(evidence, context),
          { title: `${names} out of the line from ${light}, or ${light} past it` },
        ]
  },

  inShort: ({ light, by }, words) =>
    `${words.list(by.map(named))} ${by.length === 1 ? 'stands' : 'stand'} before ${light}`,
})

/** Less than this of the light nobody looks for. */
const worthNaming = 0.1

const blocked = (light: Light, context: RuleContext): Blocked | undefined =>
  light.aim.at === 'point' || light.unit.kind === 'sun' || light.unit.kind === 'window'
    ? hiddenAtPoint(light, context)
    : light.at.by === 'camera'
      ? undefined
      : axisMeets(light, context)

/** What counts as being in the way; a v-flat twice. People and whoever holds the camera are judged by other rules. */
const blockers = ({ scene, plan }: ComputedSet): readonly Solid[] =>
  scene.solids.filter(({ of, name }) =>
    of === 'panel'
      ? plan.panels.get(name)?.kind !== 'scrim'
      : of === 'light' || of === 'table' || of === 'backdrop',
  )

const named = ({ of, name }: Solid): string => (of === 'table' || of === 'backdrop' ? `the ${name}` : name)

/** True where something that counts comes near the lines from the light's front to the place. */
const mayBeBlocked = (
  { name }: Light,
  to: Vec3,
  counted: readonly Solid[],
  { set: { scene } }: RuleContext,
): boolean => {
  const front = scene.lights.get(name)?.front
  if (front === undefined) return true
  const ends = [...cornersOf(front), to]
  return counted.some(({ name: own, of, body }) => {
    if (of === 'light' && own === name) return false
    if (body.shape !== 'plate') return nearWay(ballRound(body), front, to)
    const off = ends.map((end) => dot(body.face.normal, subtract(end, body.face.centre)))
    const crossed = off.some((one) => one > 1e-6) && off.some((one) => one < -1e-6)
    return crossed && nearWay(ballRound(body), front, to)
  })
}

const nearWay = ({ centre, radius }: Ball, front: Face, to: Vec3): boolean => {
  const way = subtract(to, front.centre)
  const along = dot(subtract(centre, front.centre), way) / Math.max(dot(way, way), 1e-12)
  const nearest = add(front.centre, scale(way, Math.min(1, Math.max(0, along))))
  return distance(nearest, centre) <= radius + Math.hypot(front.width, front.height) / 2
}

const hiddenAtPoint = (light: Light, context: RuleContext): Blocked | undefined => {
  const { set, plan, limits } = context
  const point =
    light.aim.at === 'point' && set.scene.points.has(light.aim.point) ? light.aim.point : rolePoint(light)
  const place = meterPlace(plan, set.scene, { at: point, of: [light.name] })
  if (place === undefined) return undefined
  const counted = blockers(set)
  if (!mayBeBlocked(light, place.receptor.at, counted, context)) return undefined
  const hides = [...set.hides(place.receptor, light.name)]
    .flatMap(([name, share]) => {
      const solid = counted.find((one) => one.name === name)
      return solid === undefined || name === light.name || share < worthNaming ? [] : [{ solid, share }]
    })
    .sort((a, b) => b.share - a.share)
  const share = Math.min(1, hides[0]?.share ?? 0)
  if (share <= limits.hidden!) return undefined
  return evidence(
    light,
    // What hides as much as the first alone is named with it.
    hides.filter((one) => one.share > limits.hidden!).map(({ solid }) => solid),
    share,
    pointText(point),
    limits.hidden!,
  )
}

const pointText = (point: string): string =>
  point === 'subject'
    ? 'the subject'
    : point === 'subject-back'
      ? 'the back of the subject'
      : point === 'hair'
        ? 'the hair'
        : point === 'backdrop'
          ? 'the backdrop'
          : point

/** Metres before its target that the axis may end. */
const near = 0.05

const axisMeets = (light: Light, { set, limits }: RuleContext): Blocked | undefined => {
  const placed = set.scene.lights.get(light.name)
  const from = placed?.front?.centre
  if (placed === undefined || from === undefined) return undefined
  const { aim } = light
  const target = aim.at === 'panel' ? aim.panel : undefined
  const hit = firstHit(set.scene, from, subtract(placed.aim, from), new Set([light.name]))
  if (hit === undefined || hit.name === target || hit.distance > distance(placed.aim, from) - near)
    return undefined
  const solid = blockers(set).find((one) => one.of === hit.on && one.name === hit.name)
  if (solid === undefined || (aim.at === 'wall' && solid.of === 'backdrop')) return undefined
  const to = target ?? (aim.at === 'wall' ? `the ${aim.wall.replace('-', ' ')}` : 'the ceiling')
  return evidence(light, [solid], undefined, to, limits.hidden!)
}

/** The one panel in the way, aside or up or down until enough of the light gets past it. */
const panelMoved = ({ light, by }: Blocked, context: RuleContext): readonly Mend[] => {
  const [one] = by
  if (by.length > 1 || one?.of !== 'panel') return []
  const clear = (after: ComputedSet) =>
    blocked(after.plan.lights.get(light)!, { ...context, set: after, plan: after.plan }) === undefined
  for (const knob of ['panel-right', 'panel-height'] as const) {
    const moved = movedEitherWay(context.set, { knob, panel: one.name }, clear)
    if (moved !== undefined)
      return [{ title: moved.title, gives: `${light} gets past it`, after: moved.after }]
  }
  return []
}

const evidence = (
  light: Light,
  by: readonly Solid[],
  share: number | undefined,
  aim: string,
  limit: number,
): Blocked => ({
  pointer: lightPointer(light.name, 'at'),
  also: by.map((solid) => ({
    pointer: solid.of === 'panel' ? pointer('panels', solid.name, 'at') : solid.pointer,
    says: 'in the way',
  })),
  beyond: 'certain',
  measured: {
    hidden: { value: share ?? 1, unit: 'share', limit, side: 'at-most' },
  },
  light: light.name,
  by,
  share,
  aim,
})
