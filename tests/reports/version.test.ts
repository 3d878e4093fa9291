import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { version } from '../../src/reports/version.js'

it('is the version of the package', () => {
  const manifest = readFileSync(new URL('../../package.json', import.meta.url), 'utf8')
  expect(version).toBe(JSON.parse(manifest).version)
})
