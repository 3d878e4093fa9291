/** A tree as plain values, for validators and comparisons. */
import type { TextNode } from './tree.js'

/** Maps become objects whose every key is an own property, whatever its name; lists become arrays. */
export const plain = (node: TextNode): unknown => {
  if (node.kind === 'scalar') return node.value
  if (node.kind === 'list') return node.items.map(plain)
  const object: Record<string, unknown> = {}
  for (const [key, entry] of node.entries) {
    const value = plain(entry.value)
    // Assigning to this one name would set the prototype instead.
    if (key === '__proto__')
      Object.defineProperty(object, key, { value, enumerable: true, configurable: true, writable: true })
    else object[key] = value
  }
  return object
}
