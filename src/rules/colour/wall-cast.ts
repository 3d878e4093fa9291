import type { Surface } from '../../language/plan.js'
import type { Apart, Mix } from '../../light/colour/mix.js'
import type { Rgb } from '../../light/colour/rgb.js'
import { isColoured, surfaceShares } from '../../light/colour/surface-colour.js'
import { solidAngleOf } from '../../light/outline.js'
import { lazyOf } from '../../scene/lazy.js'
import type { SceneSurface } from '../../scene/scene.js'
import type { ComputedSet, MeterAsk } from '../../set/computed-set.js'
import { shadowSide, shadowWay } from '../../set/shadow-side.js'
import { modellingName } from '../../set/transport.js'
import { surfaceText } from '../backdrop/on-the-backdrop.js'
import { faceOf } from '../key-lights.js'
import { keyMissing } from '../known.js'
import { whom } from '../place-words.js'
import { type Evidence, rule } from '../rule.js'
import { reached } from '../tiers.js'
import { facing, keyAsk } from './balance.js'
import { apartText, castText, colourWord, miredText } from './casts.js'

const room = (walls: string, width = '3 m', more = ''): string => `plan: 1
title: A portrait in a room
room: { width: ${width}, length: 5 m, height: 2.5 m, walls: ${walls}, ceiling: 0.5, floor: 0.3 }
camera: { lens: 85 mm, at: { distance: 2.3 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: white umbrella 1 m, meters: f/5.6, at: { angle: 45 deg left, distance: 1.2 m, height: 2 m } }
${more}wanted: { framing: head and shoulders }
`

const offCeiling = (surface: string): string =>
  room('white paint')
    .replace('ceiling: 0.5', `ceiling: ${surface}`)
    .replace(/unit: .*? at:/, 'unit: flashgun, power: full, aim: ceiling above subject, at:')

interface WallCast extends Evidence {
  readonly apart: Apart
  readonly side: 'lit' | 'dark'
  readonly surface: SceneSurface
  /** Of the light there, what was thrown there last by surfaces. */
  readonly share: number
  /** `the walls are`. */
  readonly placeText: string
}

export const wallCast = rule<WallCast>({
  id: 'wall-cast',
  family: 'colour',
  level: 'warning',
  finds: 'walls, ceiling, floor or table whose colour comes back on the face',
  limits: {
    note: { value: 10, unit: 'mired', says: 'between the face with and without their colour' },
    warning: { value: 20, unit: 'mired', says: 'between the face with and without their colour' },
    side: { value: 2, unit: 'stop', says: 'under the lit side: darker sides are not judged' },
  },
  why: 'Light that a painted wall throws back has the wall’s colour. In a small room it is a third of what the face gets and most of what its shadow side gets: the face goes yellow or green on the side of the wall, and no white balance mends both sides.',
  formula:
    'tristimulus values of all light at the face, that of the place with it, light followed from surface to surface in three channels of linear sRGB, against the same with all surfaces grey; their distance in the 1960 diagram as mireds',
  sources: [
    { kind: 'standard', says: 'tristimulus values and the 1960 diagram: CIE 15; linear sRGB: IEC 61966-2-1' },
    { kind: 'derived', says: 'diffuse radiosity, channel by channel' },
    { kind: 'memory', says: 'colours of paints and woods' },
  ],
  basis: 'radiosity in linear sRGB; the limits are common practice',
  fires: [
    { title: 'flash bounced off a wooden ceiling', plan: offCeiling('wooden wall') },
    {
      title: 'flash bounced off a green wall, over a wooden floor',
      plan: room('{ left: { reflectance: 0.4, colour: "#40b050" }, right: 0.8, front: 0.8, back: 0.8 }')
        .replace('floor: 0.3', 'floor: wooden floor')
        .replace(/unit: .*? at:/, 'unit: flashgun, power: full, aim: left-wall, at:'),
    },
    { title: 'a narrow yellow room', plan: room('yellow wall', '2.4 m') },
    { title: 'green walls', plan: room('{ reflectance: 0.4, colour: "#40b050" }', '2.4 m') },
  ],
  passes: [
    { title: 'off a white ceiling', plan: offCeiling('white paint') },
    { title: 'white walls', plan: room('white paint') },
    {
      title: 'most of the dark side’s light is of the place',
      plan: room('yellow wall', '5 m', 'ambient: { reads: f/4, shutter: 1/125, iso: 100, colour: 5500 K }\n'),
    },
    { title: 'yellow walls far away', plan: room('yellow wall', '9 m') },
    {
      title: 'black cloth before the wall',
      plan: room('{ left: black curtain, right: black curtain, front: yellow wall, back: black curtain }'),
    },
  ],

  needs: (context) =>
    // A gold panel is there for its colour.
    context.set.scene.surfaces.some(
      ({ path, front, back }) => path === 'panels' && (isColoured(front) || isColoured(back)),
    ) ||
    coloured(context.set).length === 0 ||
    context.set.lit.length === 0
      ? 'silent'
      : keyMissing(context),

  detect: ({ set, limits }) => {
    const found = sides(set, limits.side!).flatMap(({ ask, side }) => {
      const reading = set.reading(ask)
      if (reading === undefined) return []
      const { room: walls, panels, backdrop } = reading.byPath
      const share = (walls + panels + backdrop) / reading.luxSeconds
      // Where hardly so much can come of it, light need not be followed by channels.
      if (share * tint(set) < limits.note! * perMired) return []
      const of = [...reading.byLight].flatMap(([name, by]) =>
        by > slight * reading.luxSeconds ? [name] : [],
      )
      const [with_, without] = [set.colour(ask, of), set.colour(ask, of, { grey: true })]
      return with_ === undefined || without === undefined
        ? []
        : [{ ask, of, side, share, ...apartOf(set, with_, without) }]
    })
    const [worst] = found.sort((a, b) => b.apart.mired - a.apart.mired)
    if (worst === undefined) return []
    const { apart, u } = worst
    const { level, limit, beyond } = reached((most) => apart.mired - most, u, [
      { level: 'warning', limit: limits.warning! },
      { level: 'note', limit: limits.note! },
    ])
    const surface = culprit(set, { ...worst.ask, of: worst.of })
    return [
      {
        pointer: pointerOf(set, surface),
        beyond,
        level,
        measured: {
          cast: { value: apart.mired, unit: 'mired', u, limit, side: 'at-most' },
          thrown: { value: worst.share, unit: 'share' },
        },
        apart,
        side: worst.side,
        surface,
        share: worst.share,
        placeText: wallsOf(coloured(set), surface),
      },
    ]
  },

  tell: ({ apart, side, surface, share, placeText }, _words, { plan }) => ({
    message: `${side === 'lit' ? whom(plan) : `the shadow side of ${whom(plan)}`} comes out ${castText(apart)} by ${apartText(apart)}: ${Math.round(share * 100)} % of the light there was thrown back, its colour mostly by the ${placeText}`,
    why: surfaceText(surface.front),
  }),

  mend: ({ surface, share, side }, _words, { plan, set }) => [
    {
      title:
        surface.name === 'table' || surface.name === 'floor'
          ? `white or grey paper over ${nameOf(surface)}, outside the frame at least`
          : `black cloth or white boards before ${nameOf(surface)}`,
      gives: 'light without its colour',
    },
    ...(set.keyLights.some(
      ({ modifier, grid }) => modifier?.kind.includes('umbrella') === true && grid === undefined,
    )
      ? [
          {
            title: 'a softbox with a grid in place of the umbrella',
            gives: 'less light on the walls',
            costs: 'harder shadows, as nothing fills them',
          },
        ]
      : []),
    ...(side === 'lit' && share > bounced
      ? [
          {
            title: `bounce off something white in place of ${nameOf(surface)}`,
            gives: 'light of the colour that the flash has',
          },
        ]
      : set.keyLights.some(({ unit }) => unit.kind !== 'sun' && unit.kind !== 'window')
        ? [
            {
              title: `lights nearer to ${whom(plan)}, and farther from ${nameOf(surface)}`,
              gives: 'more of the light comes straight',
            },
          ]
        : []),
  ],

  inShort: ({ apart, surface }) => `${nameOf(surface)} tints ${miredText(apart.mired)}`,
})

/** Surfaces that change the colour of light. */
const coloured = ({ scene }: ComputedSet): readonly SceneSurface[] =>
  scene.surfaces.filter(({ front, back }) => isColoured(front) || isColoured(back))

/** By how much of itself one channel lies off the luminance, at most. */
const depth = (surface: Surface | undefined): number =>
  surface === undefined
    ? 0
    : Math.max(...surfaceShares(surface).map((share) => Math.abs(share / surface.reflectance - 1)))

/**
 * By about how much of itself one channel of what comes off all surfaces together lies off, were they lit alike; twice that, for
 * they are not.
 */
const tint = lazyOf((set: ComputedSet): number => {
  const from = faceOf(set)
  let [all, off] = [0, 0]
  for (const { face, front } of set.scene.surfaces) {
    const seen = Math.abs(solidAngleOf(face, from))
    all += seen * front.reflectance
    off += seen * front.reflectance * depth(front)
  }
  return all > 0 ? (2 * off) / all : 0
})

/** Of one channel against all light, for each mired that it makes. */
const perMired = 0.005

/** What gives less than this share of the light somewhere is left out there. */
const slight = 0.02

/** Of light that comes almost all by way of surfaces it is said that it is bounced. */
const bounced = 0.8

const apartOf = (set: ComputedSet, tinted: Mix, grey: Mix) => {
  const { warmer, greener, mired } = set.colourApart(tinted, grey)
  // What is of unknown colour took on none here: to first order the cast goes as the share of the rest.
  const rest = 1 - tinted.unknown
  const apart = { warmer: rest * warmer, greener: rest * greener, mired: rest * mired }
  // The light's own colour is in both; paints are known by name.
  return { apart, u: Math.max(1, unsure * apart.mired) }
}
/** Share of a cast by which it is uncertain: of colours of paints, from memory, and of what surfaces throw. */
const unsure = 0.3

interface Side {
  readonly ask: MeterAsk
  readonly side: 'lit' | 'dark'
}

/** All that lights the face from before it, and the dark side, as it is metered, where it is not too dark to show. */
const sides = (set: ComputedSet, darkest: number): readonly Side[] => {
  const lit: Side = { ask: { ...keyAsk, of: facing(set) }, side: 'lit' }
  const found = shadowSide(set)
  if (found === undefined || Math.log2(found.lit.luxSeconds / found.shadow.luxSeconds) > darkest) return [lit]
  const way = shadowWay(set)
  const faces: MeterAsk['faces'] & {} =
    found.toward === 'camera' || way === undefined ? 'camera' : { direction: way.direction }
  const shaded = set.lit
    .filter(({ role }) => role !== 'fill')
    .flatMap(({ name }) => [name, modellingName(name)])
  return [lit, { ask: { at: 'subject', of: 'all', dome: 'raised', faces, shaded }, side: 'dark' }]
}

/** The surface whose own colour did most toward the colour of what surfaces threw there last, all together. */
const culprit = (set: ComputedSet, ask: MeterAsk): SceneSurface => {
  const turns = new Map<string, { readonly surface: SceneSurface; readonly by: Rgb }>()
  for (const { surface, side, exposure } of set.thrown(ask)) {
    if (!isColoured(side)) continue
    const [r, g, b] = surfaceShares(side).map((share) => exposure * (share / side.reflectance - 1))
    const was = turns.get(surface.name)?.by ?? none
    // Large surfaces come in parts.
    turns.set(surface.name, { surface, by: [was[0] + r!, was[1] + g!, was[2] + b!] })
  }
  const all = [...turns.values()]
  const whole = all.reduce<Rgb>((sum, { by }) => [sum[0] + by[0], sum[1] + by[1], sum[2] + by[2]], none)
  const toward = ({ by }: { readonly by: Rgb }): number =>
    by[0] * whole[0] + by[1] * whole[1] + by[2] * whole[2]
  const [first = { surface: coloured(set)[0]!, by: none }] = all
  return all.reduce((best, one) => (toward(one) > toward(best) ? one : best), first).surface
}

const none: Rgb = [0, 0, 0]

const nameOf = ({ name }: SceneSurface): string => `the ${name.replaceAll('-', ' ')}`

/** `green right wall`, `yellow walls`: walls of one surface are all of them meant. */
const wallsOf = (surfaces: readonly SceneSurface[], surface: SceneSurface): string => {
  const like = new Set(
    surfaces
      .filter(({ name, front }) => name.endsWith('-wall') && front.name === surface.front.name)
      .map(({ name }) => name),
  )
  return `${colourWord(surface.front)} ${like.size > 1 && surface.name.endsWith('-wall') ? 'walls' : surface.name.replaceAll('-', ' ')}`
}

const pointerOf = ({ plan }: ComputedSet, { name, path }: SceneSurface): string => {
  if (path === 'backdrop') return '/backdrop/surface'
  if (name === 'table') return '/subject/stands-on'
  if (name === 'ceiling' || name === 'floor') return `/room/${name}`
  const side = `/room/walls/${name.replace('-wall', '')}`
  return plan.places.stated(side) ? side : '/room/walls'
}
