import { describe, expect, it } from 'vitest'
import { ascii, visible } from '../../src/reports/visible.js'
import { width, wrap } from '../../src/reports/width.js'

describe('visible', () => {
  it('lets no control or direction character through', () => {
    // Source: Unicode Standard Annex 9 (the explicit direction characters), and the C0 and C1 controls of ISO/IEC 6429.
    const controls = [...Array(32).keys(), ...Array.from({ length: 33 }, (_, i) => 0x7f + i)]
    const directions = [
      0x61c, 0x200e, 0x200f, 0x202a, 0x202b, 0x202c, 0x202d, 0x202e, 0x2066, 0x2067, 0x2068, 0x2069,
    ]
    for (const code of [...controls, ...directions, 0x2028, 0x2029, 0xfeff, 0xe0041, 0xd800]) {
      const shown = visible(`a${String.fromCodePoint(code)}b`)
      expect(shown).toMatch(/^a[\x20-\x7e]+b$/)
    }
    expect(visible('red\u001b[31m')).toBe('red\\u{1b}[31m')
    expect(visible('a\tb')).toBe('a b')
  })

  it('leaves the letters of every script alone', () => {
    const text = 'Übergang 光 ضوء प्रकाश 👩‍🦰 é'
    expect(visible(text)).toBe(text)
  })
})

describe('ascii', () => {
  it('spells signs, and gives codes for the rest', () => {
    expect(ascii('f/5.6 ± 0.3 → 2 × 3 · ¼ stop')).toBe('f/5.6 +/- 0.3 -> 2 x 3 - 1/4 stop')
    expect(ascii('é光👩')).toBe('\\u{e9}\\u{5149}\\u{1f469}')
  })
})

describe('width', () => {
  // Source: Unicode Standard Annex 11; the classes as its EastAsianWidth table gives them (W, F: two; N, Na, H, A: one).
  it.each([
    ['plain', 5],
    ['é', 1],
    ['e\u0301', 1],
    ['光', 2],
    ['かな', 4],
    ['ｶﾅ', 2],
    ['한글', 4],
    ['ＡＢ', 4],
    ['→‾▲·±', 5],
    ['😀', 2],
    ['👩‍🦰', 2],
    ['👍🏽', 2],
    ['ضوء', 3],
  ])('%s', (text, columns) => {
    expect(width(text)).toBe(columns)
  })
})

describe('wrap', () => {
  it('breaks at spaces and nowhere else', () => {
    expect(wrap('one two three', 7)).toEqual(['one two', 'three'])
    expect(wrap('光光光 光光', 7)).toEqual(['光光光', '光光'])
    expect(wrap('a-word-wider-than-this b', 5)).toEqual(['a-word-wider-than-this', 'b'])
    expect(wrap('', 5)).toEqual([''])
  })
})
