/** Flags, reflectors and scrims as one face, v-flats as two leaves. */
import type { Panel } from '../language/plan.js'
import { pointer } from '../text/place.js'
import { face, facing, level } from './facing.js'
import { type Ground, place, tapeFault } from './placing.js'
import type { Face, SceneFault, ScenePanel } from './scene.js'
import { add, scale, type Vec3 } from './vector.js'

const rightAngle = Math.PI / 2

const turned = (v: Vec3, by: number): Vec3 => [
  v[0] * Math.cos(by) - v[1] * Math.sin(by),
  v[0] * Math.sin(by) + v[1] * Math.cos(by),
  v[2],
]

/** One leaf of a v-flat, from its fold outward; `way` 1 and −1 are its two sides. The normal is the inside's. */
const leaf = (fold: Vec3, opensTo: Vec3, opening: number, panel: Panel, way: 1 | -1): Face => {
  const out = turned(opensTo, (way * opening) / 2)
  const inward = turned(out, -way * rightAngle)
  return face(
    'rectangle',
    add(fold, scale(out, panel.size.width / 2)),
    inward,
    panel.size.width,
    panel.size.height,
  )
}

/**
 * `at` of a v-flat is its fold, `faces` the way it opens; it stands on the floor. Any other panel is placed by its
 * middle; without a height that is level with the face, or higher where it would reach through the floor.
 */
export const scenePanel = (
  panel: Panel,
  on: Ground,
  point: (name: string) => Vec3 | undefined,
): { readonly panel: ScenePanel; readonly faults: readonly SceneFault[] } => {
  const { name, kind, size } = panel
  const placed = place(panel.at, on, Math.max(on.tapeFrom[2], size.height / 2))
  const faults = tapeFault(name, pointer('panels', name, 'at', 'distance'), placed)
  const toward = facing(panel.faces, placed.at, point)
  if (kind === 'v-flat') {
    const fold: Vec3 = [placed.at[0], placed.at[1], size.height / 2]
    const opensTo = level(toward)
    const opening = panel.opening ?? rightAngle
    const faces = ([1, -1] as const).map((way) => leaf(fold, opensTo, opening, panel, way))
    return { panel: { name, kind, faces }, faults }
  }
  const faces = [face('rectangle', placed.at, toward, size.width, size.height)]
  return { panel: { name, kind, faces }, faults }
}
