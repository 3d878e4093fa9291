import { mkdirSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { findPlans } from '../../src/files/find-plans.js'
import { put, temporaryFolder } from './folder.js'

const outer = temporaryFolder()
const folder = join(outer, 'studio')
put(folder, {
  '.git/HEAD': '',
  'b.plan.yaml': '',
  'a.plan.yaml': '',
  'B.plan.yaml': '',
  'sets/low/c.plan.yml': '',
  'sets/white.base.yaml': '',
  'kits/corner.kit.yaml': '',
  'node_modules/x/x.plan.yaml': '',
  '.cache/y.plan.yaml': '',
  'odd.yaml': '',
  'empty/readme.txt': '',
  'folder.plan.yaml/inside.plan.yaml': '',
})
put(outer, { 'secret.plan.yaml': 'plan: 1' })
mkdirSync(join(folder, 'linked'))
symlinkSync('../../secret.plan.yaml', join(folder, 'linked/out.plan.yaml'))
symlinkSync('../a.plan.yaml', join(folder, 'linked/in.plan.yaml'))
symlinkSync('loop.plan.yaml', join(folder, 'linked/loop.plan.yaml'))

const ground = { workingFolder: folder }

describe('findPlans', () => {
  it('searches folders, in an order of names, and leaves out dot-folders, node_modules, bases and kits', () => {
    expect(findPlans(['sets', '.'], ground).files).toEqual([
      'B.plan.yaml',
      'a.plan.yaml',
      'b.plan.yaml',
      'folder.plan.yaml/inside.plan.yaml',
      'linked/in.plan.yaml',
      'linked/loop.plan.yaml',
      'sets/low/c.plan.yml',
    ])
  })

  it('takes a file as named, whatever its name, and each once', () => {
    expect(findPlans(['odd.yaml', './odd.yaml', join(folder, 'odd.yaml')], ground)).toEqual({
      files: ['odd.yaml'],
      problems: [],
    })
  })

  it('names what lies beside the working folder relative to it', () => {
    expect(findPlans(['../secret.plan.yaml'], ground).files).toEqual(['../secret.plan.yaml'])
  })

  it('does not follow a link out of the repository that nobody named', () => {
    expect(findPlans(['linked'], ground).problems).toEqual([
      {
        file: 'linked/out.plan.yaml',
        says: 'is a link that leads outside the working folder; it was not read',
      },
    ])
    expect(findPlans(['linked/out.plan.yaml'], ground)).toEqual({
      files: ['linked/out.plan.yaml'],
      problems: [],
    })
    expect(findPlans(['linked'], { ...ground, root: '..' }).files).toContain('linked/out.plan.yaml')
  })

  it('says what is missing and which folder holds nothing', () => {
    expect(findPlans(['nowhere.plan.yaml', 'empty', 'a.plan.yaml'], ground)).toEqual({
      files: ['a.plan.yaml'],
      problems: [
        { file: 'empty', says: 'holds no plan: a folder is searched for files named *.plan.yaml' },
        { file: 'nowhere.plan.yaml', says: 'cannot be read: no such file' },
      ],
    })
  })
})
