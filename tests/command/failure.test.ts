import { describe, expect, it } from 'vitest'
import { main } from '../../src/command/main.js'
import { put, temporaryFolder } from '../files/folder.js'
import { goodPlan } from './call.js'

describe('a defect', () => {
  it('ends with 3 and says what to report, and no line of the plan', async () => {
    const folder = temporaryFolder()
    put(folder, { 'a.plan.yaml': goodPlan })
    let err = ''
    const code = await main(['check', 'a.plan.yaml'], {
      workingFolder: folder,
      environment: {},
      isTerminal: false,
      out: () => {
        throw new Error('broken \u001b[31m inside')
      },
      err: (text) => {
        err += text
      },
      input: () => new Uint8Array(),
    })
    expect(code).toBe(3)
    expect(err).toMatch(/^thirdstop: this is a defect of thirdstop, not a fault of the plan/)
    expect(err).toMatch(/thirdstop \d+\.\d+\.\d+, node v\d+/)
    expect(err).toContain('check a.plan.yaml')
    expect(err).toContain('Error: broken \\u{1b}[31m inside')
    expect(err).not.toContain('softbox')
  })
})
