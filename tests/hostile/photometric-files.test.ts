/** What a plan may name as a photometric file and is none: one finding, in time, and nothing from outside shown. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { call, goodPlan } from '../command/call.js'
import { photometricText, steps } from '../helpers/photometric-text.js'

const panel = photometricText({
  vertical: steps(0, 90, 10),
  horizontal: [0],
  candela: (v) => Math.round(2000 * Math.cos((v * Math.PI) / 180)),
})
const plan = (path: string): string =>
  goodPlan.replace(
    'unit: head 400 Ws, modifier: octa 90 cm',
    `unit: { photometric-file: ${JSON.stringify(path)} }`,
  )

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'thirdstop-photometric-'))
  const studio = join(folder, 'studio')
  mkdirSync(join(studio, '.git'), { recursive: true })
  mkdirSync(join(studio, 'folder.ies'))
  writeFileSync(join(folder, 'secret.ies'), panel.replace('own workshop', 'swordfish'))
  symlinkSync('../secret.ies', join(studio, 'link.ies'))
  symlinkSync('/dev/zero', join(studio, 'endless.ies'))
  writeFileSync(join(studio, 'panel.ies'), panel)
  writeFileSync(
    join(studio, 'latin.ies'),
    Buffer.from(panel.replace('[TEST] none', '[TEST] 60\xb0 gr\xfcn'), 'latin1'),
  )
  writeFileSync(
    join(studio, 'binary.ies'),
    Uint8Array.from({ length: 300_000 }, (_, i) => (i * 7919) % 256),
  )
  writeFileSync(join(studio, 'empty.ies'), '')
  writeFileSync(join(studio, 'large.ies'), panel + ' '.repeat(2 ** 20))
  writeFileSync(join(studio, 'counts.ies'), panel.replace(' 10 1 1 2 ', ' 1000000000 1000000000 1 2 '))
  writeFileSync(join(studio, 'escapes.ies'), panel.replace(' 1 60', ' \u001b[31m\u202e7 60'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const checked = async (path: string) => {
  const studio = join(folder, 'studio')
  writeFileSync(join(studio, 'a.plan.yaml'), plan(path))
  const { code, out, err } = await call(studio, ['check', '--format', 'lines', 'a.plan.yaml'])
  return { code, lines: out.trim().split('\n'), err, out }
}

describe('a photometric file', () => {
  it.each(['panel.ies', 'latin.ies'])('%s is read', async (path) => {
    const { code, err, out } = await checked(path)
    expect(err).toBe('')
    expect([0, 1]).toContain(code)
    expect(out).not.toMatch(/plan-unreadable|left out/)
  })

  it.each([
    ['../secret.ies', /^a\.plan\.yaml:7:\d+: error: \.\.\/secret\.ies leads outside the working folder/],
    ['link.ies', /link\.ies leads outside/],
    ['endless.ies', /endless\.ies leads outside/],
    ['/etc/passwd', /leads outside/],
    ['https://example.org/panel.ies', /only files are read, nothing is fetched/],
    ['folder.ies', /it is a folder, a file is needed/],
    ['gone.ies', /no such file/],
    ['large.ies', /larger than 1 MiB/],
    ['a.plan.yaml', /^a\.plan\.yaml:1:1: error: this is no photometric file \(LM-63\)/],
    ['binary.ies', /^binary\.ies:1:1: error: this is no photometric file/],
    ['empty.ies', /^empty\.ies:1:1: error: this is no photometric file/],
    [
      'counts.ies',
      /^counts\.ies:5:8: error: 1000000000 vertical and 1000000000 horizontal angles .* 21 follow/,
    ],
    ['escapes.ies', /^escapes\.ies:6:\d+: error: .* is no number/],
  ])('%s is refused in one line', async (path, says) => {
    const begun = performance.now()
    const { code, lines, err, out } = await checked(path)
    expect(code).toBe(1)
    expect(err).toBe('')
    expect(lines.filter((line) => line.includes(': error: '))).toHaveLength(1)
    expect(lines[0]).toMatch(says)
    expect(lines[0]!.length).toBeLessThan(400)
    expect(out).not.toContain('swordfish')
    expect(out).not.toMatch(/[\u001b\u202e]/)
    expect(performance.now() - begun).toBeLessThan(3000)
  })

  it('is shown where it is wrong, control characters made visible', async () => {
    const studio = join(folder, 'studio')
    writeFileSync(join(studio, 'a.plan.yaml'), plan('binary.ies'))
    const { out } = await call(studio, ['check', 'a.plan.yaml'])
    expect(out).toMatch(/also · .*a\.plan\.yaml.*the file is named here/)
    expect(out).not.toMatch(/[\0-\x08\x0b-\x1f\x7f-\x9f]/)
    expect(out.length).toBeLessThan(3000)
  })
})
