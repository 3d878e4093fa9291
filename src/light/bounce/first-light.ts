/** What comes to each side of the mesh straight from a source, before anything has bounced. */
import type { SceneSurface } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import { sharpness } from '../kernel.js'
import { response } from '../response.js'
import type { AreaSource, Source } from '../source.js'
import type { Blocker } from '../visibility/blockers.js'
import { type Outlook, outlookFrom } from '../visibility/outlook.js'
import { visibleResponse } from '../visibility/visible.js'
import { placeOn } from './layout.js'
import type { Mesh } from './mesh.js'

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
 */
export const firstLight = (mesh: Mesh, source: Source, blockers: readonly Blocker[]): Float64Array => {
  const { layout, patches } = mesh
  const first = new Float64Array(2 * patches.length)
  if (source.kind === 'uniform') return first
  const views = viewsOf(mesh, blockers)
  for (let i = 0; i < patches.length; i++)
    for (let side = 0; side < litSides(patches[i]!.surface); side++) {
      const p = 3 * i
      const way = 1 - 2 * side
      const normal: Vec3 = [way * layout.normal[p]!, way * layout.normal[p + 1]!, way * layout.normal[p + 2]!]
      if (!mayReach(source, mesh, i, normal)) continue
      const hidden = mayBeHidden(source, mesh, i, blockers)
      const fine = fineness(source, mesh, i, hidden)
      const points = rules[fine - 1]!
      let sum = 0
      for (let k = 0; k < points.length; k++)
        for (let l = 0; l < points.length; l++) {
          const [s, weightS] = points[k]!
          const [t, weightT] = points[l]!
          const at = placeOn(layout, i, s, t, [0, 0, 0])
          const receptor = { at, normal, kind: 'flat', onSurface: true } as const
          const clear = response(source, receptor)
          if (clear === 0) continue
          if (hidden) {
            // The nine places of the finest rule, then the four of the next, then the middle.
            const place = (2 * i + side) * 14 + (fine === 3 ? 3 * k + l : fine === 2 ? 9 + 2 * k + l : 13)
            let view = views.get(place)
            if (view === undefined) {
              view = outlookFrom(receptor, blockers)
              views.set(place, view)
            }
            sum += weightS * weightT * visibleResponse(source, view, clear)
          } else sum += weightS * weightT * clear
        }
      first[2 * i + side] = Number.isFinite(sum) ? Math.max(0, sum) : 0
    }
  return first
}

const litSides = ({ back, transmits }: SceneSurface): number =>
  back === undefined && transmits === 0 ? 1 : 2

/** What was found of the blockers as patches see them serves the next light too. */
const known = new WeakMap<Mesh, WeakMap<readonly Blocker[], Map<number, Outlook>>>()

const viewsOf = (mesh: Mesh, blockers: readonly Blocker[]): Map<number, Outlook> => {
  const by = known.get(mesh) ?? new WeakMap<readonly Blocker[], Map<number, Outlook>>()
  known.set(mesh, by)
  const views = by.get(blockers) ?? new Map<number, Outlook>()
  by.set(blockers, views)
  return views
}

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

/** Whether a blocker's ball comes near the hull of patch and source. */
const mayBeHidden = (
  source: Exclude<Source, { kind: 'uniform' }>,
  { layout }: Mesh,
  i: number,
  blockers: readonly Blocker[],
): boolean => {
  const { at, radius } = layout
  const p = 3 * i
  const sun = source.kind === 'parallel'
  const wide = sun ? radius[i]! : Math.max(radius[i]!, Math.hypot(source.face.width, source.face.height) / 2)
  const dx = sun ? source.toward[0] : source.face.centre[0] - at[p]!
  const dy = sun ? source.toward[1] : source.face.centre[1] - at[p + 1]!
  const dz = sun ? source.toward[2] : source.face.centre[2] - at[p + 2]!
  const square = dx * dx + dy * dy + dz * dz
  for (const { solid, centre, radius: around } of blockers) {
    if (!sun && solid.of === 'light' && solid.name === source.light) continue
    const x = centre[0] - at[p]!
    const y = centre[1] - at[p + 1]!
    const z = centre[2] - at[p + 2]!
    const along = Math.min(sun ? Infinity : 1, Math.max(0, (x * dx + y * dy + z * dz) / (square || 1)))
    const ox = x - along * dx
    const oy = y - along * dy
    const oz = z - along * dz
    const reach = around + wide
    if (ox * ox + oy * oy + oz * oz < reach * reach) return true
  }
  return false
}

/** Points along a patch: more where it is large against its distance, the pattern sharp, or something in the way. */
const fineness = (
  source: Exclude<Source, { kind: 'uniform' }>,
  { layout }: Mesh,
  i: number,
  hidden: boolean,
): 1 | 2 | 3 => {
  if (source.kind === 'parallel') return hidden ? 3 : 1
  const long = 2 * Math.max(layout.half[2 * i]!, layout.half[2 * i + 1]!)
  const steep = (long * Math.sqrt(sharpness(source.pattern, true) / 3)) / distanceTo(source, layout.at, 3 * i)
  return steep > 0.7 ? 3 : steep > 0.25 || (hidden && long > 0.2) ? 2 : 1
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
