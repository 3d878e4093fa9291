/** The name that was probably meant. */

/** No name that anyone would mistype is longer; keeps hostile text cheap. */
const longest = 60

const folded = (word: string): string => word.toLowerCase().replace(/[\s_-]+/g, '-')

/** Edits between two words: insertions, deletions, substitutions, and neighbours swapped (optimal string alignment). */
const edits = (a: string, b: string): number => {
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let fewest = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        fewest = Math.min(fewest, before[j - 2]! + 1)
      row.push(fewest)
    }
    before = last
    last = row
  }
  return last[b.length]!
}

/**
 * The candidate that a word was probably meant to be; undefined where none is near. Case, spaces, hyphens and underscores
 * count as alike; a third of the letters may be wrong; a beginning of at least three letters is near what it begins. Of
 * two that are equally near, the first.
 */
export const nearest = (word: string, candidates: readonly string[]): string | undefined => {
  const sought = folded(word)
  if (sought === '' || sought.length > longest) return undefined
  let found: string | undefined
  let fewest = Number.POSITIVE_INFINITY
  for (const candidate of candidates) {
    const here = folded(candidate)
    const allowed = Math.max(1, Math.floor(Math.min(sought.length, here.length) / 3))
    const begins = sought.length >= 3 && here.startsWith(sought)
    const apart = Math.abs(here.length - sought.length)
    // A name of one letter is not mistyped, it is another name.
    if (here !== sought && !begins && (apart > allowed || here.length < 2 || sought.length < 2)) continue
    const distance = here === sought ? 0 : begins ? 0.5 : edits(sought, here)
    if (distance <= allowed && distance < fewest) {
      found = candidate
      fewest = distance
    }
  }
  return found
}
