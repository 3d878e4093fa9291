import type { Plan } from '../../language/plan.js'
import { fNumberFor } from '../../light/exposure.js'
import type { Figure } from '../../light/figure.js'
import { recordedLinear, srgbCode, stopsToSurelyWhite } from '../../picture/tone.js'
import { rayThrough } from '../../scene/camera-view.js'
import { add, scale, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { FNumber, LuxSeconds } from '../../units/quantity.js'
import { turnLight } from '../gear.js'
import { backdropMissing } from '../known.js'
import { stopsToChange } from '../own-lights.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'
import { surfaceText, toneU } from './on-the-backdrop.js'

const sweep = (wanted: string, floor: string, lens = '50 mm'): string => `plan: 1
title: Full length on a white sweep
camera: { lens: ${lens}, at: { distance: 4.5 m, height: 1.1 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, width: 2.72 m, height: 3 m, behind: 2 m, sweep: { front: 1.2 m } }
lights:
  key: { unit: head 600 Ws, modifier: octa 120 cm, meters: f/8, at: { angle: 30 deg left, distance: 2.2 m, height: 2.3 m } }
  paper-left: { role: backdrop, unit: head 600 Ws, modifier: white umbrella 1 m, meters: f/8, at: { left: 1.8 m, before-backdrop: 1.4 m, height: 1.8 m } }
  paper-right: { like: paper-left, mirrored: true }
${floor}wanted: { framing: full length, backdrop: white${wanted}, shadow: any }
`

const floorLight = `  ground: { role: effect, unit: head 600 Ws, modifier: octa 120 cm, meters: { reads: f/14, at: floor }, at: { front: 40 cm, height: 3.4 m }, aim: floor }
  ground-back: { role: effect, unit: head 600 Ws, modifier: octa 120 cm, meters: { reads: f/14, at: floor }, at: { behind: 1.2 m, height: 3.4 m }, aim: floor }
`

interface FloorBelowWhite extends Evidence {
  readonly darkest: FloorPlace
  readonly short: number
  readonly u: number
  readonly reads: FNumber
}

interface FloorPlace {
  readonly at: Vec3
  readonly where: string
  readonly overCamera: Figure
  readonly luxSeconds: LuxSeconds
  readonly byLight: ReadonlyMap<string, LuxSeconds>
  readonly linear: number
}

export const floorBelowWhite = rule<FloorBelowWhite>({
  id: 'floor-below-white',
  family: 'backdrop',
  level: 'warning',
  finds: 'a sweep whose upright part is to be white while its floor in frame records grey',
  limits: {
    margin: {
      value: 0,
      unit: 'stop',
      says: 'over the level that is white for certain, anywhere on the floor in frame',
    },
  },
  why: 'Lights for the paper reach its floor at a slant and mostly from behind. A white background then ends in a grey floor, and one has to be cut out after all.',
  formula:
    'x = log2(H·S / (C·N²)) on the sweep where it lies and the frame sees it, flat and facing up, shadows of people and gear left out; it records ρ·2^x, and is white for certain from 2^headroom',
  sources: [
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
    { kind: 'standard', says: 'sRGB: IEC 61966-2-1; headroom over a 100 % reflector: ISO 12232' },
    {
      kind: 'common practice',
      says: 'the floor of a white sweep wants a light of its own, or is whitened afterwards',
    },
  ],
  basis: 'incident metering, ISO 2720; sRGB, IEC 61966-2-1',
  fires: [
    { title: 'white is wanted to the feet', plan: sweep(', floor: white', '') },
    { title: 'a white backdrop over a grey floor', plan: sweep('', '') },
  ],
  passes: [
    { title: 'lights of its own from above', plan: sweep(', floor: white', floorLight) },
    {
      title: 'the frame ends above the floor',
      plan: sweep('', '', '135 mm').replace('full length', 'waist'),
    },
    { title: 'any floor will do', plan: sweep(', floor: any', '') },
  ],

  needs: (context) => {
    const { backdrop, wanted } = context.plan
    if (backdrop?.sweep === undefined || backdrop.sky !== undefined || wanted.floor === 'any') return 'silent'
    if (wanted.floor !== 'white' && wanted.backdrop?.tone !== 'white') return 'silent'
    return placesSeen(context.set).length === 0 ? 'silent' : backdropMissing(context, 'whole')
  },

  detect: (context) => {
    const { set, plan, limits } = context
    const places = metered(set)
    const [first] = places
    if (first === undefined || plan.backdrop === undefined) return []
    const darkest = places.reduce(
      (least, one) => (one.overCamera.stops < least.overCamera.stops ? one : least),
      first,
    )
    const needs = stopsToSurelyWhite(plan.backdrop.surface.reflectance, plan.camera.headroom) + limits.margin!
    const u = toneU(context, darkest.overCamera)
    const short = needs - darkest.overCamera.stops
    return [
      {
        pointer: plan.wanted.floor === undefined ? '/backdrop/sweep' : '/wanted/floor',
        also:
          plan.wanted.floor === undefined
            ? [{ pointer: '/wanted/backdrop', says: 'white is wanted here' }]
            : [{ pointer: '/backdrop/sweep', says: 'the floor that it is wanted of' }],
        beyond: { stops: short, u },
        level: plan.wanted.floor === 'white' ? 'warning' : 'note',
        measured: {
          'floor-over-camera': {
            value: darkest.overCamera.stops,
            unit: 'stop',
            u,
            limit: needs,
            side: 'at-least',
          },
          darkest: { value: srgbCode(darkest.linear), unit: 'sRGB' },
        },
        cause: 'how the floor of the sweep is lit',
        scale: { value: darkest.overCamera.stops, u, needs, against: 'over the camera' },
        darkest,
        short,
        u,
        reads: fNumberFor(darkest.luxSeconds, plan.camera.iso),
      },
    ]
  },

  tell: ({ darkest, short, reads }, words, { plan }) => ({
    message: `${ground(plan)} records ${words.tone(srgbCode(darkest.linear))} ${darkest.where}, ${short < 0.05 ? 'just' : words.howMany(short)} short of white for certain`,
    why: `camera ${words.f(plan.camera.aperture)}, ${ground(plan)} ${words.f(reads)} there; ${surfaceText(plan.backdrop!.surface)}; shadows of people and gear left out`,
  }),

  mend: (evidence, words, context) =>
    inTurn(
      () => ownLights(evidence, words, context),
      () => anotherLight(evidence, words, context),
      () => [
        {
          title: `a sheet of clear acrylic on ${ground(context.plan)}, or ${ground(context.plan)} whitened afterwards`,
          costs: `it mirrors ${context.plan.subject.kind === 'object' ? 'the object, and the white beyond it' : 'the feet, and the white beyond them'}`,
        },
      ],
    ),

  inShort: ({ short, darkest }, words, { plan }) =>
    `${ground(plan)} is ${words.howMany(Math.max(0.05, short))} short of white ${darkest.where}`,
})

/** What the sweep lies on. */
const ground = ({ subject }: Plan): string =>
  subject.standsOn === undefined ? 'the floor' : subject.kind === 'object' ? 'the table' : 'the platform'

/** Steps across and up the lower frame at which the floor is looked for; a twentieth inside its edges. */
const across = [-0.95, -0.48, 0, 0.48, 0.95]
const up = [-0.95, -0.8, -0.65, -0.5, -0.35, -0.2]
/** The bend of a sweep is neither floor nor wall: metres before the backdrop's foot that are left out. */
const bend = 0.4

interface Seen {
  readonly at: Vec3
  readonly where: string
}

/** Where the frame sees the sweep's floor, whoever stands before it. */
const placesSeen = ({ plan, scene: { camera, backdrop } }: ComputedSet): readonly Seen[] => {
  if (backdrop?.sweepFront === undefined) return []
  const { bottom, left, right, sweepFront, y } = backdrop
  const seen = up.flatMap((v) =>
    across.flatMap((u): Vec3[] => {
      const ray = rayThrough(camera, u, v)
      const reach = (bottom - camera.eye[2]) / ray[2]
      if (!(ray[2] < 0 && reach > 0)) return []
      const at = add(camera.eye, scale(ray, reach))
      return at[1] > sweepFront && at[1] < y - bend && at[0] > left && at[0] < right ? [at] : []
    }),
  )
  return seen.map((at) => ({
    at,
    where: whereOnFloor(at, plan.subject.kind === 'object' ? 'its foot' : 'the feet'),
  }))
}

const whereOnFloor = ([x, y]: Vec3, feet: string): string => {
  const side = Math.abs(x) < 0.4 ? '' : x < 0 ? 'camera-left of ' : 'camera-right of '
  const depth = y < -0.3 ? 'in front of' : y > 0.3 ? 'behind' : ''
  if (depth === '') return side === '' ? `at ${feet}` : `${side}${feet}`
  return side === '' ? `${depth} ${feet}` : `${depth} ${feet}, ${x < 0 ? 'camera-left' : 'camera-right'}`
}

const metered = (set: ComputedSet): readonly FloorPlace[] => {
  const { plan } = set
  return placesSeen(set).flatMap(({ at, where }): FloorPlace[] => {
    const got = set.unshaded({ at, normal: [0, 0, 1], kind: 'flat', onSurface: true }, 'all')
    const over = set.reading({ at, of: 'all', dome: 'flat', faces: { direction: [0, 0, 1] } })
    if (got === undefined || over === undefined) return []
    const lift = Math.log2(got.luxSeconds / over.luxSeconds)
    const stops = (over.overCamera.stops + lift) as Figure['stops']
    return [
      {
        at,
        where,
        overCamera: { ...got.figure, stops, rendering: 1 },
        luxSeconds: got.luxSeconds,
        byLight: got.byLight,
        linear: recordedLinear(plan.backdrop?.surface.reflectance ?? 0, stops),
      },
    ]
  })
}

/** Lights that are there for the floor, turned up. */
const ownLights = (
  { darkest, short, u }: FloorBelowWhite,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const names = set.lit.filter(({ name }) => isForFloor(set, name)).map(({ name }) => name)
  const by = stopsToChange(darkest.byLight, names, short + inside(u))
  if (by === undefined || by > 4) return []
  const turned = names.flatMap((light) => turnLight(plan, light, by) ?? [])
  if (turned.length === 0) return []
  return [
    {
      title: turned.map((one) => one.title).join(', '),
      gives: `${ground(plan)} ${words.howMany(by)} brighter from them`,
      after: set.with(...turned.map((one) => one.change)),
      ...(turned.some((one) => one.short > 0)
        ? { costs: 'the end of the range', partial: true as const }
        : {}),
    },
  ]
}

const isForFloor = ({ scene, plan }: ComputedSet, name: string): boolean => {
  const found = scene.lights.get(name)
  const light = plan.lights.get(name)
  return light?.role === 'effect' && found !== undefined && found.axis[2] < -0.5
}

const anotherLight = (
  { darkest, short, u }: FloorBelowWhite,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const wanted = darkest.luxSeconds * (2 ** (short + inside(u)) - 1)
  const own = set.lit.find(({ role }) => role === 'backdrop')
  return [
    {
      title: `a light of its own for ${ground(plan)}, high and large, that meters ${words.f(fNumberFor(wanted as LuxSeconds, plan.camera.iso))} ${darkest.where}, dome flat and facing up`,
      gives: 'white for certain there',
      costs:
        own === undefined
          ? 'one more light on a boom; keep it off the lens'
          : `one more light, and less wanted of ${own.name}`,
    },
  ]
}
