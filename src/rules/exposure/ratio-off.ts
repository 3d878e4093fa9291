import type { Panel } from '../../language/plan.js'
import type { ComputedSet, LightPath, MeterFigure } from '../../set/computed-set.js'
import { keyBehind, shadowSide, thrownKeys } from '../../set/shadow-side.js'
import { ambientName } from '../../set/transport.js'
import { pointer } from '../../text/place.js'
import { roundRatio } from '../../units/ratio.js'
import { keyLightsOf } from '../key-lights.js'
import { firstMissing, keyMissing } from '../known.js'
import { lightPointer, settingPointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, type NotNeeded, type RuleContext, rule } from '../rule.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'
import { fillAlone, keyAlone, ratioOf } from './ratio.js'
import { ratioMends } from './ratio-mends.js'

const oneLight = (wanted: string, more: string): string => `plan: 1
title: One light and what fills its shadows
camera: { lens: 85 mm, at: { distance: 2 m, height: 1.6 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person, faces-at: 1.6 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: { angle: 40 deg left, distance: 1.2 m, height: 2 m } }
${more}
wanted: { ratio: { lit-to-shadow: "${wanted}" }, framing: head and shoulders }
`
const card = (right: string) =>
  `panels: { card: { kind: reflector, surface: white board, size: 1 x 2 m, at: { right: ${right} }, faces: left } }`
const room = (paint: string) =>
  `room: { width: 3 m, length: 4 m, height: 2.4 m, walls: ${paint}, ceiling: ${paint}, floor: grey carpet }`

const metered = (key: string, fill: string, wanted: string): string => `plan: 1
title: Key and fill, metered one by one
camera: { lens: 85 mm, at: { distance: 2.5 m, height: 1.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.6 m }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, power: 1/2, at: { angle: 35 deg left, distance: 1.5 m, height: 2 m } }
  fill: { unit: head 400 Ws, modifier: white umbrella 1.5 m, power: 1/4, at: { angle: 10 deg right, distance: 2.4 m, height: 1.8 m } }
readings:
  - { at: subject, of: [key], reads: ${key}, taken: { key: { power: 1/2, distance: 1.5 m } } }
  - { at: subject, of: [fill], reads: ${fill}, taken: { fill: { power: 1/4, distance: 2.4 m } } }
wanted: { ratio: ${wanted} }
`

interface RatioOff extends Evidence {
  /** Stops that the ratio lies over what is wanted: the shadows are too dark; negative is too light. */
  readonly off: number
  readonly ratio: number
}

export const ratioOff = rule<RatioOff>({
  id: 'ratio-off',
  family: 'exposure',
  level: 'warning',
  finds: 'a lit and a shadow side, or key and fill, that stand at another ratio than is wanted',
  limits: {
    note: { value: 1 / 3, unit: 'stop', says: 'off the wanted ratio: note over this' },
    warning: { value: 2 / 3, unit: 'stop', says: 'off the wanted ratio: warning over this' },
  },
  why: 'The ratio sets the mood of a portrait, and two ways of counting it go by one notation: a key one stop over its fill is 2:1 light against light, and 3:1 lit side against shadow side. A plan names the kind; this rule holds the set against that kind. The shadow side is lit by whatever reaches it: a fill light, a white panel, the walls of a small room.',
  formula:
    'lit-to-shadow: log2(H of everything, dome toward the camera / H of everything but what comes straight from the key), the dome toward the camera for a fill light, which is (key + fill):fill, and toward the shadow side for what surfaces throw back; key-to-fill: log2(H of the key alone / H of the fill alone), dome toward each light; less log2 of the wanted ratio',
  sources: [
    {
      kind: 'published',
      says: 'an encyclopaedia counts (key + fill):fill, 200 and 100 as 3:1; its older text key:fill, 800 and 200 as 4:1',
    },
    {
      kind: 'common practice',
      says: 'the shadow side is metered with a hand keeping the key off the dome, which is turned to what fills',
    },
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
    { kind: 'common practice', says: 'a third of a stop is the tolerance that the trade works to' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    { title: 'too little fill for 2:1', plan: metered('f/8', 'f/4', '{ lit-to-shadow: "2:1" }') },
    { title: 'half a stop under is not 2:1', plan: metered('f/8', 'f/5.6 + 0.5', '{ key-to-fill: "2:1" }') },
    { title: 'a little over a third off', plan: metered('f/8', 'f/5.6 + 0.4', '{ key-to-fill: "2:1" }') },
    { title: 'a small white room fills what was to be dramatic', plan: oneLight('8:1', room('white paint')) },
    { title: 'a card too far off to fill', plan: oneLight('3:1', card('1 m')) },
  ],
  passes: [
    { title: 'one stop under, light against light', plan: metered('f/8', 'f/5.6', '{ key-to-fill: "2:1" }') },
    {
      title: 'the same lights, side against side',
      plan: metered('f/8', 'f/5.6', '{ lit-to-shadow: "3:1" }'),
    },
    { title: 'a white card at less than half a metre', plan: oneLight('3:1', card('40 cm')) },
    { title: 'a small white room, from which no more is asked', plan: oneLight('4:1', room('white paint')) },
    { title: 'not quite a third off', plan: metered('f/8', 'f/5.6 + 0.3', '{ key-to-fill: "2:1" }') },
  ],

  needs: (context) => {
    const { plan, set } = context
    const fills = keyLightsOf(set, 'fill')
    if (plan.wanted.ratio === undefined)
      return fills.length === 0 || keyLightsOf(set, 'key').length === 0
        ? 'silent'
        : {
            because: 'the plan does not say what ratio is wanted',
            enable: { pointer: '/wanted/ratio', text: 'ratio: { lit-to-shadow: "3:1" }' },
          }
    return firstMissing(
      () => keyMissing(context),
      () =>
        fills.length > 0 || (plan.wanted.ratio?.kind === 'lit-to-shadow' && somethingFills(context))
          ? undefined
          : fillMissing(context),
      () => (plan.wanted.ratio?.kind === 'lit-to-shadow' ? noSides(set) : undefined),
    )
  },

  detect: (context) => {
    const { set, plan, limits } = context
    const { ratio } = plan.wanted
    const figure = ratioOf(set)
    if (ratio === undefined || figure === undefined) return []
    const off = figure.stops - Math.log2(ratio.ratio)
    const u = context.u(figure)
    const tier = reached((limit) => Math.abs(off) - limit, u, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    const fill = keyLightsOf(set, 'fill')[0]
    const panel = [...plan.panels.values()].find(({ kind }) => kind === 'reflector')
    return [
      {
        pointer:
          fill !== undefined
            ? settingPointer(fill)
            : panel !== undefined
              ? pointer('panels', panel.name, 'at')
              : '/wanted/ratio',
        also: [
          ...(fill === undefined && panel === undefined
            ? []
            : [{ pointer: '/wanted/ratio', says: 'this ratio is wanted' }]),
          ...keyLightsOf(set, 'key').map((light) => ({
            pointer: lightPointer(light.name),
            says: 'against this light',
          })),
        ],
        beyond: tier.beyond,
        level: tier.level,
        measured: {
          'off-ratio': { value: off, unit: 'stop', u, limit: tier.limit, side: 'at-most' },
          ratio: { value: 2 ** figure.stops, unit: 'count' },
        },
        ...(fill === undefined ? {} : { cause: `the level of ${fill.name}` }),
        scale: { value: off, u, needs: 0, against: 'off the wanted ratio' },
        off,
        ratio: 2 ** figure.stops,
      },
    ]
  },

  tell: ({ off, ratio }, words, { plan, set }) => {
    const { kind, ratio: wanted } = plan.wanted.ratio!
    const [key, fill] = [keyAlone(set), fillAlone(set)]
    return {
      message: `the shadows come out too ${off > 0 ? 'dark' : 'light'}: ${kind === 'lit-to-shadow' ? 'lit side to shadow side' : 'key to fill'} stands at ${roundRatio(ratio)}, ${words.howMany(off)} off the wanted ${roundRatio(wanted)}`,
      why: [
        ...(kind === 'lit-to-shadow' ? shadowText(set, words) : ['each alone, dome toward the light']),
        ...(key === undefined || fill === undefined
          ? []
          : [`key over fill by ${words.howMany(key.stops - fill.stops)} light against light`]),
        ...(kind === 'lit-to-shadow' || plan.ambient === undefined ? [] : ['ambient light is not counted']),
      ].join('; '),
    }
  },

  mend: ratioMends,

  inShort: ({ off, ratio }) => `the shadows are too ${off > 0 ? 'dark' : 'light'} at ${roundRatio(ratio)}`,
})

/** Something besides the key that may light the shadow side: a panel, the room, the ambient. */
const somethingFills = ({ plan }: RuleContext): boolean =>
  plan.room !== undefined || plan.ambient !== undefined || [...plan.panels.values()].some(throwsBack)

const throwsBack = ({ kind }: Panel): boolean => kind !== 'flag'

const fillMissing = ({ plan, set }: RuleContext): NotNeeded =>
  plan.wanted.ratio?.kind === 'key-to-fill' && shadowSide(set) !== undefined
    ? {
        because:
          'no light is the fill, and what panels and walls throw back of the key cannot be metered apart from it',
        enable: { pointer: '/wanted/ratio', text: 'ratio: { lit-to-shadow: "3:1" }' },
      }
    : {
        because: 'a ratio is wanted and no light is the fill',
        enable: {
          pointer: '/lights/fill',
          text: 'fill: { unit: flashgun, meters: f/4, at: { angle: 10 deg right, distance: 2 m } }',
        },
      }

const noSides = (set: ComputedSet): NotNeeded | undefined => {
  const [thrown] = thrownKeys(set)
  if (thrown !== undefined)
    return {
      because: `${thrown} reaches ${whom(set.plan)} by way of a surface: its light and what fills its shadows cannot be told apart`,
    }
  const behind = keyBehind(set)
  return behind === undefined
    ? undefined
    : { because: `${behind} lights what is turned from the camera: no lit side is seen` }
}

const ways: Readonly<Record<Exclude<LightPath, 'direct'>, string>> = {
  room: 'by the room',
  panels: 'by panels',
  backdrop: 'by the backdrop',
}

/** Less of the shadow side's light than this is not told. */
const worthTelling = 0.1

const shadowText = (set: ComputedSet, words: Words): readonly string[] => {
  const sides = shadowSide(set)
  if (sides === undefined) return []
  const { shadow, shaded, toward } = sides
  return [
    `the shadow side reads ${words.f(shadow.fNumber)}, the dome turned ${toward === 'camera' ? 'to the camera' : toward} and ${words.list(shaded)} kept off it by a hand`,
    `it is lit ${byWay(
      shadow,
      keyLightsOf(set, 'fill').map(({ name }) => name),
      words,
    )}`,
  ]
}

const byWay = (
  { byPath, byLight, luxSeconds }: MeterFigure,
  fills: readonly string[],
  words: Words,
): string => {
  const ambient = byLight.get(ambientName) ?? 0
  return [
    { says: `straight from ${words.list(fills)}`, share: byPath.direct - ambient },
    { says: 'by the ambient light', share: ambient },
    ...(['room', 'panels', 'backdrop'] as const).map((way) => ({ says: ways[way], share: byPath[way] })),
  ]
    .map(({ says, share }) => ({ says, share: share / luxSeconds }))
    .filter(({ share }) => share >= worthTelling)
    .sort((a, b) => b.share - a.share)
    .map(({ says, share }) => `${says}${share > 1 - worthTelling ? '' : ` (${Math.round(share * 100)} %)`}`)
    .join(' and ')
}
