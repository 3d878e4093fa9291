import type { Light } from '../../language/plan.js'
import type { LightColour } from '../../light/colour/light-colour.js'
import { miredOf } from '../../light/colour/mired.js'
import { type Apart, colourApart, type Mix, mixOf } from '../../light/colour/mix.js'
import { usualDuv, xyzOfWhite } from '../../light/colour/white.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { ambientName } from '../../set/transport.js'
import type { Kelvin } from '../../units/quantity.js'
import { firstMissing, keyMissing } from '../known.js'
import { whom } from '../place-words.js'
import { type Evidence, type NotNeeded, rule } from '../rule.js'
import { reached } from '../tiers.js'
import { unlikeKey } from './among-lights.js'
import { facing, keyAsk } from './balance.js'
import { apartText, castText, greenerThanUsual, kelvinText, miredText } from './casts.js'
import { gelOn } from './gel-on.js'

const balanced = (balance: string, key: string, more = ''): string => `plan: 1
title: A white balance by hand
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100, white-balance: ${balance} }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 40 deg left, distance: 1.4 m, height: 2 m }, ${key} }
${more}`

interface BalanceOff extends Evidence {
  readonly face: Mix
  readonly balance: Kelvin
  readonly apart: Apart
  /** Key and fill lights that are of another colour than the balance by themselves. */
  readonly off: readonly Light[]
}

export const whiteBalanceOff = rule<BalanceOff>({
  id: 'white-balance-off',
  family: 'colour',
  level: 'warning',
  finds: 'a white balance that is not that of the light on the subject',
  limits: {
    note: { value: 10, unit: 'mired', says: 'between the balance and the light at the subject' },
    warning: { value: 20, unit: 'mired', says: 'between the balance and the light at the subject' },
  },
  why: 'What the camera is balanced for records neutral; all else takes the cast of the difference. A gel, a modifier or a lamp moves the light, and the balance does not follow by itself.',
  formula:
    'the colour of key, fill and the light of the place at the subject, mixed in tristimulus values, against white of the balance; their distance in the 1960 diagram as mireds of the black-body locus there',
  sources: [
    { kind: 'standard', says: 'tristimulus values and the 1960 diagram: CIE 15' },
    { kind: 'memory', says: 'a cast of ten mired is seen beside a neutral, twenty by itself' },
    {
      kind: 'memory',
      says: 'what sheets of gel do, but for the shifts of full CTO and of CTB other than 3/4, which are published',
    },
  ],
  basis: 'tristimulus values, CIE 15; the limits are common practice',
  fires: [
    { title: 'flash at a balance for tungsten', plan: balanced('3200 K', 'colour: 5500 K') },
    {
      title: 'a gel that the balance does not know',
      plan: balanced('5500 K', 'colour: 5500 K, gel: { shift: +26 mired, loss: 1/6 stop }'),
    },
    {
      title: 'bulbs of the place at a slow shutter',
      plan: balanced(
        '5500 K',
        'colour: 5500 K',
        'ambient: { reads: f/5.6, shutter: 1/125, iso: 100, colour: 2900 K }\n',
      ),
    },
    { title: 'a green lamp', plan: balanced('5500 K', 'colour: 5500 K, duv: 0.02') },
  ],
  passes: [
    {
      title: 'warm light of the place far under the flash',
      plan: balanced(
        '5500 K',
        'colour: 5500 K',
        'ambient: { reads: f/2, shutter: 1/15, iso: 100, colour: 2900 K }\n',
      ),
    },
    {
      title: 'the key is right, and the fill is told of by itself',
      plan: balanced(
        '3200 K',
        'colour: 3200 K',
        '  fill: { unit: led panel, colour: 5600 K, meters: f/4, at: { angle: 40 deg right, distance: 1.6 m, height: 1.7 m } }\n',
      ),
    },
    { title: 'as the light is', plan: balanced('5600 K', 'colour: 5500 K') },
    {
      title: 'with the gel',
      plan: balanced('4800 K', 'colour: 5500 K, gel: { shift: +26 mired, loss: 1/6 stop }'),
    },
    {
      title: 'a colour on purpose',
      plan: balanced('5500 K', 'gel: { colour: red, loss: 2 stops }'),
    },
  ],

  needs: (context) => {
    const { set, plan } = context
    if (plan.camera.whiteBalance === undefined) return 'silent'
    if (set.keyLights.some(({ name }) => set.lightColour(name)?.deep === true)) return 'silent'
    const ofPlace: NotNeeded = {
      because: 'the plan does not say of what colour the ambient light is',
      enable: { pointer: '/ambient/colour', text: 'colour: 3000 K' },
    }
    if (onlyAmbient(set)) return set.lightColour(ambientName) === undefined ? ofPlace : undefined
    return firstMissing(
      () => keyMissing(context),
      () => {
        const unknown = set.keyLights.find(({ name }) => set.lightColour(name) === undefined)
        return (
          unknown && {
            because: `the plan does not say of what colour ${unknown.name} is`,
            enable: { pointer: `/lights/${unknown.name}/colour`, text: 'colour: 5600 K' },
          }
        )
      },
      () => ((set.colour(keyAsk, facing(set))?.unknown ?? 0) > mostUnknown ? ofPlace : undefined),
    )
  },

  detect: ({ set, plan, limits }) => {
    const balance = plan.camera.whiteBalance!
    const light = whiteLight(balance)
    const white = mixOf([light], 0)
    const right = set.keyLights.filter(({ name }) => fits(set, name, light.colour, limits.note!))
    const odd = unlikeKey(set, limits.note!)
    // Where the key is right and another light is not, that is told of as lights that differ.
    const told = odd !== undefined && right.includes(odd.key) ? odd.others.map(({ name }) => name) : []
    const face = set.colour(
      keyAsk,
      facing(set).filter((name) => !told.includes(name)),
    )
    if (face === undefined || white === undefined) return []
    const apart = set.colourApart(face, white)
    const off = set.keyLights.filter((one) => !right.includes(one) && !told.includes(one.name))
    // Whoever wants the room in the exposure may want its colour too.
    const isWanted = off.length === 0 && plan.wanted.ambient === 'any' && set.lit.length > 0
    const { level, limit, beyond } = reached((most) => apart.mired - most, apart.u, [
      ...(isWanted ? [] : [{ level: 'warning', limit: limits.warning! } as const]),
      { level: 'note', limit: limits.note! },
    ])
    return [
      {
        pointer: '/camera/white-balance',
        beyond,
        level,
        measured: { off: { value: apart.mired, unit: 'mired', u: apart.u, limit, side: 'at-most' } },
        face,
        balance,
        apart,
        off,
      },
    ]
  },

  tell: ({ face, balance, apart }, words, { plan }) => ({
    message: `${whom(plan)} comes out ${castText(apart)} than neutral: the light there is ${kelvinText(face.kelvin)}, ${apartText(apart)} from the balance of ${kelvinText(balance)}`,
    why: `the light of ${words.list(face.parts.map(({ light }) => (light === ambientName ? 'the place' : light)))} at the subject${face.parts.length > 1 ? ', mixed' : ''}`,
  }),

  mend: ({ face, off, balance }, words, { set }) => {
    const [first] = off
    const like = off.filter(({ name }) => fits(set, name, set.lightColour(first!.name)!, alike))
    const gel = gelOn(set, like, whiteLight(balance).colour, words, {
      gives: 'light of the colour that the camera expects',
    })
    const kelvin = Math.round(face.kelvin / step) * step
    const isTinted = Math.abs(greenerThanUsual(face)) > tinted
    return [
      {
        title:
          isTinted && Math.abs(kelvin - balance) <= step
            ? 'the tint of the white balance set against a grey card'
            : `camera.white-balance → ${kelvin} K${isTinted ? ', its tint set against a grey card' : ''}`,
        gives: 'a neutral subject',
      },
      { title: 'a custom balance from a grey card in this light' },
      ...(gel === undefined ? [] : [gel]),
      ...(off.length === 0 && set.lit.length > 0
        ? [
            {
              title:
                'the ambient light further under the flash: a faster shutter up to sync, or lower ISO with more power',
              gives: 'the colour of the flash, which fits the balance',
            },
          ]
        : []),
    ]
  },

  inShort: ({ measured }) => `the white balance is ${miredText(measured.off!.value)} off`,
})

/** As cameras are set, kelvin. */
const step = 50

/** Greener or less green than usual by so much, temperature alone does not make it neutral. */
const tinted = 0.004

/** A larger share of the light at the face of a colour that nothing tells leaves the whole untold. */
const mostUnknown = 0.1

/** Lights so near in colour take one gel, mired. */
const alike = 10

const onlyAmbient = (set: ComputedSet): boolean =>
  set.giving.includes(ambientName) && [...set.plan.lights.values()].every(({ on }) => !on)

const fits = (set: ComputedSet, light: string, to: LightColour, limit: number): boolean => {
  const own = set.lightColour(light)
  return own !== undefined && colourApart(own, to).mired <= limit
}

/** What the camera is balanced for, as a light of which nothing is uncertain. */
const whiteLight = (kelvin: Kelvin) => {
  const white = { kelvin, duv: usualDuv(kelvin) }
  const xyz = xyzOfWhite(white)
  const colour = {
    ...white,
    xyz,
    mired: miredOf(kelvin),
    causes: new Map(),
    told: true,
    deep: false,
  }
  return { light: 'white balance', xyz, colour }
}
