/** Keeps what V8 compiles of the program while it checks typical plans, so that a start need not compile it again. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { Script } from 'node:vm'
import type { main } from '../command/main.js'

interface Launcher {
  readonly load: () => { readonly program: { readonly main: typeof main }; readonly script: Script }
  readonly cacheFile: string
}

export const writeCodeCache = async (
  executable = resolve(import.meta.dirname, '../../bin/thirdstop.cjs'),
) => {
  const { load, cacheFile } = createRequire(import.meta.url)(executable) as Launcher
  const { program, script } = load()
  const folder = await mkdtemp(join(tmpdir(), 'thirdstop-build-'))
  try {
    await writeFile(join(folder, 'white.plan.yaml'), whitePlan)
    const terminal = {
      workingFolder: folder,
      environment: {},
      isTerminal: false,
      out: () => {},
      err: () => {},
      input: () => new Uint8Array(),
    }
    for (const words of [['start'], ['check']]) await program.main(words, terminal)
    await writeFile(cacheFile, script.createCachedData())
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** With faults, so that what words and mends them is compiled too. */
const whitePlan = `plan: 1
title: Headshot on white
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/160, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2 m }
lights:
  key:   { unit: flashgun, modifier: shoot-through umbrella 1 m, power: 1/4, at: { angle: 35 deg left, distance: 1.2 m, height: 2 m } }
  paper: { role: backdrop, unit: flashgun, power: 1/64, at: { left: 1.5 m, before-backdrop: 1.5 m, height: 1.5 m } }
wanted: { backdrop: white, framing: head and shoulders }
`
