/** Photometric tables for tests, lights that have them, and what they give by adding up. */
import { readPhotometric } from '../../../src/language/photometric/read-photometric.js'
import type { PhotometricTable } from '../../../src/language/photometric/table.js'
import type { Light } from '../../../src/language/plan.js'
import { makeSource } from '../../../src/light/make-source.js'
import { candelaToward, photometryOf } from '../../../src/light/photometric.js'
import type { Receptor } from '../../../src/light/receptor.js'
import type { AreaSource, Pattern } from '../../../src/light/source.js'
import { buildScene } from '../../../src/scene/build-scene.js'
import { add, dot, scale, subtract } from '../../../src/scene/vector.js'
import { degreesOf, flashgun, makePlan } from '../../helpers/make-plan.js'
import { type PhotometricText, photometricText, steps } from '../../helpers/photometric-text.js'

export const tableOf = (given: PhotometricText): PhotometricTable => {
  const reading = readPhotometric(photometricText(given))
  if (!reading.ok) throw new Error(reading.says)
  return reading.table
}

export const byTable = (table: PhotometricTable, lying = false): Pattern => ({
  cosine: undefined,
  head: undefined,
  grid: undefined,
  table: { table, gain: 1 / photometryOf(table).reference, lying },
})

export const lampOf = (table: PhotometricTable): Light['unit'] =>
  ({
    ...flashgun,
    kind: 'continuous',
    name: 'lamp',
    size: undefined,
    strength: { kind: 'photometric file', file: 'lamp.ies', table },
  }) as never as Light['unit']

export const sourceOf = (light: Light): AreaSource => {
  const plan = makePlan({ lights: [light] })
  const source = makeSource(light, buildScene(plan).lights.get(light.name)!, plan)
  if (source?.kind !== 'area') throw new Error('no front')
  return source
}

export const cosine =
  (power: number, most = 1000) =>
  (v: number): number =>
    v > 90 ? 0 : most * Math.max(0, Math.cos(degreesOf(v))) ** power

/** A direction by the angles of type C, in along, aside and out. */
export const typeC = (v: number, h: number): readonly [number, number, number] => [
  Math.sin(degreesOf(v)) * Math.cos(degreesOf(h)),
  Math.sin(degreesOf(v)) * Math.sin(degreesOf(h)),
  Math.cos(degreesOf(v)),
]

/** ∫ I dΩ over equal steps of direction cosine and azimuth. */
export const overSphere = (table: PhotometricTable, fine = 1200): number => {
  let sum = 0
  for (let i = 0; i < fine; i++)
    for (let j = 0; j < fine; j++) {
      const out = (2 * i + 1) / fine - 1
      const off = Math.sqrt(1 - out * out)
      const round = ((j + 0.5) * 2 * Math.PI) / fine
      sum += candelaToward(table, off * Math.cos(round), off * Math.sin(round), out)
    }
  return (sum * 4 * Math.PI) / fine ** 2
}

/** Uneven to all sides, forward and back. */
export const uneven: PhotometricText = {
  vertical: steps(0, 180, 15),
  horizontal: steps(0, 360, 30),
  candela: (v, h) =>
    Math.round(
      1000 *
        (1.2 + Math.cos(degreesOf(v))) *
        (1 + 0.6 * Math.sin(degreesOf(v)) * Math.cos(degreesOf(h - 50))),
    ),
  opening: [0.4, 0.6, 0],
}

/** The response that the definition gives, in `fine`² pieces of a rectangle or of the square around a disc. */
export const piecesOf = (
  { face }: AreaSource,
  receptor: Receptor,
  intensity: (along: number, aside: number, out: number) => number,
  fine = 200,
): number => {
  let [sum, count] = [0, 0]
  for (let i = 0; i < fine; i++)
    for (let j = 0; j < fine; j++) {
      const [u, v] = [(2 * i + 1) / fine - 1, (2 * j + 1) / fine - 1]
      if (face.outline === 'disc' && u * u + v * v > 1) continue
      count++
      const at = add(
        face.centre,
        add(scale(face.across, (u * face.width) / 2), scale(face.up, (v * face.height) / 2)),
      )
      const way = subtract(receptor.at, at)
      const squared = dot(way, way)
      const seen = -dot(way, receptor.normal) / Math.sqrt(squared)
      const weight = receptor.kind === 'flat' ? Math.max(0, seen) : (1 + seen) / 2
      sum += (intensity(dot(way, face.across), dot(way, face.up), dot(way, face.normal)) * weight) / squared
    }
  return sum / count
}
