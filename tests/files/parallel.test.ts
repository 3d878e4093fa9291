/** Jobs that are shared out over threads, some of which die. */
import { describe, expect, it } from 'vitest'
import { shareOut, usualThreads } from '../../src/files/parallel.js'

/** Written by hand, to the messages that `shareOut` and `serve` agree on. */
const doubling = (deed = '', first = '') => `
  const { parentPort, workerData } = require('node:worker_threads')
  ${first}
  parentPort.on('message', (jobs) => {
    for (const job of jobs) {
      ${deed}
      parentPort.postMessage({ answer: { twice: job * 2, told: workerData } })
    }
  })
  parentPort.postMessage('ready')`

type Answer =
  | { readonly twice: number; readonly told: string }
  | { readonly lost: number; readonly says: string }

const slow = (milliseconds: number): void =>
  void Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds)

const share = (count: number, threads: number, program: string, pause = 5) =>
  shareOut<number, Answer>(
    Array.from({ length: count }, (_, number) => number),
    {
      threads,
      program,
      told: 'there',
      here: (job) => {
        slow(pause)
        return { twice: job * 2, told: 'here' }
      },
      lost: (job, { message }) => ({ lost: job, says: message }),
    },
  )

const told = (answers: readonly Answer[]) => answers.map((one) => ('told' in one ? one.told : 'lost'))

describe('sharing out', () => {
  it('keeps the order of the jobs, whoever ends first', async () => {
    const uneven = doubling('Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, (job * 7) % 5)')
    const answers = await share(150, 4, uneven)
    expect(answers.map((one) => 'twice' in one && one.twice)).toEqual(answers.map((_, index) => index * 2))
    expect(new Set(told(answers))).toEqual(new Set(['here', 'there']))
  })

  it('starts no thread for one, and none for nothing', async () => {
    expect(new Set(told(await share(20, 1, 'process.exit(1)', 0)))).toEqual(new Set(['here']))
    expect(await share(0, 4, doubling())).toEqual([])
  })

  it('loses only the job at which a thread died, and tells why', async () => {
    for (const [deed, says] of [
      ['if (job % 40 === 20) process.exit(9)', /ended with code 9/],
      ["if (job % 40 === 20) throw new Error('out of hand')", /^out of hand$/],
      [
        'if (job % 40 === 20) { parentPort.postMessage({ answer: () => {} }) }',
        /^a thread of the program failed$/,
      ],
    ] as const) {
      const answers = await share(200, 3, doubling(deed), 20)
      for (const [index, one] of answers.entries()) {
        if ('lost' in one) {
          expect(one.lost).toBe(index)
          expect(index % 40).toBe(20)
          expect(one.says).toMatch(says)
        } else expect(one.twice).toBe(index * 2)
      }
      expect(told(answers)).toContain('lost')
    }
  })

  it('does all itself where no other thread comes up', async () => {
    for (const program of ['process.exit(3)', "throw new Error('no')", 'this is no program']) {
      expect(new Set(told(await share(60, 4, program)))).toEqual(new Set(['here']))
    }
  })

  it('passes on what fails in this thread, and leaves no thread behind', async () => {
    const failing = shareOut([1, 2, 3], {
      threads: 3,
      program: doubling(),
      told: '',
      here: () => {
        throw new Error('here')
      },
      lost: () => 0,
    })
    await expect(failing).rejects.toThrow('here')
  })

  it('takes one to eight threads by itself', () => {
    expect(usualThreads()).toBeGreaterThanOrEqual(1)
    expect(usualThreads()).toBeLessThanOrEqual(8)
  })
})
