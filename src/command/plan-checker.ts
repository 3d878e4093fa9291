/** How each thread of a run checks one of its plans. */
import { resolve } from 'node:path'
import { filePort } from '../files/file-port.js'
import { findHouses, type Houses } from '../files/houses.js'
import { readFile, type Text } from '../files/read-file.js'
import type { Ground } from '../files/root.js'
import { type Checked, checkFile, type PlanSource } from '../tasks/check.js'

export interface CheckCall {
  readonly ground: Ground
  /** The day on which accepted findings are judged. */
  readonly on?: string
}

export interface PlanChecker {
  /** What stands for the file `-`. */
  readonly input: () => Text
  readonly houses: Houses
  readonly source: PlanSource
  readonly check: (file: string) => Checked
}

export const planChecker = ({ ground, on }: CheckCall, input: () => Text): PlanChecker => {
  const houses = findHouses(ground)
  const source: PlanSource = {
    ...filePort(ground),
    open: (file) => (file === '-' ? input() : readFile(resolve(ground.workingFolder, file))),
  }
  const options = (file: string) => {
    const { levels, limits } = houses.of(file).settings
    return { levels, limits, ...(on === undefined ? {} : { on }) }
  }
  return { input, houses, source, check: (file) => checkFile(file, source, options) }
}
