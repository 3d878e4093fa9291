/** The lights that make the exposure, and the place where they are judged. */
import type { Light } from '../language/plan.js'
import type { Vec3 } from '../scene/vector.js'
import type { ComputedSet } from '../set/computed-set.js'

/** Where the key reading is taken: a person's face, over a group's front row, an object's front. */
export const faceOf = ({ scene }: Pick<ComputedSet, 'scene'>): Vec3 =>
  scene.points.get('subject')?.at ?? scene.subject.tapeFrom

/** Key and fill lights of one role, as far as the key reading counts them. */
export const keyLightsOf = (set: ComputedSet, role: Light['role']): readonly Light[] =>
  set.keyLights.filter((light) => light.role === role)

/** Of the lights given, the one that gives the key reading most; the first where none is known. */
export const strongestOf = (set: ComputedSet, lights = set.keyLights): Light | undefined => {
  const gives = ({ name }: Light): number => set.key?.byLight.get(name) ?? 0
  return lights.reduce<Light | undefined>(
    (best, light) => (best === undefined || gives(light) > gives(best) ? light : best),
    undefined,
  )
}
