import type { Light, Plan } from '../../language/plan.js'
import { difference, type Figure, shifted } from '../../light/figure.js'
import { subtract, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { roundForTape } from '../../units/length.js'
import type { Metres } from '../../units/quantity.js'
import { turn } from '../gear.js'
import { faceOf, strongestOf } from '../key-lights.js'
import { keyMissing } from '../known.js'
import { placePointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import { inside, movedAndHeld, solveFor, solveSet } from '../solving.js'
import type { Words } from '../words.js'

const dancer = (area: string, distance: string, paper = '4 m'): string => `plan: 1
title: Dancer before a white wall
camera: { lens: 50 mm, frame: horizontal, at: { distance: 4.5 m, height: 1.1 m }, aperture: f/5.6, shutter: 1/160, iso: 400 }
subject: { kind: person, area: ${area} }
backdrop: { surface: white paint, width: ${paper}, height: 3 m, behind: 1.5 m }
lights:
  key: { unit: head 400 Ws, modifier: octa 120 cm, meters: f/5.6, at: { angle: 30 deg right, distance: ${distance}, height: 2.3 m } }
wanted: { framing: full length }
`

interface LeavesLight extends Evidence {
  readonly where: string
  /** In the light: stops that the place gets more than the middle. At the paper's edge: metres past it. */
  readonly by: number
  readonly u: number
  readonly leaves: 'the light' | 'the paper'
}

export const leavesTheLight = rule<LeavesLight>({
  id: 'leaves-the-light',
  family: 'backdrop',
  level: 'warning',
  finds: 'a subject that moves out of its light, or off its backdrop',
  limits: {
    over: { value: 2 / 3, unit: 'stop', says: 'between the middle of the area moved in and its edge' },
    past: { value: 0, unit: 'cm', says: 'past the edge of the backdrop, seen from the camera' },
  },
  why: 'Who dances or plays does not stay where the meter was. Near a light a step is a stop, and beside a narrow roll a step shows the wall.',
  formula:
    'log2(H at the edge of the area / H at its middle), key and fill, at the height of the face, dome toward the camera; the line from the camera past the subject there, against the edges of the backdrop',
  sources: [
    {
      kind: 'derived',
      says: 'a small light 3 m away: a metre nearer is 1.2 stops more, a metre further 0.8 less',
    },
    { kind: 'common practice', says: 'two thirds of a stop is as much as a series bears' },
  ],
  basis: 'incident metering, ISO 2720; the limit is common practice',
  fires: [
    { title: 'two metres to dance in, the light close', plan: dancer('2 x 1.5 m', '2 m') },
    { title: 'just too near', plan: dancer('1 x 1 m', '2.3 m') },
    { title: 'the roll is narrower than the dance', plan: dancer('2.4 x 0.4 m', '8 m', '2.72 m') },
  ],
  passes: [
    { title: 'a marked area, the light well back', plan: dancer('1 x 1 m', '4 m') },
    { title: 'just far enough', plan: dancer('1 x 1 m', '3 m') },
    { title: 'the same dance before a wide wall', plan: dancer('1.4 x 0.4 m', '5 m') },
  ],

  needs: (context) => {
    const { plan, set } = context
    const { area, moves } = plan.subject
    if (area === undefined)
      return moves === undefined
        ? 'silent'
        : {
            because: 'the plan does not say how far the subject moves about',
            enable: { pointer: '/subject/area', text: 'area: 1 x 1 m' },
          }
    // The edge of the paper needs no light to be told.
    return offPaper(set).length > 0 ? undefined : keyMissing(context)
  },

  detect: (context) => [...inLight(context), ...onPaper(context)],

  tell: ({ leaves, where, by }, words, { set, limits }) =>
    leaves === 'the light'
      ? {
          message: `the subject ${by <= -dark ? 'gets none of the light' : `comes out ${words.howMany(by)} too ${by > 0 ? 'light' : 'dark'}`} ${where} of where it moves`,
          why: `key and fill there against the middle of the area, ${words.howMany(limits.over!)} is the limit; nearest is ${strongestOf(set)?.name ?? 'the light'}`,
        }
      : {
          message: `the picture shows what lies beyond the backdrop: ${words.small(by)} past its ${where} when the subject stands at that end of where it moves`,
          why: 'the line from the camera past the subject to the backdrop; a camera that follows the subject sees as much of the edge',
        },

  mend: (evidence, words, context) =>
    evidence.leaves === 'the light'
      ? [...lightBack(evidence, words, context), ...smaller(evidence, words, context)]
      : [...wider(evidence, words, context), ...narrower(words, context)],
})

// ---------------------------------------------------------------- the light

interface Spot {
  /** From the middle of the area, as shares of its half width and half depth: −1, 0 or 1. */
  readonly right: number
  readonly behind: number
}

const round: readonly Spot[] = [-1, 0, 1].flatMap((right) =>
  [-1, 0, 1].flatMap((behind) => (right === 0 && behind === 0 ? [] : [{ right, behind }])),
)

const nameOf = ({ right, behind }: Spot): string => {
  const side = right === 0 ? '' : right < 0 ? 'camera-left' : 'camera-right'
  const depth = behind === 0 ? '' : behind < 0 ? 'front' : 'back'
  if (side !== '' && depth !== '') return `in the ${depth} ${side} corner`
  return side !== '' ? `at the ${side} end` : `at the ${depth}`
}

/** Stops that no light at all counts as. */
const dark = 10

interface Off {
  readonly spot: Spot
  readonly figure: Figure
}

/** What the area's edges get over its middle, most first; `share` of the area as it is stated. */
const offs = (set: ComputedSet, share = 1): readonly Off[] => {
  const { area } = set.plan.subject
  const middle = levelAt(set, faceOf(set))
  if (area === undefined || middle === undefined) return []
  const [x, y, z] = faceOf(set)
  return round
    .map((spot): Off => {
      const there: Vec3 = [
        x + (spot.right * share * area.width) / 2,
        y + (spot.behind * share * area.depth) / 2,
        z,
      ]
      const level = levelAt(set, there) ?? shifted(middle, -dark)
      return { spot, figure: difference(level, middle) }
    })
    .sort((a, b) => Math.abs(b.figure.stops) - Math.abs(a.figure.stops))
}

const levelAt = (set: ComputedSet, at: Vec3): Figure | undefined =>
  set.reading({
    at,
    of: set.keyLights.map((light) => light.name),
    dome: 'raised',
    faces: 'camera',
    aside: 'people',
  })?.figure

const worst = (set: ComputedSet, share = 1): number | undefined => {
  const [most] = offs(set, share)
  return most && Math.abs(most.figure.stops)
}

const inLight = (context: RuleContext): readonly LeavesLight[] => {
  const { set, limits } = context
  const [most] = keyMissing(context) === undefined ? offs(set) : []
  const light = strongestOf(set)
  if (most === undefined || light === undefined) return []
  const by = most.figure.stops
  const u = context.u(most.figure)
  const limit = limits.over!
  return [
    {
      pointer: placePointer(light),
      also: [{ pointer: '/subject/area', says: 'the subject moves about here' }],
      beyond: { stops: Math.abs(by) - limit, u },
      measured: { 'edge-over-middle': { value: by, unit: 'stop', u, limit, side: 'at-most' } },
      cause: `where ${light.name} stands`,
      where: nameOf(most.spot),
      by,
      u,
      leaves: 'the light',
    },
  ]
}

const lightBack = (
  { u, by }: LeavesLight,
  words: Words,
  { set, plan, limits }: RuleContext,
): readonly Advice[] => {
  const light: Light | undefined = strongestOf(set)
  const from = light && set.scene.lights.get(light.name)?.distance
  if (light === undefined || from === undefined) return []
  if (light.at.by === 'camera' || light.unit.kind === 'window') return []
  const limit = limits.over!
  const at = (one: ComputedSet, distance: number) => movedAndHeld(one, light.name, distance)?.set ?? one
  const solve = (target: number) => solveSet(set, from, from * 5, at, (one) => worst(one), target)
  const solved = solve(limit - inside(u)) ?? solve(limit - 0.02)
  const turned =
    solved === undefined ? undefined : turn(plan, { knob: 'light-distance', light: light.name }, solved)
  const moved = turned && movedAndHeld(set, light.name, turned.change.to)
  const after = moved && worst(moved.set)
  if (turned === undefined || moved === undefined || after === undefined || after > Math.abs(by) - 0.05)
    return []
  return [
    {
      title: turned.title,
      gives: `${words.howMany(after)} over the area${turned.short > 0 ? ', as far as the room goes' : ''}`,
      costs: `${words.howMany(moved.stops)} more power for the same exposure, and harder light`,
    },
  ]
}

/** The same area made smaller all round, marked on the floor. */
const smaller = ({ u }: LeavesLight, words: Words, { set, plan, limits }: RuleContext): readonly Advice[] => {
  const { area } = plan.subject
  if (area === undefined) return []
  const share = solveFor(1, 0, (of) => worst(set, of), limits.over! - inside(u))
  return share === undefined
    ? []
    : [
        {
          title: `an area of ${onFloor(area.width * share, plan, words)} by ${onFloor(area.depth * share, plan, words)} marked on the floor`,
          gives: `${words.howMany(worst(set, share) ?? 0)} over the area with the light where it is`,
        },
      ]
}

/** As it is taped down: in steps of a tape, rather less. */
const onFloor = (metres: number, { lengths }: Plan, words: Words): string =>
  words.length(roundForTape(metres as Metres, lengths === 'feet' ? 'feet' : 'metric', 'less'))

// ---------------------------------------------------------------- the paper

interface Past {
  readonly side: 'camera-left' | 'camera-right'
  /** Metres past the edge, in the backdrop's plane. */
  readonly past: number
}

/** How far past the paper's side edges the camera looks along the subject at either end of its area; most first. */
const pastEdges = (set: ComputedSet): readonly Past[] => {
  const { backdrop, camera, subject } = set.scene
  const { area } = set.plan.subject
  if (backdrop === undefined || set.plan.backdrop?.sky !== undefined || area === undefined) return []
  const { min, max } = subject.bounds
  const y = (min[1] + max[1]) / 2
  const behind = (x: number, depth: number): number | undefined => {
    const [dx, dy] = subtract([x, y + depth, 0], camera.eye)
    return dy <= 0 || y + depth >= backdrop.y
      ? undefined
      : camera.eye[0] + (dx * (backdrop.y - camera.eye[1])) / dy
  }
  const most = (values: readonly (number | undefined)[]): number =>
    Math.max(...values.map((value) => value ?? Number.NEGATIVE_INFINITY))
  const depths = [-area.depth / 2, area.depth / 2]
  const left = most(
    depths.map((depth) => {
      const x = behind(min[0] - area.width / 2, depth)
      return x === undefined ? undefined : backdrop.left - x
    }),
  )
  const right = most(
    depths.map((depth) => {
      const x = behind(max[0] + area.width / 2, depth)
      return x === undefined ? undefined : x - backdrop.right
    }),
  )
  const both: readonly Past[] = [
    { side: 'camera-left', past: left },
    { side: 'camera-right', past: right },
  ]
  return both.filter(({ past }) => Number.isFinite(past)).sort((a, b) => b.past - a.past)
}

/** Figures meet a limit rounded to a micrometre. */
const atEdge = 1e-6

const offPaper = (set: ComputedSet, limit = 0): readonly Past[] =>
  pastEdges(set).filter(({ past }) => past - limit > atEdge)

const onPaper = ({ set, limits }: RuleContext): readonly LeavesLight[] => {
  const [most, other] = offPaper(set, limits.past! / 100)
  if (most === undefined) return []
  // Alike on both sides, up to the last digit.
  const both = other !== undefined && most.past - other.past < 1e-3
  return [
    {
      pointer: '/backdrop/width',
      also: [{ pointer: '/subject/area', says: 'the subject moves about here' }],
      beyond: 'certain',
      measured: {
        'past-edge': { value: most.past * 100, unit: 'cm', limit: limits.past!, side: 'at-most' },
      },
      where: both ? 'camera-left edge and its camera-right one' : `${most.side} edge`,
      by: most.past,
      u: 0,
      leaves: 'the paper',
    },
  ]
}

/** Metres of paper to spare. */
const spare = 0.02

const wider = ({ by }: LeavesLight, words: Words, { plan }: RuleContext): readonly Advice[] => {
  const width = plan.backdrop!.width + 2 * (by + spare)
  const turned = turn(plan, { knob: 'backdrop-width' }, width)
  return [
    {
      title:
        turned === undefined || turned.short > 0 ? `a backdrop ${words.length(width)} wide` : turned.title,
      gives: 'the backdrop behind the subject wherever it moves',
    },
  ]
}

const narrower = (words: Words, { set, plan }: RuleContext): readonly Advice[] => {
  const { area } = plan.subject
  const [most] = pastEdges(set)
  if (area === undefined || most === undefined) return []
  const { camera, backdrop, subject } = set.scene
  // By as much as the edge lies past, carried from the backdrop's plane to the farther end of the area.
  const nearest = (subject.bounds.min[1] + subject.bounds.max[1]) / 2 - area.depth / 2 - camera.eye[1]
  const scale = nearest / (backdrop!.y - camera.eye[1])
  const width = area.width - 2 * (most.past + spare) * scale
  return width <= 0.1
    ? []
    : [
        {
          title: `an area ${onFloor(width, plan, words)} wide, marked on the floor`,
          gives: 'the backdrop behind the subject wherever it moves',
        },
      ]
}
