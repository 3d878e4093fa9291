import { execFileSync } from 'node:child_process'
import { symlinkSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { largestFile, readFile, whyUnreadable } from '../../src/files/read-file.js'
import { put, temporaryFolder } from './folder.js'

const folder = temporaryFolder()
put(folder, {
  'good.yaml': 'plan: 1\r\ntitle: Übergang\n',
  'marked.yaml': '\uFEFFplan: 1\n',
  'empty.yaml': '',
  'latin.yaml': Buffer.from('plan: 1\ntitle: caf\xe9\n', 'latin1'),
  'wide.yaml': Buffer.from('\uFEFFplan: 1', 'utf16le'),
  'full.yaml': 'x'.repeat(largestFile),
  'over.yaml': 'x'.repeat(largestFile + 1),
  'folder/file.yaml': '',
})
execFileSync('mkfifo', [join(folder, 'pipe.yaml')])
symlinkSync('loop.yaml', join(folder, 'loop.yaml'))

const says = (name: string): string => {
  const text = readFile(join(folder, name))
  return text.ok ? `read ${text.text.length}` : text.says
}

describe('readFile', () => {
  it('gives the text as it stands: line ends and byte-order mark too', () => {
    expect(readFile(join(folder, 'good.yaml'))).toEqual({ ok: true, text: 'plan: 1\r\ntitle: Übergang\n' })
    expect(readFile(join(folder, 'marked.yaml'))).toEqual({ ok: true, text: '\uFEFFplan: 1\n' })
    expect(readFile(join(folder, 'empty.yaml'))).toEqual({ ok: true, text: '' })
  })

  it('reads up to 1 MiB and refuses one byte more', () => {
    expect(says('full.yaml')).toBe('read 1048576')
    expect(says('over.yaml')).toBe(
      'is larger than 1 MiB; a plan, kit or room file is a few kilobytes of text',
    )
  })

  it('keeps the limit where the system states no size', () => {
    expect(says('/../../../proc/self/status')).toMatch(/^read \d+$|no such file/)
    expect(says('/../../../dev/zero')).toBe(
      'cannot be read: it is a pipe or a device, a plain file is needed',
    )
  })

  it('refuses what is not UTF-8, with the line', () => {
    expect(says('latin.yaml')).toBe('is not UTF-8 text (first in line 2); save it as UTF-8')
    expect(says('wide.yaml')).toBe('is not UTF-8 text (first in line 1); save it as UTF-8')
  })

  it('never waits for a pipe', () => {
    expect(says('pipe.yaml')).toBe('cannot be read: it is a pipe or a device, a plain file is needed')
  })

  it('refuses folders, circles of links, missing and impossible names', () => {
    expect(says('folder')).toBe('cannot be read: it is a folder, a file is needed')
    expect(says('loop.yaml')).toBe('cannot be read: its links go in a circle')
    expect(says('nothing.yaml')).toBe('cannot be read: no such file')
    expect(says('good.yaml/more.yaml')).toBe('cannot be read: no such file')
    expect(says('a\0b')).toBe('cannot be read: its name holds a NUL character')
    expect(says('n'.repeat(5000))).toBe('cannot be read: its name is too long')
  })

  it('words a refusal of the system', () => {
    expect(whyUnreadable({ code: 'EACCES' })).toBe('cannot be read: permission denied')
    expect(whyUnreadable({ code: 'EIO' })).toBe('cannot be read: EIO')
  })
})
