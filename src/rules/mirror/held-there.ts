/** A light or panel elsewhere as advice: a light turned so that it meters the same. */
import type { Scene } from '../../scene/scene.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import { meterPlace } from '../../set/receptor-at.js'
import { rolePoint } from '../../set/role-point.js'
import type { Turned } from '../gear.js'
import type { Mend } from '../rule.js'
import { allHeld } from '../solving.js'
import type { Words } from '../words.js'
import { settingUntil } from './setting-until.js'
import { asideKnob, type Thing, upKnob } from './things.js'

/** Stops: less more or less power is not told; more than that is another light. Common practice, no source. */
const noticed = 0.1
const mostMore = 2

export const heldThere = (
  set: ComputedSet,
  { of, name }: Thing,
  turned: Turned | undefined,
  gives: string,
  costs: readonly string[],
  words: Words,
): readonly Mend[] => {
  if (turned === undefined) return []
  const changed = set.with(turned.change)
  const after = of === 'light' ? allHeld(set, changed, [name]) : changed
  const [was, is] = [set.strength(name), after.strength(name)]
  const more = was === undefined || is === undefined ? 0 : Math.log2(is.candelaSeconds / was.candelaSeconds)
  if (
    more > mostMore ||
    (of === 'light' && hiddenOf(after, name) > Math.max(mostHidden, hiddenOf(set, name)))
  )
    return []
  const power =
    Math.abs(more) < noticed
      ? []
      : [`${words.howMany(more)} ${more > 0 ? 'more' : 'less'} power for the same reading`]
  return [{ title: turned.title, gives, costs: [...costs, ...power].join('; '), after }]
}

/** Share of what would come straight from it; a light of which more is hidden has something before it. Common practice, no source. */
const mostHidden = 0.25

/** By the one table, panel or other light that hides most, where the light does its job. */
const hiddenOf = (set: ComputedSet, name: string): number => {
  const { plan, scene } = set
  const place = meterPlace(plan, scene, { at: rolePoint(plan.lights.get(name)!), of: [name] })
  if (place === undefined) return 0
  const gear = new Set(
    scene.solids.flatMap(({ of, name: one }) => (of === 'figure' || one === name ? [] : [one])),
  )
  return Math.max(0, ...[...set.hides(place.receptor, name)].map(([by, share]) => (gear.has(by) ? share : 0)))
}

/** Metres and radians: further than this it does another job. */
const farthest = { metres: 1.2, radians: (45 * Math.PI) / 180 }

/** Aside or round, and up or down, each by as little as will do. */
export const movedAndHeldUntil = (
  set: ComputedSet,
  thing: Thing,
  wanted: (scene: Scene) => boolean,
  gives: string,
  words: Words,
): readonly Mend[] =>
  [asideKnob(set, thing), upKnob(set, thing)].flatMap((knob) => {
    const today = knob && knobToday(set.plan, knob)
    if (knob === undefined || today === undefined) return []
    const most = knob.knob === 'light-angle' || knob.knob === 'light-up' ? farthest.radians : farthest.metres
    const away = (turned: Turned): number => Math.abs(turned.change.to - today)
    const ways = [
      settingUntil(set, thing, knob, 1, most, wanted),
      settingUntil(set, thing, knob, -1, most, wanted),
    ]
      .filter((one) => one !== undefined)
      .sort((a, b) => away(a) - away(b))
    for (const turned of ways) {
      const mends = heldThere(set, thing, turned, gives, [], words)
      if (mends.length > 0) return mends
    }
    return []
  })
