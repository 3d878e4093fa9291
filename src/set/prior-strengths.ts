/** What each light gives by all that the plan says of it but its readings, when first asked. Lights that are off give nothing. */
import type { Light, Plan } from '../language/plan.js'
import { type AmbientPart, ambientStrength, calibratedStrength } from '../light/calibrate.js'
import { onAxisResponse } from '../light/response.js'
import { modellingStrength } from '../light/strength.js'
import type { LightStrength, MeterAsk } from './computed-set.js'
import { rolePoint } from './role-point.js'
import { ambientName, modellingOf, type Transport } from './transport.js'

export type StrengthOf = (light: string) => LightStrength | undefined

export const remembered = (compute: StrengthOf): StrengthOf => {
  const known = new Map<string, LightStrength | undefined>()
  return (name) => {
    if (!known.has(name)) known.set(name, compute(name))
    return known.get(name)
  }
}

/** @param openAmbient what the ambient is stated to read is weighed among the readings */
export const priorStrengths = (transport: Transport, openAmbient = false): StrengthOf => {
  const { plan } = transport
  const strength: StrengthOf = remembered((name) => {
    if (name === ambientName) return ambient(transport, strength, openAmbient)
    const lamp = modellingOf(plan, name)
    if (lamp !== undefined) return lamp.on ? modellingStrength(lamp, plan) : undefined
    const light = plan.lights.get(name)
    return light?.on === true ? known(transport, plan, light) : undefined
  })
  return strength
}

/** Undefined too where the light has no source: then its figures are not known, whatever its rating. */
export const known = (transport: Transport, plan: Plan, light: Light): LightStrength | undefined => {
  const source = transport.source(light.name)
  if (source === undefined) return undefined
  const strength = calibratedStrength(light, plan, {
    metered: () => responseAt(transport, light.name, { at: light.meters?.at ?? rolePoint(light) }),
    subject: () => unshadedAt(transport, light.name, { at: 'subject' }),
    onAxis: (distance) => onAxisResponse(source, distance),
  })
  return strength !== undefined && Number.isFinite(strength.candelaSeconds) && strength.candelaSeconds > 0
    ? strength
    : undefined
}

/** How one light answers a meter: exposure for each unit of its strength; 0 at a place that the set does not have. */
const responseAt = (transport: Transport, light: string, ask: Omit<MeterAsk, 'of'>): number =>
  transport.asked({ ...ask, of: [light] })?.probe.response(light) ?? 0

/**
 * The same, were nothing in the way: what a sun or a window reads is read in its light. Worked out from the little that
 * comes past a flag it would be many times too strong everywhere else.
 */
const unshadedAt = (transport: Transport, light: string, ask: Omit<MeterAsk, 'of'>): number => {
  const probe = transport.asked({ ...ask, of: [light] })?.probe
  if (probe === undefined) return 0
  const { room, panels, backdrop } = probe.bounce(light)
  return probe.clear(light) + room + panels + backdrop
}

/** Where the ambient is read. */
export const ambientAsk: MeterAsk = { at: 'subject', of: [ambientName], faces: 'camera' }

/** Sun and windows that are on: the ambient, as a meter reads it, holds what they give. */
export const daylights = (plan: Plan): readonly Light[] =>
  [...plan.lights.values()].filter(
    (light) => light.on && (light.unit.kind === 'sun' || light.unit.kind === 'window'),
  )

const ambient = (transport: Transport, strength: StrengthOf, open: boolean): LightStrength | undefined => {
  const { plan } = transport
  if (plan.ambient === undefined && !open) return undefined
  const probe = transport.asked(ambientAsk)?.probe
  if (probe === undefined) return undefined
  const parts = daylights(plan).flatMap(({ name }): AmbientPart[] => {
    const part = strength(name)
    return part === undefined
      ? []
      : [{ ...part, light: name, luxSeconds: part.candelaSeconds * probe.response(name) }]
  })
  return ambientStrength(plan, probe.response(ambientName), parts, open)
}
