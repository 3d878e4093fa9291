/**
 * Shares jobs out over threads of this process, this one among them, which starts at once while the others load. Each
 * answer stands where its job stands, whoever gave it and whenever.
 */
import { availableParallelism } from 'node:os'
import { setImmediate as nextTurn } from 'node:timers/promises'
import { parentPort, Worker, workerData } from 'node:worker_threads'

/** How many threads a run of many jobs takes, if it is not told. */
export const usualThreads = (): number => Math.min(8, availableParallelism())

export interface Sharing<Job, Answer> {
  /** Threads in all; 1 starts none. */
  readonly threads: number
  /** A CommonJS program for the other threads; it calls `serve`. */
  readonly program: string
  /** What the program is told: plain data. */
  readonly told: unknown
  /** Does a job in this thread. */
  readonly here: (job: Job) => Answer
  /** The answer to a job at which another thread died. */
  readonly lost: (job: Job, error: Error) => Answer
}

/** Jobs and answers are plain data. Never rejects for what happens in another thread. */
export const shareOut = async <Job, Answer>(
  jobs: readonly Job[],
  { threads, program, told, here, lost }: Sharing<Job, Answer>,
): Promise<readonly Answer[]> => {
  const answers: Answer[] = []
  const waiting = jobs.map((_, index) => index)
  let answered = 0
  let wake = (): void => {}
  const others = new Set<Worker>()

  const answer = (index: number, given: Answer): void => {
    answers[index] = given
    answered += 1
  }

  /** Fewer at a time towards the end, so that all threads end together; but always two ahead, so that none waits. */
  const share = (): number[] =>
    waiting.splice(0, Math.min(16, Math.max(1, Math.floor(waiting.length / (4 * threads)))))

  const hire = (): void => {
    const worker = new Worker(program, { eval: true, workerData: told })
    others.add(worker)
    const held: number[] = []
    let ready = false
    let failure: Error | undefined
    const fill = (): void => {
      const more = held.length < 2 ? share() : []
      if (more.length === 0) return
      held.push(...more)
      worker.postMessage(more.map((index) => jobs[index]))
    }
    // The first message says that it is there; each other one answers the oldest job that it holds.
    worker.on('message', (message: { readonly answer: Answer } | 'ready') => {
      if (message === 'ready') ready = true
      else answer(held.shift()!, message.answer)
      fill()
      wake()
    })
    worker.on('error', (error: unknown) => {
      // Of what is thrown, only errors arrive as what they were.
      failure = error instanceof Error ? error : new Error('a thread of the program failed')
    })
    worker.on('exit', (code) => {
      others.delete(worker)
      if (answered === jobs.length) return
      // One that never came up has lost nothing, and another would fare alike.
      const [at, ...rest] = held
      if (at !== undefined) {
        answer(at, lost(jobs[at]!, failure ?? new Error(`a thread of the program ended with code ${code}`)))
        waiting.unshift(...rest)
      }
      if (ready && waiting.length > 0) hire()
      wake()
    })
  }

  for (let thread = 1; thread < Math.min(threads, jobs.length); thread += 1) hire()
  try {
    while (answered < jobs.length) {
      const index = waiting.shift()
      if (index !== undefined) {
        answer(index, here(jobs[index]!))
        // Lets the others' answers in.
        if (others.size > 0) await nextTurn()
      } else {
        await new Promise<void>((resolve) => {
          wake = resolve
        })
      }
    }
  } finally {
    // Not waited for: the report is written while they end.
    for (const worker of others) void worker.terminate()
  }
  return answers
}

/** In another thread: answers each job that comes, in order. `told` is what the program is told. */
export const serve = <Told, Job, Answer>(prepare: (told: Told) => (job: Job) => Answer): void => {
  const port = parentPort!
  const answer = prepare(workerData as Told)
  const send = (message: unknown): void => {
    try {
      port.postMessage(message)
    } catch (error) {
      // What a port throws is lost on the way to the thread that tells it.
      throw new Error(String(error))
    }
  }
  port.on('message', (jobs: readonly Job[]) => {
    for (const job of jobs) send({ answer: answer(job) })
  })
  port.postMessage('ready')
}
