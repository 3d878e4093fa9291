import type { Light } from '../../language/plan.js'
import { difference, type Figure } from '../../light/figure.js'
import type { SceneFigure } from '../../scene/scene.js'
import { add, subtract, unit, type Vec3 } from '../../scene/vector.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { roundForTape } from '../../units/length.js'
import type { Metres, Radians } from '../../units/quantity.js'
import { turn } from '../gear.js'
import { keyMissing } from '../known.js'
import { placePointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { allHeld, inside, movedAndHeld, solveFor } from '../solving.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'

const family = (angle: string, distance: string, height: string): string => `plan: 1
title: Family in two rows
camera: { lens: 35 mm, at: { distance: 4 m, height: 1.2 m }, aperture: f/5.6, shutter: 1/125, iso: 200 }
subject:
  kind: group
  rows:
    - { people: 3, spacing: 50 cm, faces-at: 1.1 m }
    - { people: 4, spacing: 50 cm, behind: 50 cm, faces-at: 1.6 m }
lights:
  key: { unit: head 600 Ws, modifier: white umbrella 1.5 m, meters: f/5.6, at: { angle: ${angle}, distance: ${distance}, height: ${height} } }
wanted: { framing: all, sharp: rows }
`

interface GroupUneven extends Evidence {
  readonly spread: number
  readonly limit: number
  readonly u: number
  readonly brightest: string
  readonly darkest: string
  readonly from: string
}

export const groupUneven = rule<GroupUneven>({
  id: 'group-uneven',
  family: 'exposure',
  level: 'warning',
  finds: 'a group in which one face gets visibly more light than another',
  limits: {
    note: { value: 1 / 3, unit: 'stop', says: 'between the brightest and the darkest face: note over this' },
    warning: {
      value: 2 / 3,
      unit: 'stop',
      says: 'between the brightest and the darkest face: warning over this',
    },
  },
  why: 'Light from close by falls off across a group: the near end burns while the far end and the back row go dark, and one exposure cannot serve both.',
  formula: 'log2(H at the brightest face / H at the darkest), key and fill, dome toward the camera',
  sources: [
    {
      kind: 'derived',
      says: 'a small light loses 2·log2((d + depth)/d): a third over one metre takes 8.2 m',
    },
    { kind: 'common practice', says: 'a third over a group goes unseen, two thirds does not' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    { title: 'umbrella close at one side', plan: family('60 deg left', '1.8 m', '2.2 m') },
    { title: 'a little too close', plan: family('35 deg right', '3 m', '2.4 m') },
  ],
  passes: [
    { title: 'well back and near the camera', plan: family('10 deg left', '6 m', '2.6 m') },
    { title: 'just far enough', plan: family('15 deg right', '5.5 m', '2.6 m') },
  ],

  needs: (context) => (context.plan.subject.kind === 'group' ? keyMissing(context) : 'silent'),

  detect: (context) => {
    const { set, limits, u } = context
    const faces = metered(set)
    if (faces.length < 2) return []
    const brightest = faces.reduce((best, face) => (face.over.stops > best.over.stops ? face : best))
    const darkest = faces.reduce((best, face) => (face.over.stops < best.over.stops ? face : best))
    const figure = difference(brightest.over, darkest.over)
    const uSpread = u({ ...figure, rendering: 0 })
    const tier = reached((limit) => figure.stops - limit, uSpread, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    const light = strongest(set)
    return [
      {
        pointer: light === undefined ? '/subject/rows' : placePointer(light),
        also: [{ pointer: '/subject/rows', says: 'over these rows' }],
        beyond: tier.beyond,
        level: tier.level,
        measured: {
          spread: { value: figure.stops, unit: 'stop', u: uSpread, limit: tier.limit, side: 'at-most' },
        },
        ...(light === undefined ? {} : { cause: `where ${light.name} stands` }),
        spread: figure.stops,
        limit: tier.limit,
        u: uSpread,
        brightest: nameOf(brightest, faces, set),
        darkest: nameOf(darkest, faces, set),
        from: light?.name ?? 'the light',
      },
    ]
  },

  tell: ({ spread, limit, brightest, darkest, from }, words, { set }) => {
    const distance = set.scene.lights.get(from)?.distance
    return {
      message: `${darkest} ${/either|both/.test(darkest) ? 'come' : 'comes'} out ${words.howMany(spread)} darker than ${brightest}, as ${from} stands${distance === undefined ? '' : ` ${words.length(distance)} from the front row`}`,
      why: `${words.howMany(limit)} between faces is the limit; people in the way of the light are not counted`,
    }
  },

  mend: (evidence, words, context) => {
    const light = strongest(context.set)
    return light === undefined
      ? []
      : inTurn(
          () => raised(evidence, words, context),
          () => lightBack(evidence, light, words, context),
          () => feathered(evidence, light, words, context),
          () => nearerAxis(evidence, light, words, context),
        )
  },
})

/** What takes off less than a third of what is too much is not worth the walk. */
const worthIt = (after: number, { spread, limit }: GroupUneven): boolean =>
  after <= spread - Math.max(0.05, (spread - limit) / 3)

interface Face {
  readonly figure: SceneFigure
  readonly over: Figure
}

const metered = (set: ComputedSet): readonly Face[] => {
  const names = set.keyLights.map((light) => light.name)
  return set.scene.subject.figures.flatMap((figure) => {
    const over = set.reading({ at: figure.face, of: names, dome: 'raised', faces: 'camera' })?.overCamera
    return over === undefined ? [] : [{ figure, over }]
  })
}

const spreadOf = (set: ComputedSet): number | undefined => {
  const stops = metered(set).map((face) => face.over.stops)
  return stops.length < 2 ? undefined : Math.max(...stops) - Math.min(...stops)
}

/** Of the lights that count, the one that gives the subject most. */
const strongest = (set: ComputedSet): Light | undefined => {
  const by = set.key?.byLight
  return [...set.keyLights].sort((a, b) => (by?.get(b.name) ?? 0) - (by?.get(a.name) ?? 0))[0]
}

const ordinals = ['', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth']

/** Counted from the nearer end, so that a mirrored set has the mirrored names; two alike are named together. */
const nameOf = ({ figure, over }: Face, faces: readonly Face[], set: ComputedSet): string => {
  const { rows } = set.plan.subject
  const row = figure.row ?? 1
  const number = numberOf(figure)
  const people = rows[row - 1]?.people ?? 1
  const fromRight = people - number + 1
  const inRow =
    rows.length === 1
      ? 'the row'
      : row === 1
        ? 'the front row'
        : row === rows.length
          ? 'the back row'
          : `row ${row}`
  if (number === fromRight) return people === 1 ? `the one in ${inRow}` : `the middle of ${inRow}`
  const twin = faces.find((face) => face.figure.row === figure.row && numberOf(face.figure) === fromRight)
  const alike = twin !== undefined && Math.abs(twin.over.stops - over.stops) < 1e-3
  const place = ordinals[Math.min(number, fromRight) - 1] ?? `number ${Math.min(number, fromRight)}`
  const side = number < fromRight ? 'camera-left' : 'camera-right'
  if (place === '') return alike ? `both ends of ${inRow}` : `the ${side} end of ${inRow}`
  return `the ${place} from ${alike ? 'either' : `the ${side}`} end of ${inRow}`
}

/** From camera-left, counted from 1. */
const numberOf = (figure: SceneFigure): number => Number(figure.name.split('-')[2] ?? 1)

/** Higher than this few stands go. Common practice, no source. */
const highest = 4
const step = 0.2

/** From higher up the way to the front row and to the back row differs less. */
const raised = (evidence: GroupUneven, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const { lights: placed, room, subject } = set.scene
  const top = Math.min(highest, (room?.height ?? highest) - 0.3)
  const movable = set.keyLights.filter(
    ({ at, unit, name }) =>
      (unit.kind === 'flash' || unit.kind === 'continuous') &&
      at.by !== 'camera' &&
      at.height !== undefined &&
      placed.get(name)?.front !== undefined,
  )
  if (movable.length === 0) return []
  const heightOf = (name: string): number => placed.get(name)!.front!.centre[2]
  const highestToday = Math.max(...movable.map(({ name }) => heightOf(name)))
  const style = plan.lengths === 'feet' ? 'feet' : 'metric'
  const changed = (by: number) => {
    const lights = new Map(plan.lights)
    const heights = movable.map((light) => {
      const to = roundForTape((heightOf(light.name) + by) as Metres, style)
      const { at } = light
      // Over whatever it is measured from; along the same tape it comes a little nearer on the floor.
      if (at.by === 'camera' || at.height === undefined) return ''
      const metres = roundForTape((at.height.metres + by) as Metres, style)
      if (at.by === 'tape' && to - subject.tapeFrom[2] > 0.9 * (at.distance ?? 0)) return undefined
      lights.set(light.name, { ...light, at: { ...at, height: { ...at.height, metres } } })
      return `lights.${light.name}.at.height → ${words.length(metres)}`
    })
    if (heights.includes(undefined)) return undefined
    const names = movable.map(({ name }) => name)
    const after = allHeld(set, computeSet({ ...plan, lights }), names)
    const spread = spreadOf(after)
    return spread === undefined ? undefined : { title: heights.join(', '), after, spread }
  }
  let best: ReturnType<typeof changed>
  const target = evidence.limit - inside(evidence.u)
  for (let by = step; highestToday + by <= top + 1e-9; by += step) {
    const tried = changed(by)
    if (tried === undefined) break
    if (best === undefined || tried.spread < best.spread) best = tried
    if (tried.spread <= target) break
  }
  return best === undefined || !worthIt(best.spread, evidence)
    ? []
    : [
        {
          title: best.title,
          gives: `${words.howMany(best.spread)} between the faces${best.spread > evidence.limit ? ', still over the limit' : ''}`,
          costs: 'light from higher up: look at the eye sockets',
          after: best.after,
          ...(best.spread > target ? { partial: true } : {}),
        },
      ]
}

/** The beam turned past the near end, so that its edge falls there: the least turn that does, of those that people use. */
const feathered = (
  evidence: GroupUneven,
  light: Light,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const { aim, name } = light
  const from = set.scene.lights.get(name)?.front?.centre
  if (aim.at !== 'point' || aim.feather !== undefined || from === undefined) return []
  const target = evidence.limit - inside(evidence.u)
  const sides = ['backdrop', from[0] < 0 ? 'right' : 'left'] as const
  let best: { readonly turn: string; readonly after: ComputedSet; readonly spread: number } | undefined
  for (const degrees of [10, 15, 20, 30])
    for (const towards of sides) {
      const by = ((degrees * Math.PI) / 180) as Radians
      const lights = new Map(plan.lights).set(name, { ...light, aim: { ...aim, feather: { by, towards } } })
      const after = allHeld(set, computeSet({ ...plan, lights }), [name])
      const spread = spreadOf(after)
      if (spread === undefined || (best !== undefined && (best.spread <= target || spread >= best.spread)))
        continue
      best = { turn: `${degrees} deg towards ${towards}`, after, spread }
    }
  return best === undefined || !worthIt(best.spread, evidence)
    ? []
    : [
        {
          title: `lights.${name}.aim → { at: ${aim.point}, feather: ${best.turn} }`,
          gives: `${words.howMany(best.spread)} between the faces${best.spread > evidence.limit ? ', still over the limit' : ''}`,
          costs: `more power to hold the exposure: meter ${name} again`,
          after: best.after,
          ...(best.spread > target ? { partial: true } : {}),
        },
      ]
}

const lightBack = (
  evidence: GroupUneven,
  light: Light,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const { limit, u } = evidence
  const from = set.scene.lights.get(light.name)?.distance
  if (from === undefined || light.at.by === 'camera' || light.unit.kind === 'window') return []
  const at = (distance: number) => spreadOf(movedAndHeld(set, light.name, distance)?.set ?? set)
  const solved = solveFor(from, from * 6, at, limit - inside(u)) ?? solveFor(from, from * 6, at, limit - 0.02)
  const turned =
    solved === undefined ? undefined : turn(plan, { knob: 'light-distance', light: light.name }, solved)
  const moved = turned && movedAndHeld(set, light.name, turned.change.to)
  const after = moved && spreadOf(moved.set)
  if (turned === undefined || moved === undefined || after === undefined || !worthIt(after, evidence))
    return []
  return [
    {
      title: turned.title,
      gives: `${words.howMany(after)} between the faces${turned.short > 0 ? ', as far as the room goes' : after > limit ? ', still over the limit' : ''}`,
      costs: `${words.howMany(moved.stops)} more power for the same exposure, and harder light`,
      after: moved.set,
      ...(after > limit - inside(u) ? { partial: true } : {}),
    },
  ]
}

/**
 * On the camera's axis the two ends are alike, and only the depth of the rows is left. The light turned about the subject
 * does to the faces what it does today to faces turned the other way.
 */
const nearerAxis = (
  evidence: GroupUneven,
  light: Light,
  words: Words,
  { set }: RuleContext,
): readonly Mend[] => {
  if (light.at.by !== 'tape' || Math.abs(light.at.angleLeft) < 0.1) return []
  const angle = light.at.angleLeft
  const { camera, subject } = set.scene
  const others = set.keyLights.filter((one) => one !== light).map((one) => one.name)
  const levels = subject.figures.map(({ face }) => {
    const normal = unit(subtract(camera.eye, face))
    const turned = add(subject.tapeFrom, about(subtract(face, subject.tapeFrom), -angle))
    const from = set.exposure({ at: turned, normal: about(normal, -angle), kind: 'dome' }, [light.name])
    const rest = others.length === 0 ? undefined : set.exposure({ at: face, normal, kind: 'dome' }, others)
    return Math.log2((from?.luxSeconds ?? 0) + (rest?.luxSeconds ?? 0))
  })
  const after = Math.max(...levels) - Math.min(...levels)
  return !Number.isFinite(after) || !worthIt(after, evidence)
    ? []
    : [
        {
          title: `${light.name} round to the camera's axis, over the lens, same distance and height`,
          gives: `${words.howMany(after)} between the faces${after > evidence.limit ? ', still over the limit' : ''}`,
          costs: 'flatter light',
        },
      ]
}

/** Turned about the upright, counter-clockwise from above. */
const about = ([x, y, z]: Vec3, angle: number): Vec3 => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
  z,
]
