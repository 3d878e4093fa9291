import type { Light } from '../../language/plan.js'
import { difference, type Figure, shifted } from '../../light/figure.js'
import { nearestOnSegment, surfaceToward } from '../../scene/capsule.js'
import type { SceneFigure } from '../../scene/scene.js'
import { subtract, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { turn } from '../gear.js'
import { strongestOf } from '../key-lights.js'
import { keyMissing } from '../known.js'
import { placePointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import { inside, movedAndHeld, solveSet } from '../solving.js'
import type { Words } from '../words.js'

const standing = (distance: string, height: string, framing = 'full length', more = ''): string => `plan: 1
title: From head to toe
camera: { lens: 70 mm, at: { distance: 5 m, height: 1.1 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 600 Ws, modifier: octa 120 cm, meters: f/8, at: { angle: 25 deg left, distance: ${distance}, height: ${height} } }
${more}wanted: { framing: ${framing} }
`

const lowFill =
  '  fill: { unit: head 600 Ws, modifier: white umbrella 1.5 m, meters: f/7.1, at: { angle: 5 deg right, distance: 4 m, height: 60 cm } }\n'

interface Steep extends Evidence {
  /** Stops that the face gets more than the knees; negative where the knees get more. */
  readonly over: number
  readonly limit: number
  readonly u: number
  readonly light: Light
}

export const falloffSteep = rule<Steep>({
  id: 'falloff-steep',
  family: 'exposure',
  level: 'warning',
  finds: 'light that falls off from head to knee in a full-length picture',
  limits: {
    over: { value: 1, unit: 'stop', says: 'between face and knees, key and fill together' },
  },
  why: 'A light close to the face is twice as far from the feet: a well-lit head over legs that go down into the dark. It takes distance, or a light that also looks down.',
  formula: 'log2(H at the face / H at the knees), key and fill, dome toward the camera',
  sources: [
    {
      kind: 'derived',
      says: 'a small light 1 m from the face and level with it loses 1.2 stops to the knees',
    },
    { kind: 'memory', says: 'knees at 0.285 of the height: segment lengths of Drillis and Contini, 1966' },
    { kind: 'common practice', says: 'a stop from head to knee is as much as a full length bears' },
  ],
  basis: 'incident metering, ISO 2720; the limit is common practice',
  fires: [
    { title: 'a portrait light for a full length', plan: standing('1.2 m', '2.1 m') },
    { title: 'a little too near', plan: standing('1.7 m', '2.4 m') },
  ],
  passes: [
    { title: 'well back', plan: standing('3.5 m', '2.6 m') },
    { title: 'just far enough', plan: standing('2.3 m', '2.4 m') },
    { title: 'near, with a low fill', plan: standing('1.6 m', '2.2 m', 'full length', lowFill) },
    { title: 'no knees in the picture', plan: standing('1.2 m', '2.1 m', 'waist') },
  ],

  needs: (context) => {
    const { wanted, subject } = context.plan
    if (wanted.framing !== 'full length' || subject.kind === 'object' || subject.pose !== 'standing')
      return 'silent'
    return keyMissing(context)
  },

  detect: (context) => {
    const { set, limits } = context
    const found = worst(set)
    const light = strongestOf(set)
    if (found === undefined || light === undefined) return []
    const u = context.u(found)
    const limit = limits.over!
    return [
      {
        pointer: placePointer(light),
        also: [{ pointer: '/wanted/framing', says: 'full length is wanted' }],
        beyond: { stops: Math.abs(found.stops) - limit, u },
        measured: { 'face-over-knees': { value: found.stops, unit: 'stop', u, limit, side: 'at-most' } },
        cause: `where ${light.name} stands`,
        over: found.stops,
        limit,
        u,
        light,
      },
    ]
  },

  tell: ({ over, limit, light }, words, { set }) => {
    const distance = set.scene.lights.get(light.name)?.distance
    return {
      message: `the legs ${over >= dark ? 'stay dark beside' : `come out ${words.howMany(over)} ${over > 0 ? 'darker' : 'lighter'} than`} the face, as ${light.name} stands${distance === undefined ? '' : ` ${words.length(distance)} from it`}`,
      why: `${words.howMany(limit)} from head to knee is the limit; key and fill, the dome toward the camera`,
    }
  },

  mend: (evidence, words, context) => [
    ...further(evidence, words, context),
    ...(evidence.over > 0
      ? [
          {
            title: `aim ${evidence.light.name} at the waist, so that the face gets the edge of its beam`,
            gives: 'helps where the beam is narrow: a reflector, a grid, a zoomed head',
          },
          { title: 'a fill low in front, or a white panel on the floor', gives: 'light for the legs alone' },
        ]
      : []),
  ],
})

/** From the soles, as a share of the height. */
const kneeHeight = 0.285
/** Where a face stands in these shares. */
const faceHeight = 0.94

/** On the front of the legs, as the camera sees them. */
const knees = ({ face, body }: SceneFigure, set: ComputedSet): Vec3 => {
  const ground = set.plan.subject.standsOn?.height ?? 0
  const z = ground + ((face[2] - ground) * kneeHeight) / faceHeight
  const middle = nearestOnSegment(body, [body.from[0], body.from[1], z])
  const [x, y] = subtract(set.scene.camera.eye, middle)
  return surfaceToward(body, middle, [x, y, 0]).at
}

/** Stops that no light at all counts as. */
const dark = 10

/** Those whose knees no one stands before. */
const front = (set: ComputedSet): readonly SceneFigure[] =>
  set.scene.subject.figures.filter(({ row }) => row === undefined || row === 1)

const worst = (set: ComputedSet): Figure | undefined => {
  const of = set.keyLights.map((light) => light.name)
  const at = (place: Vec3) => set.reading({ at: place, of, dome: 'raised', faces: 'camera' })?.figure
  return front(set)
    .flatMap((figure) => {
      const face = at(figure.face)
      return face === undefined ? [] : [difference(face, at(knees(figure, set)) ?? shifted(face, -dark))]
    })
    .reduce<Figure | undefined>(
      (most, one) => (most === undefined || Math.abs(one.stops) > Math.abs(most.stops) ? one : most),
      undefined,
    )
}

const further = (
  { limit, u, over, light }: Steep,
  words: Words,
  { set, plan }: RuleContext,
): readonly Advice[] => {
  const from = set.scene.lights.get(light.name)?.distance
  if (from === undefined || light.at.by === 'camera' || light.unit.kind === 'window') return []
  const at = (one: ComputedSet, distance: number) => movedAndHeld(one, light.name, distance)?.set ?? one
  const off = (one: ComputedSet): number | undefined => {
    const figure = worst(one)
    return figure && Math.abs(figure.stops)
  }
  const solve = (target: number) => solveSet(set, from, from * 5, at, off, target)
  const solved = solve(limit - inside(u)) ?? solve(limit - 0.02)
  const turned =
    solved === undefined ? undefined : turn(plan, { knob: 'light-distance', light: light.name }, solved)
  const moved = turned && movedAndHeld(set, light.name, turned.change.to)
  const after = moved && worst(moved.set)
  if (turned === undefined || moved === undefined || after === undefined) return []
  if (Math.abs(after.stops) > Math.abs(over) - 0.05) return []
  return [
    {
      title: turned.title,
      gives: `${words.howMany(after.stops)} from head to knee${turned.short > 0 ? ', as far as the room goes' : ''}`,
      costs: `${words.howMany(moved.stops)} more power for the same exposure, and harder light`,
    },
  ]
}
