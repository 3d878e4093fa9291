/** Whole files of every kind, as an author might write them (so they are not formatted). */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Kind } from '../../../src/language/schema/kinds.js'
import { plain } from '../../../src/text/plain.js'
import { readText } from '../../../src/text/read.js'

export const readDocument = (name: string): string => readFileSync(join(import.meta.dirname, name), 'utf8')

export const documents: readonly (readonly [name: string, kind: Kind, data: unknown])[] = readdirSync(
  import.meta.dirname,
)
  .filter((name) => name.endsWith('.yaml'))
  .sort()
  .map((name) => {
    const { root, faults } = readText(name, readDocument(name))
    if (root === undefined || faults.length > 0) throw new Error(`${name} cannot be read`)
    return [name, name.split('.').at(-2) as Kind, plain(root)] as const
  })
