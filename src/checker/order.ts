import type { Finding } from './finding.js'

/** By place, then by rule: the plan's own file first, other files by name. Code units, so that no locale has a say. */
export const inOrder = <T extends { readonly finding: Pick<Finding, 'place' | 'rule'> }>(
  drafts: readonly T[],
  file: string,
): readonly T[] =>
  [...drafts].sort(({ finding: a }, { finding: b }) => {
    const own = Number(b.place.file === file) - Number(a.place.file === file)
    return (
      own ||
      compare(a.place.file, b.place.file) ||
      a.place.start - b.place.start ||
      a.place.end - b.place.end ||
      compare(a.rule, b.rule)
    )
  })

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
