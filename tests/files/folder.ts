import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll } from 'vitest'

/** A folder of its own for a test file, removed afterwards. */
export const temporaryFolder = (): string => {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'thirdstop-test-')))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** Writes files, with their folders. */
export const put = (folder: string, files: Readonly<Record<string, string | Uint8Array>>): void => {
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true })
    writeFileSync(join(folder, name), content)
  }
}
