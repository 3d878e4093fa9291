import { miredOf } from '../../light/colour/mired.js'
import { type Mix, mixOf } from '../../light/colour/mix.js'
import { usualDuv, xyzOfWhite } from '../../light/colour/white.js'
import type { Kelvin } from '../../units/quantity.js'
import { firstMissing, keyMissing } from '../known.js'
import { whom } from '../place-words.js'
import { type Evidence, rule } from '../rule.js'
import { reached } from '../tiers.js'
import { keyMix } from './balance.js'
import { castText, gelFor, kelvinText, miredText } from './casts.js'

const balanced = (balance: string, key: string, more = ''): string => `plan: 1
title: A white balance by hand
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100, white-balance: ${balance} }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, at: { angle: 40 deg left, distance: 1.4 m, height: 2 m }, ${key} }
${more}`

interface BalanceOff extends Evidence {
  readonly key: Mix
  readonly balance: Kelvin
  readonly says: string
  /** The camera over the light, mired. */
  readonly shift: number
}

export const whiteBalanceOff = rule<BalanceOff>({
  id: 'white-balance-off',
  family: 'colour',
  level: 'warning',
  finds: 'a white balance that is not that of the light on the subject',
  limits: {
    note: { value: 10, unit: 'mired', says: 'between the balance and the key reading' },
    warning: { value: 20, unit: 'mired', says: 'between the balance and the key reading' },
  },
  why: 'What the camera is balanced for records neutral; all else takes the cast of the difference. A gel, a modifier or a lamp moves the light, and the balance does not follow by itself.',
  formula:
    'the colour of key and fill at the subject, mixed in tristimulus values, against white of the balance; their distance in the 1960 diagram as mireds of the black-body locus there',
  sources: [
    { kind: 'standard', says: 'tristimulus values and the 1960 diagram: CIE 15' },
    { kind: 'memory', says: 'a cast of ten mired is seen beside a neutral, twenty by itself' },
  ],
  basis: 'tristimulus values, CIE 15; the limits are common practice',
  fires: [
    { title: 'flash at a balance for tungsten', plan: balanced('3200 K', 'colour: 5500 K') },
    {
      title: 'a gel that the balance does not know',
      plan: balanced('5500 K', 'colour: 5500 K, gel: { shift: +26 mired, loss: 1/6 stop }'),
    },
    { title: 'a green lamp', plan: balanced('5500 K', 'colour: 5500 K, duv: 0.02') },
  ],
  passes: [
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
    )
  },

  detect: ({ set, plan, limits }) => {
    const balance = plan.camera.whiteBalance!
    const key = keyMix(set)
    const white = mixOf([whiteLight(balance)], 0)
    if (key === undefined || white === undefined) return []
    const apart = set.colourApart(key, white)
    const { level, limit, beyond } = reached((most) => apart.mired - most, apart.u, [
      { level: 'warning', limit: limits.warning! },
      { level: 'note', limit: limits.note! },
    ])
    return [
      {
        pointer: '/camera/white-balance',
        beyond,
        level,
        measured: { off: { value: apart.mired, unit: 'mired', u: apart.u, limit, side: 'at-most' } },
        key,
        balance,
        says: castText(apart),
        shift: miredOf(balance) - key.mired,
      },
    ]
  },

  tell: ({ key, balance, says, measured }, _words, { plan }) => ({
    message: `${whom(plan)} comes out ${says} than neutral: the light there is ${kelvinText(key.kelvin)}, ${miredText(measured.off!.value)} from the balance of ${kelvinText(balance)}`,
    why: 'key and fill as they mix at the subject',
  }),

  mend: ({ key, shift }) => {
    const gel = gelFor(shift)
    return [
      {
        title: `camera.white-balance → ${Math.round(key.kelvin / 50) * 50} K${Math.abs(key.duv - usualDuv(key.kelvin)) > 0.004 ? ', its tint set against a grey card' : ''}`,
        gives: 'a neutral subject',
      },
      { title: 'a custom balance from a grey card in this light' },
      ...(gel === undefined
        ? []
        : [{ title: `${gel.text} on key and fill`, gives: 'light of the colour that the camera expects' }]),
    ]
  },

  inShort: ({ measured }) => `the white balance is ${miredText(measured.off!.value)} off`,
})

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
