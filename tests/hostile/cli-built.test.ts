/** The launcher reads the built program one byte a character, so that it must hold nothing but ASCII: also in its patterns. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { bundleProgram } from '../../src/build/bundles.js'

it('the built program holds nothing but ASCII', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'thirdstop-built-'))
  try {
    await bundleProgram(folder)
    const built = readFileSync(join(folder, 'thirdstop.cjs'), 'latin1')
    expect(built.match(/.{0,40}[^\x00-\x7f].{0,20}/g) ?? []).toEqual([])
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})
