/** From a stretch of a file's text back to the pointer of the value, or of the key, that is written there. */
import { pointer } from '../text/place.js'
import type { TextNode } from '../text/tree.js'

const isAt = (node: TextNode, file: string, start: number, end: number): boolean =>
  node.file === file && node.start === start && node.end === end

/** The first that fits, in the order of the file; undefined where nothing is written there. */
export const pointerOf = (
  root: TextNode,
  file: string,
  start: number,
  end: number,
  here = '',
): string | undefined => {
  // The outermost of several of one extent is what was meant.
  if (isAt(root, file, start, end)) return here
  if (root.kind === 'scalar') return undefined
  const children =
    root.kind === 'list'
      ? root.items.map((value, i) => ({ name: i, key: undefined, value }))
      : [...root.entries].map(([name, { key, value }]) => ({ name, key, value }))
  for (const { name, key, value } of children) {
    const there = here + pointer(name)
    if (key !== undefined && isAt(key, file, start, end)) return there
    const found = pointerOf(value, file, start, end, there)
    if (found !== undefined) return found
  }
  return undefined
}
