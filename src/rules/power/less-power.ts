/** Ways to get along with less power from a flash: speed, aperture, more units. */
import type { FlashUnit, Light } from '../../language/plan.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Change } from '../../set/knobs.js'
import { markedAperture, markedSpeedOver, type Turned, turnLight } from '../gear.js'
import type { Mend } from '../rule.js'
import { whatGains } from '../steady-gains.js'
import type { Words } from '../words.js'
import { canBeDoubled } from './doubled.js'

/** A faster speed with all flashes down by as much: exposure and ratios stay. */
export const fasterAndDown = (
  set: ComputedSet,
  stops: number,
  gives: (after: ComputedSet) => string,
  words: Words,
): readonly Mend[] => {
  const { iso: today } = set.plan.camera
  const iso = markedSpeedOver(today * 2 ** stops)
  if (iso === undefined) return []
  // What is to meter an f-number gives less for it by itself.
  const lights = flashes(set).filter(({ name }) => set.strength(name)?.from !== 'meters')
  const camera = { title: `camera.iso → ${iso}`, change: { knob: { knob: 'iso' }, to: iso } } as const
  return allDown(set, camera, lights, Math.log2(iso / today), 'more noise', gives, words)
}

/** The aperture opened with all flashes down by as much. */
export const openAndDown = (
  set: ComputedSet,
  stops: number,
  gives: (after: ComputedSet) => string,
  words: Words,
): readonly Mend[] => {
  const { aperture: today } = set.plan.camera
  const to = markedAperture(today * 2 ** (-stops / 2), 'under')
  if (to < widest - 0.01) return []
  const camera = {
    title: `camera.aperture → ${words.f(to)}`,
    change: { knob: { knob: 'aperture' }, to },
  } as const
  return allDown(set, camera, flashes(set), 2 * Math.log2(today / to), 'less depth of field', gives, words)
}

const allDown = (
  set: ComputedSet,
  camera: { readonly title: string; readonly change: Change },
  lights: readonly Light[],
  stops: number,
  costs: string,
  gives: (after: ComputedSet) => string,
  words: Words,
): readonly Mend[] => {
  const down = lights.flatMap(({ name }) => turnedDown(set, name, stops))
  const after = set.with(camera.change, ...down.map(({ turned }) => turned.change))
  return [
    {
      title: [camera.title, ...down.map(({ turned }) => turned.title)].join(', '),
      gives: gives(after),
      costs: [costs, ...whatGains(set, stops, words), ...atTheirLeast(down, words)].join('; '),
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
