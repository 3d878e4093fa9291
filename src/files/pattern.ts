/**
 * Patterns of paths: `*` stands for any characters within a name, `?` for one, `**` for any folders. Matched without
 * regular expressions, so that no pattern takes longer than its length times that of the path.
 */
export const matches = (pattern: string, path: string): boolean =>
  matchParts(split(pattern), split(path), matchName, (part) => part === '**')

const split = (path: string): string[] => path.replace(/^\.\//, '').split('/')

const matchName = (pattern: string, name: string): boolean =>
  matchParts(
    [...pattern],
    [...name],
    (one, other) => one === '?' || one === other,
    (one) => one === '*',
  )

/** On a mismatch, the last wild part takes one more and the rest is tried again. */
const matchParts = (
  pattern: readonly string[],
  parts: readonly string[],
  same: (pattern: string, part: string) => boolean,
  isWild: (pattern: string) => boolean,
): boolean => {
  let at = 0
  let next = 0
  let wild = -1
  let taken = 0
  while (at < parts.length) {
    const wanted = pattern[next]
    if (wanted !== undefined && isWild(wanted)) {
      wild = next
      taken = at
      next += 1
    } else if (wanted !== undefined && same(wanted, parts[at]!)) {
      at += 1
      next += 1
    } else if (wild >= 0) {
      taken += 1
      at = taken
      next = wild + 1
    } else return false
  }
  return pattern.slice(next).every(isWild)
}
