import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { put, temporaryFolder } from '../files/folder.js'
import { call } from './call.js'

describe('start', () => {
  it('writes a plan, a kit and settings that hold together, and that nothing is found against', async () => {
    const folder = temporaryFolder()
    const { code, out } = await call(folder, ['start'])
    expect(code).toBe(0)
    expect(out).toBe(
      'wrote first.plan.yaml\nwrote kits/my.kit.yaml\nwrote thirdstop.yaml\nnext: thirdstop check first.plan.yaml\n',
    )
    const checked = await call(folder, ['check', '--fail-on', 'note'])
    expect(checked).toMatchObject({ code: 0, err: '' })
    expect(checked.out).toMatch(/^first\.plan\.yaml: nothing found against it/)
  })

  it('teaches what it says it teaches: each change that it proposes gives a finding', async () => {
    const folder = temporaryFolder()
    await call(folder, ['start'])
    const plan = readFileSync(join(folder, 'first.plan.yaml'), 'utf8')
    for (const [from, to] of [
      ['behind: 2 m', 'behind: 4 m'],
      ['aperture: f/5.6', 'aperture: f/8'],
      ['lens: 85 mm', 'lens: 35 mm'],
    ] as const) {
      expect(plan.slice(0, plan.indexOf('plan: 1'))).toContain(to)
      expect(plan).toContain(from)
      put(folder, { 'changed.plan.yaml': plan.replace(new RegExp(`^( *)${from}`, 'm'), `$1${to}`) })
      expect((await call(folder, ['check', 'changed.plan.yaml', '--fail-on', 'note'])).code, to).toBe(1)
    }
  })

  it('opens its commented parts as valid YAML', async () => {
    const folder = temporaryFolder()
    await call(folder, ['start'])
    for (const name of ['kits/my.kit.yaml', 'thirdstop.yaml']) {
      const text = readFileSync(join(folder, name), 'utf8')
      const opened = text.replace(/^# ((?:measured|levels|limits):| {2}.*)$/gm, '$1')
      expect(opened).not.toBe(text)
      put(folder, { [name]: opened })
    }
    expect(await call(folder, ['check', '--fail-on', 'error'])).toMatchObject({ code: 0, err: '' })
  })

  it('makes the folder that it is given', async () => {
    const folder = temporaryFolder()
    expect((await call(folder, ['start', 'new/studio'])).out).toContain(
      'next: thirdstop check new/studio/first.plan.yaml',
    )
    expect((await call(folder, ['check', 'new'])).code).toBe(0)
  })

  it('never overwrites, and then writes nothing at all', async () => {
    const folder = temporaryFolder()
    put(folder, { 'thirdstop.yaml': 'mine' })
    const { code, out, err } = await call(folder, ['start'])
    expect({ code, out }).toEqual({ code: 2, out: '' })
    expect(err).toBe(
      'thirdstop: thirdstop.yaml cannot be written: there is one already, and nothing is overwritten\n',
    )
    expect(readFileSync(join(folder, 'thirdstop.yaml'), 'utf8')).toBe('mine')
    expect(readdirSync(folder)).not.toContain('first.plan.yaml')
  })
})
