import type { Light } from '../../language/plan.js'
import { difference, type Figure } from '../../light/figure.js'
import { uncertainties } from '../../light/how-sure.js'
import type { Receptor } from '../../light/receptor.js'
import { inFrame } from '../../scene/camera-view.js'
import { lazy, lazyOf } from '../../scene/lazy.js'
import type { ScenePoint } from '../../scene/scene.js'
import { dot, scale, subtract, unit } from '../../scene/vector.js'
import type { ComputedSet, Exposed } from '../../set/computed-set.js'
import { turnLight } from '../gear.js'
import { lightMissing, unknownLight } from '../known.js'
import { settingPointer } from '../place-pointer.js'
import { pointText } from '../place-words.js'
import { type Advice, type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { meteredAt } from './full-power.js'

/** A key of f/8 from the front and a light from behind, whose point it reaches from the other side. */
const rimmed = (meters: string, role = 'rim', angle = '150 deg right'): string => `plan: 1
title: A light beside a strong key
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 600 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 30 deg left, distance: 1.3 m, height: 2 m } }
  second: { role: ${role}, unit: head 200 Ws, modifier: strip 30 x 120 cm, meters: ${meters}, at: { angle: ${angle}, distance: 1.6 m, height: 2 m } }
wanted: { framing: head and shoulders }
`

interface WithoutEffect extends Evidence {
  readonly light: Light
  /** Stops that it adds where it adds most. */
  readonly adds: number
  readonly where: string
}

export const lightWithoutEffect = rule<WithoutEffect>({
  id: 'light-without-effect',
  family: 'power',
  level: 'note',
  finds: 'a light that nobody will see in the picture',
  limits: {
    adds: {
      value: 1 / 10,
      unit: 'stop',
      says: 'that the light adds where it adds most: at its own point, on the subject or in frame; note under this',
    },
  },
  why: 'A light that adds less than a tenth of a stop anywhere is a stand, a battery and a trigger for nothing; or it is aimed past its place, or set far too low.',
  formula:
    'log2(H of all lights / H of all but this one), the largest over its point, the subject and the backdrop in frame',
  sources: [
    { kind: 'derived', says: 'lights add in lux-seconds' },
    { kind: 'common practice', says: 'a tenth of a stop is what a meter shows and nobody sees' },
  ],
  basis: 'light adds in exposure; a tenth of a stop is common practice',
  fires: [
    { title: 'a fill seven stops under the key', plan: rimmed('f/0.7', 'fill', '30 deg right') },
    {
      title: 'a fill four stops under the key, from its side',
      plan: rimmed('f/2', 'fill', '30 deg left'),
    },
  ],
  passes: [
    { title: 'a rim three stops under the key', plan: rimmed('f/2.8') },
    {
      title: 'a fill a little stronger',
      plan: rimmed('f/2.2', 'fill', '30 deg left'),
    },
  ],

  needs: ({ set }) => {
    if (set.lit.length >= 2) return undefined
    return set.unknown.length === 0 ? 'silent' : unknownLight(set.unknown[0]!, set)
  },

  detect: ({ set, limits, u }) =>
    set.lit.length < 2
      ? []
      : set.lit.flatMap((light) => {
          const most = mostAdded(set, light, limits.adds!)
          if (most === undefined) return []
          const adds = most.figure.stops
          const sure = u(most.figure)
          return [
            {
              pointer: settingPointer(light),
              beyond: { stops: limits.adds! - adds, u: sure },
              measured: {
                adds: {
                  value: adds,
                  unit: 'stop' as const,
                  u: sure,
                  limit: limits.adds!,
                  side: 'at-least' as const,
                },
              },
              cause: `the power of ${light.name}`,
              light,
              adds,
              where: most.where,
            },
          ]
        }),

  tell: ({ light, adds, where }, words, { set }) => ({
    message: `nothing in the picture shows ${light.name}: it adds ${adds < 0.005 ? 'nothing' : `${adds.toFixed(2)} stop`} where it adds most, at ${where}`,
    why: `it drowns in the light of ${words.list(set.lit.filter((one) => one !== light).map((one) => one.name))}`,
  }),

  mend: (found, words, context) => [...stronger(found, words, context), ...other(found)],
})

interface Added {
  readonly figure: Figure
  readonly where: string
}

/** A place in the picture, and what is metered there. */
interface Watched {
  /** A point's name, or where on the backdrop. */
  readonly point: string | undefined
  readonly onBackdrop: string | undefined
  readonly receptor: Receptor
  /** What comes there straight, of all lights. */
  readonly straight: () => Exposed | undefined
}

/** So far over the limit that no other place need be asked. */
const plainly = 0.2

/** Of a plan with many points, so many places are looked at; at so many of them also what surfaces throw there. */
const mostPlaces = 40
const manyLights = 12
const closely = 3

/** Asked again for every reading that might be taken: what lights add, by set. */
const known = lazyOf((_: ComputedSet) => new Map<Light, Added | undefined>())

/** Undefined where what the light adds cannot be known. */
const mostAdded = (set: ComputedSet, light: Light, limit: number): Added | undefined => {
  const before = known(set)
  if (!before.has(light)) before.set(light, findMost(set, light, limit))
  return before.get(light)
}

const findMost = (set: ComputedSet, light: Light, limit: number): Added | undefined => {
  if (lightMissing(set, light) !== undefined) return undefined
  const atHome = addedAtHome(set, light)
  if (atHome !== undefined && atHome.figure.stops > limit + plainly + 2 * set.u(atHome.figure)) return atHome
  let most: Added | undefined
  for (const place of promising(set, light)) {
    const all = set.exposure(place.receptor, 'all')
    if (all === undefined) continue
    const rest = set.exposure(
      place.receptor,
      [...all.byLight.keys()].filter((name) => name !== light.name),
    )
    // Where no other light comes, this one makes all the difference.
    if (rest === undefined) return undefined
    const figure = difference(all.figure, rest.figure)
    if (most === undefined || figure.stops > most.figure.stops)
      most = { figure: atOnePlace(figure), where: whereIs(set, place) }
    if (most.figure.stops > limit + plainly) return most
  }
  return most
}

/** What it adds where it is metered: where that is plain and sure no other place need be asked. */
const addedAtHome = (set: ComputedSet, light: Light): Added | undefined => {
  const at = meteredAt(light)
  const own = set.reading({ at, of: [light.name] })
  if (own === undefined) return undefined
  const as = { at, dome: own.dome, faces: own.faces === 'out' ? 'out' : { light: light.name } } as const
  const rest = set.reading({ ...as, of: set.giving.filter((name) => name !== light.name) })
  const all = set.reading({ ...as, of: 'all' })
  return (
    rest && all && { figure: atOnePlace(difference(all.figure, rest.figure)), where: pointText(set.plan, at) }
  )
}

/** Where it adds most of what comes straight, most first: that is cheap to know, what surfaces throw there is dear. */
const promising = (set: ComputedSet, light: Light): readonly Watched[] =>
  placesFor(set, light)
    .map((place) => {
      const straight = place.straight()
      const own = straight?.byLight.get(light.name) ?? 0
      return { place, adds: own === 0 ? 0 : own / ((straight?.luxSeconds ?? 0) - own) }
    })
    .sort((a, b) => (a.adds === b.adds ? 0 : b.adds - a.adds))
    .slice(0, closely)
    .map(({ place }) => place)

/** Each light's geometry is the same in both exposures: it counts by what the difference owes to that light. */
const atOnePlace = (figure: Figure): Figure => {
  let variance = 0
  for (const share of figure.gradient.values()) variance += (share * uncertainties.geometry) ** 2 / 2
  return { ...figure, variance }
}

const whereIs = ({ plan }: ComputedSet, { point, onBackdrop }: Watched): string =>
  point === undefined ? `the ${onBackdrop} of the backdrop` : pointText(plan, point)

const watched = (
  set: ComputedSet,
  receptor: Receptor,
  point: string | undefined,
  onBackdrop?: string,
): Watched => ({
  point,
  onBackdrop,
  receptor,
  straight: lazy(() => set.exposure(receptor, 'all', ['direct'])),
})

/** Its own point, then all that the picture shows of the subject and the backdrop, facing the light and the camera. */
const placesFor = (set: ComputedSet, light: Light): readonly Watched[] => {
  const { points, lights } = set.scene
  const { front, axis } = lights.get(light.name)!
  const shared = sharedPlaces(set)
  const own = meteredAt(light)
  const names = [own, ...seenPoints(set).filter((name) => name !== own)]
  const places: Watched[] = []
  for (const name of names) {
    const point = points.get(name)
    if (point === undefined) continue
    // Facing the camera, all lights are asked at the same places.
    if (!liesOnSurface(point) && (lights.size <= manyLights || name === own)) {
      const normal = front === undefined ? scale(axis, -1) : unit(subtract(front.centre, point.at))
      places.push(watched(set, { at: point.at, normal, kind: 'dome' }, name))
    }
    places.push(shared.points(name))
    if (places.length >= mostPlaces) break
  }
  return [...places, ...shared.samples()].slice(0, mostPlaces)
}

const liesOnSurface = ({ on }: ScenePoint): boolean => on === 'backdrop' || on === 'floor' || on === 'table'

/** Points in frame, and not on the side that is turned away from the camera. */
const seenPoints = lazyOf(({ scene: { camera, points } }: ComputedSet): readonly string[] =>
  [...points.values()]
    .filter(
      ({ at, normal }) =>
        inFrame(camera, at) && (normal === undefined || dot(normal, subtract(camera.eye, at)) > 0),
    )
    .map(({ name }) => name),
)

/** Where every light is asked alike. */
const sharedPlaces = lazyOf((set: ComputedSet) => {
  const { points, camera } = set.scene
  const atPoints = new Map<string, Watched>()
  const atPoint = (name: string): Watched => {
    let place = atPoints.get(name)
    if (place === undefined) {
      const point = points.get(name)!
      const { at } = point
      const receptor: Receptor = liesOnSurface(point)
        ? { at, normal: point.normal!, kind: 'flat', onSurface: true }
        : { at, normal: unit(subtract(camera.eye, at)), kind: 'dome' }
      place = watched(set, receptor, name)
      atPoints.set(name, place)
    }
    return place
  }
  const samples = lazy(() =>
    (set.backdropView?.samples ?? []).map(({ at, where }) =>
      watched(set, { at, normal: [0, -1, 0], kind: 'flat', onSurface: true }, undefined, where),
    ),
  )
  return { points: atPoint, samples }
})

/** What a light adds that somebody will see. */
const seen = 1 / 3

/** Its own light against the rest goes up until it adds a third: log2((2^⅓ − 1)/(2^adds − 1)). */
const stronger = (
  { light, adds, where }: WithoutEffect,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const stops = Math.log2((2 ** seen - 1) / (2 ** adds - 1))
  const turned = Number.isFinite(stops) ? turnLight(plan, light.name, stops) : undefined
  return turned === undefined || turned.short > 0
    ? []
    : [
        {
          title: turned.title,
          gives: `${words.howMany(seen)} more light at ${where}`,
          after: set.with(turned.change),
        },
      ]
}

const other = ({ light }: WithoutEffect): readonly Advice[] => [
  { title: `look at where ${light.name} is aimed and what it is set to, or leave it at home` },
]
