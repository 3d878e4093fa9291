/** What is wrong with a text, and what to write. */
import { type QuantityName, quantities } from '../../units/quantities.js'
import { nearest } from '../nearest.js'
import type { Schema } from '../schema/build.js'
import { asClause, choices, inYaml, shown } from './label.js'
import type { Worded } from './worded.js'

type Said = Omit<Worded, 'at'>

const first = <K extends keyof Schema>(schemas: readonly Schema[], keyword: K): Schema[K] | undefined =>
  schemas.find((schema) => schema[keyword] !== undefined)?.[keyword]

/** What the key is for, and examples of what may stand there. */
export const purpose = (schemas: readonly Schema[]): string => {
  const examples = (first(schemas, 'examples') ?? []).slice(0, 4).map(inYaml)
  const clause = asClause(first(schemas, 'description'))
  return [clause, examples.length === 0 ? undefined : `for example ${examples.join(', ')}`]
    .filter((part) => part !== undefined)
    .join('; ')
}

/** The words that a text may be. */
export const wordsOf = (schemas: readonly Schema[]): readonly string[] => [
  ...new Set(schemas.flatMap((schema) => schema.enum ?? []).map(String)),
]

/** What may stand in place of a word: a quantity, a map. */
const otherExamples = (schemas: readonly Schema[], words: readonly string[]): readonly string[] =>
  (first(schemas, 'examples') ?? []).filter((one) => !words.includes(String(one))).map(inYaml)

/**
 * @param key what the text is said of: `aperture`
 * @param schemas that apply to the text
 */
export const textMistake = (key: string, text: string, schemas: readonly Schema[]): Said => {
  const quantity = first(schemas, 'x-quantity') as QuantityName | undefined
  if (quantity !== undefined) {
    const reading = quantities[quantity].read(text)
    return {
      rule: 'plan-unreadable',
      message: `${key} ${shown(text)} cannot be read: ${reading.ok ? quantities[quantity].describe : reading.says}`,
      why: purpose(schemas),
    }
  }
  const words = wordsOf(schemas)
  if (words.length > 0) {
    const meant = nearest(text, words)
    return {
      rule: 'unknown-name',
      message: `${key} ${shown(text)} is not known${meant === undefined ? '' : `; did you mean ${meant}?`}`,
      why: `write ${choices([...words, ...otherExamples(schemas, words)], 20)}`,
      ...(meant === undefined ? {} : { advice: [`write ${meant}`] }),
    }
  }
  const name = first(schemas, 'x-name')
  if (name !== undefined) return nameMistake(name, text, schemas)
  if (text.trim() === '')
    return { rule: 'plan-unreadable', message: `${key} is empty`, why: purpose(schemas) }
  const longest = first(schemas, 'maxLength')
  if (longest !== undefined && text.length > longest)
    return {
      rule: 'plan-unreadable',
      message: `${key} is ${text.length} characters long; ${longest} is the most`,
      why: purpose(schemas),
    }
  return { rule: 'plan-unreadable', message: `${key} ${shown(text)} cannot be read`, why: purpose(schemas) }
}

const nameMistake = (name: string, text: string, schemas: readonly Schema[]): Said => {
  const taken = schemas.some((schema) =>
    [schema.not].some(
      (not) =>
        not?.enum?.includes(text) === true ||
        (not?.pattern !== undefined && new RegExp(not.pattern, 'u').test(text)),
    ),
  )
  if (taken)
    return {
      rule: 'plan-unreadable',
      message: `${shown(text)} already has a meaning and cannot be the name of a ${name}`,
      why: `give the ${name} another name`,
    }
  return {
    rule: 'plan-unreadable',
    message: `${shown(text)} cannot be the name of a ${name}`,
    why: asClause(first(schemas, 'description')) ?? `a name of a ${name} is short and on one line`,
  }
}
