/** From stretches of a file's text back to the pointers of the values, and of the keys, that are written there. */
import { pointer } from '../text/place.js'
import type { TextNode, TextScalar } from '../text/tree.js'

interface Span {
  readonly start: number
  readonly end: number
}

const nameOf = ({ start, end }: Span): string => `${start} ${end}`

/**
 * Pointers of all that is written in a file, found by where it is. Of two values of one extent the outer counts; what is
 * reached through an alias counts where it is written.
 */
export const pointersIn = (root: TextNode, file: string): ((span: Span) => string | undefined) => {
  const found = new Map<string, string>()
  const note = (node: TextNode | TextScalar, here: string): void => {
    const name = nameOf(node)
    if (node.file === file && !found.has(name)) found.set(name, here)
  }
  const walk = (node: TextNode, here: string): void => {
    note(node, here)
    if (node.kind === 'list') for (const [i, item] of node.items.entries()) walk(item, here + pointer(i))
    else if (node.kind === 'map')
      for (const [name, { key, value }] of node.entries) {
        const there = here + pointer(name)
        note(key, there)
        walk(value, there)
      }
  }
  walk(root, '')
  return (span) => found.get(nameOf(span))
}
