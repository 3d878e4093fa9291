import type { Light, Plan } from '../../language/plan.js'
import { isHighSpeed } from '../../light/strength.js'

/**
 * Real cameras sync between 1/160 and 1/250, so a sync speed that the plan does not state is good to a third of a stop.
 * Common practice, no source.
 */
const unstatedSync = 1 / 3

/** u of the plan's sync speed, stops. */
export const syncU = (plan: Plan): number => (plan.places.stated('/camera/sync') ? 0 : unstatedSync)

/**
 * Flashes that are on and fire once the shutter is open; high-speed sync pulses through the whole run of the slit, and one
 * that is fired early burns through it.
 */
export const singleFlashes = (plan: Plan): readonly Light[] =>
  firedOnce(plan).filter((light) => light.trigger?.early !== true)

/** Those that a trigger fires before the shutter is open all over. */
export const earlyFlashes = (plan: Plan): readonly Light[] =>
  firedOnce(plan).filter((light) => light.trigger?.early === true)

/** All but those that pulse. */
export const firedOnce = (plan: Plan): readonly Light[] =>
  flashes(plan).filter((light) => !isHighSpeed(light, plan))

/** Flashes that are on. */
export const flashes = (plan: Plan): readonly Light[] =>
  [...plan.lights.values()].filter((light) => light.on && light.unit.kind === 'flash')
