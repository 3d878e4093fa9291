/** The sets that the program is held against the tracer on: plans in `sets/`, of our own invention. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plan } from '../../src/language/plan.js'
import type { FilePort } from '../../src/language/port.js'
import { readPlan } from '../../src/language/read-plan.js'
import { lampFiles } from './lamp-files.js'

const folder = join(import.meta.dirname, 'sets')

export const setNames: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith('.plan.yaml'))
  .map((name) => name.replace('.plan.yaml', ''))
  .sort()

const port: FilePort = {
  read: (path) => {
    const found = lampFiles[path]
    return found === undefined
      ? { ok: false, says: 'no other files' }
      : { ok: true, file: path, text: found.text }
  },
}

export const planOf = (name: string): Plan => {
  const file = `${name}.plan.yaml`
  const text = readFileSync(join(folder, file), 'utf8')
  const { plan, mistakes } = readPlan(file, text, port)
  if (plan === undefined || mistakes.length > 0)
    throw new Error(
      `${file}: ${mistakes.map(({ place, message }) => `${place.line}: ${message}`).join('; ')}`,
    )
  return plan
}
