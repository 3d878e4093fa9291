import { describe, expect, it } from 'vitest'
import { findingId, fnv1a64 } from '../../src/checker/finding-id.js'

describe('fnv1a64', () => {
  // Test vectors of the FNV authors (test_fnv.c, draft-eastlake-fnv), 64-bit FNV-1a; from memory, three of many.
  it.each([
    ['', 'cbf29ce484222325'],
    ['a', 'af63dc4c8601ec8c'],
    ['foobar', '85944171f73967e8'],
  ])('of %j', (text, hash) => {
    expect(fnv1a64(text)).toBe(hash)
  })

  it('hashes UTF-8 bytes', () => {
    expect(fnv1a64('é')).toBe(fnv1a64(String.fromCodePoint(0xe9)))
    expect(fnv1a64('é')).not.toBe(fnv1a64('e'))
  })
})

describe('findingId', () => {
  it('tells rules, pointers and repeats apart', () => {
    const ids = [
      findingId('a', '/b', 0),
      findingId('a', '/b', 1),
      findingId('a', '/c', 0),
      findingId('b', '/b', 0),
    ]
    expect(new Set(ids).size).toBe(4)
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{16}$/)
  })
})
