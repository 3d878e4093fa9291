/** The sets that the program is held against the tracer on: plans in `sets/`, of our own invention. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plan } from '../../src/language/plan.js'
import { readPlan } from '../../src/language/read-plan.js'

const folder = join(import.meta.dirname, 'sets')

export const setNames: readonly string[] = readdirSync(folder)
  .filter((name) => name.endsWith('.plan.yaml'))
  .map((name) => name.replace('.plan.yaml', ''))
  .sort()

export const planOf = (name: string): Plan => {
  const file = `${name}.plan.yaml`
  const text = readFileSync(join(folder, file), 'utf8')
  const { plan, mistakes } = readPlan(file, text, { read: () => ({ ok: false, says: 'no other files' }) })
  if (plan === undefined || mistakes.length > 0)
    throw new Error(
      `${file}: ${mistakes.map(({ place, message }) => `${place.line}: ${message}`).join('; ')}`,
    )
  return plan
}
