/** Writes what is generated from the language's definitions. Run by `npm run generate`. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { generatedFiles } from './generated-files.js'

const root = resolve(import.meta.dirname, '../..')

for (const [path, text] of await generatedFiles()) {
  const file = resolve(root, path)
  mkdirSync(dirname(file), { recursive: true })
  writeFileSync(file, text)
  console.log(`${path}  ${(text.length / 1000).toFixed(1)} kB`)
}
