/** What a rule needs the set to know, and which line of the plan would tell it. */
import type { Light, Plan } from '../language/plan.js'
import type { ComputedSet } from '../set/computed-set.js'
import { subjectMirrors } from '../set/surface-at.js'
import { writeFNumber } from '../units/marks.js'
import { lightPointer } from './place-pointer.js'
import type { NotNeeded, RuleContext } from './rule.js'

/** The first that is missing. */
export const firstMissing = (
  ...asks: readonly (() => NotNeeded | 'silent' | undefined)[]
): NotNeeded | 'silent' | undefined => {
  for (const ask of asks) {
    const missing = ask()
    if (missing !== undefined) return missing
  }
  return undefined
}

/** A light that is on and of which nothing tells how strong it is. */
export const unknownLight = ({ name, unit, mode }: Light, { plan }: ComputedSet): NotNeeded => {
  const because = `nothing in the plan tells how much light ${name} gives`
  if (unit.kind === 'sun' || unit.kind === 'window')
    return {
      because,
      enable: { pointer: lightPointer(name, 'reads'), text: 'reads: f/2.8, shutter: 1/60, iso: 100' },
    }
  return mode === 'automatic'
    ? {
        because: `the camera meters ${name}, and the plan does not say what it gives then: as a rule what the camera is set to`,
        enable: {
          pointer: lightPointer(name, 'meters'),
          text: `meters: ${writeFNumber(plan.camera.aperture)}`,
        },
      }
    : { because, enable: { pointer: lightPointer(name, 'meters'), text: 'meters: f/5.6' } }
}

/** Rules on the subject's own tone leave out what mirrors. */
export const toneUnjudged = (plan: Plan): NotNeeded | undefined =>
  subjectMirrors(plan)
    ? {
        because: `${plan.subject.finish === 'clear' ? 'a clear' : 'a glossy'} subject shows what is around it, so its own tone is not judged`,
      }
    : undefined

/** Where something cannot stand as the plan places it, where all else stands is not known well enough to judge. */
export const misplaced = (set: ComputedSet): boolean => set.scene.faults.length > 0

/** A camera that sets the exposure by itself evens out what would be too much or too little. */
export const evenedOut = ({ camera }: Plan): NotNeeded | undefined =>
  camera.exposure === 'manual'
    ? undefined
    : {
        because: `the camera sets ${camera.exposure === 'auto-iso' ? 'its ISO' : 'the exposure'} by itself, so how light the picture comes out is not judged`,
        enable: { pointer: '/camera/exposure', text: 'exposure: manual' },
      }

/** What is seen from inside a thing is not judged: first the camera must stand elsewhere. */
export const cameraMisplaced = (set: ComputedSet): boolean =>
  set.scene.faults.some(({ pointer }) => pointer.startsWith('/camera/'))

/** Why a light's figures are not known though its strength is: it stands where it cannot, or works by way of a wall of no room. */
export const lightMissing = (set: ComputedSet, light: Light): NotNeeded | undefined => {
  const { aim } = light
  if (set.scene.faults.some(({ figures }) => figures.light === light.name))
    return { because: `${light.name} cannot stand where the plan places it` }
  if (set.plan.room !== undefined) return undefined
  // A backdrop light may have a wall for its backdrop.
  if (aim.at !== 'ceiling' && (aim.at !== 'wall' || light.role === 'backdrop')) return undefined
  return {
    because: `${light.name} is aimed at ${aim.at === 'ceiling' ? 'the ceiling' : `the ${aim.wall.replace('-', ' ')}`}, and the plan states no room`,
    enable: { pointer: '/room', text: 'room: { width: 4 m, length: 6 m, height: 2.6 m }' },
  }
}

/** The key reading, whole: every light that it counts is known and reaches the subject straight. */
export const keyMissing = ({ set }: RuleContext): NotNeeded | undefined => {
  const keyLights = countedInKey([...set.plan.lights.values()].filter((light) => light.on))
  if (keyLights.length === 0)
    return {
      because: 'no light lights the subject',
      enable: { pointer: '/lights', text: 'a light of role key' },
    }
  const unknown = set.unknown.find((light) => keyLights.includes(light))
  if (unknown !== undefined) return unknownLight(unknown, set)
  for (const light of keyLights) {
    const missing = lightMissing(set, light)
    if (missing !== undefined) return missing
  }
  return set.key === undefined ? { because: 'no light of the plan reaches the subject' } : undefined
}

/** Key and fill; without a key, all but those that have another job. */
const countedInKey = (lights: readonly Light[]): readonly Light[] =>
  lights.some((light) => light.role === 'key')
    ? lights.filter((light) => light.role === 'key' || light.role === 'fill')
    : lights.filter((light) => !['rim', 'hair', 'kicker', 'backdrop', 'effect'].includes(light.role))

/** The backdrop, in frame and lit by what is known. `whole`: no light that is on may be unknown. */
export const backdropMissing = (
  { set, plan }: RuleContext,
  needs: 'whole' | 'at least',
): NotNeeded | 'silent' | undefined => {
  if (plan.backdrop === undefined)
    return {
      because: 'the plan states no backdrop',
      enable: { pointer: '/backdrop', text: 'backdrop: { surface: white paper, behind: 2 m }' },
    }
  if (plan.backdrop.sky !== undefined) return 'silent'
  if (set.lit.length === 0 && plan.ambient === undefined)
    return set.unknown[0] === undefined
      ? { because: 'no light is on', enable: { pointer: '/lights', text: 'a light' } }
      : unknownLight(set.unknown[0], set)
  if (needs === 'whole') {
    const unknown = set.unknown.find((light) => light.role === 'backdrop') ?? set.unknown[0]
    if (unknown !== undefined) return unknownLight(unknown, set)
    for (const light of set.lit) {
      const missing = lightMissing(set, light)
      if (missing !== undefined) return missing
    }
  }
  if (set.backdropView === undefined)
    return { because: 'the camera sees nothing of the backdrop that is lit' }
  return undefined
}
