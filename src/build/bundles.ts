import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join, resolve } from 'node:path'
import { build, type Plugin } from 'esbuild'

const root = resolve(import.meta.dirname, '../..')
const shared = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node20.19',
  // Pure ASCII: read as one byte a character, which halves what a start-up has to hold.
  charset: 'ascii',
  logLevel: 'warning',
} as const

/**
 * The parser of the command line can start other programs; ours asks for none, and to load what that takes is a
 * tenth of a start.
 */
const withoutChildProcesses: Plugin = {
  name: 'without child processes',
  setup: ({ onResolve, onLoad }) => {
    onResolve({ filter: /^node:child_process$/ }, ({ importer }) =>
      importer.includes('commander') ? { path: 'child_process', namespace: 'none' } : undefined,
    )
    onLoad({ filter: /.*/, namespace: 'none' }, () => ({ contents: 'module.exports = {}' }))
  },
}

/**
 * The program: one file, whose parts run when they are first asked for. CommonJS, since a file of modules takes longer
 * to load.
 */
export const bundleProgram = async (dist: string): Promise<void> => {
  await removeCodeCaches(dist)
  await build({
    ...shared,
    entryPoints: ['src/command/run.ts'],
    outfile: join(dist, 'thirdstop.cjs'),
    format: 'cjs',
    plugins: [withoutChildProcesses],
    // Names stay: they stand in the report of a defect.
    minifyWhitespace: true,
    minifySyntax: true,
  })
  await keepAscii(join(dist, 'thirdstop.cjs'))
}

/** esbuild escapes what is beyond ASCII in strings, not in patterns; the launcher would misread it there. */
const keepAscii = async (file: string): Promise<void> => {
  const code = await readFile(file, 'utf8')
  await writeFile(
    file,
    code.replace(/[^\0-\x7f]/g, (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`),
  )
}

/** V8 tells a cache of other code only by the length of the code: none may outlive what it was made from. */
const removeCodeCaches = async (dist: string): Promise<void> => {
  const names = await readdir(dist).catch((): string[] => [])
  await Promise.all(names.filter((name) => name.endsWith('.cache')).map((name) => rm(join(dist, name))))
}

/** The library: modules, with its packages as the installer finds them. */
export const bundleLibrary = async (dist: string): Promise<void> => {
  await build({
    ...shared,
    entryPoints: ['src/index.ts'],
    outfile: join(dist, 'library.js'),
    format: 'esm',
    packages: 'external',
  })
}

/** The program holds its packages' code, so it carries their licences. */
export const writeLicences = async (dist: string): Promise<void> => {
  const packages = ['commander', 'picocolors', 'yaml']
  const texts = await Promise.all(
    packages.map(
      async (name) =>
        `${name}\n\n${(await readFile(join(root, 'node_modules', name, 'LICENSE'), 'utf8')).trim()}\n`,
    ),
  )
  await mkdir(dist, { recursive: true })
  await writeFile(join(dist, 'LICENCES.txt'), texts.join('\n---\n\n'))
}
