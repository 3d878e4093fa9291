/** The studio's repository under examples/: each plan reads, and gets what its own comment says. */
import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { describe, expect, it } from 'vitest'
import { filePort } from '../../src/files/file-port.js'
import { checkPlan } from '../../src/index.js'

const root = join(import.meta.dirname, '../..')
const recipes = join(root, 'examples/recipes')

/** The faults that stand in the examples on purpose; every other plan is clean at warning and above. */
const faulty: Readonly<Record<string, readonly string[]>> = {
  first: ['backdrop-below-white'],
  'white-headshot-grey': ['backdrop-below-white'],
  'choir-back-row-dark': ['depth-short', 'group-uneven', 'light-in-frame'],
  'sunset-half-black': ['shutter-beyond-sync'],
  'dance-basic-radio': ['trigger-margin'],
  'open-lens-too-strong': ['power-beyond-range'],
  'fashion-white-sweep': ['edge-wrap', 'backdrop-light-on-subject'],
  'sunset-with-flash': ['light-into-lens'],
  'staff-day-on-cells': ['recycle-slow', 'charge-short'],
  'oil-flask-on-black-acrylic': ['backdrop-mirrors-light'],
}

describe.each(readdirSync(recipes).filter((name) => name.endsWith('.plan.yaml')))('%s', (name) => {
  const path = join(recipes, name)
  const result = checkPlan(readFileSync(path, 'utf8'), {
    file: relative(root, path),
    port: filePort({ workingFolder: root }),
  })
  const plan = name.replace('.plan.yaml', '')

  it('gets what its comment says, no more and no less', () => {
    const rules = result.findings.filter((one) => one.level !== 'note').map((one) => one.rule)
    expect([...new Set(rules)].sort()).toEqual([...(faulty[plan] ?? [])].sort())
  })

  it('says in its first comment whether it works', () => {
    const text = readFileSync(path, 'utf8')
    if (plan in faulty) expect(text).toMatch(/^# (Does not work|Nearly works)/m)
    else expect(text).not.toMatch(/^# (Does not work|Nearly works)/m)
  })
})
