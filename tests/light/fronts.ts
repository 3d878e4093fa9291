/** Fronts for tests, and their irradiance by adding up small pieces: slow, dull, and independent of `src/light`. */
import { inSpace, outlineOf } from '../../src/light/outline.js'
import type { Receptor } from '../../src/light/receptor.js'
import type { AreaSource, GridPattern, Pattern } from '../../src/light/source.js'
import type { Face } from '../../src/scene/scene.js'
import { add, cross, dot, length, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'

export const plain: Pattern = { cosine: 1, head: undefined, grid: undefined }
export const cosinePower = (cosine: number, grid?: GridPattern): Pattern => ({
  cosine,
  head: undefined,
  grid,
})

export const frontAt = (
  outline: Face['outline'],
  width: number,
  height: number,
  {
    pattern = plain,
    both = false,
    centre = [0, 0, 0],
    normal = [0, 0, 1],
  }: {
    readonly pattern?: Pattern
    readonly both?: boolean
    readonly centre?: Vec3
    readonly normal?: Vec3
  } = {},
): AreaSource => {
  const out = unit(normal)
  const across = unit(cross(Math.abs(out[2]) > 0.9 ? [0, 1, 0] : [0, 0, 1], out))
  const face = {
    outline,
    centre,
    normal: out,
    across,
    up: cross(out, across),
    width,
    height,
  } as unknown as Face
  const { corners, area, hole } = outlineOf(face)
  const polygon = inSpace(face, corners)
  return { kind: 'area', light: 'test', face, outline: corners, polygon, area, hole, pattern, both }
}

/** Evenly spread points of a front with the area that each stands for; the outline by its own definition, not by ours. */
const pieces = (
  { face }: AreaSource,
  fine: number,
): readonly { readonly at: Vec3; readonly area: number }[] => {
  const a = face.width / 2
  const b = face.height / 2
  const found: { at: Vec3; area: number }[] = []
  const put = (u: number, v: number, area: number): void => {
    found.push({ at: add(face.centre, add(scale(face.across, u), scale(face.up, v))), area })
  }
  if (face.outline === 'rectangle') {
    for (let i = 0; i < fine; i++)
      for (let j = 0; j < fine; j++)
        put(a * ((2 * i + 1) / fine - 1), b * ((2 * j + 1) / fine - 1), (4 * a * b) / fine ** 2)
    return found
  }
  const inner = face.outline === 'ring' ? 0.3 : 0
  const around = Math.ceil(1.5 * fine)
  for (let j = 0; j < around; j++) {
    const angle = ((j + 0.5) * 2 * Math.PI) / around
    // An octagon's rim lies between the circles through its corners and through the middles of its sides.
    const toSide = ((angle + Math.PI / 8) % (Math.PI / 4)) - Math.PI / 8
    const rim = face.outline === 'octagon' ? Math.cos(Math.PI / 8) / Math.cos(toSide) : 1
    for (let i = 0; i < fine; i++) {
      const s = inner + ((1 - inner) * (i + 0.5)) / fine
      const area = ((a * b * rim * rim * s * (1 - inner)) / fine) * ((2 * Math.PI) / around)
      put(a * rim * s * Math.cos(angle), b * rim * s * Math.sin(angle), area)
    }
  }
  return found
}

/** Overlap of two unit circles whose centres are `apart` (of the diameter), by strips. */
const overlap = (apart: number): number => {
  if (apart >= 1) return 0
  // Half of the lens is a segment of one circle: ∫ 2√(1 − x²) dx from `apart` to 1, with x = cos t.
  const strips = 16
  const step = Math.acos(apart) / strips
  let sum = 0
  for (let i = 0; i < strips; i++) sum += 2 * Math.sin((i + 0.5) * step) ** 2 * step
  return (2 * sum) / Math.PI
}

const passed = (grid: GridPattern | undefined, tx: number, ty: number): number => {
  if (grid === undefined) return 1
  if (grid.kind === 'egg-crate') {
    const one = (t: number): number => Math.max(0, 1 - Math.abs(t) / grid.tanCutOff)
    return one(tx) * one(ty)
  }
  // Half of a round cell is open where its mouth is shifted by 0.404 of its width.
  return overlap((Math.hypot(tx, ty) * 0.404) / Math.tan(grid.halfPeak / 2))
}

const cut = new WeakMap<AreaSource, Map<number, ReturnType<typeof pieces>>>()
const piecesOf = (source: AreaSource, fine: number): ReturnType<typeof pieces> => {
  const known = cut.get(source) ?? new Map<number, ReturnType<typeof pieces>>()
  cut.set(source, known)
  const found = known.get(fine) ?? pieces(source, fine)
  known.set(fine, found)
  return found
}

/** The response that the definitions give, 1/m², by `fine`² pieces. */
export const addedUp = (source: AreaSource, receptor: Receptor, fine = 250): number => {
  const { face, pattern } = source
  let sum = 0
  let area = 0
  for (const piece of piecesOf(source, fine)) {
    area += piece.area
    const way = subtract(receptor.at, piece.at)
    const span = length(way)
    const out = dot(way, face.normal) / span
    if (out <= 0 && !source.both) continue
    const tx = dot(way, face.across) / Math.abs(dot(way, face.normal))
    const ty = dot(way, face.up) / Math.abs(dot(way, face.normal))
    const given =
      pattern.head === undefined
        ? Math.abs(out) ** pattern.cosine!
        : 2 ** (-0.5 * ((tx / pattern.head.tanAcross) ** 2 + (ty / pattern.head.tanUp) ** 2))
    const seen = -dot(way, receptor.normal) / span
    const weight =
      receptor.kind === 'flat'
        ? Math.max(0, seen)
        : receptor.onSurface === true && seen <= 0
          ? 0
          : (1 + seen) / 2
    sum += (piece.area * given * passed(pattern.grid, tx, ty) * weight) / span ** 2
  }
  return sum / area
}

/** Numbers from 0 to 1, always the same. */
export const sequence = (seed: number): (() => number) => {
  let state = seed
  return () => {
    state = (state * 1103515245 + 12345) % 2147483648
    return state / 2147483648
  }
}

/** A receptor before the front, `from` to `to` of its size away and at most 45° off to a side; turned at random toward its half-space. */
export const someReceptor = (
  random: () => number,
  { face }: AreaSource,
  from: number,
  to: number,
  kind: Receptor['kind'],
  off = 1,
): Receptor => {
  const z = Math.max(face.width, face.height) * (from + (to - from) * random())
  const x = off * z * (2 * random() - 1)
  const y = off * z * (2 * random() - 1)
  const turn: Vec3 = [2 * random() - 1, 2 * random() - 1, -random()]
  const world = (u: number, v: number, w: number): Vec3 =>
    add(scale(face.across, u), add(scale(face.up, v), scale(face.normal, w)))
  return { at: add(face.centre, world(x, y, z)), normal: unit(world(...turn)), kind }
}

/** m², by the shoelace formula; corners counter-clockwise, flat. */
export const polygonArea = (outline: readonly number[]): number => {
  const count = outline.length
  let sum = 0
  let au = outline[count - 2]!
  let av = outline[count - 1]!
  for (let i = 0; i < count; i += 2) {
    sum += au * outline[i + 1]! - outline[i]! * av
    au = outline[i]!
    av = outline[i + 1]!
  }
  return sum / 2
}
