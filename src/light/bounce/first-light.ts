/** What comes to each side of the mesh straight from a source, before anything has bounced. */
import type { SceneSurface } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import { sharpness } from '../kernel.js'
import { response } from '../response.js'
import type { AreaSource, Source } from '../source.js'
import type { Blocker } from '../visibility/blockers.js'
import { placeOn } from './layout.js'
import type { Mesh } from './mesh.js'
import { obstacleOf } from './obstacles.js'
import { Shade } from './shade.js'

/** Gauss–Legendre on −1 to 1, by number of points; weights sum to 1. */
const rules: readonly (readonly (readonly [number, number])[])[] = [
  [[0, 1]],
  [
    [-0.5773502691896257, 0.5],
    [0.5773502691896257, 0.5],
  ],
  [
    [-0.7745966692414834, 5 / 18],
    [0, 8 / 18],
    [0.7745966692414834, 5 / 18],
  ],
]

/**
 * Mean exposure by side per unit of the source's strength (1/m² for area sources). Ambient light counts as metered: it
 * gives none here.
 *
 * Of a patch that may lie in a shadow the share that does is told by lines from places on it to places on the source:
 * the edges of shadows are drawn no finer than the patches.
 */
export const firstLight = (mesh: Mesh, source: Source, blockers: readonly Blocker[]): Float64Array => {
  const { layout, patches } = mesh
  const first = new Float64Array(2 * patches.length)
  if (source.kind === 'uniform') return first
  const obstacles = blockers
    .filter(({ solid }) => source.kind === 'parallel' || solid.of !== 'light' || solid.name !== source.light)
    .map((one) => obstacleOf(mesh, one))
  const shade = new Shade(layout, source, obstacles)
  for (let i = 0; i < patches.length; i++)
    for (let side = 0; side < litSides(patches[i]!.surface); side++) {
      const p = 3 * i
      const way = 1 - 2 * side
      const normal: Vec3 = [way * layout.normal[p]!, way * layout.normal[p + 1]!, way * layout.normal[p + 2]!]
      if (!mayReach(source, mesh, i, normal)) continue
      const clear = shade.clear(i)
      if (clear === 0) continue
      const points = rules[fineness(source, mesh, i) - 1]!
      let sum = 0
      for (const [s, weightS] of points)
        for (const [t, weightT] of points) {
          const at = placeOn(layout, i, s, t, [0, 0, 0])
          sum += weightS * weightT * response(source, { at, normal, kind: 'flat', onSurface: true })
        }
      first[2 * i + side] = Number.isFinite(sum) ? Math.max(0, clear * sum) : 0
    }
  return first
}

const litSides = ({ back, transmits }: SceneSurface): number =>
  back === undefined && transmits === 0 ? 1 : 2

/** Whether any of the source lies before the patch's plane. */
const mayReach = (
  source: Exclude<Source, { kind: 'uniform' }>,
  { layout }: Mesh,
  i: number,
  normal: Vec3,
): boolean => {
  if (source.kind === 'parallel')
    return normal[0] * source.toward[0] + normal[1] * source.toward[1] + normal[2] * source.toward[2] > 0
  const { at } = layout
  const p = 3 * i
  return source.polygon.some(
    (corner) =>
      normal[0] * (corner[0] - at[p]!) +
        normal[1] * (corner[1] - at[p + 1]!) +
        normal[2] * (corner[2] - at[p + 2]!) >
      1e-9,
  )
}

/** Points along a patch: more where it is large against its distance, or the pattern sharp. */
const fineness = (source: Exclude<Source, { kind: 'uniform' }>, { layout }: Mesh, i: number): 1 | 2 | 3 => {
  if (source.kind === 'parallel') return 1
  const long = 2 * Math.max(layout.half[2 * i]!, layout.half[2 * i + 1]!)
  const steep = (long * Math.sqrt(sharpness(source.pattern, true) / 3)) / distanceTo(source, layout.at, 3 * i)
  return steep > 0.7 ? 3 : steep > 0.15 ? 2 : 1
}

/** From the patch's middle to the nearest of the front's rectangle. */
const distanceTo = ({ face }: AreaSource, at: Float64Array, p: number): number => {
  const x = at[p]! - face.centre[0]
  const y = at[p + 1]! - face.centre[1]
  const z = at[p + 2]! - face.centre[2]
  const along = (axis: Vec3): number => x * axis[0] + y * axis[1] + z * axis[2]
  const u = Math.max(0, Math.abs(along(face.across)) - face.width / 2)
  const v = Math.max(0, Math.abs(along(face.up)) - face.height / 2)
  return Math.max(1e-6, Math.hypot(u, v, along(face.normal)))
}
