/**
 * From the text of a plan to the plan as it is meant, or to what is wrong with it. All mistakes that do not hang
 * together are found in one go; while there is one that is more than a hint, there is no plan.
 */
import type { TextMap, TextNode } from '../text/tree.js'
import { checkNames } from './check-names.js'
import { type Gathered, gather } from './gather.js'
import { type Likes, resolveLikes } from './like.js'
import type { Mistake } from './mistake.js'
import { listed, MistakeList } from './mistakes.js'
import type { Plan } from './plan.js'
import type { FilePort } from './port.js'
import { resolvePlan } from './resolve/plan.js'

export interface PlanReading {
  /** Absent where a mistake keeps it from being computed. */
  readonly plan?: Plan
  readonly mistakes: readonly Mistake[]
  /** Texts of the plan's file and of all that it draws on: what places point into. */
  readonly texts: ReadonlyMap<string, string>
}

/** More are refused; what they are like need not be known. */
const mostLights = 64

/** Lights that are like others, told where that cannot be. */
const likesOf = (gathered: Gathered, mistakes: MistakeList): Likes | undefined => {
  const lights = gathered.root.entries.get('lights')?.value
  if (lights?.kind !== 'map' || lights.entries.size > mostLights) return undefined
  const likes = resolveLikes(lights)
  for (const { kind, node, light, names } of likes.faults) {
    if (kind === 'unknown')
      mistakes.unknownName({
        at: node,
        what: 'light',
        name: String(node.value),
        names: names.filter((name) => name !== light),
      })
    else
      mistakes.add({
        rule: 'unknown-name',
        at: node,
        message: `${listed(names)}: lights that are like each other in a circle are like nothing`,
        why: 'write one of them out: unit, place and power',
      })
  }
  tellMirrored(lights, mistakes)
  return likes
}

const tellMirrored = (lights: TextMap, mistakes: MistakeList): void => {
  for (const { value } of lights.entries.values()) {
    const mirrored = value.kind === 'map' ? value.entries.get('mirrored') : undefined
    if (mirrored !== undefined && value.kind === 'map' && !value.entries.has('like'))
      mistakes.add({
        rule: 'value-unused',
        at: mirrored.key,
        message: 'mirrored says nothing without like',
        why: 'name the light that this one mirrors: like: paper-left',
      })
  }
}

/**
 * Reads a plan.
 *
 * @param file the plan's path, as its places shall give it
 * @param text what is in it
 * @param port how base, kit, room and photometric files are had
 */
export const readPlan = (file: string, text: string, port: FilePort): PlanReading => {
  const texts = new Map([[file, text]])
  const asks = new Map<string, TextNode>()
  const mistakes = new MistakeList(texts, asks)
  const gathered = gather(file, text, port, texts, asks, mistakes)
  if (gathered === undefined) return { mistakes: mistakes.all, texts }
  const likes = likesOf(gathered, mistakes)
  checkNames(gathered, mistakes)
  if (mistakes.grave) return { mistakes: mistakes.all, texts }
  const plan = resolvePlan({ file, gathered, likes, texts, port, asks, mistakes })
  return mistakes.grave ? { mistakes: mistakes.all, texts } : { plan, mistakes: mistakes.all, texts }
}
