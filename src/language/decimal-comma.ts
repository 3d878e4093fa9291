/**
 * A decimal comma inside braces: `{ distance: 2,5 m }` is, to YAML, a distance of 2 and a key `5 m`. The slip of half the
 * world is told as the one mistake that it is.
 */
import { pointer } from '../text/place.js'
import type { TextNode } from '../text/tree.js'
import type { MistakeAt } from './mistakes.js'

export interface DecimalComma {
  readonly mistake: MistakeAt
  /** What stands at these pointers is part of the slip, and no mistake of its own. */
  readonly pointers: readonly string[]
}

export const decimalCommas = (root: TextNode): readonly DecimalComma[] => {
  const found: DecimalComma[] = []
  const walk = (node: TextNode, keys: readonly (string | number)[]): void => {
    if (node.kind === 'list') for (const [i, item] of node.items.entries()) walk(item, [...keys, i])
    if (node.kind !== 'map') return
    let before: { readonly name: string; readonly value: TextNode } | undefined
    for (const [name, { key, value }] of node.entries) {
      const start = before?.value
      const split =
        node.flow &&
        start?.kind === 'scalar' &&
        !start.quoted &&
        /\d$/.test(start.source) &&
        /^\d/.test(key.source) &&
        key.start === start.end + 1 &&
        value.kind === 'scalar' &&
        value.value === null
      if (split) {
        const [written, meant] = [`${start.source},${key.source}`, `${start.source}.${key.source}`]
        const [at, rest] = [pointer(...keys, before!.name), pointer(...keys, name)]
        found.push({
          mistake: {
            rule: 'plan-unreadable',
            at: { file: key.file, start: start.start, end: key.end },
            pointer: at,
            message: `${before!.name} ${written} cannot be read: write ${meant}, with a point`,
            why: 'a comma begins the next entry here',
          },
          pointers: [at, rest],
        })
      } else walk(value, [...keys, name])
      before = { name, value }
    }
  }
  walk(root, [])
  return found
}
