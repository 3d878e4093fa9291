/** The definitions for wording mistakes: as text, because they are needed only when there is one. */
import { definitions } from '../language/schema/language.js'

export const definitionsText = (): string => {
  // A quantity's grammar is its reader's business.
  const worded = Object.fromEntries(
    Object.entries(definitions).map(([name, { pattern, ...rest }]) => [
      name,
      rest['x-quantity'] === undefined && pattern !== undefined ? { pattern, ...rest } : rest,
    ]),
  )
  const json = JSON.stringify(worded, (key, value: unknown) => (key === 'x-whole' ? undefined : value))
  const quoted = json.replace(/[\\']/g, (one) => `\\${one}`)
  return `/** Generated from the definitions in ../schema by \`npm run generate\`. */
import type { Schema } from '../schema/build.js'

let read: Readonly<Record<string, Schema>> | undefined

/** Every definition of the language, by name. Parsed when first asked for. */
export const definitions = (): Readonly<Record<string, Schema>> =>
  (read ??= JSON.parse(
    '${quoted}',
  ) as Readonly<Record<string, Schema>>)
`
}
