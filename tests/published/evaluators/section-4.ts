import { beamExponent, beamSolidAngle } from '../../../src/light/beam.js'
import { fNumberFor, luminanceSecondsOf } from '../../../src/light/exposure.js'
import { contourIrradiance, polygonSolidAngle } from '../../../src/light/polygon.js'
import { onAxisResponse, response } from '../../../src/light/response.js'
import { angleOfView, diagonal } from '../../../src/picture/lens.js'
import { unit, type Vec3 } from '../../../src/scene/vector.js'
import { degrees, inDegrees, iso, luxSeconds, type Metres, metres } from '../../../src/units/quantity.js'
import { cosinePower, frontAt } from '../../light/fronts.js'
import type { Section } from '../check-values.js'

const at = (from: Vec3, normal: Vec3) => ({ at: from, normal: unit(normal), kind: 'flat' }) as const

/** View factor from an element to an even front in the plane z = 0, the element before it. */
const toRectangle = (
  [x1, x2]: readonly [number, number],
  [y1, y2]: readonly [number, number],
  element: ReturnType<typeof at>,
): number => {
  const front = frontAt('rectangle', x2 - x1, y2 - y1, { centre: [(x1 + x2) / 2, (y1 + y2) / 2, 0] })
  return (response(front, element) * front.area) / Math.PI
}

const toDisc = (radius: number, element: ReturnType<typeof at>): number => {
  const front = frontAt('disc', 2 * radius, 2 * radius)
  return (response(front, element) * front.area) / Math.PI
}

const facing: Vec3 = [0, 0, -1]

/** Mean over a line or an area by midpoints, for factors between finite faces. */
const mean = (steps: number, of: (share: number) => number): number => {
  let sum = 0
  for (let i = 0; i < steps; i++) sum += of((i + 0.5) / steps)
  return sum / steps
}

/** A front so small that it is a point. */
const speck = frontAt('disc', 1e-6, 1e-6)
const point = frontAt('disc', 1e-6, 1e-6, { pattern: cosinePower(0) })
const onAxis = (distance: number): number => onAxisResponse(speck, metres(distance), 'flat')

/** A point light before a wall, metered on the wall at a sideways offset. */
const onWall = (distance: number, offset: number): number =>
  response({ ...point, both: true }, at([offset, 0, distance], facing))

const beam = (halfPeak: number, angle: number): number => {
  const front = frontAt('disc', 1e-9, 1e-9, { pattern: cosinePower(beamExponent(degrees(2 * halfPeak))) })
  const way: Vec3 = [Math.sin(degrees(angle)), 0, Math.cos(degrees(angle))]
  return response(front, at(way, [-way[0], -way[1], -way[2]]))
}

const overestimate = (diameters: number): number => {
  const disc = frontAt('disc', 1, 1)
  return 1 / (onAxisResponse(disc, metres(diameters), 'flat') * diameters ** 2)
}

const fromPolygon = (vertices: readonly Vec3[], normal: Vec3): number => {
  // The vertices lie on a plane z = height before an element at the origin, or anywhere: then on their own plane.
  const [a, b, c] = vertices as readonly [Vec3, Vec3, Vec3]
  const minus = (p: Vec3, q: Vec3): Vec3 => [p[0] - q[0], p[1] - q[1], p[2] - q[2]]
  const times = (p: Vec3, q: Vec3): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2]
  const [p, q] = [minus(b, a), minus(c, a)]
  let out = unit([p[1] * q[2] - p[2] * q[1], p[2] * q[0] - p[0] * q[2], p[0] * q[1] - p[1] * q[0]])
  // The front gives its light toward the element.
  if (times(out, a) > 0) out = [-out[0], -out[1], -out[2]]
  const across = unit(p)
  const up: Vec3 = [
    out[1] * across[2] - out[2] * across[1],
    out[2] * across[0] - out[0] * across[2],
    out[0] * across[1] - out[1] * across[0],
  ]
  const flat = vertices.flatMap((corner) => [times(minus(corner, a), across), times(minus(corner, a), up)])
  const here = minus([0, 0, 0], a)
  const looks = unit(normal)
  const found = contourIrradiance(
    flat,
    times(here, across),
    times(here, up),
    times(here, out),
    times(looks, across),
    times(looks, up),
    times(looks, out),
  )
  return Math.abs(found) / Math.PI
}

/** The distance at which a light falls by the tolerance over the depth, by halving. */
const nearestRow = (depth: number, tolerance: number): number => {
  let [near, far] = [0.01, 1000]
  for (let i = 0; i < 100; i++) {
    const middle = (near + far) / 2
    if (Math.log2(onAxis(middle) / onAxis(middle + depth)) > tolerance) near = middle
    else far = middle
  }
  return near
}

const box = ({
  luminous_energy_lm_s,
  width_m,
  height_m,
  distance_m,
  iso: speed,
  C_lx_s,
}: Record<string, number>) => {
  const front = frontAt('rectangle', width_m!, height_m!)
  const intensity = luminous_energy_lm_s! / beamSolidAngle(1)
  const exposure = intensity * onAxisResponse(front, metres(distance_m!), 'flat')
  return {
    luminance_s_cd_s_m2: intensity / front.area,
    exposure_lx_s: exposure,
    f_number: fNumberFor(luxSeconds(exposure), iso(speed!), C_lx_s),
  }
}

export const section4: Section = {
  section: '4',
  evaluators: {
    'geo.isq.': ({ d1_m, d2_m }) => {
      const ratio = onAxis(d2_m) / onAxis(d1_m)
      return { ratio, stops: Math.log2(ratio) }
    },
    'geo.cos.': ({ angle_deg }) => {
      const [s, c] = [Math.sin(degrees(angle_deg)), Math.cos(degrees(angle_deg))]
      const factor = response(speck, at([0, 0, 1], [s, 0, -c])) / onAxis(1)
      return { factor, stops: Math.log2(factor) }
    },
    'geo.five': () => ({
      distance_over_dimension: 5,
      error_percent: Math.round(1e11 * (overestimate(5) - 1)) / 1e9,
    }),
    'geo.five.': ({ distance_in_diameters }) => {
      const ratio = overestimate(distance_in_diameters)
      return {
        ratio_inverse_square_to_exact: ratio,
        overestimate_percent: 100 * (ratio - 1),
        overestimate_stops: Math.log2(ratio),
      }
    },
    'geo.disc.': ({ radius_m, distance_m }) => ({
      view_factor: toDisc(radius_m, at([0, 0, distance_m], facing)),
    }),
    'geo.disc.h1': ({ h_over_R }) => ({ view_factor: toDisc(1, at([0, 0, h_over_R], facing)) }),
    'geo.discfall.': ({ radius_m, d1_m, d2_m }) => ({
      stops: Math.log2(
        toDisc(radius_m, at([0, 0, d2_m], facing)) / toDisc(radius_m, at([0, 0, d1_m], facing)),
      ),
    }),
    'geo.rect.par.': ({ a_m, b_m, c_m }) => ({
      view_factor: toRectangle([0, a_m], [0, b_m], at([0, 0, c_m], facing)),
    }),
    'geo.rect.centre.': ({ width_m, height_m, distance_m }) => ({
      view_factor: toRectangle(
        [0, width_m],
        [0, height_m],
        at([width_m / 2, height_m / 2, distance_m], facing),
      ),
    }),
    'geo.rect.off.': ({ x1_m, x2_m, y1_m, y2_m, distance_m }) => ({
      view_factor: toRectangle([x1_m, x2_m], [y1_m, y2_m], at([0, 0, distance_m], facing)),
    }),
    'geo.rect.perp.': ({ a_m, b_m, c_m }) => ({
      view_factor: toRectangle([0, a_m], [0, b_m], at([0, 0, c_m], [1, 0, 0])),
    }),
    // A strip along side b under the edge: the mean of its elements.
    'geo.strip': ({ a_m, b_m, c_m }) => ({
      view_factor: mean(400, (v) => toRectangle([0, a_m], [0, b_m], at([0, v * b_m, c_m], facing))),
    }),
    'geo.rects': ({ a_m, b_m, c_m }) => ({
      view_factor: mean(60, (u) =>
        mean(60, (v) => toRectangle([0, a_m], [0, b_m], at([u * a_m, v * b_m, c_m], facing))),
      ),
    }),
    'geo.discs': ({ radius1_m, radius2_m, distance_m }) => ({
      // Even steps of r² are rings of even area.
      view_factor: mean(2000, (u) =>
        toDisc(radius2_m, at([radius1_m * Math.sqrt(u), 0, distance_m], facing)),
      ),
    }),
    'geo.discoff.par.': ({ radius_m, distance_m, offset_m }) => ({
      view_factor: toDisc(radius_m, at([offset_m, 0, distance_m], facing)),
    }),
    'geo.discoff.perp.': ({ radius_m, distance_m, offset_m }) => ({
      view_factor: toDisc(radius_m, at([offset_m, 0, distance_m], [-1, 0, 0])),
    }),
    'geo.disctilt': ({ radius_m, distance_m, tilt_deg }) => ({
      view_factor: toDisc(
        radius_m,
        at([0, 0, distance_m], [Math.sin(degrees(tilt_deg)), 0, -Math.cos(degrees(tilt_deg))]),
      ),
    }),
    'geo.omega': ({ a_m, b_m, c_m }) => ({
      fraction_of_sphere: polygonSolidAngle([0, 0, a_m, 0, a_m, b_m, 0, b_m], 0, 0, c_m) / (4 * Math.PI),
    }),
    'geo.poly.': ({ vertices_m, element_normal }) => ({
      view_factor: fromPolygon(vertices_m, element_normal),
    }),
    'geo.cosn.': ({ half_peak_angle_deg }) => ({ n: beamExponent(degrees(2 * half_peak_angle_deg)) }),
    'geo.cosn.30.at': ({ half_peak_angle_deg, angle_deg }) => {
      const relative = beam(half_peak_angle_deg, angle_deg)
      return { relative_intensity: relative, stops: Math.log2(relative) }
    },
    'geo.cosn.15.at': ({ half_peak_angle_deg, angle_deg }) => {
      const relative = beam(half_peak_angle_deg, angle_deg)
      return { relative_intensity: relative, stops: Math.log2(relative) }
    },
    'geo.cosn.60.at': ({ half_peak_angle_deg, angle_deg }) => {
      const relative = beam(half_peak_angle_deg, angle_deg)
      return { relative_intensity: relative, stops: Math.log2(relative) }
    },
    'geo.cosn.peak': ({ luminous_flux_lm, half_peak_angle_deg }) => ({
      peak_cd: luminous_flux_lm / beamSolidAngle(beamExponent(degrees(2 * half_peak_angle_deg))),
    }),
    'geo.aov.': ({ focal_mm, sensor_w_mm, sensor_h_mm }) => {
      const lens = metres(focal_mm / 1000)
      const sensor = { width: metres(sensor_w_mm / 1000), height: metres(sensor_h_mm / 1000) }
      const over = (side: Metres): number => inDegrees(angleOfView(lens, side))
      return {
        horizontal_deg: over(sensor.width),
        vertical_deg: over(sensor.height),
        diagonal_deg: over(diagonal(sensor)),
      }
    },
    'geo.wall.': ({ distance_to_wall_m, offset_m }) => {
      const relative = onWall(distance_to_wall_m, offset_m) / onWall(distance_to_wall_m, 0)
      return { relative_illuminance: relative, stops: Math.log2(relative) }
    },
    'geo.two.': ({ distance_to_wall_m, half_spacing_m }) => {
      const centre = 2 * onWall(distance_to_wall_m, half_spacing_m)
      const foot = onWall(distance_to_wall_m, 0) + onWall(distance_to_wall_m, 2 * half_spacing_m)
      return { centre_over_foot_ratio: centre / foot, stops: Math.log2(centre / foot) }
    },
    'geo.rows.': ({ depth_m, tolerance_stops }) => ({
      nearest_row_distance_m: nearestRow(depth_m, tolerance_stops),
    }),
    'geo.lamb': ({ illuminance_lx, reflectance }) => ({
      luminance_cd_m2: luminanceSecondsOf(luxSeconds(illuminance_lx), reflectance),
    }),
    'geo.softbox': box,
  },
  waiting: {
    'geo.sphere.': 'no function: no light or surface of a set is a ball that gives light',
  },
}
