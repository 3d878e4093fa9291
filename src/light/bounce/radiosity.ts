/**
 * Exitances once all reflections have died out: B = M (E + F B), M what each side gives back of its own light and lets
 * through of the other side's.
 */
import type { Mesh } from './mesh.js'
import type { Transfer } from './transfer.js'

/** No side may give out more than this share of what comes to its patch. */
const most = 0.995
/** Largest relative change of a side in the last round. */
const close = 1e-6
/** Rounds in which the overall level is set as well; after that the series alone runs on, which always ends. */
const levelled = 12
const rounds = 2000

/** Exitance by side per unit of strength, from the exposure that `firstLight` gives. Within 0.1 %. */
export const radiosity = (mesh: Mesh, { sides, factors }: Transfer, first: Float64Array): Float64Array => {
  const { layout } = mesh
  const count = sides.length
  const { own, through } = shares(mesh)
  const other = partners(mesh)
  const give = (exposure: Float64Array, into: Float64Array): void => {
    for (let k = 0; k < count; k++) {
      const partner = other[k]!
      into[k] = own[k]! * exposure[k]! + (partner < 0 ? 0 : through[k]! * exposure[partner]!)
    }
  }
  const start = new Float64Array(count)
  give(
    Float64Array.from(sides, (side) => first[side]!),
    start,
  )
  let now = start.slice()
  let next = new Float64Array(count)
  const exposure = new Float64Array(count)
  for (let round = 0; round < rounds; round++) {
    for (let i = 0; i < count; i++) {
      let sum = 0
      const row = i * count
      for (let j = 0; j < count; j++) sum += factors[row + j]! * now[j]!
      exposure[i] = sum
    }
    give(exposure, next)
    // The level at which all that is given out equals what comes new and what comes again.
    let fresh = 0
    let lost = 0
    for (let k = 0; k < count; k++) {
      const size = layout.area[sides[k]! >> 1]!
      fresh += size * start[k]!
      lost += size * (now[k]! - next[k]!)
    }
    const level = round < levelled && lost > 0 ? fresh / lost : 1
    let highest = 0
    for (let k = 0; k < count; k++) {
      next[k] = start[k]! + level * next[k]!
      highest = Math.max(highest, next[k]!)
    }
    let change = Math.abs(level - 1)
    for (let k = 0; k < count; k++)
      change = Math.max(change, Math.abs(next[k]! - now[k]!) / Math.max(next[k]!, 1e-4 * highest, 1e-300))
    const was = now
    now = next
    next = was
    if (change < close) break
  }
  const exitance = new Float64Array(2 * layout.count)
  for (let k = 0; k < count; k++) exitance[sides[k]!] = now[k]!
  return exitance
}

/** By row: the share given back, and the share that comes through from the other side. */
const shares = ({ patches, sides }: Mesh) => {
  const own = new Float64Array(sides.length)
  const through = new Float64Array(sides.length)
  sides.forEach((side, k) => {
    const { surface } = patches[side >> 1]!
    const back = (side & 1) === 1 ? surface.back : surface.front
    const reflectance = Math.max(0, back?.reflectance ?? 0)
    const passed = Math.max(0, surface.transmits)
    const scale = Math.min(1, most / Math.max(1e-12, reflectance + passed))
    own[k] = scale * reflectance
    through[k] = scale * passed
  })
  return { own, through }
}

/** By row, the row of the same patch's other side; −1 where light reaches one side only. */
const partners = ({ sides }: Mesh): Int32Array =>
  Int32Array.from(sides, (side, k) =>
    sides[k + 1] === (side ^ 1) ? k + 1 : sides[k - 1] === (side ^ 1) ? k - 1 : -1,
  )
