import { describe, expect, it } from 'vitest'
import { look } from '../../src/reports/look.js'
import { sourceLine } from '../../src/reports/source-line.js'
import { width } from '../../src/reports/width.js'
import { placeOf } from './sample.js'

const shown = (text: string, word: string, ascii = false) =>
  sourceLine(text, placeOf(text, word, 'a.plan.yaml'), look({ ascii }))

describe('sourceLine', () => {
  it('strokes what is meant', () => {
    expect(shown('a: 1\n  power: 1/16 # low\nb: 2\n', '1/16')).toEqual({
      line: '  power: 1/16 # low',
      mark: '         ‾‾‾‾',
    })
  })

  it('expands tabs, so that the stroke does not drift', () => {
    expect(shown('a:\tb\t1/16', '1/16')).toEqual({ line: 'a:  b   1/16', mark: '        ‾‾‾‾' })
  })

  it('measures wide and combining characters', () => {
    expect(shown('光: 明るい', '明る')).toEqual({ line: '光: 明るい', mark: '    ‾‾‾‾' })
    expect(shown('cafe\u0301: 1/16', '1/16')).toEqual({ line: 'cafe\u0301: 1/16', mark: '      ‾‾‾‾' })
  })

  it('shows what is hidden, and strokes all of it', () => {
    expect(shown('a\u202eb: x\u001by', 'x\u001by')).toEqual({
      line: 'a\\u{202e}b: x\\u{1b}y',
      mark: '            ‾‾‾‾‾‾‾‾',
    })
  })

  it('in ASCII', () => {
    expect(shown('é: 1/16', '1/16', true)).toEqual({ line: '\\u{e9}: 1/16', mark: '        ~~~~' })
  })

  it('keeps to the first line of what goes over several, with any line ends', () => {
    expect(shown('a:\r\n  b: |  \r\n    c\r\n', '|  \r\n    c')).toEqual({ line: '  b: |', mark: '     ‾' })
    expect(shown('a: 1\rb: 2', '2')).toEqual({ line: 'b: 2', mark: '   ‾' })
  })

  it('strokes one column of what is empty, also at the end', () => {
    const place = { file: '', pointer: '', line: 1, column: 4, endLine: 1, endColumn: 4, start: 3, end: 3 }
    expect(sourceLine('a: ', place, look())).toEqual({ line: 'a:', mark: '   ‾' })
    expect(sourceLine('', { ...place, start: 0, end: 0 }, look())).toEqual({ line: '', mark: '‾' })
    expect(sourceLine('', place, look())).toBeUndefined()
  })

  it('cuts a long line and keeps what is meant in sight', () => {
    for (const before of [0, 60, 300, 5000]) {
      const text = `${'x'.repeat(before)} 1/16 ${'y'.repeat(300)}`
      const { line, mark } = shown(text, '1/16')!
      expect(width(line)).toBeLessThanOrEqual(90)
      expect(line.slice(mark.indexOf('‾'), mark.length)).toBe('1/16')
    }
  })
})
