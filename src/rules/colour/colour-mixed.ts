import type { Plan } from '../../language/plan.js'
import { ambientName } from '../../set/transport.js'
import { firstMissing, keyMissing } from '../known.js'
import { lightPointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, type RuleContext, rule } from '../rule.js'
import { type Reached, reached } from '../tiers.js'
import type { Words } from '../words.js'
import { type OddLights, oddLights, unlikeKey } from './among-lights.js'
import { apartText, castText, kelvinText, miredText } from './casts.js'
import { type StrayCast, shownMired, strayCasts, unlikeStrays } from './stray-cast.js'
import { byPower, lampOf, mendOdd, mendStray, strayText } from './unmix.js'

const two = (key: string, fill: string, more = ''): string => `plan: 1
title: Two lights on one face
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 45 deg left, distance: 1.4 m, height: 2 m }, ${key} }
  fill: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/4, at: { angle: 45 deg right, distance: 1.6 m, height: 1.8 m }, ${fill} }
${more}wanted: { framing: head and shoulders }
`

const inRoom = (shutter: string, ambient = 'colour: 2900 K', key = ''): string => `plan: 1
title: A lit room round the flash
ambient: { reads: f/2.8, shutter: 1/30, iso: 100, ${ambient} }
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: ${shutter}, iso: 100, sync: 1/200 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1.5 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 40 deg left, distance: 1.4 m, height: 2 m }${key} }
wanted: { ratio: { lit-to-shadow: 4:1 } }
`

type Mixed = Evidence &
  ({ readonly odd: OddLights; readonly stray?: never } | { readonly stray: StrayCast; readonly odd?: never })

export const colourMixed = rule<Mixed>({
  id: 'colour-mixed',
  family: 'colour',
  level: 'warning',
  finds:
    'lights of unlike colour that show together: on two sides of a face, on face and backdrop, in the shadows',
  limits: {
    note: { value: 10, unit: 'mired', says: 'between two places of the picture' },
    warning: { value: 20, unit: 'mired', says: 'between two places of the picture' },
    side: {
      value: 2,
      unit: 'stop',
      says: 'under the lit side: as dark as a side is taken to be wanted where no ratio says so',
    },
  },
  why: 'Unlike lights on one subject do not average: they split it, each side in its own colour, and no white balance mends both. Light of the room shows first where the flash is weakest, in the shadows and behind the subject. `ambient: any` lets it into the exposure and behind the subject; that it colours the shadows is then a note.',
  formula:
    'tristimulus values of all lights added at the place where each rules; their distance in the 1960 diagram, as mireds of the black-body locus there; of the ambient at the darkest side',
  sources: [
    { kind: 'standard', says: 'tristimulus values and the 1960 diagram: CIE 15; Duv: ANSI C78.377' },
    {
      kind: 'published',
      says: 'black-body locus: Kang et al. 2002; daylight: CIE 15',
    },
    {
      kind: 'common practice',
      says: 'flash is good to 300 K, and 400 K warmer from full to 1/32 on voltage-regulated heads: reports of practitioners',
    },
    {
      kind: 'derived',
      says: '2900 K four stops under a 5500 K key: 8 mired on the lit side, 28 on a side two stops darker',
    },
    { kind: 'memory', says: 'ten mired are just seen between two lights, twenty at a glance' },
    {
      kind: 'memory',
      says: 'what sheets of gel do, but for the shifts of full CTO and of CTB other than 3/4, which are published',
    },
  ],
  basis: 'tristimulus values, CIE 15; the limits are common practice',
  fires: [
    { title: 'a tungsten fill', plan: two('colour: 5500 K', 'colour: 3400 K') },
    { title: 'two makes', plan: two('colour: 5400 K', 'colour: 6000 K') },
    { title: 'a plus-green lamp', plan: two('colour: 5500 K', 'colour: 5500 K, duv: 0.02') },
    { title: 'the room in the shadows', plan: inRoom('1/60') },
    {
      title: 'window and lamp: the backdrop has its own colour',
      plan: two(
        'colour: 5500 K',
        'colour: 5500 K',
        '  paper: { role: backdrop, unit: led panel, colour: 3200 K, meters: f/4, at: { left: 1 m, before-backdrop: 1 m, height: 1.4 m } }\nbackdrop: { surface: grey paper, behind: 3 m }\n',
      ),
    },
  ],
  passes: [
    { title: 'two of a kind', plan: two('colour: 5500 K', 'colour: 5500 K') },
    { title: 'nobody has said', plan: two('power: 1/4', 'power: 1/8').replaceAll(/meters: f\/\S+, /g, '') },
    {
      title: 'a gel brings them together',
      plan: two('colour: 5500 K, gel: { shift: +112 mired, loss: 1/2 stop }', 'colour: 3400 K'),
    },
    { title: 'a colour on purpose', plan: two('colour: 5500 K', 'gel: { colour: blue, loss: 2 stops }') },
    { title: 'the room far down', plan: inRoom('1/200', 'colour: 5000 K') },
    {
      title: 'flash gelled to the room',
      plan: inRoom('1/60', 'colour: 2900 K', ', colour: 5500 K, gel: { shift: +163 mired, loss: 2/3 stop }'),
    },
  ],

  needs: (context) => {
    const { set, limits, plan } = context
    const some = unlikeKey(set, limits.note!) !== undefined || unlikeStrays(set, limits.note!).length > 0
    if (some) return firstMissing(() => keyMissing(context))
    return plan.ambient !== undefined && plan.ambient.colour === undefined
      ? {
          because: 'the plan does not say of what colour the ambient light is',
          enable: { pointer: '/ambient/colour', text: 'colour: 3000 K' },
        }
      : 'silent'
  },

  detect: ({ set, limits, plan }) => [
    ...strayCasts(set, limits.note!, limits.side!).map((stray): Mixed => {
      const pointer =
        stray.light === ambientName ? '/ambient' : lightPointer(lampOf(stray.light), 'modelling')
      const shown = { ...stray.apart, mired: shownMired(stray) }
      const found = evidence(pointer, shown, limits, strayTiers(plan))
      return {
        ...found,
        measured: { ...found.measured, 'under-key': { value: stray.under, unit: 'stop' } },
        stray,
      }
    }),
    ...oddLights(set, limits.note!).map((odd): Mixed => {
      const { name } = odd.lights[0]!
      return {
        ...evidence(colourPointer(set, name), odd.apart, limits),
        also: [
          ...odd.lights.slice(1).map((one) => ({ pointer: lightPointer(one.name), says: 'as this' })),
          { pointer: colourPointer(set, odd.key.name), says: 'the key' },
        ],
        odd,
      }
    }),
  ],

  tell: (found, words, context) =>
    found.odd === undefined ? tellStray(found.stray, words, context) : tellOdd(found.odd, words, context),

  mend: (found, words, context) =>
    found.odd === undefined ? mendStray(found.stray, words, context) : mendOdd(found.odd, words, context),

  inShort: ({ odd, stray }) => `colours mix: ${miredText((odd ?? stray)!.apart.mired)} between lights`,
})

/** Where the colour is written. */
const colourPointer = (set: RuleContext['set'], light: string): string => {
  const { places } = set.plan
  const own = lightPointer(light, 'colour')
  return places.stated(own) ? own : lightPointer(light, 'unit')
}

type Tier = 'warning' | 'note'

/** Whoever wants the room in the exposure may want its colour too. */
const strayTiers = ({ wanted }: Plan): readonly Tier[] =>
  wanted.ambient === 'any' ? ['note'] : ['warning', 'note']

const evidence = (
  pointer: string,
  { mired, u }: OddLights['apart'],
  limits: RuleContext['limits'],
  tiers: readonly Tier[] = ['warning', 'note'],
): Pick<Evidence, 'pointer' | 'beyond' | 'level' | 'measured'> => {
  const { level, limit, beyond }: Reached = reached(
    (most) => mired - most,
    u,
    tiers.map((tier) => ({ level: tier, limit: limits[tier]! })),
  )
  return {
    pointer,
    beyond,
    level,
    measured: { apart: { value: mired, unit: 'mired', u, limit, side: 'at-most' } },
  }
}

const tellOdd = ({ lights, key, where, apart }: OddLights, words: Words, { set, plan }: RuleContext) => {
  const names = words.list(lights.map(({ name }) => name))
  return {
    message:
      where === 'backdrop'
        ? `the backdrop comes out ${castText(apart)} than ${whom(plan)}: ${apartText(apart)} between ${names} and ${key.name}`
        : `one side of ${whom(plan)} comes out ${castText(apart)} than the other: ${apartText(apart)} between the light of ${names} and of ${key.name}`,
    why: `${lights[0]!.name} is ${ownText(set, lights[0]!.name)}, ${key.name} ${ownText(set, key.name)}${byPower(lights[0]!, key)}`,
  }
}

/** Off the locus by so much a light is called green, in the 1960 diagram. */
const green = 0.006

const greenText = (set: RuleContext['set'], light: string): string => {
  const { duv } = set.lightColour(light)!
  return Math.abs(duv) < green ? '' : ` and is ${duv > 0 ? 'green' : 'magenta'} (duv ${duv.toFixed(3)})`
}

/** `5500 K`, `taken as 5500 K` where nobody has said. */
const ownText = (set: RuleContext['set'], light: string): string => {
  const { kelvin, told } = set.lightColour(light)!
  return `${told ? '' : 'taken as '}${kelvinText(kelvin)}${greenText(set, light)}`
}

const places = {
  'lit side': (subject: string) => `${subject} comes out`,
  'dark side': () => 'the shadow side comes out',
  behind: () => 'what lies behind comes out',
} as const

const tellStray = (
  { light, where, under, apart, key, told }: StrayCast,
  words: Words,
  { set, plan }: RuleContext,
) => ({
  message: `${places[where](whom(plan))} ${castText(apart)}: ${apartText(apart)} off the flash by ${strayText(light)}, ${words.against(-under, 'the key')}`,
  why: `${strayText(light)} is ${kelvinText(set.lightColour(light)!.kelvin)}${greenText(set, light)}, the key ${told ? '' : 'taken as '}${kelvinText(key)}`,
})
