import type { Plan } from '../../language/plan.js'
import {
  exposureSwing,
  flickering,
  type Mains,
  swingInStops,
  swingsPerSecond,
} from '../../picture/flicker.js'
import { curtainTravel, readoutTime } from '../../picture/shutter.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { ambientName } from '../../set/transport.js'
import { nearestShutter } from '../../units/marks.js'
import type { Seconds } from '../../units/quantity.js'
import { lightPointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { steadyGains } from '../steady-gains.js'
import type { Words } from '../words.js'
import { atShutter } from './slower.js'

const office = (shutter: string, flicker = ', flicker: mains', room = '', camera = ''): string => `plan: 1
title: An office with tubes on the ceiling
${room}ambient: { reads: f/2.8, shutter: 1/30, iso: 400${flicker} }
camera: { lens: 50 mm, at: { distance: 2 m }, aperture: f/2.8, shutter: ${shutter}, iso: 400${camera} }
subject: { kind: person }
lights:
  fill: { unit: flashgun, modifier: shoot-through umbrella 1 m, meters: f/2, at: { angle: 35 deg left, distance: 1.5 m, height: 2 m } }
wanted: { framing: waist, ambient: any }
`
const american = `room: { width: 6 m, length: 8 m, height: 2.7 m, mains: 60 Hz }
`

const workLamp = (shutter: string): string => `plan: 1
title: A work lamp for a key
camera: { lens: 50 mm, at: { distance: 2 m }, aperture: f/2, shutter: ${shutter}, iso: 800 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1.5 m }
lights:
  key: { unit: { lux: 800 lx at 1 m, flicker: mains }, power: full, at: { angle: 35 deg left, distance: 1.5 m, height: 2 m } }
wanted: { framing: waist, backdrop: any, shadow: any }
`

interface Flicker extends Evidence {
  readonly swing: number
  readonly where: Where
  readonly mains: readonly Mains[]
  /** Bands in the frame; under one, it shows from frame to frame. */
  readonly bands: number
}

interface Where {
  /** Lights that flicker. */
  readonly lights: readonly string[]
  /** Their share of the exposure there. */
  readonly share: number
  readonly place: 'subject' | 'backdrop' | 'around'
}

export const flickerBands = rule<Flicker>({
  id: 'flicker-bands',
  family: 'shutter',
  level: 'warning',
  finds: 'light that flickers with the mains at a shutter speed that is no whole number of its swings',
  limits: {
    swing: {
      value: 1 / 6,
      unit: 'stop',
      says: 'between the lightest and the darkest, from frame to frame or band to band',
    },
  },
  why: 'Tubes and cheap lamps go bright and dim a hundred or a hundred and twenty times a second. A shutter that takes in whole swings gets the same each time; any other gets now more, now less, and of another colour, or bands where the frame is read line by line.',
  formula:
    'swing = log2((1 + a) / (1 - a)), a = share of that light × 0.5 × |sin(πft) / (πft)|, f twice the mains, t the time as marked',
  sources: [
    { kind: 'derived', says: 'mean of 1 + m·cos(2πft) over a window t, at any moment that it opens' },
    {
      kind: 'common practice',
      says: 'whole half periods of the mains: 1/50 and 1/100 at 50 Hz, 1/60 and 1/120 at 60 Hz',
    },
    { kind: 'memory', says: 'tubes on plain ballasts swing by a third to seven tenths about their mean' },
    { kind: 'common practice', says: 'a sixth of a stop from frame to frame starts to show; no source' },
  ],
  basis: 'light over the window of the shutter, as marked',
  fires: [
    { title: 'too fast for 60 Hz', plan: office('1/160', undefined, american) },
    { title: 'a work lamp as the key, on whichever mains', plan: workLamp('1/250') },
    {
      title: 'bands by a silent shutter',
      plan: office('1/200', undefined, american, ', shutter-kind: electronic, readout: 1/30'),
    },
  ],
  passes: [
    { title: 'two swings at 60 Hz', plan: office('1/60', undefined, american) },
    { title: '1/125 is near enough to 1/120', plan: office('1/125', undefined, american) },
    { title: 'a work lamp at a slow time that is near whole swings of either', plan: workLamp('1/20') },
    { title: 'daylight', plan: office('1/160', '', american) },
  ],

  needs: ({ plan }) => (flickers(plan).length === 0 ? 'silent' : undefined),

  detect: ({ set, plan, limits }) => {
    const lights = flickers(plan)
    const where = mostOf(set, lights)
    if (where === undefined) return []
    const known = mainsOf(plan)
    const time = plan.camera.shutterMarked
    const swings = known.map((mains) => swingOf(where.share, mains, time))
    const swing = Math.max(...swings)
    const limit = limits.swing!
    // By the one mains and not by the other: which one it is decides.
    const both = Math.min(...swings) > limit
    const mains = known.filter((_, i) => both || swings[i]! > limit)
    const u = swing * flickering.u * Math.LN2
    return [
      {
        pointer: '/camera/shutter',
        also: lights.map((name) => ({
          pointer: name === ambientName ? '/ambient' : lightPointer(name),
          says: 'this light flickers',
        })),
        beyond: { stops: swing - limit, u: both ? u : Math.max(u, swing - limit) },
        measured: {
          swing: { value: swing, unit: 'stop', u, limit, side: 'at-most' },
          share: { value: where.share, unit: 'share' },
        },
        swing,
        where,
        mains: mains.length === 0 ? known : mains,
        bands: bandsOf(plan, mains[0] ?? known[0]!),
      },
    ]
  },

  tell: ({ swing, where, mains, bands }, words, { plan }) => {
    const { shutterMarked } = plan.camera
    return {
      message: `${placeText(where, plan)} comes out ${words.howMany(swing)} lighter or darker ${bands < 1 ? 'from one frame to the next' : `in ${Math.round(bands)} bands over the frame`}: ${words.list(where.lights.map(lightText))} ${where.lights.length > 1 ? 'flicker' : 'flickers'}, and ${words.shutter(shutterMarked)} is ${Math.round(swingsPerSecond(mains[0]!) * shutterMarked * 100) / 100} of its swings${mains.length > 1 ? ' on 50 Hz mains' : ` on ${mains[0]} Hz mains`}`,
      why: [
        `${Math.round(where.share * 100)} % of the light there`,
        ...(mainsOf(plan).length > 1
          ? [
              `${mains.length > 1 ? '60 Hz mains would show it too' : 'the plan does not say which mains'}: mains of the room settles it`,
            ]
          : []),
        'its colour changes along with it',
      ].join('; '),
    }
  },

  inShort: ({ swing, where }, words) =>
    `${words.list(where.lights.map(lightText))} ${where.lights.length > 1 ? 'flicker' : 'flickers'} by ${words.howMany(swing)}`,

  mend: ({ where }, words, context) =>
    inTurn(
      () => wholeSwings(where, words, context),
      () =>
        mainsOf(context.plan).length > 1
          ? [
              {
                title: '1/50 or 1/100 on 50 Hz mains, 1/60 or 1/125 on 60 Hz',
                gives: 'whole swings of the light',
              },
            ]
          : [],
      () => [{ title: 'the lamps that flicker off, or daylight and flash in their place' }],
    ),
})

/** Names of lights that are on and flicker with the mains. */
const flickers = ({ ambient, lights }: Plan): readonly string[] => [
  ...[...lights.values()].flatMap(({ name, on, unit }) =>
    on && unit.kind === 'continuous' && unit.flicker === 'mains' ? [name] : [],
  ),
  ...(ambient?.flicker === 'mains' ? [ambientName] : []),
]

const lightText = (name: string): string => (name === ambientName ? 'the light of the place' : name)

const placeText = ({ place }: Where, plan: Plan): string =>
  place === 'subject' ? whom(plan) : place === 'backdrop' ? 'the backdrop' : `what lies around ${whom(plan)}`

/** As the room states it; by the voltage of its circuits; or either. */
const mainsOf = ({ room }: Plan): readonly Mains[] => {
  if (room?.mains !== undefined) return [room.mains]
  const volts = [...(room?.circuits.values() ?? [])].map(({ voltage }) => voltage)
  if (volts.length > 0 && volts.every((one) => one > 200)) return [50]
  // 100 V has both.
  if (volts.length > 0 && volts.every((one) => one > 105 && one < 130)) return [60]
  return [50, 60]
}

const swingOf = (share: number, mains: Mains, time: Seconds): number =>
  swingInStops(share * exposureSwing(flickering.modulation, mains, time))

/** Where in the picture they count for most. */
const mostOf = (set: ComputedSet, lights: readonly string[]): Where | undefined =>
  [atSubject(set, lights), onBackdrop(set, lights), around(set, lights)].reduce<Where | undefined>(
    (most, one) => (one !== undefined && (most === undefined || one.share > most.share + 1e-9) ? one : most),
    undefined,
  )

const shareOf = (
  byLight: ReadonlyMap<string, number>,
  lights: readonly string[],
  place: Where['place'],
): Where | undefined => {
  let all = 0
  for (const part of byLight.values()) all += part
  const own = lights.map((name) => byLight.get(name) ?? 0)
  const share = own.reduce((sum, part) => sum + part, 0) / all
  return share > 0 ? { lights: lights.filter((_, i) => own[i]! > 0), share, place } : undefined
}

const atSubject = (set: ComputedSet, lights: readonly string[]): Where | undefined => {
  const all = set.reading({ at: 'subject', of: 'all', dome: 'raised', faces: 'camera' })
  return all && shareOf(all.byLight, lights, 'subject')
}

const onBackdrop = (set: ComputedSet, lights: readonly string[]): Where | undefined => {
  const { backdrop } = set.plan
  const all =
    backdrop === undefined || backdrop.sky !== undefined
      ? undefined
      : set.reading({ at: 'backdrop', of: 'all' })
  return all === undefined || all.overCamera.stops < seen
    ? undefined
    : shareOf(all.byLight, lights, 'backdrop')
}

/** Stops under the camera's setting below which what is lit so records near black, and shows no swing. */
const seen = -3

/** Without a backdrop, what stands around has the light of the place and next to nothing of the flash. */
const around = (set: ComputedSet, lights: readonly string[]): Where | undefined => {
  if (set.plan.backdrop !== undefined || !lights.includes(ambientName)) return undefined
  const lit = set.reading({ at: 'subject', of: [ambientName], dome: 'raised', faces: 'camera' })
  return lit === undefined || lit.overCamera.stops < seen
    ? undefined
    : { lights: [ambientName], share: 1, place: 'around' }
}

/** Swings while the slit, or the reading, runs over the frame. */
const bandsOf = ({ camera }: Plan, mains: Mains): number => {
  const run =
    camera.shutterKind === 'leaf'
      ? 0
      : camera.shutterKind === 'electronic'
        ? middle(readoutTime(camera))
        : middle(curtainTravel(camera))
  return run * swingsPerSecond(mains)
}

const middle = ({ least, most }: { readonly least: number; readonly most: number }): number =>
  Math.sqrt(least * most)

/** Marks that are within a few hundredths of whole swings; of those nearest to the shutter, one slower and one faster. */
const wholeSwings = ({ share }: Where, words: Words, { set, plan, limits }: RuleContext): readonly Mend[] => {
  const { camera } = plan
  const possible = mainsOf(plan)
  const flash = [...plan.lights.values()].some(({ on, unit }) => on && unit.kind === 'flash')
  const safe = (mark: Seconds): boolean =>
    possible.every((mains) => swingOf(share, mains, mark) * 2 ** flickering.u <= limits.swing!)
  const third = 2 ** (1 / 3)
  const search = (way: 1 | -1): Seconds | undefined => {
    for (let thirds = 1; thirds <= 9; thirds++) {
      const mark = nearestShutter((camera.shutter * third ** (way * thirds)) as Seconds)
      if (flash && camera.shutterKind === 'focal-plane' && mark < camera.sync * 0.999) return undefined
      if (safe(mark)) return mark
    }
    return undefined
  }
  return [search(1), search(-1)].flatMap((mark): Mend[] => {
    if (mark === undefined) return []
    const by = Math.log2(mark / camera.shutterMarked)
    return [
      {
        title: `camera.shutter → ${words.shutter(mark)}`,
        gives: `whole swings of the light${possible.length > 1 ? ' on either mains' : ''}, or nearly`,
        costs: steadyGains(set, by, words),
        after: atShutter(set, mark),
      },
    ]
  })
}
