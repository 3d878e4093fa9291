/** Sets a list that stands in brackets one item a line, where that changes nothing but how it is written. */
import { newlineOf, prefixOf } from '../text/layout.js'
import { plain } from '../text/plain.js'
import { readText } from '../text/read.js'
import type { TextList, TextNode } from '../text/tree.js'

/** The text with the list of a key of the root in block style; the same text where that cannot be. */
export const asBlockList = (text: string, key: string): string => {
  const { root } = readText('', text)
  const list = root?.kind === 'map' && !root.flow ? root.entries.get(key)?.value : undefined
  if (root === undefined || list?.kind !== 'list' || !canBeBlock(text, list)) return text
  const newline = newlineOf(text)
  const indent = ' '.repeat(prefixOf(text, root.start).length + 2)
  const lines = list.items.map((item) => `${newline}${indent}- ${text.slice(item.start, item.end)}`)
  const block = text.slice(0, list.start).trimEnd() + lines.join('') + text.slice(list.end)
  return readsAlike(root, block) ? block : text
}

/** Comments in it, aliases, and items of several lines stay as their author set them. */
const canBeBlock = (text: string, list: TextList): boolean =>
  list.flow &&
  list.usedAt === undefined &&
  list.items.length > 0 &&
  list.items.every(({ usedAt }) => usedAt === undefined) &&
  !/[\n#]/.test(text.slice(list.start, list.end))

const readsAlike = (root: TextNode, after: string): boolean => {
  const { root: read, faults } = readText('', after)
  return (
    read !== undefined && faults.length === 0 && JSON.stringify(plain(read)) === JSON.stringify(plain(root))
  )
}

/** Columns of the line that the list of a key of the root ends in; 0 where it does not stand in brackets. */
export const bracketedColumns = (text: string, key: string): number => {
  const { root } = readText('', text)
  const list = root?.kind === 'map' ? root.entries.get(key)?.value : undefined
  return list?.kind === 'list' && list.flow ? prefixOf(text, list.end).length : 0
}
