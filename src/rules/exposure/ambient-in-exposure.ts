import { colourApart } from '../../light/colour/mix.js'
import { difference, type Figure } from '../../light/figure.js'
import { ambientName } from '../../set/transport.js'
import { exactShutter, nearestShutter } from '../../units/marks.js'
import type { Seconds } from '../../units/quantity.js'
import { markedSpeedUnder, turnLight } from '../gear.js'
import { strongestOf } from '../key-lights.js'
import { firstMissing, keyMissing } from '../known.js'
import { lightPointer } from '../place-pointer.js'
import { neededPowers } from '../power/full-power.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import { inside, moreFrom } from '../solving.js'
import type { Words } from '../words.js'
import { modellingLamps } from './modelling-lamps.js'

const room = (reads: string, shutter: string, more = ''): string => `plan: 1
title: Headshot in a lit room
ambient: { reads: ${reads}, shutter: 1/60, iso: 100, colour: 3000 K }
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/4, shutter: ${shutter}, iso: 100, sync: 1/200 }
subject: { kind: person }
lights:
  key: { unit: head 200 Ws, modifier: octa 90 cm, meters: f/4, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { ambient: none${more} }
`

interface AmbientIn extends Evidence {
  /** Stops under the key. */
  readonly under: number
  readonly limit: number
  readonly u: number
  readonly lamps: readonly string[]
  readonly room: boolean
}

export const ambientInExposure = rule<AmbientIn>({
  id: 'ambient-in-exposure',
  family: 'exposure',
  level: 'warning',
  finds: 'ambient light, or from modelling lamps, that shows beside the flash',
  limits: {
    under: { value: 4, unit: 'stop', says: 'under the key, at least' },
    frozen: { value: 5, unit: 'stop', says: 'under the key where motion is to be frozen' },
    'of-another-colour': {
      value: 3,
      unit: 'stop',
      says: 'under the darkest side that is wanted, where colours differ',
    },
    'colours-differ': {
      value: 50,
      unit: 'mired',
      says: 'between the key and this light, from which on their colours differ',
    },
  },
  why: 'Four stops under the key the room adds a fifteenth and its colour starts to show in the shadows; nearer, faces go warm on one side and moving edges ghost.',
  formula: 'log2(H of the key reading / (E of the ambient × shutter time + H of modelling lamps))',
  sources: [
    { kind: 'standard', says: 'incident metering N²/t = E·S/C, C = 250: ISO 2720' },
    {
      kind: 'derived',
      says: '2900 K four stops under a 5500 K key: 8 mired on the lit side, 28 on a side two stops darker',
    },
    { kind: 'memory', says: 'halogen modelling lamps give 17 lm per watt, LED ones 90' },
    { kind: 'common practice', says: 'four stops under goes unseen, five for frozen motion' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    { title: 'bright room, slow shutter', plan: room('f/2', '1/30') },
    { title: 'just too slow', plan: room('f/1.4', '1/80') },
    {
      title: 'far enough under the key, not under the dark side that is wanted, of another colour',
      plan: room('f/1', '1/160', ', ratio: { lit-to-shadow: 8:1 }'),
    },
    { title: 'enough for a portrait, not for a jump', plan: room('f/1.4', '1/125', ', motion: frozen') },
  ],
  passes: [
    {
      title: 'the same, with flash of the colour of the room',
      plan: room('f/1', '1/160', ', ratio: { lit-to-shadow: 8:1 }').replace(
        'meters: f/4,',
        'meters: f/4, gel: { shift: +152 mired, loss: 2/3 stop },',
      ),
    },
    { title: 'room turned down', plan: room('f/1', '1/160') },
    { title: 'just fast enough', plan: room('f/1.4', '1/160') },
  ],

  needs: (context) => {
    const { plan } = context
    if (plan.wanted.ambient === 'any') return 'silent'
    return firstMissing(
      () =>
        plan.ambient === undefined && modellingLamps(context).length === 0
          ? {
              because: 'the plan does not say what the room or the day gives without flash',
              enable: { pointer: '/ambient', text: 'ambient: { reads: f/2.8, shutter: 1/60, iso: 100 }' },
            }
          : undefined,
      () => keyMissing(context),
    )
  },

  detect: (context) => {
    const { plan } = context
    const set = asFarAsTheyGo(context.set)
    const lamps = modellingLamps(context)
    const figure = underKey(set, context)
    if (figure === undefined) return []
    const under = figure.stops
    const u = context.u(figure)
    const limit = wantedUnder(context)
    return [
      {
        pointer: plan.ambient === undefined ? lightPointer(lamps[0]!.light, 'modelling') : '/camera/shutter',
        also: [
          ...(plan.ambient === undefined ? [] : [{ pointer: '/ambient', says: 'this light' }]),
          ...(plan.wanted.motion === undefined
            ? []
            : [{ pointer: '/wanted/motion', says: 'motion is to be frozen' }]),
        ],
        beyond: { stops: limit - under, u },
        measured: { 'ambient-under-key': { value: under, unit: 'stop', u, limit, side: 'at-least' } },
        scale: { value: -under, u, needs: -limit, against: 'against the key' },
        under,
        limit,
        u,
        lamps: lamps.map(({ light }) => light),
        room: plan.ambient !== undefined,
      },
    ]
  },

  tell: ({ under, limit, lamps, room: inRoom }, words, context) => {
    const { plan } = context
    const what = [
      ...(inRoom ? ['the ambient light'] : []),
      ...lamps.map((light) => `${light}'s modelling lamp`),
    ]
    return {
      message: `${words.list(what)} ${what.length > 1 ? 'show' : 'shows'} in the picture: ${under >= 0 ? `only ${words.howMany(under)} under` : `${words.howMany(under)} over`} the key at ${words.shutter(plan.camera.shutterMarked)}, ${words.howMany(limit)} is wanted`,
      why: [
        plan.wanted.motion === 'frozen'
          ? 'what moves leaves a ghost beside the frozen flash'
          : 'it warms or tints the shadows first',
        ...(isOfAnotherColour(context) ? ['it is of another colour than the flash'] : []),
      ].join('; '),
    }
  },

  mend: (evidence, words, context) => [
    ...lampsOff(evidence, words, context),
    ...fasterShutter(evidence, words, context),
    ...lowerSpeed(evidence, words, context),
    { title: 'lights of the room off, curtains drawn' },
  ],
})

/** The key reading against the ambient and the modelling lamps, in a set; undefined where either is missing. */
const underKey = (set: RuleContext['set'], context: RuleContext): Figure | undefined => {
  const stray = set.reading({
    at: 'subject',
    of: [
      ...(set.plan.ambient === undefined ? [] : [ambientName]),
      ...modellingLamps({ ...context, set, plan: set.plan }).map(({ lamp }) => lamp),
    ],
    dome: 'raised',
    faces: 'camera',
  })
  return set.key === undefined || stray === undefined ? undefined : difference(set.key.figure, stray.figure)
}

/** A light that surely cannot give what it is to meter gives what it has. */
const asFarAsTheyGo = (set: RuleContext['set']): RuleContext['set'] => {
  const short = neededPowers(set).filter(({ overFull, u }) => overFull > 2 * u)
  return short.length === 0
    ? set
    : set.with(
        ...short.map(({ light, overFull }) => ({
          knob: { knob: 'strength' as const, light: light.name },
          to: -overFull,
        })),
      )
}

/** Some of the stray light is visibly of another colour than the strongest key, gels and green counted. */
const isOfAnotherColour = (context: RuleContext): boolean => {
  const { set, plan, limits } = context
  const key = strongestOf(set)
  const own = key && set.lightColour(key.name)
  if (own === undefined) return false
  return [
    ...(plan.ambient === undefined ? [] : [ambientName]),
    ...modellingLamps(context).map(({ lamp }) => lamp),
  ].some((name) => {
    const colour = set.lightColour(name)
    return colour !== undefined && colourApart(colour, own).mired >= limits['colours-differ']!
  })
}

const wantedUnder = (context: RuleContext): number => {
  const { plan, limits } = context
  const { ambient, motion, ratio } = plan.wanted
  if (typeof ambient === 'object') return ambient.underKey
  const shadow =
    ratio === undefined ? 0 : Math.log2(ratio.kind === 'lit-to-shadow' ? ratio.ratio : ratio.ratio + 1)
  return Math.max(
    limits.under!,
    motion === 'frozen' ? limits.frozen! : 0,
    ratio !== undefined && isOfAnotherColour(context) ? limits['of-another-colour']! + shadow : 0,
  )
}

const lampsOff = ({ lamps }: AmbientIn, words: Words, _: RuleContext): readonly Mend[] =>
  lamps.length === 0
    ? []
    : [
        {
          title: `modelling lamps off for the exposure, or dimmed: ${words.list(lamps)}`,
          gives: 'only the room is left',
        },
      ]

/** A shutter, or speed against power, parts the key from the ambient only where the key is flash. */
const byFlash = (set: RuleContext['set']): boolean =>
  set.keyLights.every((light) => light.unit.kind === 'flash')

/** Up to the sync speed: beyond it the flash suffers too. */
const fasterShutter = (
  { under, limit, u, room: inRoom }: AmbientIn,
  words: Words,
  context: RuleContext,
): readonly Mend[] => {
  const { camera } = context.plan
  if (!inRoom || camera.shutterMarked <= camera.sync || !byFlash(context.set)) return []
  const marked = thirdAtMost(camera.shutter * 2 ** (under - limit - inside(u)))
  const to = Math.max(marked, camera.sync)
  const set = asFarAsTheyGo(context.set).with({ knob: { knob: 'shutter' }, to: exactShutter(to as Seconds) })
  const after = underKey(set, context)?.stops
  if (after === undefined || after < under + 0.1) return []
  return [
    {
      title: `camera.shutter → ${words.shutter(to)}${to > marked ? ', as fast as sync allows' : ''}`,
      gives: `the room ${words.howMany(after)} under the key`,
      ...(after < limit
        ? { costs: `${words.howMany(limit - after)} still to find by ISO and power`, partial: true }
        : {}),
      after: context.set.with({ knob: { knob: 'shutter' }, to: exactShutter(to as Seconds) }),
    },
  ]
}

/** The third-stop mark that is as fast or faster. */
const thirdAtMost = (time: number): number => {
  const nearest = nearestShutter(time as Seconds)
  return nearest > time * 1.02 ? nearestShutter((time / 2 ** (1 / 3)) as Seconds) : nearest
}

/** Lower speed with as much more power: the flash keeps its place, the ambient light loses. */
const lowerSpeed = (
  { under, limit, u, room: inRoom }: AmbientIn,
  words: Words,
  { plan, set }: RuleContext,
): readonly Mend[] => {
  if (!inRoom || !byFlash(set)) return []
  const wanted = plan.camera.iso * 2 ** (under - limit - inside(u))
  const iso = markedSpeedUnder(wanted)
  const flashes = set.lit.filter((light) => light.unit.kind === 'flash')
  if (iso === undefined || iso >= plan.camera.iso) {
    const stops = limit + inside(u) - under
    return [
      {
        title: `${words.howMany(stops)} more power on ${words.list(flashes.map((light) => light.name))}, the aperture closed by as much`,
        gives: `the room ${words.howMany(under + stops)} under the key`,
        costs: 'slower recycling; depth of field grows',
      },
    ]
  }
  const stops = Math.log2(plan.camera.iso / iso)
  const short = flashes.flatMap((light) => {
    const turned = light.power === undefined ? undefined : turnLight(plan, light.name, stops)
    return turned !== undefined && turned.short > 0.05
      ? [`${light.name} is ${words.howMany(turned.short)} short of it`]
      : []
  })
  return [
    {
      title: `camera.iso → ${iso}, ${words.list(flashes.map((light) => light.name))} up by ${words.howMany(stops)}`,
      gives: `the room ${words.howMany(under + stops)} under the key`,
      costs: ['slower recycling', ...short].join('; '),
      after: set.with(
        { knob: { knob: 'iso' }, to: iso },
        ...moreFrom(
          set,
          flashes.filter(({ power }) => power !== undefined).map(({ name }) => name),
          stops,
        ),
      ),
    },
  ]
}
