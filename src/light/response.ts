/**
 * Direct light from one source at one receptor with nothing between them. What stands between and what bounces is
 * composed where light is carried through a scene, not here.
 */
import type { Vec3 } from '../scene/vector.js'
import { dot } from '../scene/vector.js'
import type { Metres } from '../units/quantity.js'
import { discIrradiance, discSolidAngle } from './disc.js'
import type { LocalReceptor } from './kernel.js'
import { holeOf } from './outline.js'
import { clipByHorizon, contourIrradiance, polygonSolidAngle } from './polygon.js'
import { integrate } from './quadrature.js'
import type { Receptor } from './receptor.js'
import type { AreaSource, Source } from './source.js'

/** Nearer to a front's plane than this, metres, a receptor counts as lying in it, where the front gives nothing. */
const inPlane = 1e-9

/**
 * Exposure at the receptor per unit of the source's strength. Area: 1/m², lx·s per cd·s of on-axis far-field
 * intensity, so that far away on the axis a receptor facing it gets 1/d². Parallel: lx·s per lx·s on a plane square to
 * it. Uniform: lx·s per lx·s on a level plane in the open.
 *
 * Exact for Lambertian fronts (discs cut by the receptor's horizon and the solid angles of ellipses within 0.1 %); other
 * patterns within 0.5 % from half the front's size up, beams within 0.2 %. Photometric tables within 0.5 % where they are
 * read at every 15 degrees or closer and go down to nothing; within 1 % for narrow spots on wide fronts and where a table
 * ends lit, of what the light gives there or, where the front is all but out of its light, of a tenth of that ahead.
 */
export const response = (source: Source, receptor: Receptor): number => {
  switch (source.kind) {
    case 'area':
      return fromArea(source, receptor)
    case 'parallel':
      return fromParallel(source.toward, receptor)
    case 'uniform':
      return fromUpperHalf(receptor)
  }
}

/** The response on the front's axis, the meter facing it: where a guide number or a calibration was taken. */
export const onAxisResponse = (source: Source, distance: Metres, kind: Receptor['kind'] = 'dome'): number => {
  if (source.kind !== 'area') return 1
  const { centre, normal } = source.face
  const at: Vec3 = [
    centre[0] + distance * normal[0],
    centre[1] + distance * normal[1],
    centre[2] + distance * normal[2],
  ]
  return response(source, { at, normal: [-normal[0], -normal[1], -normal[2]], kind })
}

const fromParallel = (toward: Vec3, { normal, kind, onSurface }: Receptor): number => {
  const cosine = dot(normal, toward)
  if (kind === 'flat') return Math.max(0, cosine)
  return onSurface === true && cosine <= 0 ? 0 : (1 + cosine) / 2
}

/** A sky of radiance 1/π over the horizon: view factors of the half-sphere, cut by the receptor's own plane. */
const fromUpperHalf = ({ normal, kind, onSurface }: Receptor): number => {
  const up = Math.min(1, Math.max(-1, normal[2]))
  if (kind === 'flat') return (1 + up) / 2
  if (onSurface !== true) return 1 + up / 2
  return 1 - Math.acos(up) / Math.PI + (1 + up) / 4
}

const fromArea = (source: AreaSource, receptor: Receptor): number => {
  const local = toLocal(source, receptor)
  if (local === undefined) return 0
  if (source.pattern.cosine === 1 && source.pattern.grid === undefined)
    return lambertian(source, local) / source.area
  return integrate(source, local) / source.area
}

/** The receptor in the front's coordinates, mirrored to its front where it gives light both ways; undefined where it gives none. */
export const toLocal = (
  { face, both }: AreaSource,
  { at, normal, kind, onSurface }: Receptor,
): LocalReceptor | undefined => {
  const { centre, across, up, normal: out } = face
  const dx = at[0] - centre[0]
  const dy = at[1] - centre[1]
  const dz = at[2] - centre[2]
  const z = dx * out[0] + dy * out[1] + dz * out[2]
  if (z < inPlane && !(both && z < -inPlane)) return undefined
  const side = z < 0 ? -1 : 1
  return {
    x: dx * across[0] + dy * across[1] + dz * across[2],
    y: dx * up[0] + dy * up[1] + dz * up[2],
    z: side * z,
    nx: dot(normal, across),
    ny: dot(normal, up),
    nz: side * dot(normal, out),
    behind: z < 0,
    dome: kind === 'dome',
    horizon: kind === 'flat' || onSurface === true,
  }
}

/** For radiance 1, lx per cd/m². */
const lambertian = (source: AreaSource, local: LocalReceptor): number => {
  const { outline, width, height } = source.face
  if ((outline === 'disc' || outline === 'ring') && width === height) {
    const whole = disc(width / 2, source.outline, local)
    return source.hole > 0 ? whole - disc((source.hole * width) / 2, holeOf(source), local) : whole
  }
  const whole = fromPolygon(source.outline, local)
  return source.hole > 0 ? whole - fromPolygon(holeOf(source), local) : whole
}

const disc = (radius: number, outline: readonly number[], local: LocalReceptor): number => {
  const { x, y, z, nx, ny, nz, dome, horizon } = local
  if (horizon) {
    const middle = -nx * x - ny * y - nz * z
    const reach = radius * Math.sqrt(nx * nx + ny * ny)
    if (middle <= -reach) return 0
    if (middle < reach) return fromPolygon(outline, local)
  }
  const aside = Math.sqrt(x * x + y * y)
  const { along, inward } = discIrradiance(radius, z, aside)
  const facing = -nz * along - (aside > 0 ? ((nx * x + ny * y) / aside) * inward : 0)
  return dome ? (discSolidAngle(radius, z, aside) + facing) / 2 : facing
}

/** Of a convex part of an even front, for radiance 1, lx per cd/m². */
export const fromPolygon = (outline: readonly number[], local: LocalReceptor): number => {
  const { x, y, z, nx, ny, nz, dome, horizon } = local
  const seen = horizon ? clipByHorizon(outline, x, y, z, nx, ny, nz) : outline
  if (seen.length < 6) return 0
  const facing = contourIrradiance(seen, x, y, z, nx, ny, nz)
  return dome ? (polygonSolidAngle(seen, x, y, z) + facing) / 2 : Math.max(0, facing)
}
