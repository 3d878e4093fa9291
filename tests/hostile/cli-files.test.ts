/** Links, locks and roots that are not there: one clear message, nothing read or written that must not be. */
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { main } from '../../src/command/main.js'

const plan = `plan: 1
title: Headshot
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/160, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: flashgun, power: 1/4, at: { angle: 35 deg left, distance: 1.2 m, height: 2 m } }
`
let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'thirdstop-files-'))
  mkdirSync(join(folder, 'studio/.git'), { recursive: true })
  writeFileSync(join(folder, 'studio/a.plan.yaml'), plan)
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

const run = async (...words: string[]) => {
  const said = { out: '', err: '' }
  const code = await main(words, {
    workingFolder: join(folder, 'studio'),
    environment: {},
    isTerminal: false,
    out: (text) => {
      said.out += text
    },
    err: (text) => {
      said.err += text
    },
    input: () => new Uint8Array(),
  })
  return { code, ...said }
}

it('settings that lead outside the root are not shown', async () => {
  writeFileSync(join(folder, 'secret'), 'swordfish\n')
  symlinkSync('../secret', join(folder, 'studio/thirdstop.yaml'))
  const { code, out, err } = await run('check', 'a.plan.yaml')
  expect(code).toBe(2)
  expect(err).toMatch(/thirdstop\.yaml leads outside/)
  expect(out + err).not.toContain('swordfish')
})

it('settings whose link leads nowhere are told, not passed over', async () => {
  symlinkSync('gone', join(folder, 'studio/thirdstop.yaml'))
  const { code, err } = await run('check', 'a.plan.yaml')
  expect(code).toBe(2)
  expect(err).toMatch(/thirdstop\.yaml cannot be read: no such file/)
})

it.each(['/nowhere/at/all', 'a.plan.yaml', ''])('--root %j is refused', async (root) => {
  const { code, err } = await run('check', '--root', root, 'a.plan.yaml')
  expect(code).toBe(2)
  expect(err).toMatch(/--root needs a folder/)
})

it('a read-only plan stays as it is', async () => {
  const file = join(folder, 'studio/a.plan.yaml')
  chmodSync(file, 0o444)
  const { code, err } = await run('meter', 'a.plan.yaml', '--read', 'key@subject=f/5.6')
  expect(code).toBe(2)
  expect(err).toMatch(/read-only/)
  expect(readFileSync(file, 'utf8')).toBe(plan)
})
