/** Sources: no-color.org and force-color.org, for the meaning of the two variables; TERM=dumb is common practice. */
import { describe, expect, it } from 'vitest'
import { wantsColour } from '../../src/command/colour.js'

const say = (environment: Record<string, string>, terminal = true, flag?: boolean) =>
  wantsColour({ flag, environment, terminal })

describe('wantsColour', () => {
  it.each([
    ['a terminal', say({}), true],
    ['a pipe', say({}, false), false],
    ['a terminal without colours', say({ TERM: 'dumb' }), false],
    ['NO_COLOR', say({ NO_COLOR: '1' }), false],
    ['NO_COLOR=0, which is a text', say({ NO_COLOR: '0' }), false],
    ['NO_COLOR without text', say({ NO_COLOR: '' }), true],
    ['FORCE_COLOR on a pipe', say({ FORCE_COLOR: '1' }, false), true],
    ['FORCE_COLOR in a terminal without colours', say({ FORCE_COLOR: '3', TERM: 'dumb' }), true],
    ['FORCE_COLOR=0', say({ FORCE_COLOR: '0' }), false],
    ['FORCE_COLOR=false', say({ FORCE_COLOR: 'false' }), false],
    ['FORCE_COLOR without text on a pipe', say({ FORCE_COLOR: '' }, false), false],
    ['both', say({ NO_COLOR: '1', FORCE_COLOR: '1' }), false],
    ['a continuous integration run on a pipe', say({ CI: 'true' }, false), false],
    ['--color against NO_COLOR', say({ NO_COLOR: '1' }, false, true), true],
    ['--no-color against FORCE_COLOR', say({ FORCE_COLOR: '1' }, true, false), false],
  ])('%s', (_, decided, wanted) => {
    expect(decided).toBe(wanted)
  })
})
