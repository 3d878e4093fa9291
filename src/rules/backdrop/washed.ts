/** How much of its colour a backdrop keeps in the picture, at the place in frame where it keeps least. */
import type { Light, Surface } from '../../language/plan.js'
import { scaledXyz, type Xyz } from '../../light/colour/chromaticity.js'
import { chromaOf, labOfRgb } from '../../light/colour/lab.js'
import { isColoured } from '../../light/colour/surface-colour.js'
import { chromaKept, clippedRgb, recordedRgb } from '../../picture/recorded-colour.js'
import { recordedLinear, srgbCode, surelyWhite } from '../../picture/tone.js'
import type { BackdropSample } from '../../set/backdrop-view.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { balancedFor } from '../colour/balance.js'
import { onBackdrop } from '../on-surface.js'
import type { RuleContext } from '../rule.js'
import { toneU } from './on-the-backdrop.js'

export interface Washed {
  readonly sample: BackdropSample
  /** Share of the chroma that the coloured light alone gives, unclipped. */
  readonly kept: number
  readonly u: number
  /** Share of the light there that is not of the gelled lights. */
  readonly spill: number
  /** What would be kept with the gelled lights turned by stops, and the others by other stops. */
  keptAt(gelled: number, others: number): number
  /** Some channel clips. */
  readonly clips: boolean
}

/** Backdrop lights that a gel makes of another colour on purpose. */
export const gelledLights = (set: ComputedSet): readonly Light[] =>
  set.lit.filter(({ role, name }) => role === 'backdrop' && set.lightColour(name)?.deep === true)

/** Where a light falls off by more than this, stops, the picture is dark anyway. */
const falling = 1.5
/** What is paler than this to begin with, C*ab, is a tint and no colour. */
export const palest = 12

/** Undefined where the backdrop has no colour to lose, or not all is known. */
export const washed = (context: RuleContext): Washed | undefined => {
  const { set, plan } = context
  const view = set.backdropView
  const white = balancedFor(set)
  if (view === undefined || white === undefined || plan.backdrop === undefined) return undefined
  const places = [
    view.middle,
    view.brightest,
    ...(['left', 'right'] as const).flatMap((side) => edgeOf(set, plan.backdrop!.surface, side) ?? []),
  ].filter(({ overCamera }) => overCamera.stops > view.brightest.overCamera.stops - falling)
  const found = places.flatMap((sample) => at(context, white, sample) ?? [])
  return found.reduce<Washed | undefined>(
    (worst, one) => (worst === undefined || one.kept < worst.kept ? one : worst),
    undefined,
  )
}

/** At an edge of what the camera sees of it. */
const edgeOf = (set: ComputedSet, surface: Surface, side: 'left' | 'right'): BackdropSample | undefined => {
  const point = set.scene.points.get(`backdrop-${side}`)
  const reading = point && set.reading({ at: point.name, of: 'all' })
  if (point === undefined || reading === undefined) return undefined
  const linear = recordedLinear(surface.reflectance, reading.overCamera.stops)
  return { at: point.at, where: side, overCamera: reading.overCamera, linear, srgb: srgbCode(linear) }
}

const at = (context: RuleContext, white: Xyz, sample: BackdropSample): Washed | undefined => {
  const { set, plan } = context
  const { surface } = plan.backdrop!
  const place = onBackdrop(sample.at)
  const all = set.colour(place, 'all', { unshadowed: true })
  const whole = set.unshadowed(place, 'all')
  if (all === undefined || whole === undefined || all.unknown > leastUnknown) return undefined
  const names = gelledLights(set).map(({ name }) => name)
  const isGelled = names.length > 0
  const gelled = isGelled ? set.colour(place, names, { unshadowed: true }) : all
  if (gelled === undefined) return undefined
  const scale = 2 ** sample.overCamera.stops / whole.luxSeconds
  const own = scaledXyz(gelled.xyz, scale)
  const rest = isGelled ? scaledXyz(minus(all.xyz, gelled.xyz), scale) : none
  const most = surelyWhite(plan.camera.headroom)
  const record = (g: number, o: number) => {
    const alone = recordedRgb(
      surface,
      isGelled ? scaledXyz(own, 2 ** g) : scaledXyz(white, (own[1] * 2 ** g) / white[1]),
      white,
    )
    const lit = recordedRgb(surface, plus(scaledXyz(own, 2 ** g), scaledXyz(rest, 2 ** o)), white)
    return { alone, lit }
  }
  const keptAt = (g: number, o: number): number => {
    const { alone, lit } = record(g, o)
    return chromaKept(clippedRgb(lit, most), alone)
  }
  const now = record(0, 0)
  if (chromaOf(labOfRgb(now.alone)) < palest) return undefined
  const kept = chromaKept(clippedRgb(now.lit, most), now.alone)
  const clips = Math.max(...now.lit) > most
  const exposureU = toneU(context, sample.overCamera)
  // All brighter or darker together; and, of the others against the gelled, what readings leave open.
  const together = (keptAt(step, step) - keptAt(-step, -step)) / (2 * step)
  const apart = (keptAt(0, step) - keptAt(0, -step)) / (2 * step)
  return {
    sample,
    kept,
    u: Math.hypot(together * exposureU, isGelled ? apart * spillU : 0),
    spill: 1 - gelled.xyz[1] / all.xyz[1],
    keptAt,
    clips,
  }
}

/** Stops, for slopes. */
const step = 0.25
/** Of stray light against a light that is aimed there, stops. Common practice, no source. */
const spillU = 0.4
/** Light of unknown colour up to this share says nothing. */
export const leastUnknown = 0.05

const none: Xyz = [0, 0, 0]
const minus = (a: Xyz, b: Xyz): Xyz => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const plus = (a: Xyz, b: Xyz): Xyz => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]

/** Whether the backdrop is of a colour, by its surface or by a gel. */
export const hasColour = (set: ComputedSet): boolean =>
  isColoured(set.plan.backdrop?.surface) || gelledLights(set).length > 0
