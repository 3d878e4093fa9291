/** A sketch with powers: the plan as its author would write it, on paper right or wrong. */
import type { FilePort } from '../../src/language/port.js'
import { readPlan } from '../../src/language/read-plan.js'
import { computeSet } from '../../src/set/compute-set.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import type { LightSketch, Sketch } from './sketches.js'

/** Settings as they are written. */
export interface Settings {
  readonly iso: number
  /** Share of full power by light. */
  readonly powers: readonly number[]
  /** f-number that each light is to meter. */
  readonly meters: readonly number[]
  /** f-number that the ambient reads at the camera's shutter and ISO. */
  readonly ambient: number | undefined
}

/** A meter reading of one light: by its place in the sketch. */
export interface Read {
  readonly light: number
  readonly reads: number
}

export const readingPoint = ({ role }: LightSketch): string =>
  role === 'backdrop' ? 'backdrop' : role === 'rim' ? 'subject-back' : 'subject'

/** Six digits: no mark of the standard series is met by chance. */
const f = (n: number): string => `f/${n.toFixed(6)}`
const share = (power: number): string => `${(power * 100).toFixed(6)} %`

export const planText = (sketch: Sketch, settings: Settings, readings: readonly Read[] = []): string => {
  const { lights } = sketch
  const lines = [
    'plan: 1',
    `title: ${sketch.title}`,
    ...(sketch.kit === undefined ? [] : [sketch.kit]),
    `camera: { lens: ${sketch.lens} mm, at: { distance: ${sketch.distance} m }, aperture: ${sketch.aperture}, shutter: 1/125, iso: ${settings.iso}, sync: 1/200 }`,
    `subject: ${sketch.subject}`,
    `backdrop: ${sketch.backdrop}`,
    ...(settings.ambient === undefined
      ? []
      : [`ambient: { reads: ${f(settings.ambient)}, shutter: 1/125, iso: ${settings.iso} }`]),
    'lights:',
    ...lights.map(
      ({ name, role, gear, at, meters }, i) =>
        `  ${name}: { role: ${role}, ${gear.text}, power: ${share(settings.powers[i]!)}${meters ? `, meters: ${f(settings.meters[i]!)}` : ''}, at: ${at} }`,
    ),
    `wanted: ${sketch.wanted}`,
  ]
  if (readings.length > 0) {
    lines.push('readings:')
    for (const { light, reads } of readings) {
      const { name } = lights[light]!
      const taken = `{ ${name}: { power: ${share(settings.powers[light]!)} } }`
      lines.push(
        `  - { at: ${readingPoint(lights[light]!)}, of: [${name}], reads: ${f(reads)}, iso: 100, taken: ${taken} }`,
      )
    }
  }
  return `${lines.join('\n')}\n`
}

const noFiles: FilePort = { read: () => ({ ok: false, says: 'there are no files' }) }

export const setOf = (text: string): ComputedSet => {
  const { plan, mistakes } = readPlan('plan.yaml', text, noFiles)
  if (plan === undefined) throw new Error(`${mistakes.map(({ message }) => message).join('; ')}\n${text}`)
  return computeSet(plan)
}

/** What each light alone meters at ISO 100, by the plan's own figures. */
export const metersAlone = (sketch: Sketch, settings: Settings): readonly number[] => {
  const set = setOf(planText(sketch, settings))
  return sketch.lights.map((light) => {
    const { fNumber } = set.reading({ at: readingPoint(light), of: [light.name] })!
    return fNumber * Math.sqrt(100 / settings.iso)
  })
}

/** Powers at which the plan is right by its own figures: key and fill at the camera's setting, the backdrop at its level. */
export const rightOnPaper = (sketch: Sketch, iso: number): Settings => {
  const known = right.get(sketch) ?? new Map<number, Settings>()
  right.set(sketch, known)
  const found = known.get(iso) ?? setRight(sketch, iso)
  known.set(iso, found)
  return found
}

const right = new WeakMap<Sketch, Map<number, Settings>>()

const setRight = (sketch: Sketch, iso: number): Settings => {
  const { lights, ratio, backdropLevel, ambientUnder } = sketch
  const full: Settings = { iso, powers: lights.map(() => 1), meters: lights.map(() => 8), ambient: undefined }
  const set = setOf(planText(sketch, full))
  /** Linear exposure at full power against the camera's setting. */
  const gives = (at: string, names: readonly string[]): number => {
    const found = set.reading(
      at === 'subject' ? { at, of: names, dome: 'raised', faces: 'camera' } : { at, of: names },
    )
    return found === undefined ? 0 : 2 ** found.overCamera.stops
  }
  const named = (role: LightSketch['role']) => lights.filter((light) => light.role === role)
  const filled = named('fill').length > 0
  const byRole = (light: LightSketch): number => {
    switch (light.role) {
      case 'key':
        return (filled ? 1 - 1 / ratio : 1) / gives('subject', [light.name])
      case 'fill':
        return 1 / ratio / gives('subject', [light.name])
      case 'rim':
        return 1 / gives('subject-back', [light.name])
      case 'backdrop':
        return 0
    }
  }
  const first = lights.map(byRole)
  const own = named('backdrop').map(({ name }) => name)
  const spill = lights.reduce((sum, { name }, i) => sum + first[i]! * gives('backdrop', [name]), 0)
  const level = 2 ** (backdropLevel ?? 0)
  const onBackdrop = own.length === 0 ? 0 : Math.max(level - spill, level / 8) / gives('backdrop', own)
  const powers = lights.map(({ role }, i) => (role === 'backdrop' ? onBackdrop : first[i]!))
  // A probe in the middle of the range, so that what is to be metered is known also where full power falls short.
  const probe = { ...full, powers: lights.map(() => 0.25) }
  const alone = metersAlone(sketch, probe)
  return {
    iso,
    powers: powers.map((power, i) => settable(power, lights[i]!)),
    meters: alone.map((n, i) => n * Math.sqrt((powers[i]! / 0.25) * (iso / 100))),
    ambient:
      ambientUnder === undefined ? undefined : set.plan.camera.aperture * Math.sqrt(2 ** -ambientUnder),
  }
}

export const settable = (power: number, { gear }: LightSketch): number =>
  Math.min(1, Math.max(gear.least, power))

/** The same with every power turned by these stops, as far as each goes. */
export const turned = (sketch: Sketch, settings: Settings, by: readonly number[]): Settings => ({
  ...settings,
  powers: settings.powers.map((power, i) => settable(power * 2 ** by[i]!, sketch.lights[i]!)),
})
