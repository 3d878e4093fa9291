import { describe, expect, it } from 'vitest'
import { matches } from '../../src/files/pattern.js'

describe('matches', () => {
  it.each([
    ['a.plan.yaml', 'a.plan.yaml', true],
    ['./a.plan.yaml', 'a.plan.yaml', true],
    ['a.plan.yaml', 'b/a.plan.yaml', false],
    ['*.plan.yaml', 'a.plan.yaml', true],
    ['*.plan.yaml', 'b/a.plan.yaml', false],
    ['**/*.plan.yaml', 'a.plan.yaml', true],
    ['**/*.plan.yaml', 'x/y/a.plan.yaml', true],
    ['recipes/**/*.plan.yaml', 'recipes/a.plan.yaml', true],
    ['recipes/**/*.plan.yaml', 'recipes/x/y/a.plan.yaml', true],
    ['recipes/**/*.plan.yaml', 'old/recipes/a.plan.yaml', false],
    ['old/**', 'old/x/a.plan.yaml', true],
    ['old/**', 'old', true],
    ['old', 'old', true],
    ['old', 'old/a', false],
    ['?.yaml', 'a.yaml', true],
    ['?.yaml', 'ab.yaml', false],
    ['a*b*c', 'axxbxxbxc', true],
    ['a*b*c', 'axxbxxbx', false],
    ['**/x/**/y', 'a/x/b/x/c/y', true],
    ['**/x/**/y', 'a/b/c/y', false],
    ['*', '', true],
    ['a.b', 'axb', false],
    ['(a+)+', '(a+)+', true],
    ['', 'a', false],
  ])('%s on %s: %s', (pattern, path, wanted) => {
    expect(matches(pattern, path)).toBe(wanted)
  })

  it('takes no longer for patterns that are made to take long', () => {
    expect(matches(`${'*a'.repeat(150)}b`, 'a'.repeat(5000))).toBe(false)
    expect(matches(`${'**/a/'.repeat(60)}b`, 'a/'.repeat(2500))).toBe(false)
  })
})
