/** From a light of the plan, as it stands in the scene, to what the transport sees of it. */
import type { Light, Plan } from '../language/plan.js'
import type { Face, SceneLight } from '../scene/scene.js'
import { scale } from '../scene/vector.js'
import { emissionOf } from './emission.js'
import { inSpace, outlineOf } from './outline.js'
import { tiltFactor } from './photometric.js'
import type { Pattern, Source, UniformSource } from './source.js'

/** Why a light has no source. */
export type NoSource = 'no front'

/** What stands in the way of a source for this light; undefined where it has one. */
export const whyNoSource = (light: Light, sceneLight: SceneLight): NoSource | undefined => {
  if (light.unit.kind === 'sun') return undefined
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
    pattern: tilted(pattern, front),
    both,
  }
}

/** A lamp whose light depends on how it burns gives what its photometric file says of the way that it is aimed. */
const tilted = (pattern: Pattern, front: Face): Pattern => {
  const { table } = pattern
  if (table?.table.tilt === undefined) return pattern
  const gain = table.gain * tiltFactor(table.table.tilt, front, table.lying)
  return { ...pattern, table: { ...table, gain } }
}

/** The ambient light of a plan, under the name that readings and figures give it. */
export const ambientSource: UniformSource = { kind: 'uniform', light: 'ambient' }
