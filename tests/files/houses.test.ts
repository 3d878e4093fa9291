import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { findPlans } from '../../src/files/find-plans.js'
import { findHouses } from '../../src/files/houses.js'
import { put, temporaryFolder } from './folder.js'

const outer = temporaryFolder()
const folder = join(outer, 'studio')
put(outer, { 'thirdstop.yaml': 'thirdstop: 1\nfail-on: note\n' })
put(folder, {
  '.git/HEAD': '',
  'thirdstop.yaml': 'thirdstop: 1\nfail-on: error\nplans: [recipes/**/*.yaml]\nignore: [recipes/old]\n',
  'recipes/a.yaml': '',
  'recipes/deep/b.yaml': '',
  'recipes/old/c.yaml': '',
  'd.plan.yaml': '',
  'client/thirdstop.yaml': 'thirdstop: 1\n',
  'client/e.plan.yaml': '',
  'wrong/thirdstop.yaml': 'thirdstop: 1\nfail-on: never\n',
  'wrong/f.plan.yaml': '',
})
const ground = { workingFolder: folder }

describe('findHouses', () => {
  it('takes the nearest settings, and none from above the repository', () => {
    const houses = findHouses(ground)
    expect(houses.of('recipes/deep/b.yaml').settings.failOn).toBe('error')
    expect(houses.of('client/e.plan.yaml').settings.failOn).toBeUndefined()
    const bare = temporaryFolder()
    put(bare, { '.git/HEAD': '', 'x.plan.yaml': '' })
    expect(findHouses({ workingFolder: bare }).of('x.plan.yaml').settings.failOn).toBeUndefined()
    expect(
      findHouses({ workingFolder: join(folder, 'client'), root: '..' }).of('../d.plan.yaml').settings.failOn,
    ).toBe('error')
  })

  it('says once what is wrong with settings, and where', () => {
    const houses = findHouses(ground)
    houses.of('wrong/f.plan.yaml')
    houses.of('wrong/g.plan.yaml')
    expect(houses.problems).toEqual([
      { file: 'wrong/thirdstop.yaml:2:10', says: expect.stringContaining('fail-on never') },
    ])
  })
})

describe('findPlans with settings', () => {
  it('searches by the patterns of the settings that hold for a folder', () => {
    expect(findPlans(['.'], ground).files).toEqual([
      'client/e.plan.yaml',
      'recipes/a.yaml',
      'recipes/deep/b.yaml',
      'wrong/f.plan.yaml',
    ])
  })

  it('checks what is named, also where it is ignored in a search', () => {
    expect(findPlans(['recipes/old/c.yaml', 'd.plan.yaml'], ground).files).toEqual([
      'd.plan.yaml',
      'recipes/old/c.yaml',
    ])
  })
})
