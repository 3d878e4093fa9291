import { mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { filePort } from '../../src/files/file-port.js'
import { put, temporaryFolder } from './folder.js'

const outer = temporaryFolder()
const folder = join(outer, 'studio')
put(folder, {
  '.git/HEAD': '',
  'kits/corner.kit.yaml': 'kit: 1\n',
  'recipes/white.plan.yaml': '',
  'kits/folder.kit.yaml/x': '',
})
put(outer, {
  'secret.kit.yaml': 'kit: 1\ntitle: secret\n',
  'loose/a.plan.yaml': '',
  'loose/b.kit.yaml': 'kit: 1\n',
})
symlinkSync('../../secret.kit.yaml', join(folder, 'kits/out.kit.yaml'))
symlinkSync('../..', join(folder, 'kits/up'))
symlinkSync('corner.kit.yaml', join(folder, 'kits/alias.kit.yaml'))

const port = filePort({ workingFolder: folder })
const outside = (path: string) => ({
  ok: false,
  says: `${path} leads outside the working folder; keep it inside, or name a wider folder with --root`,
})

describe('filePort', () => {
  it('reads relative to the file that names it, and says the name from the working folder', () => {
    expect(port.read('../kits/corner.kit.yaml', 'recipes/white.plan.yaml')).toEqual({
      ok: true,
      file: 'kits/corner.kit.yaml',
      text: 'kit: 1\n',
    })
    expect(
      filePort({ workingFolder: join(folder, 'recipes') }).read('../kits/alias.kit.yaml', 'white.plan.yaml'),
    ).toEqual({ ok: true, file: '../kits/alias.kit.yaml', text: 'kit: 1\n' })
  })

  it('refuses to leave the repository: by dots, by an absolute path, by a link, by a linked folder', () => {
    for (const path of [
      '../../secret.kit.yaml',
      join(outer, 'secret.kit.yaml'),
      '/etc/hostname',
      '../kits/out.kit.yaml',
      '../kits/up/secret.kit.yaml',
    ]) {
      expect(port.read(path, 'recipes/white.plan.yaml')).toEqual(outside(path))
    }
  })

  it('does not tell whether a file outside exists', () => {
    expect(port.read('../../no-such.kit.yaml', 'recipes/white.plan.yaml')).toEqual(
      outside('../../no-such.kit.yaml'),
    )
  })

  it('takes a wider root when told', () => {
    const wide = filePort({ workingFolder: folder, root: '..' })
    expect(wide.read('../kits/out.kit.yaml', 'recipes/white.plan.yaml').ok).toBe(true)
    expect(wide.read('../../../etc/hostname', 'recipes/white.plan.yaml').ok).toBe(false)
  })

  it('without a repository keeps to the working folder, or to the folder of a file beside it', () => {
    const loose = filePort({ workingFolder: join(outer, 'loose') })
    expect(loose.read('b.kit.yaml', 'a.plan.yaml').ok).toBe(true)
    expect(loose.read('../secret.kit.yaml', 'a.plan.yaml')).toEqual(outside('../secret.kit.yaml'))
    const beside = filePort({ workingFolder: join(outer, 'studio/recipes') })
    expect(beside.read('b.kit.yaml', '../../loose/a.plan.yaml').ok).toBe(true)
    expect(beside.read('../secret.kit.yaml', '../../loose/a.plan.yaml').ok).toBe(false)
  })

  it('without a repository takes the nearest folder with settings, and names it', () => {
    const shoots = temporaryFolder()
    put(shoots, {
      'thirdstop.yaml': 'thirdstop: 1\n',
      'kits/k.kit.yaml': 'kit: 1\n',
      'jobs/one/a.plan.yaml': '',
    })
    const inside = filePort({ workingFolder: join(shoots, 'jobs/one') })
    expect(inside.read('../../kits/k.kit.yaml', 'a.plan.yaml').ok).toBe(true)
    expect(inside.read('../../../k.kit.yaml', 'a.plan.yaml')).toEqual({
      ok: false,
      says: '../../../k.kit.yaml leads outside the folder ../..; keep it inside, or name a wider folder with --root',
    })
    // A repository's plans share its kits, whatever settings a folder in it has.
    put(folder, { 'client/thirdstop.yaml': 'thirdstop: 1\n', 'client/a.plan.yaml': '' })
    expect(port.read('../kits/corner.kit.yaml', 'client/a.plan.yaml').ok).toBe(true)
  })

  it('fetches nothing, and refuses folders and missing files', () => {
    const read = (path: string) => port.read(path, 'recipes/white.plan.yaml')
    expect(read('https://example.org/a.kit.yaml')).toEqual({
      ok: false,
      says: 'https://example.org/a.kit.yaml is an address; only files are read, nothing is fetched',
    })
    expect(read('../kits/folder.kit.yaml')).toEqual({
      ok: false,
      says: '../kits/folder.kit.yaml cannot be read: it is a folder, a file is needed',
    })
    expect(read('../kits/none.kit.yaml')).toEqual({
      ok: false,
      says: '../kits/none.kit.yaml cannot be read: no such file',
    })
  })

  it('reads a file once a run', () => {
    mkdirSync(join(folder, 'once'))
    writeFileSync(join(folder, 'once/k.kit.yaml'), 'kit: 1\n')
    const once = filePort({ workingFolder: folder })
    expect(once.read('k.kit.yaml', 'once/a.plan.yaml').ok).toBe(true)
    writeFileSync(join(folder, 'once/k.kit.yaml'), 'kit: 2\n')
    expect(once.read('k.kit.yaml', 'once/b.plan.yaml')).toMatchObject({ text: 'kit: 1\n' })
    rmSync(join(folder, 'once'), { recursive: true })
  })
})
