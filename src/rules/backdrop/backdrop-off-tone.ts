import { linearOfCode, stopsToRecord } from '../../picture/tone.js'
import { backdropMissing, firstMissing, keyMissing } from '../known.js'
import { settingPointer } from '../place-pointer.js'
import { type Evidence, type Mend, type RuleContext, rule, type Said } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'
import { type OffColour, offColour } from './off-colour.js'
import { backdropLights, causeOnBackdrop, overKey, surfaceText, toneU } from './on-the-backdrop.js'
import { toLevel } from './to-level.js'

const greyPaper = (meters: string, wanted: string): string => `plan: 1
title: Grey paper with its own light
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: { reflectance: 0.2 }, behind: 3 m }
lights:
  key: { unit: head 200 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 35 deg left, distance: 1.2 m, height: 2 m } }
  paper: { role: backdrop, unit: head 400 Ws, modifier: white umbrella 1 m, meters: ${meters}, at: { left: 40 cm, before-backdrop: 2.4 m, height: 1.6 m } }
wanted: { ${wanted}, framing: head and shoulders }
`

const gelled = (gel: string, wanted: string): string =>
  greyPaper('f/2.8', `backdrop: { colour: ${wanted} }`).replace(
    'meters: f/2.8,',
    `gel: { colour: ${gel}, loss: 3 stops }, meters: f/2.8,`,
  )

interface OffTone extends Evidence {
  readonly colour?: never
  readonly srgb: number
  /** Stops by which the middle must change to come to the nearer end of what is wanted; positive is brighter. */
  readonly change: number
  readonly u: number
  /** Half of what is wanted from end to end, stops. */
  readonly half: number
  readonly wanted: string
  readonly overKey: number | undefined
}

interface OffHue extends Evidence {
  readonly colour: OffColour
}

export const backdropOffTone = rule<OffTone | OffHue>({
  id: 'backdrop-off-tone',
  family: 'backdrop',
  level: 'warning',
  finds: 'a backdrop that records lighter or darker than the tone that is wanted, or of another colour',
  limits: {
    tolerance: { value: 1 / 3, unit: 'stop', says: 'outside what is wanted' },
    hue: { value: 45, unit: 'deg', says: 'of hue between the colour that is wanted and the recorded one' },
  },
  why: 'The tone of a backdrop is its reflectance times the light on it against the camera: grey paper comes out white or near black by the distance of the lights alone.',
  formula:
    'x = log2(H·S / (C·N²)) at the middle of the backdrop in frame; it records ρ·2^x, through the sRGB curve; of a colour the hue, in a*b*',
  sources: [
    { kind: 'standard', says: 'sRGB: IEC 61966-2-1; incident metering: ISO 2720; a*b*: CIE 15' },
    {
      kind: 'memory',
      says: 'what a colour of a name looks like; twice its hue’s uncertainty apart is another colour',
    },
    { kind: 'derived', says: 'grey of 0.18 level with the key records sRGB 118; two stops under it 60' },
  ],
  basis: 'incident metering, ISO 2720; sRGB, IEC 61966-2-1',
  fires: [
    { title: 'grey paper as hot as white', plan: greyPaper('f/11', 'backdrop: grey') },
    {
      title: 'a light grey is wanted, a mid grey comes',
      plan: greyPaper('f/5.6', 'backdrop: { tone: 180 }'),
    },
    {
      title: 'under what the plan wants over the key',
      plan: greyPaper('f/4', 'backdrop: any, backdrop-over-key: 0..1/2 stop'),
    },
    { title: 'blue is wanted, and nothing is blue', plan: greyPaper('f/4', 'backdrop: { colour: blue }') },
    {
      title: 'blue is wanted, and the gel is red',
      plan: gelled('red', 'blue'),
    },
  ],
  passes: [
    { title: 'mid grey', plan: greyPaper('f/4.5', 'backdrop: grey') },
    { title: 'just inside a third of the end', plan: greyPaper('f/7.1', 'backdrop: grey') },
    { title: 'blue is wanted, and the gel is blue', plan: gelled('blue', 'blue') },
  ],

  needs: (context) => {
    const { backdrop, backdropOverKey } = context.plan.wanted
    if (backdrop?.tone === 'range' || backdrop?.tone === 'colour') return backdropMissing(context, 'whole')
    return backdropOverKey === undefined
      ? 'silent'
      : firstMissing(
          () => backdropMissing(context, 'whole'),
          () => keyMissing(context),
        )
  },

  detect: (context) => [...ofTone(context), ...ofColour(context)],

  tell: (found, words, context) =>
    found.colour === undefined ? tellTone(found, words, context) : tellColour(found.colour, context),

  mend: (found, words, context) =>
    found.colour === undefined ? mendTone(found, words, context) : mendColour(found.colour, context),
})

const ofTone = (context: RuleContext): readonly OffTone[] => {
  const tone = offTone(context)
  if (tone === undefined) return []
  const { set, plan, limits } = context
  const view = set.backdropView!
  const own = backdropLights(set)[0]
  const { value, low, high, u } = tone
  const change = value < low ? low - value : value > high ? high - value : 0
  const off = change === 0 ? -Math.min(value - low, high - value) : Math.abs(change)
  return [
    {
      pointer: own === undefined ? '/backdrop/behind' : settingPointer(own),
      also: [{ pointer: tone.pointer, says: 'this is wanted' }],
      beyond: { stops: off - limits.tolerance!, u },
      measured: {
        middle: { value: view.middle.srgb, unit: 'sRGB' },
        [tone.name]: {
          value,
          unit: 'stop',
          u,
          limit: change > 0 ? low : high,
          side: change > 0 ? 'at-least' : 'at-most',
        },
      },
      cause: causeOnBackdrop(set, view.middle),
      scale: { value, u, needs: change > 0 ? low : high, against: tone.against },
      srgb: view.middle.srgb,
      change,
      u,
      half: (high - low) / 2,
      wanted: tone.wanted,
      overKey: plan.wanted.backdrop?.tone === 'range' ? undefined : value,
    },
  ]
}

const tellTone = (
  { srgb, change, wanted, overKey: over }: OffTone,
  words: Words,
  { plan, set }: RuleContext,
): Said => ({
  message:
    over === undefined
      ? `the backdrop records ${words.tone(srgb)} at its middle, ${words.against(-change, `the ${wanted} that is wanted`)}`
      : `the backdrop records ${words.tone(srgb)} at its middle: it is ${words.against(over, 'the key')}, ${words.howMany(change)} too ${change > 0 ? 'little' : 'much'} for what is wanted`,
  why: [
    surfaceText(plan.backdrop!.surface),
    `its middle ${words.against(set.backdropView!.middle.overCamera.stops, 'the camera')}`,
  ].join('; '),
})

const mendTone = ({ change, u, half }: OffTone, words: Words, context: RuleContext): Iterable<Mend> => {
  // A narrow wish has no inside to aim for but its middle.
  const inner = Math.min(inside(u), half)
  return toLevel(
    context,
    words,
    (set) => set.backdropView?.middle,
    change + (change > 0 ? inner : -inner),
    half < 1 / 3 ? 'nearest' : 'at least',
  )
}

/** By how many degrees a colour's name, and what a gel makes of a light, leave its hue open. */
const hueU = 15

const ofColour = ({ set, limits }: RuleContext): readonly OffHue[] => {
  const colour = offColour(set)
  if (colour === undefined) return []
  const { recorded } = colour
  return [
    {
      pointer: '/wanted/backdrop',
      also: [{ pointer: '/backdrop/surface', says: 'the backdrop' }],
      beyond: recorded === undefined ? 'certain' : { stops: recorded.apart - limits.hue!, u: hueU },
      measured:
        recorded === undefined
          ? {}
          : { hue: { value: recorded.apart, unit: 'deg', u: hueU, limit: limits.hue!, side: 'at-most' } },
      colour,
    },
  ]
}

const tellColour = ({ wanted, recorded }: OffColour, { plan }: RuleContext): Said => ({
  message:
    recorded === undefined
      ? `the backdrop records grey, and ${wanted} is wanted: neither its surface nor a gel gives it a colour`
      : `the backdrop records ${recorded.name}, and ${wanted} is wanted: ${Math.round(recorded.apart)} degrees of hue apart`,
  why: surfaceText(plan.backdrop!.surface),
})

const mendColour = ({ wanted }: OffColour, { set }: RuleContext): readonly Mend[] => {
  const [own] = backdropLights(set)
  return [
    own === undefined
      ? { title: `a light of its own for the backdrop, with a gel of ${wanted}` }
      : { title: `a gel of ${wanted} on ${own.name}`, costs: 'two to three stops of its light' },
    { title: `a backdrop of ${wanted}`, gives: 'the colour by any light', costs: 'one more roll' },
  ]
}

interface Wanted {
  readonly name: string
  readonly value: number
  readonly low: number
  readonly high: number
  readonly u: number
  readonly wanted: string
  readonly pointer: string
  readonly against: string
}

/** A range of tones in stops over the camera, or a range over the key. A white backdrop's upper end has its own rule. */
const offTone = (context: RuleContext): Wanted | undefined => {
  const { set, plan } = context
  const view = set.backdropView
  const { backdrop, backdropOverKey } = plan.wanted
  if (view === undefined || plan.backdrop === undefined) return undefined
  if (backdrop?.tone === 'range') {
    // What records as 0 is all that rounds to it.
    const at = (code: number) =>
      stopsToRecord(plan.backdrop!.surface.reflectance, linearOfCode(Math.max(code, 0.5)))
    return {
      name: 'middle-over-camera',
      value: view.middle.overCamera.stops,
      low: backdrop.from <= 0 ? Number.NEGATIVE_INFINITY : at(backdrop.from),
      high: backdrop.to >= 255 ? Number.POSITIVE_INFINITY : at(backdrop.to),
      u: toneU(context, view.middle.overCamera),
      wanted:
        backdrop.from === backdrop.to
          ? `tone of sRGB ${backdrop.from}`
          : `${backdrop.name} (sRGB ${backdrop.from} to ${backdrop.to})`,
      pointer: '/wanted/backdrop',
      against: 'over the camera',
    }
  }
  const over = overKey(context, view.middle)
  if (over === undefined || backdropOverKey === undefined) return undefined
  return {
    name: 'middle-over-key',
    value: over.stops,
    low: backdropOverKey.from,
    high:
      backdrop?.tone === 'white' || backdrop === undefined ? Number.POSITIVE_INFINITY : backdropOverKey.to,
    u: over.u,
    wanted: 'level over the key',
    pointer: '/wanted/backdrop-over-key',
    against: 'over the key',
  }
}
