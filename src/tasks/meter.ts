/** The meter card: what a meter will read at each point, of each light that matters there and of all together. */
import { caveatsOn } from '../checker/remarks.js'
import type { Light, Plan, Surface } from '../language/plan.js'
import { colourApart, type Mix } from '../light/colour/mix.js'
import type { White } from '../light/colour/white.js'
import { difference } from '../light/figure.js'
import { lightness, recordedLinear, srgbCode, stopsToSurelyWhite } from '../picture/tone.js'
import type { Vec3 } from '../scene/vector.js'
import type { ComputedSet, MeterAsk, MeterFigure } from '../set/computed-set.js'
import { rolePoint } from '../set/role-point.js'
import { type ShadowSide, shadowSide } from '../set/shadow-side.js'
import type { FNumber, Iso, LuxSeconds, Seconds } from '../units/quantity.js'
import { type MeterStep, meterOrder } from './meter-order.js'
import { type CardReading, meterReadings } from './meter-readings.js'

export interface MeterCard {
  readonly file: string
  readonly title: string
  readonly camera: {
    readonly fNumber: FNumber
    readonly seconds: Seconds
    /** The time as marked: 1/125 for 2^-7 s. */
    readonly marked: Seconds
    readonly iso: Iso
  }
  readonly key: CardEntry | undefined
  /** The lights that the key reading counts, by name. */
  readonly keyLights: readonly string[]
  readonly entries: readonly CardEntry[]
  /** Undefined where nothing but the key lights the face. */
  readonly shadow: CardShadow | undefined
  /** Panels that throw light back or let it through, in the plan's order. */
  readonly panels: readonly { readonly name: string; readonly scrim: boolean }[]
  /** What counts as the room among the ways that light came: walls, floor and ceiling, the table, or nothing. */
  readonly surroundings: 'room' | 'table' | 'room, table' | undefined
  readonly tones: readonly CardTone[]
  /** What to meter one after the other. */
  readonly order: readonly MeterStep[]
  /** What a meter did read. */
  readonly readings: readonly CardReading[]
  /** What makes the figures wrong in one direction. */
  readonly caveats: readonly string[]
  /** Lights that are on and whose strength nothing in the plan tells. */
  readonly unknown: readonly string[]
}

export interface CardEntry {
  readonly figure: MeterFigure
  /** Stops over the camera's setting and over the key reading. */
  readonly overCamera: number
  /** `u`: one standard deviation of the difference, in which what both have in common cancels. */
  readonly overKey: { readonly stops: number; readonly u: number } | undefined
  /** Standard uncertainty of the reading, in stops. */
  readonly u: number
  /** Less than a meter shows, or nothing beside the other light there. */
  readonly hardlyAny: boolean
  /** As a colour meter would show it; only where the plan tells of lights of unlike colour. */
  readonly colour?: White
}

/** The side of the face that the key leaves in shadow. */
export interface CardShadow {
  readonly entry: CardEntry
  /** What the dome is turned to. */
  readonly toward: ShadowSide['toward']
  /** The key lights, which a hand keeps off the dome. */
  readonly shaded: readonly string[]
  /** Exposure of the lit side over that of the shadow side. */
  readonly ratio: number
}

export interface CardTone {
  readonly point: string
  readonly surface: string
  readonly reflectance: number
  /** 0 to 255. */
  readonly srgb: number
  /** CIE L*. */
  readonly lightness: number
  /** Over a surface that records linear 0.18, and over white for certain. */
  readonly stopsFromMid: number
  readonly stopsFromWhite: number
}

/** A place in metres in the frame of reference, asked for by hand. */
export interface AskedPlace {
  readonly at: Vec3
  /** A direction; undefined: the camera. */
  readonly facing: Vec3 | undefined
  readonly dome: 'raised' | 'flat'
}

/** A light is listed at a point where it gives at least this share of the exposure: five stops under the rest. */
const share = 1 / 32

export const meterCard = (set: ComputedSet, asked: readonly AskedPlace[]): MeterCard => {
  const { plan } = set
  const isColoured = coloursDiffer(set)
  const entry = (ask: MeterAsk, allThere?: LuxSeconds): CardEntry[] => {
    const figure = set.reading(ask)
    if (figure === undefined) return []
    const colour = isColoured ? whiteOf(set.colour(ask, ask.of)) : undefined
    return [{ ...entryOf(figure, set, allThere), ...(colour === undefined ? {} : { colour }) }]
  }
  const atPoint = (at: MeterAsk['at'], how: Omit<MeterAsk, 'at' | 'of'>, metered: readonly string[]) => {
    const all = entry({ at, of: 'all', ...how })
    const total = all[0]?.figure
    const matters = (light: string): boolean =>
      metered.includes(light) ||
      (total !== undefined && (total.byLight.get(light) ?? 0) >= share * total.luxSeconds)
    const lights = [...set.lit.map(({ name }) => name), ...(plan.ambient === undefined ? [] : ['ambient'])]
    return [
      ...lights.filter(matters).flatMap((light) => entry({ at, of: [light], ...how }, total?.luxSeconds)),
      ...all,
    ]
  }
  return {
    file: plan.file,
    title: plan.title,
    camera: {
      fNumber: plan.camera.aperture,
      seconds: plan.camera.shutter,
      marked: plan.camera.shutterMarked,
      iso: plan.camera.iso,
    },
    key: set.key === undefined ? undefined : entryOf(set.key, set),
    keyLights: set.keyLights.map(({ name }) => name),
    entries: [
      ...pointsOf(set).flatMap((point) =>
        atPoint(
          point,
          {},
          set.lit.filter((light) => meteredAt(light) === point).map(({ name }) => name),
        ),
      ),
      ...asked.flatMap(({ at, facing, dome }) =>
        atPoint(
          at,
          { dome, faces: facing === undefined ? 'camera' : { direction: facing } },
          set.lit.map(({ name }) => name),
        ),
      ),
    ],
    shadow: shadowOf(set),
    panels: [...plan.panels.values()]
      .filter(
        ({ kind, surface, outside }) =>
          kind === 'scrim' || kind === 'reflector' || isLight(surface) || isLight(outside),
      )
      .map(({ name, kind }) => ({ name, scrim: kind === 'scrim' })),
    surroundings: surroundingsOf(plan),
    tones: tonesOf(set),
    order: meterOrder(set),
    readings: meterReadings(set),
    caveats: caveatsOn(plan),
    unknown: set.unknown.map(({ name }) => name),
  }
}

/** Mired from which on two lights are worth telling apart. */
const unlike = 5

/** Somebody has told that lights differ in colour. */
const coloursDiffer = (set: ComputedSet): boolean => {
  const colours = set.giving.flatMap((name) => set.lightColour(name) ?? [])
  return colours.some((one, at) =>
    colours
      .slice(at + 1)
      .some((other) => (one.told || other.told) && colourApart(one, other).mired >= unlike),
  )
}

/** More of the light than this of a colour that nothing tells leaves the whole untold. */
const mostUnknown = 0.05

const whiteOf = (mix: Mix | undefined): White | undefined =>
  mix === undefined || mix.unknown > mostUnknown ? undefined : { kelvin: mix.kelvin, duv: mix.duv }

const surroundingsOf = ({ room, subject }: Plan): MeterCard['surroundings'] => {
  const [walls, table] = [room !== undefined, subject.standsOn !== undefined]
  return walls ? (table ? 'room, table' : 'room') : table ? 'table' : undefined
}

/** Black cloth and boards give nothing that a meter would show. */
const isLight = ({ reflectance }: Surface): boolean => reflectance > 0.1

const shadowOf = (set: ComputedSet): CardShadow | undefined => {
  const sides = shadowSide(set)
  if (sides === undefined) return undefined
  const { shadow, lit, toward, shaded } = sides
  return {
    entry: entryOf(shadow, set, lit.luxSeconds),
    toward,
    shaded,
    ratio: lit.luxSeconds / shadow.luxSeconds,
  }
}

const entryOf = (
  figure: MeterFigure,
  set: ComputedSet,
  allThere: LuxSeconds = figure.luxSeconds,
): CardEntry => {
  const overKey = set.key && difference(figure.figure, set.key.figure)
  return {
    figure,
    overCamera: figure.overCamera.stops,
    overKey: overKey && { stops: overKey.stops, u: set.u(overKey) },
    u: set.u(figure.figure),
    hardlyAny: figure.fNumber < leastFNumber || figure.luxSeconds * 2 ** stopsOfNothing < allThere,
  }
}

/** Meters show no wider aperture; common practice, no source. */
const leastFNumber = 0.5
/** So far under all light at its place, a light is nothing. */
const stopsOfNothing = 10

const meteredAt = (light: Light): string => light.meters?.at ?? rolePoint(light)

/** Points that somebody will hold a meter to: where a light does its job, what the plan names, and the backdrop. */
const pointsOf = ({ plan, scene, lit }: ComputedSet): readonly string[] => {
  const wanted = new Set([
    'subject',
    ...lit.map(meteredAt),
    ...plan.points.keys(),
    ...plan.readings.map(({ at }) => at),
  ])
  return [...scene.points.keys()].filter(
    (point) => wanted.has(point) || point.startsWith('row-') || point.startsWith('backdrop'),
  )
}

/** What the camera records of the backdrop, at its points. */
const tonesOf = (set: ComputedSet): readonly CardTone[] => {
  const { backdrop, camera } = set.plan
  if (backdrop === undefined || backdrop.sky !== undefined) return []
  const { name, reflectance } = backdrop.surface
  return [...set.scene.points.values()]
    .filter((point) => point.on === 'backdrop')
    .flatMap(({ name: point }): CardTone[] => {
      const over = set.reading({ at: point, of: 'all' })?.overCamera.stops
      if (over === undefined) return []
      const linear = recordedLinear(reflectance, over)
      return [
        {
          point,
          surface: name,
          reflectance,
          srgb: srgbCode(linear),
          lightness: lightness(Math.min(1, linear)),
          stopsFromMid: Math.log2(linear / 0.18),
          stopsFromWhite: over - stopsToSurelyWhite(reflectance, camera.headroom),
        },
      ]
    })
}
