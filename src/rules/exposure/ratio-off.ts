import type { Light } from '../../language/plan.js'
import { difference, type Figure } from '../../light/figure.js'
import { sumFigure } from '../../light/sum-light.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { LuxSeconds } from '../../units/quantity.js'
import { turnLight } from '../gear.js'
import { keyLightsOf } from '../key-lights.js'
import { firstMissing, keyMissing } from '../known.js'
import { lightPointer, settingPointer } from '../place-pointer.js'
import { solveDistance } from '../power/hold-by-distance.js'
import { type Advice, type Evidence, type NotNeeded, type RuleContext, rule } from '../rule.js'
import { byStops, solveFor } from '../solving.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'

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
  finds: 'key and fill that stand at another ratio than is wanted',
  limits: {
    note: { value: 1 / 3, unit: 'stop', says: 'off the wanted ratio: note over this' },
    warning: { value: 2 / 3, unit: 'stop', says: 'off the wanted ratio: warning over this' },
  },
  why: 'The ratio sets the mood of a portrait, and two ways of counting it go by one notation: a key one stop over its fill is 2:1 light against light, and 3:1 lit side against shadow side. A plan names the kind; this rule holds the lights against that kind.',
  formula:
    'lit-to-shadow: log2(H of key and fill / H of the fill), dome toward the camera; key-to-fill: log2(H of the key alone / H of the fill alone), dome toward each light; less log2 of the wanted ratio',
  sources: [
    {
      kind: 'published',
      says: 'an encyclopaedia counts (key + fill):fill, 200 and 100 as 3:1; its older text key:fill, 800 and 200 as 4:1',
    },
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
    { kind: 'common practice', says: 'a third of a stop is the tolerance that the trade works to' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    { title: 'too little fill for 2:1', plan: metered('f/8', 'f/4', '{ lit-to-shadow: "2:1" }') },
    { title: 'half a stop under is not 2:1', plan: metered('f/8', 'f/5.6 + 0.5', '{ key-to-fill: "2:1" }') },
    { title: 'a little over a third off', plan: metered('f/8', 'f/5.6 + 0.4', '{ key-to-fill: "2:1" }') },
  ],
  passes: [
    { title: 'one stop under, light against light', plan: metered('f/8', 'f/5.6', '{ key-to-fill: "2:1" }') },
    {
      title: 'the same lights, side against side',
      plan: metered('f/8', 'f/5.6', '{ lit-to-shadow: "3:1" }'),
    },
    { title: 'not quite a third off', plan: metered('f/8', 'f/5.6 + 0.3', '{ key-to-fill: "2:1" }') },
  ],

  needs: (context) => {
    const { plan } = context
    const fills = keyLightsOf(context.set, 'fill')
    if (plan.wanted.ratio === undefined)
      return fills.length === 0 || keyLightsOf(context.set, 'key').length === 0
        ? 'silent'
        : {
            because: 'the plan does not say what ratio is wanted',
            enable: { pointer: '/wanted/ratio', text: 'ratio: { lit-to-shadow: "3:1" }' },
          }
    return firstMissing(
      () => keyMissing(context),
      () => (fills.length === 0 ? fillMissing(context) : undefined),
    )
  },

  detect: (context) => {
    const { set, plan, limits } = context
    const { ratio } = plan.wanted
    const figure = ratioOf(set)
    const fill = keyLightsOf(set, 'fill')[0]
    if (ratio === undefined || figure === undefined || fill === undefined) return []
    const off = figure.stops - Math.log2(ratio.ratio)
    const u = context.u(figure)
    const tier = reached((limit) => Math.abs(off) - limit, u, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    return [
      {
        pointer: settingPointer(fill),
        also: [
          { pointer: '/wanted/ratio', says: 'this ratio is wanted' },
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
        cause: `the level of ${fill.name}`,
        scale: { value: off, u, needs: 0, against: 'off the wanted ratio' },
        off,
        ratio: 2 ** figure.stops,
      },
    ]
  },

  tell: ({ off, ratio }, words, { plan, set }) => {
    const { kind, ratio: wanted } = plan.wanted.ratio!
    const [key, fill] = [sumOf(set, 'key'), sumOf(set, 'fill')]
    return {
      message: `the shadows come out too ${off > 0 ? 'dark' : 'light'}: ${kind === 'lit-to-shadow' ? 'lit side to shadow side' : 'key to fill'} stands at ${ratioText(ratio)}, ${words.howMany(off)} off the wanted ${ratioText(wanted)}`,
      why: [
        kind === 'lit-to-shadow'
          ? 'key and fill together against the fill, dome toward the camera'
          : 'each alone, dome toward the light',
        ...(key === undefined || fill === undefined
          ? []
          : [`key over fill by ${words.howMany(key.stops - fill.stops)} light against light`]),
        ...(plan.ambient === undefined ? [] : ['ambient light is not counted']),
      ].join('; '),
    }
  },

  mend: (evidence, words, context) => [
    ...fillTurned(evidence, words, context),
    ...fillMoved(evidence, words, context),
  ],
})

const fillMissing = ({ plan }: RuleContext): NotNeeded =>
  [...plan.panels.values()].some((panel) => panel.kind === 'reflector')
    ? {
        because: 'no light is the fill, and a panel cannot be metered apart from the key that it throws back',
      }
    : {
        because: 'a ratio is wanted and no light is the fill',
        enable: {
          pointer: '/lights/fill',
          text: 'fill: { unit: flashgun, meters: f/4, at: { angle: 10 deg right, distance: 2 m } }',
        },
      }

/** The ratio of the kind that is wanted, in stops. */
const ratioOf = (set: ComputedSet): Figure | undefined => {
  const { ratio } = set.plan.wanted
  if (ratio?.kind === 'key-to-fill') {
    const [key, fill] = [sumOf(set, 'key'), sumOf(set, 'fill')]
    return key && fill && difference(key, fill)
  }
  const of = keyLightsOf(set, 'fill').map((light) => light.name)
  const shadow = set.reading({ at: 'subject', of, dome: 'raised', faces: 'camera' })
  return set.key && shadow && difference(set.key.figure, shadow.figure)
}

/** All lights of a role, each metered alone with the dome toward it. */
const sumOf = (set: ComputedSet, role: Light['role']): Figure | undefined => {
  const parts = new Map<string, LuxSeconds>()
  for (const { name } of keyLightsOf(set, role)) {
    const alone = set.reading({ at: 'subject', of: [name], dome: 'raised', faces: { light: name } })
    if (alone !== undefined) parts.set(name, alone.luxSeconds)
  }
  return parts.size === 0 ? undefined : sumFigure(parts)
}

const ratioText = (ratio: number): string => `${Math.round(ratio * 10) / 10}:1`

const offIn = (set: ComputedSet): number | undefined => {
  const figure = ratioOf(set)
  return figure && figure.stops - Math.log2(set.plan.wanted.ratio!.ratio)
}

/** What the mend gives, and what it costs the key reading; undefined where it is no gain. */
const after = (changed: ComputedSet, { off }: RatioOff, words: Words, { set, limits }: RuleContext) => {
  const [left, figure] = [offIn(changed), ratioOf(changed)]
  if (left === undefined || figure === undefined || Math.abs(left) > Math.abs(off) - 0.05) return undefined
  const shift = (changed.key?.figure.stops ?? 0) - (set.key?.figure.stops ?? 0)
  const costs = [
    ...(Math.abs(shift) < 0.1 || changed.key === undefined
      ? []
      : [`the key reading goes to ${words.f(changed.key.fNumber)}`]),
    ...(Math.abs(left) > limits.note! ? [`still ${words.howMany(left)} off`] : []),
  ].join('; ')
  return { gives: ratioText(2 ** figure.stops), ...(costs === '' ? {} : { costs }) }
}

const fillTurned = (evidence: RatioOff, words: Words, context: RuleContext): readonly Advice[] => {
  const { set, plan } = context
  const names = keyLightsOf(set, 'fill').map((light) => light.name)
  const by = solveFor(0, evidence.off > 0 ? 8 : -8, (stops) => offIn(set.with(...byStops(names, stops))), 0)
  const turned = by === undefined ? [] : names.flatMap((name) => turnLight(plan, name, by, 'nearest') ?? [])
  const given =
    turned.length === 0
      ? undefined
      : after(set.with(...turned.map((one) => one.change)), evidence, words, context)
  return given === undefined ? [] : [{ title: turned.map((one) => one.title).join(', '), ...given }]
}

/** Of one fill whose strength is known by itself: what is to meter a figure goes on metering it. */
const fillMoved = (evidence: RatioOff, words: Words, context: RuleContext): readonly Advice[] => {
  const { set } = context
  const fills = keyLightsOf(set, 'fill')
  const [fill] = fills
  if (fill === undefined || fills.length > 1 || fill.at.by === 'camera' || fill.unit.kind === 'window')
    return []
  const farthest = 2 ** (Math.abs(evidence.off) / 2 + 1)
  const turned = solveDistance(
    set,
    fill,
    (today) => (evidence.off > 0 ? Math.max(0.4, today / farthest) : today * farthest),
    offIn,
  )
  const given = turned && after(set.with(turned.change), evidence, words, context)
  return turned === undefined || given === undefined ? [] : [{ title: turned.title, ...given }]
}
