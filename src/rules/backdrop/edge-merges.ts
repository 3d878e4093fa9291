import type { Plan } from '../../language/plan.js'
import { difference, type Figure } from '../../light/figure.js'
import { linearOfCode, recordedLinear, srgbCode } from '../../picture/tone.js'
import { dot, subtract, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { turnLight } from '../gear.js'
import { hairShine, hairTone, hairU, rimStart } from '../hair.js'
import { backdropMissing, toneUnjudged } from '../known.js'
import { towardLight } from '../light-direction.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { backdropLights, shareAt } from './on-the-backdrop.js'
import { type OutlinePlace, outlinePlaces, turnedIn } from './outline.js'

const portrait = (hair: string, surface: string, wanted: string, more = ''): string => `plan: 1
title: Portrait before a plain backdrop
camera: { lens: 85 mm, at: { distance: 2.4 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person, ${hair} }
backdrop: { surface: ${surface}, behind: 1.5 m }
lights:
  key: { unit: head 200 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 40 deg left, distance: 1.3 m, height: 2 m } }
${more}wanted: { framing: head and shoulders, backdrop: ${wanted} }
`

const rims = `  rim-left: { unit: head 200 Ws, modifier: strip 30 x 120 cm, grid: 40 deg, meters: f/5.6, at: { angle: 125 deg left, distance: 1.3 m, height: 2.1 m } }
  rim-right: { like: rim-left, mirrored: true }
  hair: { unit: head 200 Ws, modifier: strip 30 x 120 cm, lying: true, grid: 40 deg, meters: f/5.6, at: { angle: 180 deg, distance: 1.1 m, height: 2.5 m } }
`

const paperLight = (meters: string): string =>
  `  paper: { role: backdrop, unit: head 200 Ws, modifier: standard reflector, meters: ${meters}, at: { left: 0 m, before-backdrop: 1.2 m, height: 1 m } }\n`

interface Merges extends Evidence {
  readonly part: OutlinePlace['part']
  /** Where it merges, the most alike first. */
  readonly places: readonly Compared[]
}

export const edgeMerges = rule<Merges>({
  id: 'edge-merges',
  family: 'backdrop',
  level: 'note',
  finds: 'hair or clothes that record like the backdrop behind them, so that the outline is lost',
  limits: {
    apart: {
      value: 1 / 2,
      unit: 'stop',
      says: 'between the outline and the backdrop behind it, at least; darker than the black limit counts as black',
    },
    black: { value: 20, unit: 'sRGB', says: 'and darker is all one black' },
  },
  why: 'Dark hair before a black curtain is a face without a head. What parts a subject from its backdrop is a step of tone at the outline, from a light behind it or from another backdrop.',
  formula:
    'ρ·2^x, x = log2(H·S / (C·N²)), against that of the backdrop seen past it: flat on the surface where it has turned 45 degrees from the outline toward the camera, or on the outline itself where light from behind makes that the lighter',
  sources: [
    { kind: 'standard', says: 'incident metering: ISO 2720; sRGB: IEC 61966-2-1' },
    { kind: 'memory', says: 'hair gives back 0.04 (dark), 0.08 (brown), 0.25 (fair) of light from in front' },
    {
      kind: 'common practice',
      says: 'light from behind at its starting level (level with the key on dark hair, a stop under on brown, two on fair) draws a line of about half white',
    },
    {
      kind: 'common practice',
      says: 'half a stop between an outline and what is behind it is the least that shows',
    },
  ],
  basis: 'incident metering, ISO 2720; tones of hair from memory; the limit is common practice',
  fires: [
    {
      title: 'dark hair, black curtain, nothing from behind',
      plan: portrait('hair: dark', '{ reflectance: 0.02 }', 'black'),
    },
    {
      title: 'a white shirt on a paper just as white',
      plan: portrait('reflectance: 0.85', 'white paper', 'any', paperLight('f/5.6')),
    },
    {
      title: 'almost the same grey',
      plan: portrait('reflectance: 0.18', 'grey paper', 'any', paperLight('f/4.5')),
    },
  ],
  passes: [
    {
      title: 'the same hair with lights from behind',
      plan: portrait('hair: dark', '{ reflectance: 0.02 }', 'black', rims),
    },
    {
      title: 'the same hair before a lit grey',
      plan: portrait('hair: dark', 'grey paper', 'grey', paperLight('f/5.6')),
    },
    {
      title: 'a black bottle before black: what it mirrors is not judged',
      plan: portrait('finish: glossy, reflectance: 0.04', '{ reflectance: 0.02 }', 'black').replace(
        'kind: person',
        'kind: object, height: 30 cm, width: 8 cm, stands-on: { height: 1.2 m }',
      ),
    },
    {
      title: 'grey clothes on white',
      plan: portrait('reflectance: 0.18', 'white paper', 'any', paperLight('f/5.6')),
    },
  ],

  needs: (context) => {
    const { plan } = context
    if (plan.subject.kind === 'group') return 'silent'
    if (plan.backdrop === undefined || plan.backdrop.sky !== undefined) return 'silent'
    const parts = partsOf(plan)
    if (parts.length === 0 && toneUnjudged(plan) !== undefined) return toneUnjudged(plan)
    if (parts.length === 0)
      return plan.subject.kind === 'person'
        ? {
            because: 'the plan says neither what hair nor how light the clothes are',
            enable: { pointer: '/subject/hair', text: 'hair: dark' },
          }
        : 'silent'
    return backdropMissing(context, 'whole')
  },

  detect: (context) => {
    const { set, plan, limits } = context
    const compared = outlinePlaces(set).flatMap((place) => compare(place, context) ?? [])
    return partsOf(plan).flatMap((part): Merges[] => {
      const places = compared
        .filter((one) => one.place.part === part && one.apart < limits.apart!)
        .sort((a, b) => a.apart - b.apart)
      const [least] = places
      if (least === undefined) return []
      return [
        {
          pointer: part === 'hair' ? '/subject/hair' : '/subject/reflectance',
          also: [{ pointer: '/backdrop/surface', says: 'before this' }],
          beyond: { stops: limits.apart! - least.apart, u: least.u },
          measured: {
            apart: { value: least.apart, unit: 'stop', u: least.u, limit: limits.apart!, side: 'at-least' },
            outline: { value: srgbCode(least.linear), unit: 'sRGB' },
            backdrop: { value: srgbCode(least.backdrop), unit: 'sRGB' },
          },
          part,
          places,
        },
      ]
    })
  },

  tell: ({ part, places }, words, { plan, limits }) => {
    const [least] = places
    const what =
      part === 'hair'
        ? `${plan.subject.hair} hair`
        : plan.subject.kind === 'object'
          ? 'the subject'
          : 'the clothing'
    const [outline, backdrop] = [srgbCode(least!.linear), srgbCode(least!.backdrop)]
    const black = limits.black!
    return {
      message: `${what} merges with the backdrop ${words.list(places.map(({ place }) => place.where))}: ${
        outline <= black && backdrop <= black
          ? `both record black (sRGB ${outline} and ${backdrop})`
          : `${words.tone(outline)} before ${words.tone(backdrop)}, ${words.howMany(least!.apart)} apart`
      }`,
      why: `${words.howMany(limits.apart!)} is the least that shows; every light that is on is counted, from behind too`,
    }
  },

  mend: (evidence, words, context) => [
    ...fromBehind(evidence, words, context),
    ...backdropTurned(evidence, words, context),
  ],
})

const bodyIsJudged = (plan: Plan): boolean =>
  plan.places.stated('/subject/reflectance') && toneUnjudged(plan) === undefined

/** What the plan says the tone of. A default is no reason to speak of clothes. */
const partsOf = (plan: Plan): readonly OutlinePlace['part'][] => [
  ...(plan.subject.hair === undefined ? [] : (['hair'] as const)),
  ...(bodyIsJudged(plan) ? (['body'] as const) : []),
]

const reflectanceOf = ({ part }: OutlinePlace, { subject }: Plan): number =>
  part === 'hair' ? hairTone[subject.hair ?? 'dark'] : subject.reflectance

interface Compared {
  readonly place: OutlinePlace
  /** Stops between outline and backdrop where they differ most; both no darker than black, no lighter than white. */
  readonly apart: number
  readonly u: number
  /** Recorded where that step is. */
  readonly linear: number
  readonly backdrop: number
}

/**
 * How far the surface has turned toward the camera. A finger's breadth inside the outline of a head it is 45 degrees;
 * nearer the edge light from in front always fades, which parts nothing, but light from behind draws a bright line.
 */
const inward = { band: (45 * Math.PI) / 180, line: [0, (20 * Math.PI) / 180] }

const compare = (place: OutlinePlace, context: RuleContext): Compared | undefined => {
  const { set, plan, limits, u } = context
  const { surface } = plan.backdrop!
  const backdrop = flatAt(set, place.behind, [0, -1, 0])
  if (backdrop === undefined) return undefined
  const behind = recordedLinear(surface.reflectance, backdrop.stops)
  const least = linearOfCode(limits.black!)
  const tone = (linear: number): number => Math.log2(Math.min(1, Math.max(least, linear)))
  const own = Math.hypot(surface.u, place.part === 'hair' ? hairU : 0)
  const shine = place.part === 'hair' ? shineAt(place, set) : 0
  const step = (by: number, more: number): Compared & { readonly over: number } => {
    const there = flatAt(set, place.at, turnedIn(place, set.scene.camera.eye, by))
    const linear = (there === undefined ? 0 : recordedLinear(reflectanceOf(place, plan), there.stops)) + more
    const over = tone(linear) - tone(behind)
    const figure = there === undefined ? backdrop : difference(there, backdrop)
    return { place, over, apart: Math.abs(over), u: Math.hypot(u(figure), own), linear, backdrop: behind }
  }
  return inward.line
    .map((by) => step(by, shine))
    .filter(({ over }) => over > 0)
    .reduce((widest, one) => (one.apart > widest.apart ? one : widest), step(inward.band, 0))
}

/** Linear value that the shine of hair adds to its outline, from the lights behind it that look at this side of it. */
const shineAt = (place: OutlinePlace, set: ComputedSet): number => {
  const { scene, plan } = set
  const behind = set.lit.filter(({ name }) => {
    const toward = towardLight(scene, name, place.at)
    return (
      toward !== undefined &&
      dot(toward, subtract(scene.camera.eye, place.at)) < 0 &&
      dot(toward, place.normal) > 0
    )
  })
  return behind.reduce((sum, { name }) => {
    const there = set.reading({ at: place.at, of: [name], dome: 'raised', faces: { light: name } })
    const over = there?.overCamera.stops ?? Number.NEGATIVE_INFINITY
    return sum + recordedLinear(hairShine(plan.subject.hair ?? 'dark'), over)
  }, 0)
}

const flatAt = (set: ComputedSet, at: Vec3, normal: Vec3): Figure | undefined =>
  set.reading({ at, of: 'all', dome: 'flat', faces: { direction: normal } })?.overCamera

/** Stops over the limit that a mend aims at: light on hair is no exact thing. */
const clear = 1 / 2

/** More than this over the key no rim is set. */
const highestRim = 1

/** What a light behind the subject must meter at the outline: enough to stand off, and for hair no less than it is begun at. */
const fromBehind = ({ part, places }: Merges, words: Words, context: RuleContext): readonly Advice[] => {
  const { set, plan, limits } = context
  const [least] = places
  if (set.key === undefined || least === undefined) return []
  const wanted = Math.max(linearOfCode(limits.black!), least.backdrop) * 2 ** (limits.apart! + clear)
  const hair = part === 'hair' ? (plan.subject.hair ?? 'dark') : undefined
  const gives = hair === undefined ? plan.subject.reflectance : hairShine(hair)
  const needed = Math.log2(wanted / gives) - set.key.overCamera.stops
  const over = hair === undefined ? needed : Math.max(needed, rimStart[hair])
  if (wanted > 1 || over > highestRim) return []
  return [
    {
      title: `${hair === undefined ? 'a rim light' : 'a rim or hair light'} from behind that meters ${words.f(set.key.fNumber * 2 ** (over / 2))} there, the dome toward it`,
      gives: `${over > needed ? 'a bright line round it' : `an outline ${words.howMany(limits.apart! + clear)} lighter than the backdrop`}, the light ${words.against(over, 'the key')}`,
      costs: 'a light on a boom or at the edge of the frame; keep it off the lens and the backdrop',
    },
  ]
}

/** The backdrop so much lighter, or darker, that no part of the outline comes near it. */
const backdropTurned = ({ places }: Merges, words: Words, context: RuleContext): readonly Advice[] => {
  const { set, plan, limits } = context
  const view = set.backdropView
  const [least] = places
  if (view === undefined || least === undefined) return []
  const black = plan.wanted.backdrop?.tone === 'black'
  const by = limits.apart! + clear - least.apart
  const names = backdropLights(set).map((light) => light.name)
  const up = least.backdrop >= least.linear
  if (names.length === 0 || shareAt(set, view.middle, names) < 0.7)
    return black
      ? [{ title: 'a dark grey backdrop with light of its own, in place of the black one' }]
      : [{ title: `a ${up ? 'lighter' : 'darker'} backdrop, or a light of its own on it` }]
  const turned = names.flatMap((name) => turnLight(plan, name, up ? by : -by) ?? [])
  if (turned.length === 0 || turned.some((one) => one.short > 0)) return []
  const after = set.with(...turned.map((one) => one.change))
  const middle = after.backdropView?.middle
  return middle === undefined
    ? []
    : [
        {
          title: turned.map((one) => one.title).join(', '),
          gives: `the backdrop records ${words.tone(middle.srgb)} in its middle`,
        },
      ]
}
