/** Every generated file, by path from the repository's root: written by `generate`, held fresh by a test. */
import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { compiledValidators } from './compiled-validators.js'
import { definitionsText } from './definitions-text.js'
import { publicSchemas } from './public-schemas.js'
import { freshReadme } from './readme.js'
import { writtenTypes } from './written-types.js'

const root = resolve(import.meta.dirname, '../..')

export const generatedFiles = async (): Promise<ReadonlyMap<string, string>> =>
  new Map([
    ...Object.entries(publicSchemas()).map(
      ([name, schema]) => [`schemas/${name}.schema.json`, `${JSON.stringify(schema, null, 2)}\n`] as const,
    ),
    ['src/language/generated/validators.ts', compiledValidators()] as const,
    ['src/language/generated/definitions.ts', definitionsText()] as const,
    ['src/language/generated/types.ts', await writtenTypes()] as const,
    ['README.md', await freshReadme(readFileSync(resolve(root, 'README.md'), 'utf8'), root)] as const,
  ])
