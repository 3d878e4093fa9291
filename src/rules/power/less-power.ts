/** Ways to get along with less power from a flash: speed, aperture, more units. */
import type { FlashUnit, Light } from '../../language/plan.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { markedAperture, markedSpeedOver, type Turned, turnLight } from '../gear.js'
import type { Mend } from '../rule.js'
import { burnsOn, steadyGains } from '../steady-gains.js'
import type { Words } from '../words.js'
import { canBeDoubled } from './doubled.js'

/** A faster speed with all flashes down by as much: exposure and ratios stay. */
export const fasterAndDown = (
  set: ComputedSet,
  stops: number,
  gives: (after: ComputedSet) => string,
  words: Words,
): readonly Mend[] => {
  const { plan } = set
  const iso = markedSpeedOver(plan.camera.iso * 2 ** stops)
  if (iso === undefined) return []
  const by = Math.log2(iso / plan.camera.iso)
  // What is to meter an f-number gives less for it by itself.
  const down = flashes(set)
    .filter(({ name }) => set.strength(name)?.from !== 'meters')
    .flatMap(({ name }) => turnedDown(set, name, by))
  const after = set.with({ knob: { knob: 'iso' }, to: iso }, ...down.map(({ turned }) => turned.change))
  return [
    {
      title: [`camera.iso → ${iso}`, ...down.map(({ turned }) => turned.title)].join(', '),
      gives: gives(after),
      costs: ['more noise', ...whatShows(set, by, words), ...atTheirLeast(down, words)].join('; '),
      after,
    },
  ]
}

/** The aperture opened with all flashes down by as much. */
export const openAndDown = (
  set: ComputedSet,
  stops: number,
  gives: (after: ComputedSet) => string,
  words: Words,
): readonly Mend[] => {
  const { plan } = set
  const aperture = markedAperture(plan.camera.aperture * 2 ** (-stops / 2), 'under')
  if (aperture < widest - 0.01) return []
  const by = 2 * Math.log2(plan.camera.aperture / aperture)
  const down = flashes(set).flatMap(({ name }) => turnedDown(set, name, by))
  const after = set.with(
    { knob: { knob: 'aperture' }, to: aperture },
    ...down.map(({ turned }) => turned.change),
  )
  return [
    {
      title: [`camera.aperture → ${words.f(aperture)}`, ...down.map(({ turned }) => turned.title)].join(', '),
      gives: gives(after),
      costs: ['less depth of field', ...whatShows(set, by, words), ...atTheirLeast(down, words)].join('; '),
      after,
    },
  ]
}

/** Two alike side by side fire at half of the power each. */
export const moreUnits = (
  { light, unit, share }: { readonly light: Light; readonly unit: FlashUnit; readonly share: number },
  stops: number,
  gives: string,
  words: Words,
): readonly Mend[] => {
  if (2 ** stops > 2 + 1e-9 || !canBeDoubled(light)) return []
  const name = unit.name === light.name ? 'unit' : unit.name
  return [
    {
      title: `a second ${name} beside ${light.name}, both at ${words.power(share / 2, unit.power.step)}`,
      gives,
      costs: 'another unit and trigger to carry',
    },
  ]
}

/** Usual lenses for sets go no further. Common practice, no source. */
const widest = 1.8

const flashes = ({ lit }: ComputedSet): readonly Light[] => lit.filter(({ unit }) => unit.kind === 'flash')

interface Down {
  readonly light: string
  readonly turned: Turned
}

const turnedDown = (set: ComputedSet, light: string, stops: number): readonly Down[] => {
  const turned = turnLight(set.plan, light, -stops, 'nearest')
  return turned === undefined ? [] : [{ light, turned }]
}

const atTheirLeast = (down: readonly Down[], words: Words): readonly string[] =>
  down
    .filter(({ turned }) => turned.short > 0.1)
    .map(({ light, turned }) => `${light} goes no lower, and stays ${words.howMany(turned.short)} too strong`)

/** Of what the plan states. */
const whatShows = (set: ComputedSet, stops: number, words: Words): readonly string[] =>
  burnsOn(set).length === 0 ? [] : [steadyGains(set, stops, words)]
