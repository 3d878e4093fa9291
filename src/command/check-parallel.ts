/** Many plans on several cores. What comes out is what one thread would have made, in the same order. */
import { findHouses, type Houses } from '../files/houses.js'
import { shareOut, usualThreads } from '../files/parallel.js'
import type { Checked } from '../tasks/check.js'
import { type AdviceRead, settled } from '../tasks/settled.js'
import type { CheckJob, ToldWorker } from './check-worker.js'
import type { CheckCall, PlanChecker } from './plan-checker.js'

export interface ParallelCall extends CheckCall {
  readonly launcher: string
  /** Of as many as the machine runs at once, if not stated. */
  readonly threads: number | undefined
  readonly advice: AdviceRead
}

export const checkParallel = async (
  files: readonly string[],
  checker: PlanChecker,
  { threads, ...told }: ParallelCall,
): Promise<{ readonly checked: readonly Checked[]; readonly houses: Houses }> => {
  const checked = await shareOut(files.map(jobOf(checker)), {
    threads: threads ?? usualThreads(),
    program: "require(require('node:worker_threads').workerData.launcher).open().work()",
    told: told satisfies ToldWorker,
    here: ({ file }) => settled(checker.check(file), told.advice),
    lost: ({ file }, error) => ({ defect: { file, error } }),
  })
  return { checked, houses: housesOf(checked, told) }
}

const jobOf =
  ({ input }: PlanChecker) =>
  (file: string): CheckJob =>
    file === '-' ? { file, input: input() } : { file }

/** Asked in the order of the files, as one thread does, so that what is wrong with settings is told in that order. */
const housesOf = (checked: readonly Checked[], { ground }: CheckCall): Houses => {
  const houses = findHouses(ground)
  for (const one of checked) {
    if ('plan' in one) houses.of(one.plan.file)
  }
  return houses
}
