/** What a rule needs the set to know, and which line of the plan would tell it. */
import type { Light } from '../language/plan.js'
import type { Face, Scene } from '../scene/scene.js'
import { dot, subtract, type Vec3 } from '../scene/vector.js'
import type { ComputedSet } from '../set/computed-set.js'
import { onBackdrop } from './on-surface.js'
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
export const unknownLight = (light: Light): NotNeeded =>
  light.unit.kind === 'sun' || light.unit.kind === 'window'
    ? {
        because: `nothing in the plan tells how much light ${light.name} gives`,
        enable: {
          pointer: lightPointer(light.name, 'reads'),
          text: 'reads: f/2.8, shutter: 1/60, iso: 100',
        },
      }
    : {
        because: `nothing in the plan tells how much light ${light.name} gives`,
        enable: { pointer: lightPointer(light.name, 'meters'), text: 'meters: f/5.6' },
      }

/**
 * Why a light's figures at a point are not known yet though its strength is: it stands where it cannot, it works by way
 * of a surface, or through a panel.
 */
export const notDirect = (set: ComputedSet, light: Light, at: Vec3): NotNeeded | undefined => {
  const { aim } = light
  if (set.scene.faults.some(({ figures }) => figures.light === light.name))
    return { because: `${light.name} cannot stand where the plan places it` }
  if (!straight(light)) {
    const surface = aim.at === 'panel' ? aim.panel : aim.at === 'wall' ? `the ${aim.wall}` : 'the ceiling'
    return { because: `${light.name} is aimed at ${surface}, and bounced light is not computed yet` }
  }
  const front = set.scene.lights.get(light.name)?.front
  const panel = front && panelBetween(set.scene, front.centre, at)
  return panel === undefined
    ? undefined
    : {
        because: `${panel} stands before ${light.name}, and light through or past panels is not computed yet`,
      }
}

/** A backdrop light may have a wall for its backdrop. */
const straight = ({ aim, role }: Light): boolean =>
  !(aim.at === 'ceiling' || aim.at === 'panel' || (aim.at === 'wall' && role !== 'backdrop'))

/** The first panel that the straight line between two places crosses. */
export const panelBetween = (scene: Scene, from: Vec3, to: Vec3): string | undefined => {
  for (const panel of scene.panels.values())
    if (panel.faces.some((face) => crosses(face, from, to))) return panel.name
  return undefined
}

const crosses = (face: Face, from: Vec3, to: Vec3): boolean => {
  const a = dot(face.normal, subtract(from, face.centre))
  const b = dot(face.normal, subtract(to, face.centre))
  if (a * b >= 0) return false
  const t = a / (a - b)
  const at: Vec3 = [
    from[0] + (to[0] - from[0]) * t - face.centre[0],
    from[1] + (to[1] - from[1]) * t - face.centre[1],
    from[2] + (to[2] - from[2]) * t - face.centre[2],
  ]
  return Math.abs(dot(at, face.across)) <= face.width / 2 && Math.abs(dot(at, face.up)) <= face.height / 2
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
  if (unknown !== undefined) return unknownLight(unknown)
  const face = set.scene.points.get('subject')?.at ?? set.scene.subject.tapeFrom
  for (const light of keyLights) {
    const missing = notDirect(set, light, face)
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
      : unknownLight(set.unknown[0])
  if (needs === 'whole') {
    const unknown = set.unknown.find((light) => light.role === 'backdrop') ?? set.unknown[0]
    if (unknown !== undefined) return unknownLight(unknown)
    const bounced = set.lit.find((light) => !straight(light))
    if (bounced !== undefined) return notDirect(set, bounced, middleOfFrame(set))
  }
  const view = set.backdropView
  if (view === undefined) return { because: 'the camera sees nothing of the backdrop that is lit' }
  const arrives = set.exposure(onBackdrop(view.middle.at), 'all')
  for (const light of set.lit) {
    const share = (arrives?.byLight.get(light.name) ?? 0) / (arrives?.luxSeconds ?? 1)
    const missing = share > worthBlocking ? notDirect(set, light, view.middle.at) : undefined
    if (missing !== undefined) return missing
  }
  return undefined
}

/** Share of the light at a point from which a panel in its way matters: a tenth of it is 0.15 stop. */
const worthBlocking = 0.1

const middleOfFrame = (set: ComputedSet): Vec3 =>
  set.scene.points.get('backdrop')?.at ?? [0, set.plan.backdrop?.behind ?? 0, 1]
