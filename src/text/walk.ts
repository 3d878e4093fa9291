/** What walking a document's nodes carries along: limits, faults, anchors. */
import type { Node } from 'yaml'
import type { TextFault, TextScalar } from './tree.js'

/** Values in one file after aliases. */
export const mostValues = 50_000
/** Maps and lists inside one another. */
export const deepest = 32

/** Where an alias or merge key uses what is being walked; undefined where it is walked as it is written. */
export type Use = TextScalar['usedAt']

export interface Walk {
  readonly file: string
  readonly text: string
  readonly faults: TextFault[]
  readonly anchors: Map<string, Node>
  /** Collections being walked: an alias to one of them would never end. */
  readonly open: Set<Node>
  values: number
}

/** Thrown where nothing usable comes out; caught by `buildTree` alone. */
export class Unusable extends Error {
  constructor(readonly fault: TextFault) {
    super(fault.says)
  }
}

export const fault = (walk: Walk, start: number, end: number, says: string): TextFault => ({
  rule: 'plan-unreadable',
  file: walk.file,
  start,
  end,
  says,
})

export const unusable = (walk: Walk, start: number, end: number, says: string): Unusable =>
  new Unusable(fault(walk, start, end, says))

/** Notes a fault once: where it is written, not again where an alias repeats it. */
export const complain = (walk: Walk, use: Use, start: number, end: number, says: string): undefined => {
  if (use === undefined) walk.faults.push(fault(walk, start, end, says))
}

/** Counts a value, and gives up at the limits. */
export const reach = (walk: Walk, start: number, end: number, use: Use, depth: number): void => {
  const place = use ?? { start, end }
  walk.values += 1
  if (walk.values > mostValues)
    throw unusable(walk, place.start, place.end, `there are over ${mostValues} values here, counting aliases`)
  if (depth > deepest)
    throw unusable(walk, place.start, place.end, `maps and lists are nested more than ${deepest} deep here`)
}

/** Prefix of YAML's own tags. */
export const coreTag = 'tag:yaml.org,2002:'

export const tagRefused = (tag: string): string => {
  const shown = tag.startsWith(coreTag) ? `!!${tag.slice(coreTag.length)}` : tag
  return `the tag ${shown.slice(0, 30)} has no meaning here: write the value without it`
}
