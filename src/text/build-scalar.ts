/** Scalars of the tree. */
import type { Scalar } from 'yaml'
import { coreValue } from './core-scalar.js'
import type { TextScalar } from './tree.js'
import { complain, coreTag, reach, tagRefused, type Use, unusable, type Walk } from './walk.js'

/** What a tag makes of a scalar; a tag that does not fit is a fault and the value is taken without it. */
const tagged = (walk: Walk, node: Scalar, start: number, end: number, use: Use): TextScalar['value'] => {
  const text = String(node.value)
  const value = node.type === 'PLAIN' ? coreValue(text) : text
  const tag = node.tag
  if (tag === undefined) return value
  if (tag === '!' || tag === `${coreTag}str`) return text
  const forced = coreValue(text)
  const fits =
    (tag === `${coreTag}null` && forced === null) ||
    (tag === `${coreTag}bool` && typeof forced === 'boolean') ||
    (tag === `${coreTag}int` && Number.isInteger(forced)) ||
    (tag === `${coreTag}float` && typeof forced === 'number')
  if (fits) return forced
  complain(walk, use, start, end, tagRefused(tag))
  return value
}

/** `at` is where an empty scalar is taken to stand. */
export const buildScalar = (
  walk: Walk,
  node: Scalar,
  at: number | undefined,
  use: Use,
  depth: number,
): TextScalar => {
  const range = node.range!
  const empty = range[0] === range[1]
  const start = empty ? (at ?? range[0]) : range[0]
  let end = empty ? start : range[1]
  // A block scalar reaches into the line after it.
  while (end > start && (walk.text[end - 1] === '\n' || walk.text[end - 1] === '\r')) end -= 1
  reach(walk, start, end, use, depth)
  const value = tagged(walk, node, start, end, use)
  if (typeof value === 'number' && !Number.isFinite(value))
    throw unusable(
      walk,
      start,
      end,
      `${walk.text.slice(start, Math.min(end, start + 30))} is no figure that can be used: write a number`,
    )
  return {
    kind: 'scalar',
    file: walk.file,
    start,
    end,
    ...(use && { usedAt: use }),
    value,
    source: walk.text.slice(start, end),
    quoted: node.type !== 'PLAIN' && !empty,
  }
}

/** The nothing that a key without a colon has for its value. */
export const missingValue = (walk: Walk, at: number, use: Use, depth: number): TextScalar => {
  reach(walk, at, at, use, depth)
  return {
    kind: 'scalar',
    file: walk.file,
    start: at,
    end: at,
    ...(use && { usedAt: use }),
    value: null,
    source: '',
    quoted: false,
  }
}
