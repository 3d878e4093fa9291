/** The house's laws on who may import whom. Source: DEVELOPERS.md, "The map". */
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join, posix, relative, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'

const source = resolve(import.meta.dirname, '../../src')

/** From the ground up: a folder imports only folders before it, and itself. */
const order = [
  'units',
  'text',
  'language',
  'scene',
  'light',
  'picture',
  'set',
  'rules',
  'checker',
  'tasks',
  'reports',
  'drawings',
  'files',
  'command',
]

/** Packages and node modules that only one folder may know. */
const keepers: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^yaml$/, ['text', 'build']],
  [/^ajv/, ['language', 'build']],
  [/^(commander|picocolors)$/, ['command', 'build']],
  [/^node:/, ['files', 'command', 'build']],
]

/** Whole statements and calls, for the word `from` also stands in data. */
const statement =
  /^(?:import|export)\s(?:[^'";]*?\sfrom\s)?['"]([^'"]+)['"]|\b(?:import|require)\(\s*['"]([^'"]+)['"]\s*\)/gm

const filesUnder = (folder: string): string[] =>
  readdirSync(folder).flatMap((name) => {
    const path = join(folder, name)
    return statSync(path).isDirectory() ? filesUnder(path) : path.endsWith('.ts') ? [path] : []
  })

const files = filesUnder(source).map((path) => {
  const text = readFileSync(path, 'utf8')
  const name = relative(source, path).replaceAll('\\', '/')
  const imports = [...text.matchAll(statement)].map((found) => (found[1] ?? found[2])!)
  return { name, folder: name.includes('/') ? name.split('/')[0]! : '', text, imports }
})

const target = (from: string, specifier: string): string =>
  posix.join(dirname(from), specifier).replace(/\.js$/, '.ts')

describe('imports', () => {
  it('go only to folders below', () => {
    const wrong = files.flatMap((file) =>
      file.imports
        .filter((specifier) => specifier.startsWith('.'))
        .map((specifier) => target(file.name, specifier))
        .filter((to) => {
          if (file.folder === '' || file.folder === 'build') return false
          const folder = to.includes('/') ? to.split('/')[0]! : ''
          return (
            folder === '' || order.indexOf(folder) < 0 || order.indexOf(folder) > order.indexOf(file.folder)
          )
        })
        .map((to) => `${file.name} imports ${to}`),
    )
    expect(wrong).toEqual([])
  })

  it('know packages and the machine only in their own folders', () => {
    const wrong = files.flatMap((file) =>
      file.imports
        .filter((specifier) => !specifier.startsWith('.'))
        .filter((specifier) => {
          const keeper = keepers.find(([pattern]) => pattern.test(specifier))
          return keeper === undefined ? file.folder !== 'build' : !keeper[1].includes(file.folder)
        })
        .map((specifier) => `${file.name} imports ${specifier}`),
    )
    expect(wrong).toEqual([])
  })

  it('form no circle between files', () => {
    const graph = new Map(
      files.map((file) => [
        file.name,
        file.imports.filter((one) => one.startsWith('.')).map((one) => target(file.name, one)),
      ]),
    )
    const state = new Map<string, 'open' | 'done'>()
    const circles: string[] = []
    const walk = (name: string, trail: readonly string[]): void => {
      if (state.get(name) === 'done') return
      if (state.get(name) === 'open') {
        circles.push([...trail.slice(trail.indexOf(name)), name].join(' → '))
        return
      }
      state.set(name, 'open')
      for (const next of graph.get(name) ?? []) walk(next, [...trail, name])
      state.set(name, 'done')
    }
    for (const name of graph.keys()) walk(name, [])
    expect(circles).toEqual([])
  })

  it('use no clock, no random number and no process.exit', () => {
    const wrong = files
      .filter((file) => file.folder !== 'build')
      .filter((file) =>
        /\bDate\.now\b|\bnew Date\(|\bMath\.random\b|\bperformance\.now\b|\bprocess\.exit\(/.test(file.text),
      )
      .map((file) => file.name)
    expect(wrong).toEqual([])
  })

  it('leave the process to command/ and build/', () => {
    const wrong = files
      .filter((file) => !['command', 'build', 'files'].includes(file.folder))
      .filter((file) => /\bprocess\.|\bconsole\./.test(file.text))
      .map((file) => file.name)
    expect(wrong).toEqual([])
  })
})
