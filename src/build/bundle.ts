/** Builds `dist/`: the program, the library and its types. Run by `prepare`, so that a clean checkout is ready to use. */
import { resolve } from 'node:path'
import { bundleLibrary, bundleProgram, writeLicences } from './bundles.js'
import { writeCodeCache } from './code-cache.js'
import { writeDeclarations } from './declarations.js'

const dist = resolve(import.meta.dirname, '../../dist')
await Promise.all([
  bundleProgram(dist).then(() => writeCodeCache()),
  bundleLibrary(dist),
  writeLicences(dist),
  writeDeclarations(dist),
])
