/** What was probably meant. The slips are common ones of typing: a letter too many, too few, wrong, or two swapped. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { nearest } from '../../src/language/nearest.js'

const keys = ['aperture', 'shutter', 'iso', 'lens', 'white-balance', 'at', 'aim', 'power', 'up']

describe('nearest', () => {
  it('finds one slip', () => {
    const slips: Readonly<Record<string, string>> = {
      aperature: 'aperture',
      apeture: 'aperture',
      apertuer: 'aperture',
      shuter: 'shutter',
      isoo: 'iso',
      lense: 'lens',
      lesn: 'lens',
      att: 'at',
      pwer: 'power',
    }
    for (const [slip, meant] of Object.entries(slips))
      expect([slip, nearest(slip, keys)]).toEqual([slip, meant])
  })

  it('takes case, blanks, hyphens and underscores as alike', () => {
    for (const word of ['White-Balance', 'white balance', 'white_balance', 'WHITE  BALANCE'])
      expect(nearest(word, keys)).toBe('white-balance')
  })

  it('takes a beginning for the whole', () => {
    expect(nearest('apert', keys)).toBe('aperture')
  })

  it('takes the nearest, and of two as near the first', () => {
    expect(nearest('kei', ['key', 'kei light', 'kex'])).toBe('kei light')
    expect(nearest('kei', ['kex', 'key'])).toBe('kex')
    expect(nearest('aim', ['aims', 'aim'])).toBe('aim')
  })

  it('says nothing where nothing is near', () => {
    for (const word of ['', '  ', 'tripod', 'x', 'z', 'shttr-speed', 'q'.repeat(100_000)])
      expect([word, nearest(word, keys)]).toEqual([word, undefined])
    expect(nearest('a', ['b', 'c'])).toBeUndefined()
    expect(nearest('aperture', [])).toBeUndefined()
  })

  it('finds every word that is longer than three letters, whichever letter is changed', () => {
    const words = keys.filter((word) => word.length > 3)
    fc.assert(
      fc.property(
        fc.constantFrom(...words),
        fc.nat(),
        fc.constantFrom('insert', 'drop', 'change'),
        (word, where, how) => {
          const at = where % word.length
          const slip =
            word.slice(0, at) + (how === 'drop' ? '' : 'q') + word.slice(how === 'insert' ? at : at + 1)
          expect(nearest(slip, words)).toBe(word)
        },
      ),
    )
  })
})
