/** What brings lights of unlike colour together. */
import type { Light } from '../../language/plan.js'
import type { LightColour } from '../../light/colour/light-colour.js'
import { colourApart } from '../../light/colour/mix.js'
import { usualDuv } from '../../light/colour/white.js'
import { ambientName } from '../../set/transport.js'
import type { Kelvin } from '../../units/quantity.js'
import type { Mend, RuleContext } from '../rule.js'
import type { Words } from '../words.js'
import type { OddLights } from './among-lights.js'
import { asLight, greenerThanUsual } from './casts.js'
import { canGel, gelOn } from './gel-on.js'
import type { StrayCast } from './stray-cast.js'

export const lampOf = (name: string): string => name.replace(/ modelling lamp$/, '')

export const strayText = (light: string): string =>
  light === ambientName ? 'the ambient light' : `${lampOf(light)}'s modelling lamp`

export const byPower = (one: OddLights['key'], other: OddLights['key']): string =>
  one.unit.kind === 'flash' &&
  other.unit.kind === 'flash' &&
  one.unit.name === other.unit.name &&
  one.power !== other.power
    ? ', by their powers'
    : ''

export const mendOdd = (
  { lights, key }: OddLights,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const names = words.list(lights.map(({ name }) => name))
  const [own, keys] = [set.lightColour(lights[0]!.name)!, set.lightColour(key.name)!]
  const onKey = keyTurns(lights, key, own, keys, plan.camera.whiteBalance)
  const gel = onKey
    ? gelOn(set, [key], own, words, {
        gives: 'both of about one colour',
        costs: 'the white balance goes with it',
      })
    : gelOn(set, lights, keys, words, { gives: 'both of about one colour' })
  const ofOneUnit = byPower(lights[0]!, key) !== ''
  const likeUnits =
    lights.every(({ unit }) => unit.kind === key.unit.kind) &&
    canGel(key) &&
    [...lights, key].every((one) => one.gel === undefined) &&
    colourApart(own, keys).mired < ofMake
  const ways: readonly Mend[] = [
    ...(ofOneUnit
      ? [
          {
            title: `${names} and ${key.name} at about the same power, set apart by distance`,
            gives: 'the same colour from both',
          },
        ]
      : []),
    ...(gel === undefined ? [] : [gel]),
    ...(likeUnits && !ofOneUnit
      ? [{ title: `units of one make and age for ${names} and ${key.name}`, gives: 'one colour' }]
      : []),
  ]
  return ways.length > 0
    ? ways
    : [{ title: 'a white balance between the two', gives: 'half the cast on either side' }]
}

/** Whether it is the key that is to be gelled: never a light that takes none, nor the one that is right already. */
const keyTurns = (
  lights: readonly Light[],
  key: Light,
  own: LightColour,
  keys: LightColour,
  balance: Kelvin | undefined,
): boolean => {
  if (!canGel(key)) return false
  if (!lights.every(canGel)) return true
  if (balance !== undefined) {
    const white = asLight({ kelvin: balance, duv: usualDuv(balance) })
    return colourApart(keys, white).mired > colourApart(own, white).mired
  }
  // A warming gel takes less light than a cooling one; of two as warm the greener is the odd one.
  return Math.abs(own.mired - keys.mired) > alikeMired
    ? own.mired > keys.mired
    : Math.abs(greenerThanUsual(keys)) > Math.abs(greenerThanUsual(own))
}

/** Farther apart than this it is no matter of make and age, mired. */
const ofMake = 40

/** Lights so near in colour take one gel, mired. */
const alike = 10

/** Nearer than this lights are as warm as each other, mired. */
const alikeMired = 5

export const mendStray = (
  { light, under, apart }: StrayCast,
  words: Words,
  { set, limits }: RuleContext,
): readonly Mend[] => {
  if (light !== ambientName) return [{ title: `${strayText(light)} off for the exposure, or dimmed` }]
  const flashes = set.lit.filter(
    ({ unit, name }) => unit.kind === 'flash' && set.lightColour(name)?.deep === false,
  )
  const first = flashes.find((one) => set.keyLights.includes(one)) ?? flashes[0]
  const like = flashes.filter(
    ({ name }) => colourApart(set.lightColour(name)!, set.lightColour(first!.name)!).mired < alike,
  )
  const gel = gelOn(set, like, set.lightColour(light)!, words, {
    more: ', the white balance set to match',
    gives: 'one colour for flash and room',
  })
  // About: in a mixture the cast goes as the share.
  const less = Math.max(0.3, Math.log2(Math.max(1.1, apart.mired / limits.note!)) + 0.3)
  return [
    {
      title: `the ambient light ${words.howMany(less)} further under the flash: a faster shutter up to sync, or lower ISO with more power`,
      gives: `it ${words.howMany(under + less)} under the key`,
    },
    ...(gel === undefined ? [] : [gel]),
    { title: 'lights of the room off, curtains drawn' },
  ]
}
