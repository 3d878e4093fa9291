/** A thread beside the first that checks plans: the same program, which answers files with what became of them. */
import { serve } from '../files/parallel.js'
import type { Text } from '../files/read-file.js'
import type { Checked } from '../tasks/check.js'
import { type AdviceRead, settled } from '../tasks/settled.js'
import { type CheckCall, planChecker } from './plan-checker.js'

export interface ToldWorker extends CheckCall {
  readonly launcher: string
  readonly advice: AdviceRead
}

export interface CheckJob {
  readonly file: string
  /** Standard input, which only the first thread reads. */
  readonly input?: Text
}

export const serveChecks = (): void =>
  serve((told: ToldWorker) => {
    let input: Text | undefined
    const checker = planChecker(told, () => input!)
    return (job: CheckJob): Checked => {
      input = job.input
      return settled(checker.check(job.file), told.advice)
    }
  })
