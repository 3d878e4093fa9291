/** What each light gives now, light by light, when first asked; and what it gives after a change. */
import type { Light, Plan } from '../language/plan.js'
import { ambientStrength, calibratedStrength, type LoneReading } from '../light/calibrate.js'
import { onAxisResponse } from '../light/response.js'
import { modellingStrength, priorStrength } from '../light/strength.js'
import type { CandelaSeconds, LuxSeconds } from '../units/quantity.js'
import { applyChanges } from './apply-change.js'
import type { LightStrength, MeterAsk } from './computed-set.js'
import type { Change } from './knobs.js'
import { loneLight, readExposure } from './read-reading.js'
import { rolePoint } from './role-point.js'
import { ambientName, modellingOf, type Transport } from './transport.js'

export type StrengthOf = (light: string) => LightStrength | undefined

const remembered = (compute: StrengthOf): StrengthOf => {
  const known = new Map<string, LightStrength | undefined>()
  return (name) => {
    if (!known.has(name)) known.set(name, compute(name))
    return known.get(name)
  }
}

/** From the plan's readings, its kit's calibrations, what lights are to meter, and ratings. Lights that are off give nothing. */
export const estimatedStrengths = (transport: Transport): StrengthOf => {
  const { plan } = transport
  return remembered((name) => {
    if (name === ambientName) return ambient(transport)
    const lamp = modellingOf(plan, name)
    if (lamp !== undefined) return lamp.on ? modellingStrength(lamp, plan) : undefined
    const light = plan.lights.get(name)
    return light?.on === true ? known(transport, plan, light, readingsOf(transport, name)) : undefined
  })
}

/** How one light answers a meter: exposure for each unit of its strength; 0 at a place that the set does not have. */
const responseAt = (transport: Transport, light: string, ask: Omit<MeterAsk, 'of'>): number =>
  transport.asked({ ...ask, of: [light] })?.probe.response(light) ?? 0

/** Undefined too where the light has no source: then its figures are not known, whatever its rating. */
const known = (
  transport: Transport,
  plan: Plan,
  light: Light,
  readings: readonly LoneReading[],
): LightStrength | undefined => {
  const source = transport.source(light.name)
  if (source === undefined) return undefined
  const strength = calibratedStrength(light, plan, {
    readings,
    metered: () => responseAt(transport, light.name, { at: light.meters?.at ?? rolePoint(light) }),
    subject: () => responseAt(transport, light.name, { at: 'subject' }),
    onAxis: (distance) => onAxisResponse(source, distance),
  })
  return strength !== undefined && Number.isFinite(strength.candelaSeconds) && strength.candelaSeconds > 0
    ? strength
    : undefined
}

/** The ambient is all that is there with the flashes off: what sun and windows give at the subject is part of it. */
const ambient = (transport: Transport): LightStrength | undefined => {
  const { plan } = transport
  const readings = readingsOf(transport, ambientName)
  if (plan.ambient === undefined && readings.length === 0) return undefined
  const at: MeterAsk = { at: 'subject', of: [ambientName], faces: 'camera' }
  const probe = transport.asked(at)?.probe
  const response = probe?.response(ambientName) ?? 0
  const whole = ambientStrength(plan, readings, response)
  if (whole === undefined || probe === undefined || response <= 0) return whole
  let parts = 0
  for (const light of plan.lights.values()) {
    if (!light.on || (light.unit.kind !== 'sun' && light.unit.kind !== 'window')) continue
    const part = known(transport, plan, light, readingsOf(transport, light.name))
    parts += (part?.candelaSeconds ?? 0) * probe.response(light.name)
  }
  const left = whole.candelaSeconds - parts / response
  return left > 0 ? { ...whole, candelaSeconds: left as CandelaSeconds } : undefined
}

// ---------------------------------------------------------------- readings

/** Metres of tape that count as the same place. */
const samePlace = 1e-3

/** Readings of this light alone. Readings of several at once fix sums, and say nothing of one. */
const readingsOf = (transport: Transport, name: string): readonly LoneReading[] => {
  const { plan } = transport
  return plan.readings.flatMap((reading) => {
    if (loneLight(plan, reading) !== name) return []
    const read = readExposure(plan, transport.scene, reading, name)
    if (read === undefined) return []
    const taken = reading.taken?.get(name)
    return [
      {
        luxSeconds: read.luxSeconds as LuxSeconds,
        response: responseAt(asItStood(transport, name, taken?.distance), name, read.ask),
        power: taken?.power,
        u: read.u,
      },
    ]
  })
}

/** The set with one light where it stood when it was read. */
const asItStood = (transport: Transport, name: string, distance: number | undefined): Transport => {
  const today = transport.scene.lights.get(name)?.distance
  if (distance === undefined || today === undefined || Math.abs(distance - today) <= samePlace)
    return transport
  const change = { knob: { knob: 'light-distance', light: name }, to: distance } as const
  return transport.moved(applyChanges(transport.plan, [change], () => transport.scene))
}

// ---------------------------------------------------------------- what-if

/**
 * Strengths after a change: as estimated before it, turned by what the change turns. A light that is known by what it
 * is to meter goes on metering that, as its plan says after the change.
 */
export const carriedStrengths = (
  before: { readonly plan: Plan; readonly strength: StrengthOf },
  transport: Transport,
  plan: Plan,
  changes: readonly Change[],
): StrengthOf =>
  remembered((name) => {
    const was = before.strength(name)
    if (was === undefined) return undefined
    const light = plan.lights.get(name)
    if (was.from === 'meters' && light !== undefined) return known(transport, plan, light, [])
    const by =
      changes.reduce((sum, change) => sum + turnedBy(change, name), 0) +
      rerated(before.plan, plan, name, changes)
    return by === 0 ? was : { ...was, candelaSeconds: (was.candelaSeconds * 2 ** by) as CandelaSeconds }
  })

const turnedBy = ({ knob, to }: Change, name: string): number =>
  knob.knob === 'strength' && knob.light === name ? to : 0

/** Stops by which zoom and shutter change what a light of one power gives. */
const rerated = (before: Plan, after: Plan, name: string, changes: readonly Change[]): number => {
  const touched = changes.some(
    ({ knob }) => knob.knob === 'shutter' || (knob.knob === 'zoom' && knob.light === name),
  )
  if (!touched) return 0
  const [was, is] = [before.lights.get(name), after.lights.get(name)]
  const from = was && atFull(was, before)
  const to = is && atFull(is, after)
  if (from !== undefined && to !== undefined) return Math.log2(to / from)
  return was?.unit.kind === 'flash' ? 0 : Math.log2(after.camera.shutter / before.camera.shutter)
}

const atFull = (light: Light, plan: Plan): number | undefined =>
  light.unit.kind === 'flash' || light.unit.kind === 'continuous'
    ? priorStrength({ ...light, power: light.unit.power.to }, plan)?.candelaSeconds
    : undefined
