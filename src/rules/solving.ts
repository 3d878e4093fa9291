/** Solving for what a mend says. */
import type { ComputedSet } from '../set/computed-set.js'
import type { Change } from '../set/knobs.js'

/** Mends aim one standard deviation inside the limit, and at least a tenth of a stop. */
export const inside = (u: number): number => Math.max(u, 0.1)

/**
 * The value nearest to `from` at which `quantity` reaches `target`: bracketed between the ends, then the regula falsi in
 * its Illinois form. Undefined where the quantity is undefined at an end or lies on one side of the target at both.
 *
 * @param tolerance of the quantity
 */
export const solveFor = (
  from: number,
  to: number,
  quantity: (value: number) => number | undefined,
  target: number,
  tolerance = 5e-3,
): number | undefined => {
  let a = from
  let b = to
  const first = quantity(a)
  const last = quantity(b)
  if (first === undefined || last === undefined) return undefined
  let fa = first - target
  let fb = last - target
  if (Math.abs(fa) <= tolerance) return a
  if (Math.abs(fb) <= tolerance) return b
  if (!Number.isFinite(fa) || !Number.isFinite(fb) || fa > 0 === fb > 0) return undefined
  let side = 0
  for (let round = 0; round < 60; round++) {
    const x = (a * fb - b * fa) / (fb - fa)
    const value = quantity(x)
    if (value === undefined || !Number.isFinite(value)) return undefined
    const fx = value - target
    if (Math.abs(fx) <= tolerance || Math.abs(b - a) < 1e-6) return x
    if (fx > 0 === fb > 0) {
      b = x
      fb = fx
      if (side === 1) fa /= 2
      side = 1
    } else {
      a = x
      fa = fx
      if (side === -1) fb /= 2
      side = -1
    }
  }
  return undefined
}

/** The same change in stops for several lights. */
export const byStops = (lights: readonly string[], stops: number): readonly Change[] =>
  lights.map((light) => ({ knob: { knob: 'strength', light }, to: stops }))

/**
 * A light at another distance, turned so that it still meters the same at the subject; and by how many stops it gives
 * more than today. Undefined where it does not reach the subject.
 */
export const movedAndHeld = (
  set: ComputedSet,
  light: string,
  distance: number,
): { readonly set: ComputedSet; readonly stops: number } | undefined =>
  held(set, set.with({ knob: { knob: 'light-distance', light }, to: distance }), light)

/** After a change, the light turned so that it meters at the subject what it did before. */
const held = (before: ComputedSet, changed: ComputedSet, light: string) => {
  const [was, is] = [own(before, light), own(changed, light)]
  if (was === undefined || is === undefined) return undefined
  // A light known by what it is to meter holds that by itself.
  const set =
    Math.abs(was - is) < 1e-9 ? changed : changed.with({ knob: { knob: 'strength', light }, to: was - is })
  const [gave, gives] = [before.strength(light), set.strength(light)]
  return gave === undefined || gives === undefined
    ? undefined
    : { set, stops: Math.log2(gives.candelaSeconds / gave.candelaSeconds) }
}

const own = (set: ComputedSet, light: string): number | undefined =>
  set.reading({ at: 'subject', of: [light], faces: 'camera' })?.figure.stops
