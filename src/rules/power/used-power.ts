/** What share of its full power each flash is fired at. */
import type { FlashUnit, Light } from '../../language/plan.js'
import { lazyOf } from '../../scene/lazy.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { readPower } from '../../units/power.js'
import type { PowerShare } from '../../units/quantity.js'
import { unknownLight } from '../known.js'
import { lightPointer } from '../place-pointer.js'
import type { NotNeeded } from '../rule.js'
import type { Words } from '../words.js'
import { atFull } from './full-power.js'

export interface UsedPower {
  readonly light: Light
  readonly unit: FlashUnit
  readonly share: PowerShare
  /** Standard uncertainty, stops; 0 where the plan states the power. */
  readonly u: number
  /** Its power in the author's words, where that is what it is fired at. */
  readonly written?: string
}

const within = (power: PowerShare, { power: { from, to } }: FlashUnit): PowerShare =>
  Math.min(to, Math.max(from, power)) as PowerShare

/** `1/1000`, where that would come back as 1/1024. */
const writtenFor = ({ plan }: ComputedSet, light: string, share: number): Pick<UsedPower, 'written'> => {
  const written = plan.places.written(lightPointer(light, 'power'))
  const read = written === undefined ? undefined : readPower(written)
  const holds = read?.ok === true && read.value.kind === 'share' && stopsApart(read.value.share, share) < 0.06
  return holds ? { written: written! } : {}
}

const stopsApart = (a: number, b: number): number => Math.abs(Math.log2(a / b))

const flashesOn = ({ plan }: ComputedSet): readonly (Light & { readonly unit: FlashUnit })[] =>
  [...plan.lights.values()].filter(
    (light): light is Light & { readonly unit: FlashUnit } => light.on && light.unit.kind === 'flash',
  )

/** Of every flash that is on and of which it is known: as set, else what it takes to give what it gives. */
export const usedPowers = lazyOf((set: ComputedSet): readonly UsedPower[] =>
  flashesOn(set).flatMap((light): UsedPower[] => {
    const { unit, power } = light
    // Beyond its range it stays at the end of it, which is told as that.
    if (power !== undefined) {
      const share = within(power, unit)
      return [{ light, unit, share, u: 0, ...writtenFor(set, light.name, share) }]
    }
    const [now, full] = [set.strength(light.name), atFull(set, light)]
    if (now === undefined || full === undefined) return []
    // What it cannot give at all is told as that: it then fires at full.
    const share = Math.min(unit.power.to, now.candelaSeconds / full.candelaSeconds)
    return [{ light, unit, share: share as PowerShare, u: full.u }]
  }),
)

/** Why no flash can be judged by its power; `silent` without a flash. */
export const usedPowersMissing = (set: ComputedSet): NotNeeded | 'silent' | undefined => {
  const [first] = flashesOn(set)
  if (first === undefined) return 'silent'
  return usedPowers(set).length > 0 ? undefined : unknownLight(first, set)
}

/** Without a flash there is nothing to ask. */
export const anyFlash = (set: ComputedSet): boolean => flashesOn(set).length > 0

/** `full power`, `about 1/4 + 0.3`. */
export const powerText = ({ unit, share, u, written }: UsedPower, words: Words): string =>
  `${u > 0 ? 'about ' : ''}${share > 1 - 1e-3 ? 'full power' : (written ?? words.power(share, unit.power.step))}`
