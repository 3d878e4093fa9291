/** What must hold of exchanges A·F whatever rounding they come with. Square matrices, row by row, symmetric. */

const rounds = 6

/**
 * Scales rows and columns alike until each side of a closed box sends all that it gives to the others of the box, so
 * that no light is lost in it. Symmetry stays.
 */
export const balance = (shared: Float64Array, areas: Float64Array, within: (k: number) => boolean): void => {
  const count = areas.length
  const part = Uint8Array.from(areas, (_, k) => (within(k) ? 1 : 0))
  const by = new Float64Array(count).fill(1)
  for (let round = 0; round < rounds; round++) {
    const next = by.slice()
    for (let i = 0; i < count; i++) {
      if (part[i] === 0) continue
      let sum = 0
      const row = i * count
      for (let j = 0; j < count; j++) if (part[j] === 1) sum += shared[row + j]! * by[j]!
      if (sum > 0) next[i] = by[i]! * Math.sqrt(areas[i]! / (sum * by[i]!))
    }
    by.set(next)
  }
  for (let i = 0; i < count; i++) {
    if (part[i] === 0) continue
    const row = i * count
    for (let j = 0; j < count; j++) if (part[j] === 1) shared[row + j]! *= by[i]! * by[j]!
  }
}

/** Lowers what gives more than all of itself, so that reflections always die out. */
export const noMoreThanAll = (shared: Float64Array, areas: Float64Array): void => {
  const count = areas.length
  const by = new Float64Array(count).fill(1)
  let over = false
  for (let i = 0; i < count; i++) {
    let sum = 0
    for (let j = 0; j < count; j++) sum += shared[i * count + j]!
    if (sum > areas[i]!) {
      by[i] = areas[i]! / sum
      over = true
    }
  }
  if (!over) return
  for (let i = 0; i < count; i++)
    for (let j = 0; j < count; j++) shared[i * count + j]! *= Math.min(by[i]!, by[j]!)
}
