import type { Light } from '../../language/plan.js'
import { response } from '../../light/response.js'
import type { AreaSource } from '../../light/source.js'
import { add, dot, scale, subtract, unit, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { solveAtGear } from '../../set/solve.js'
import { inDegrees, type Radians } from '../../units/quantity.js'
import { lightMissing } from '../known.js'
import { lightPointer } from '../place-pointer.js'
import { type Advice, type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'
import { solveDistance } from './hold-by-distance.js'

/** Ten people on four and a half metres, lit from beside the camera. */
const choir = (zoom: string, distance = '4 m'): string => `plan: 1
title: A choir by one bare flashgun
camera: { lens: 35 mm, frame: horizontal, at: { distance: 6 m, height: 1.5 m }, aperture: f/4, shutter: 1/125, iso: 800 }
subject: { kind: group, rows: [ { people: 10, spacing: 50 cm, faces-at: 1.5 m } ] }
lights:
  key: { unit: flashgun, zoom: ${zoom}, power: 1/2, at: { angle: 0 deg left, distance: ${distance}, height: 2.2 m } }
wanted: { framing: all }
`

/** A head on paper of which the camera sees two metres. */
const paper = (modifier: string, lens = '50 mm'): string => `plan: 1
title: One head on the paper
camera: { lens: ${lens}, frame: horizontal, at: { distance: 2 m, height: 1.4 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.4 m }
backdrop: { surface: white paper, width: 3.55 m, height: 3 m, behind: 1.5 m }
lights:
  paper: { role: backdrop, unit: head 400 Ws, modifier: ${modifier}, power: 1/8, at: { left: 1.5 m, before-backdrop: 1.5 m, height: 1.5 m } }
wanted: { framing: waist, shadow: any }
`

interface BeamShort extends Evidence {
  readonly light: Light
  readonly what: string
  /** Stops under the middle of the beam, at the place farthest out of it. */
  readonly under: number
  /** In that direction: between the half peaks, and what the beam would have to take in. */
  readonly spreads: Radians
  readonly takes: Radians
}

export const beamShort = rule<BeamShort>({
  id: 'beam-short',
  family: 'power',
  level: 'warning',
  finds: 'a key, fill or backdrop light whose beam is narrower than what it lights',
  limits: {
    under: {
      value: 1,
      unit: 'stop',
      says: 'under the middle of the beam, where what it lights ends: the half peak',
    },
  },
  why: 'A long zoom, a snoot or a tight grid leaves a pool of light: the ends of the group, or the edges of the paper, fall off into the dark whatever the power.',
  formula:
    'log2(H in the middle of the beam / H at the edge), at one distance, the receptor facing the light; aimed at the middle of what it lights, or as it is aimed where that is better',
  sources: [
    { kind: 'derived', says: 'a beam ends, by the usual word, where it has fallen to half of its peak' },
    {
      kind: 'common practice',
      says: "a flashgun's beam: half a stop down at each edge of the frame of its zoom, one at the corner",
    },
    { kind: 'common practice', says: 'standard reflectors spread 55 to 65 degrees between half peaks' },
  ],
  basis: 'beam between half peaks; patterns are common practice',
  fires: [
    { title: 'a long zoom on a long row', plan: choir('85 mm') },
    { title: 'a little too long a zoom', plan: choir('50 mm') },
    { title: 'a honeycomb on the paper', plan: paper('honeycomb 20 deg') },
  ],
  passes: [
    { title: 'the zoom of the lens', plan: choir('35 mm') },
    { title: 'the long zoom from well back', plan: choir('50 mm', '5.5 m') },
    { title: 'a standard reflector on the paper', plan: paper('standard reflector', '85 mm') },
    { title: 'a box on the paper', plan: paper('softbox 60 x 90 cm') },
  ],

  needs: ({ plan }) =>
    [...plan.lights.values()].some((light) => light.on && hasCoverage(light)) ? undefined : 'silent',

  detect: ({ set, limits }) =>
    [...onSubject(set), ...onBackdrop(set)]
      .filter(({ under }) => under > limits.under! - patternU)
      .map((found): BeamShort => {
        const spreads = beamToward(found.source, found.off)
        return {
          pointer: pointerOf(set, found.light),
          beyond: { stops: found.under - limits.under!, u: patternU },
          measured: {
            under: {
              value: found.under,
              unit: 'stop',
              u: patternU,
              limit: limits.under!,
              side: 'at-most',
            },
            spreads: { value: inDegrees(spreads), unit: 'deg' },
            takes: { value: inDegrees(found.takes), unit: 'deg' },
          },
          cause: `the beam of ${found.light.name}`,
          light: found.light,
          what: found.what,
          under: found.under,
          takes: found.takes,
          spreads,
        }
      }),

  tell: ({ light, what, under, spreads, takes }, words) => ({
    message: `the edge of ${what} ${under < darkest ? `falls ${words.howMany(under)} under the middle` : 'stays dark'}: the beam of ${light.name} spreads ${words.degrees(spreads)} that way, and ${what} takes ${words.degrees(takes)}`,
    why: [
      light.modifier?.name ??
        (light.zoom === undefined ? light.unit.name : `zoom ${Math.round(light.zoom * 1000)} mm`),
      ...(light.grid === undefined ? [] : ['with a grid']),
      'seen from where the light stands',
    ].join(', '),
  }),

  mend: (found, words, context) => {
    const turned = [...widerZoom(found, words, context), ...furtherOff(found, words, context)]
    const mends = [...turned, ...withoutGrid(found)]
    return mends.length > 0 ? mends : spread(found)
  },
})

/** How far a beam pattern may be off at its half peak, in stops: they go by common practice. An estimate, no source. */
const patternU = 0.25

const hasCoverage = ({ role, aim, modifier, unit }: Light): boolean =>
  (role === 'key' || role === 'fill' || role === 'backdrop') &&
  aim.at === 'point' &&
  (unit.kind === 'flash' || unit.kind === 'continuous') &&
  modifier?.kind !== 'bare'

interface Found {
  readonly light: Light
  readonly source: AreaSource
  readonly what: string
  readonly under: number
  /** The place farthest out, as it lies to the beam that is turned to the middle of what is lit. */
  readonly off: Vec3
  readonly takes: Radians
}

// ---------------------------------------------------------------- what is to be lit

/** Across the subject as it is framed, at the height of the face; of a group, every face. */
const subjectPlaces = ({ scene, plan }: ComputedSet): readonly Vec3[] => {
  const { figures, bounds, tapeFrom } = scene.subject
  if (plan.subject.kind === 'group') return figures.map(({ face }) => face)
  return [
    [bounds.min[0], tapeFrom[1], tapeFrom[2]],
    [bounds.max[0], tapeFrom[1], tapeFrom[2]],
  ]
}

const backdropPlaces = (set: ComputedSet): readonly Vec3[] => {
  const { points, backdrop } = set.scene
  const [left, right, bottom, top] = ['left', 'right', 'bottom', 'top'].map(
    (side) => points.get(`backdrop-${side}`)?.at,
  )
  if (left === undefined || right === undefined || bottom === undefined || top === undefined) return []
  return [left[0], (left[0] + right[0]) / 2, right[0]].flatMap((x) =>
    [bottom[2], (bottom[2] + top[2]) / 2, top[2]].map((z): Vec3 => [x, backdrop!.y, z]),
  )
}

/** Each key and fill for itself: what one lacks the other does not give in the same quality. */
const onSubject = (set: ComputedSet, only?: string): readonly Found[] => {
  const places = subjectPlaces(set)
  const what = set.plan.subject.kind === 'group' ? 'the group' : 'the subject'
  return covering(set, ['key', 'fill']).flatMap(({ light, source }) =>
    only === undefined || light.name === only ? farthestOut([source], places, what, light) : [],
  )
}

/** All backdrop lights together: of a pair each lights its own half. */
const onBackdrop = (set: ComputedSet): readonly Found[] => {
  if (set.plan.backdrop === undefined || set.plan.backdrop.sky !== undefined) return []
  const lights = covering(set, ['backdrop'])
  const all = [...set.plan.lights.values()].filter((light) => light.on && light.role === 'backdrop')
  if (lights.length === 0 || lights.length < all.length) return []
  return farthestOut(
    lights.map(({ source }) => source),
    backdropPlaces(set),
    'the backdrop in frame',
    undefined,
    lights.map(({ light }) => light),
  )
}

const covering = (set: ComputedSet, roles: readonly Light['role'][]) =>
  [...set.plan.lights.values()].flatMap((light) => {
    const source = set.source(light.name)
    const stands = lightMissing(set, light) === undefined
    return light.on && stands && roles.includes(light.role) && hasCoverage(light) && source?.kind === 'area'
      ? [{ light, source }]
      : []
  })

/** The place that the best of the lights leaves farthest out of its beam, and that light. */
const farthestOut = (
  sources: readonly AreaSource[],
  places: readonly Vec3[],
  what: string,
  one: Light | undefined,
  lights: readonly Light[] = one === undefined ? [] : [one],
): readonly Found[] => {
  const out = places.map((at) =>
    sources
      .map((source, i) => ({ light: lights[i]!, source, at, under: underPeak(source, places, at) }))
      .reduce((best, next) => (next.under < best.under ? next : best)),
  )
  if (out.length === 0) return []
  const worst = out.reduce((most, next) => (next.under > most.under ? next : most))
  const { source, at, light, under } = worst
  const axis = towardMiddle(source, places)
  const off = turnedToAxis(source, subtract(at, source.face.centre), axis)
  const takes = 2 * Math.acos(Math.min(1, dot(unit(off), source.face.normal)))
  return [{ light, source, what, under, off, takes: takes as Radians }]
}

// ---------------------------------------------------------------- the beam

/** Stops under the middle of the beam in the direction of a place: as it is aimed, or aimed at the middle of them all. */
const underPeak = (source: AreaSource, places: readonly Vec3[], at: Vec3): number => {
  const to = subtract(at, source.face.centre)
  return Math.min(
    fallToward(source, to),
    fallToward(source, turnedToAxis(source, to, towardMiddle(source, places))),
  )
}

/** Between the directions in which the places are seen. */
const towardMiddle = ({ face }: AreaSource, places: readonly Vec3[]): Vec3 =>
  unit(places.map((at) => unit(subtract(at, face.centre))).reduce(add, [0, 0, 0]), face.normal)

/** The direction that lies to the light's own axis as `to` lies to another axis. */
const turnedToAxis = ({ face }: AreaSource, to: Vec3, axis: Vec3): Vec3 => {
  const across = unit(subtract(face.across, scale(axis, dot(face.across, axis))), face.across)
  const up: Vec3 = [
    axis[1] * across[2] - axis[2] * across[1],
    axis[2] * across[0] - axis[0] * across[2],
    axis[0] * across[1] - axis[1] * across[0],
  ]
  return add(
    add(scale(face.across, dot(to, across)), scale(face.up, dot(to, up))),
    scale(face.normal, dot(to, axis)),
  )
}

/** In stops, at one distance, the receptor turned to the light. */
const fallToward = (source: AreaSource, to: Vec3): number => {
  const far = fallFarOff(source, to)
  // Near its front a light falls off less than from afar, never more: well inside the beam that is enough to know.
  if (far !== undefined && far < wellInside) return far
  const { centre, normal } = source.face
  const reach = Math.hypot(...to)
  const at = (direction: Vec3): number =>
    response(source, {
      at: add(centre, scale(direction, reach)),
      normal: scale(direction, -1),
      kind: 'flat',
    })
  const middle = at(normal)
  // A light that is dark on its axis, as a wall washer's, has no middle to fall from.
  return middle > 0 ? Math.min(darkest, Math.log2(middle / at(unit(to)))) : 0
}

const wellInside = 0.6

/** The same from so far off that the front is a point: by the pattern alone; undefined behind the front and with a grid. */
const fallFarOff = ({ face, pattern }: AreaSource, to: Vec3): number | undefined => {
  const ahead = dot(to, face.normal)
  if (pattern.grid !== undefined || ahead <= 0) return undefined
  if (pattern.head !== undefined) {
    const [across, up] = [dot(to, face.across) / ahead, dot(to, face.up) / ahead]
    return ((across / pattern.head.tanAcross) ** 2 + (up / pattern.head.tanUp) ** 2) / 2
  }
  return pattern.cosine === undefined ? undefined : -pattern.cosine * Math.log2(dot(unit(to), face.normal))
}

/** Beyond a grid's cut-off there is no light at all; as far down as any figure needs to go. */
const darkest = 10

/** Twice the angle off the axis at which the beam has fallen to half, in the direction of a place; 180° for one that never does. */
const beamToward = (source: AreaSource, to: Vec3): Radians => {
  const { normal } = source.face
  const aside = unit(subtract(to, scale(normal, dot(to, normal))), source.face.across)
  const reach = Math.hypot(...to)
  const fall = (angle: number): number =>
    fallToward(source, scale(add(scale(normal, Math.cos(angle)), scale(aside, Math.sin(angle))), reach))
  let [low, high] = [0, Math.PI / 2]
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2
    if (fall(middle) < 1) low = middle
    else high = middle
  }
  return (low + high) as Radians
}

// ---------------------------------------------------------------- mends

const pointerOf = ({ plan }: ComputedSet, light: Light): string => {
  const stated = ['zoom', 'grid', 'modifier'].find((key) => plan.places.stated(lightPointer(light.name, key)))
  return stated === undefined ? lightPointer(light.name) : lightPointer(light.name, stated)
}

const underOf = (light: Light) => (set: ComputedSet) =>
  (light.role === 'backdrop' ? onBackdrop(set) : onSubject(set, light.name)).find(
    (found) => found.light.name === light.name,
  )?.under

const widerZoom = ({ light }: BeamShort, words: Words, { set, limits }: RuleContext): readonly Mend[] => {
  const knob = { knob: 'zoom', light: light.name } as const
  const solved =
    light.unit.kind !== 'flash' || light.unit.zoom === undefined || light.modifier !== undefined
      ? undefined
      : solveAtGear(set, knob, underOf(light), { atMost: limits.under! - inside(patternU) })
  if (solved === undefined) return []
  const [before, after] = [set.strength(light.name), solved.set.strength(light.name)]
  const lost =
    before === undefined || after === undefined
      ? undefined
      : Math.log2(before.candelaSeconds / after.candelaSeconds)
  return [
    {
      title: `lights.${light.name}.zoom → ${Math.round(solved.value * 1000)} mm`,
      gives: `the edge ${words.howMany(solved.reached)} under the middle`,
      ...(lost === undefined ? {} : { costs: `${words.howMany(lost)} less light in the middle` }),
      after: solved.set,
    },
  ]
}

const furtherOff = ({ light }: BeamShort, words: Words, { set, limits }: RuleContext): readonly Mend[] => {
  const turned = solveDistance(
    set,
    light,
    (today) => today * 3,
    (moved) => {
      const under = underOf(light)(moved)
      return under === undefined ? undefined : under - (limits.under! - inside(patternU))
    },
  )
  if (turned === undefined) return []
  const moved = set.with(turned.change)
  const under = underOf(light)(moved)
  return under === undefined
    ? []
    : [
        {
          title: turned.title,
          gives: `the edge ${words.howMany(under)} under the middle`,
          costs: 'more power for the same reading, and harder light',
          after: moved,
        },
      ]
}

const withoutGrid = ({ light }: BeamShort): readonly Advice[] =>
  light.grid !== undefined || light.modifier?.grid !== undefined
    ? [
        {
          title: `take the grid off ${light.name}, or a wider one`,
          costs: 'light spills where the grid kept it off',
        },
      ]
    : []

/** Where neither zoom nor distance reaches. */
const spread = ({ light }: BeamShort): readonly Advice[] =>
  light.role === 'backdrop'
    ? [
        {
          title: `${light.name} through an umbrella, or a second light from the other side`,
          gives: 'light out to the edges',
          costs: 'an umbrella takes two stops, and spills on the subject',
        },
      ]
    : []
