import { chmodSync, existsSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createFiles, replaceFile } from '../../src/files/write-file.js'
import { put, temporaryFolder } from './folder.js'

const outer = temporaryFolder()
const folder = join(outer, 'studio')
put(folder, { '.git/HEAD': '', 'a.plan.yaml': 'old\r\n', 'real/b.plan.yaml': '\uFEFFold' })
put(outer, { 'other.plan.yaml': 'old' })
symlinkSync('real/b.plan.yaml', join(folder, 'link.plan.yaml'))
symlinkSync('../other.plan.yaml', join(folder, 'out.plan.yaml'))
const ground = { workingFolder: folder }
const text = (name: string) => readFileSync(join(folder, name), 'utf8')

describe('replaceFile', () => {
  it('replaces the text, keeps the mode, and leaves nothing beside', () => {
    chmodSync(join(folder, 'a.plan.yaml'), 0o666)
    expect(replaceFile('a.plan.yaml', 'old\r\n', 'new\r\n', ground)).toEqual({ ok: true })
    expect(text('a.plan.yaml')).toBe('new\r\n')
    expect(statSync(join(folder, 'a.plan.yaml')).mode & 0o777).toBe(0o666)
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([])
  })

  it('writes through a link and leaves it a link', () => {
    expect(replaceFile('link.plan.yaml', '\uFEFFold', 'new', ground)).toEqual({ ok: true })
    expect(lstatSync(join(folder, 'link.plan.yaml')).isSymbolicLink()).toBe(true)
    expect(text('real/b.plan.yaml')).toBe('new')
  })

  it('refuses when the file is no longer what was read', () => {
    expect(replaceFile('a.plan.yaml', 'something else', 'mine', ground)).toEqual({
      ok: false,
      says: 'was changed by someone else since it was read; nothing was written',
    })
    expect(text('a.plan.yaml')).toBe('new\r\n')
  })

  it('refuses to leave the root through a link', () => {
    expect(replaceFile('out.plan.yaml', 'old', 'new', ground)).toEqual({
      ok: false,
      says: 'leads outside the working folder; nothing was written',
    })
    expect(readFileSync(join(outer, 'other.plan.yaml'), 'utf8')).toBe('old')
  })

  it('says when there is no file', () => {
    expect(replaceFile('none.plan.yaml', '', 'new', ground)).toEqual({
      ok: false,
      says: 'cannot be written: no such file',
    })
    expect(existsSync(join(folder, 'none.plan.yaml'))).toBe(false)
  })
})

describe('createFiles', () => {
  it('makes the files with their folders', () => {
    const made = [
      { path: 'first/a.plan.yaml', text: 'a' },
      { path: 'first/kits/b.kit.yaml', text: 'b' },
    ]
    expect(createFiles(made, ground)).toEqual({ ok: true })
    expect([text('first/a.plan.yaml'), text('first/kits/b.kit.yaml')]).toEqual(['a', 'b'])
  })

  it('makes none when one is there, and touches that one not', () => {
    put(folder, { 'second/b.kit.yaml': 'mine' })
    const wanted = [
      { path: 'second/a.plan.yaml', text: 'a' },
      { path: 'second/b.kit.yaml', text: 'b' },
    ]
    expect(createFiles(wanted, ground)).toEqual({
      ok: false,
      says: 'second/b.kit.yaml cannot be written: there is one already, and nothing is overwritten',
    })
    expect(readdirSync(join(folder, 'second'))).toEqual(['b.kit.yaml'])
    expect(text('second/b.kit.yaml')).toBe('mine')
  })
})
