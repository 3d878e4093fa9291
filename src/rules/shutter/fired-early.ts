/** A flash that is fired before the shutter is open all over: it dies down while the frame is uncovered. */
import type { Camera, FlashUnit, Light } from '../../language/plan.js'
import { flashTime, regulationOf } from '../../light/flash-time.js'
import { longer, type Pulse, stopsLost } from '../../light/pulse.js'
import { stripShare } from '../../light/shutter-loss.js'
import { curtainTravel, fasterThanSync } from '../../picture/shutter.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { PowerShare, Seconds } from '../../units/quantity.js'
import type { Mend } from '../rule.js'
import { steadyGains } from '../steady-gains.js'
import type { Words } from '../words.js'
import { durationText } from './duration-text.js'
import { powerSet } from './power-set.js'
import { earlyFlashes } from './sync.js'

export interface Fall {
  readonly light: Light
  readonly t01: Seconds
  /** Stops between the lightest strip of the frame and the darkest, and their u. */
  readonly stops: number
  readonly u: number
  /** Before the first curtain has arrived: the whole of its run where that is followed by a slit. */
  readonly ahead: Seconds
}

/** How early a flash is fired no maker tells: by this factor, more or less. */
const aheadWithin = Math.SQRT2

/** @param share of the curtain's run that is left when the flash is fired, at the sync speed and slower */
export const earlyFalls = (set: ComputedSet, share: number): readonly Fall[] => {
  const { camera } = set.plan
  const { least, most } = curtainTravel(camera)
  const usual = Math.sqrt(least * most)
  const slit = fasterThanSync(camera)
  return earlyFlashes(set.plan).flatMap((light): Fall[] => {
    if (light.unit.kind !== 'flash') return []
    const { power, u: powerU } = powerSet(set, light)
    const { t01, pulse, u } = flashTime(light.unit, power)
    const more = flashTime(light.unit, Math.min(1, power * 2 ** powerU) as PowerShare).pulse
    const at = (of: Pulse, travel = usual, by = 1): number =>
      fallOver(of, camera, travel, (slit ? 1 : share * by) * travel)
    const stops = at(pulse)
    const half = (a: number, b: number): number => (a - b) / 2
    return [
      {
        light,
        t01,
        stops,
        u: Math.hypot(
          half(at(longer(pulse, 2 ** -u)), at(longer(pulse, 2 ** u))),
          stops - at(more),
          half(at(pulse, most), at(pulse, least)),
          slit ? 0 : half(at(pulse, usual, aheadWithin), at(pulse, usual, 1 / aheadWithin)),
        ),
        ahead: ((slit ? 1 : share) * usual) as Seconds,
      },
    ]
  })
}

const strips = 32

/** Over the strips of the frame, which open one after the other as the curtain runs. */
const fallOver = (pulse: Pulse, { shutterMarked }: Camera, travel: number, ahead: number): number => {
  let [darkest, lightest] = [1, 0]
  for (let i = 0; i <= strips; i++) {
    const opens = ((i / strips) * travel - travel + ahead) as Seconds
    const got = stripShare(pulse, opens, shutterMarked)
    darkest = Math.min(darkest, got)
    lightest = Math.max(lightest, got)
  }
  return stopsLost(darkest / lightest)
}

/** From here on an edge counts as dark. */
const black = 5

export const earlyText = ({ light: { name }, stops, t01 }: Fall, words: Words, camera: Camera): string => {
  const dark = stops >= black
  return fasterThanSync(camera)
    ? `${dark ? 'a strip along one edge stays dark' : `the frame falls off by ${words.howMany(stops)} toward one edge`}: the slit of ${words.shutter(camera.shutterMarked)} runs over it while the flash of ${name}, fired early, dies down`
    : `${dark ? 'a strip along one edge stays dark' : `one edge comes out ${words.howMany(stops)} darker`}, at whatever shutter: ${name} is fired early, and its flash of ${durationText(t01, words)} ${dark ? 'is over' : 'dies down'} before the shutter is open all over`
}

export const earlyWhy = (found: Fall, words: Words, camera: Camera, limit: number): string =>
  [
    fasterThanSync(camera)
      ? `the slit takes ${durationText(found.ahead, words)} from edge to edge, and its flash lasts ${durationText(found.t01, words)} (t0.1)`
      : `taken to be fired ${durationText(found.ahead, words)} before the curtain has arrived, which no maker tells: a frame of a plain wall shows it`,
    `one that lasts ${durationText(enough(found, limit), words)} (t0.1) falls off by ${words.howMany(limit)}`,
  ].join('; ')

/** t0.1 of a discharge that falls by so many stops meanwhile: an exponential falls evenly. */
const enough = ({ ahead }: Fall, limit: number): Seconds => ((ahead * Math.log2(10)) / limit) as Seconds

export const insteadOfEarly = (
  { light }: Fall,
  words: Words,
  set: ComputedSet,
  limits: { readonly share: number; readonly fall: number },
): readonly Mend[] => {
  const { unit } = light
  const { camera } = set.plan
  const fast = fasterThanSync(camera)
  const plain = {
    title: `${fast ? `camera.shutter → ${words.shutter(camera.sync)}, ` : ''}${light.name} fired in the plain way: early: false`,
    gives: fast ? 'the whole frame open at the flash' : 'no strip at the sync speed and slower',
    ...(fast ? { costs: steadyGains(set, Math.log2(camera.sync / camera.shutterMarked), words) } : {}),
  }
  const least =
    unit.kind === 'flash' && regulationOf(unit) === 'igbt' ? leastPower(set, light, unit, limits) : undefined
  return [
    plain,
    ...(unit.kind !== 'flash' || least === undefined
      ? []
      : [
          {
            title: `${light.name} at ${words.power(least)} or more: its flash then lasts ${durationText(flashTime(unit, least).t01, words)}`,
            gives: 'light until the shutter is open all over',
            costs: 'speed or aperture down by as much',
          },
        ]),
  ]
}

/** Of a unit that cuts, the power from which its flash lasts. */
const leastPower = (
  { plan: { camera } }: ComputedSet,
  { power: today }: Light,
  unit: FlashUnit,
  { share, fall }: { readonly share: number; readonly fall: number },
): PowerShare | undefined => {
  const { least, most } = curtainTravel(camera)
  const travel = Math.sqrt(least * most)
  const powers = Array.from({ length: 31 }, (_, i) => unit.power.to * 2 ** (-i / 3)) as PowerShare[]
  const found = powers.findLast(
    (power) =>
      fallOver(flashTime(unit, power).pulse, camera, travel, (fasterThanSync(camera) ? 1 : share) * travel) <=
      fall,
  )
  return found === undefined || (today !== undefined && found <= today) ? undefined : found
}
