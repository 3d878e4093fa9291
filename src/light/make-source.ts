/** From a light of the plan, as it stands in the scene, to what the transport sees of it. */
import type { Light, Plan } from '../language/plan.js'
import type { SceneLight } from '../scene/scene.js'
import { scale } from '../scene/vector.js'
import { emissionOf } from './emission.js'
import { inSpace, outlineOf } from './outline.js'
import type { Source, UniformSource } from './source.js'

/** Why a light has no source. Photometric files are not read yet. */
export type NoSource = 'photometric file' | 'no front'

/** What stands in the way of a source for this light; undefined where it has one. */
export const whyNoSource = (light: Light, sceneLight: SceneLight): NoSource | undefined => {
  const { unit } = light
  if (unit.kind === 'sun') return undefined
  if (unit.kind === 'continuous' && unit.strength.kind === 'photometric file') return 'photometric file'
  return sceneLight.front === undefined ? 'no front' : undefined
}

/** The light's outline and pattern; undefined where `whyNoSource` says so. Strength is no part of it. */
export const makeSource = (light: Light, sceneLight: SceneLight, _plan: Plan): Source | undefined => {
  if (whyNoSource(light, sceneLight) !== undefined) return undefined
  const { front } = sceneLight
  if (light.unit.kind === 'sun' || front === undefined)
    return { kind: 'parallel', light: light.name, toward: scale(sceneLight.axis, -1) }
  const { corners, area, hole } = outlineOf(front)
  const { pattern, both } = emissionOf(light)
  return {
    kind: 'area',
    light: light.name,
    face: front,
    outline: corners,
    polygon: inSpace(front, corners),
    area,
    hole,
    pattern,
    both,
  }
}

/** The ambient light of a plan, under the name that readings and figures give it. */
export const ambientSource: UniformSource = { kind: 'uniform', light: 'ambient' }
