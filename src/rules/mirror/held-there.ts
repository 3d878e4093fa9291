/** A light or panel elsewhere as advice: a light turned so that it meters the same. */
import type { Scene } from '../../scene/scene.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import type { Turned } from '../gear.js'
import type { Mend } from '../rule.js'
import { allHeld } from '../solving.js'
import type { Words } from '../words.js'
import { settingUntil } from './setting-until.js'
import { asideKnob, type Thing, upKnob } from './things.js'

/** Stops: less more or less power is not told. */
const noticed = 0.1

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
  const power =
    Math.abs(more) < noticed
      ? []
      : [`${words.howMany(more)} ${more > 0 ? 'more' : 'less'} power for the same reading`]
  return [{ title: turned.title, gives, costs: [...costs, ...power].join('; '), after }]
}

/** Metres and radians: further than this it does another job. */
const farthest = { metres: 1.2, radians: (45 * Math.PI) / 180 }

/** Aside or round, and up or down, each by as little as will do. */
export const movedUntil = (
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
    const [least] = [
      settingUntil(set, thing, knob, 1, most, wanted),
      settingUntil(set, thing, knob, -1, most, wanted),
    ]
      .filter((one) => one !== undefined)
      .sort((a, b) => away(a) - away(b))
    return heldThere(set, thing, least, gives, [], words)
  })
