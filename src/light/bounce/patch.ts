import type { Face, SceneSurface } from '../../scene/scene.js'

/** One patch of a surface; `area` in m². */
export interface Patch {
  readonly surface: SceneSurface
  readonly face: Face
  readonly area: number
}
