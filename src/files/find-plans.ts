/**
 * From the paths of a call to plan files: a file is taken as named, a folder is searched for `*.plan.yaml`, or for what
 * the settings there say. The order depends on the names alone, never on the order in which a disk lists them.
 */
import { type Dirent, readdirSync, realpathSync, statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import type { Problem } from '../tasks/problem.js'
import { findHouses, type Houses } from './houses.js'
import { liesIn, nameOf } from './name.js'
import { whyUnreadable } from './read-file.js'
import { type Ground, rootFinder, rootName } from './root.js'

export interface Found {
  /** Relative to the working folder, with `/`; sorted, each once. */
  readonly files: readonly string[]
  readonly problems: readonly Problem[]
}

const isPlan = (name: string): boolean => /\.plan\.ya?ml$/.test(name)
const isSearched = (name: string): boolean => !name.startsWith('.') && name !== 'node_modules'
const byName = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

export const findPlans = (
  paths: readonly string[],
  ground: Ground,
  houses: Houses = findHouses(ground),
): Found => {
  const rootOf = rootFinder(ground)
  const files = new Set<string>()
  const problems: Problem[] = []
  const name = (path: string): string => nameOf(path, ground.workingFolder)

  /** A link that nobody named must not lead a report to print lines of a file outside the root. */
  const linkLeadsOutside = (path: string): boolean => {
    try {
      return !liesIn(realpathSync(path), rootOf(path))
    } catch {
      return false
    }
  }

  /** Takes what a folder holds; says how many plans or problems that were. */
  const search = (folder: string): number => {
    let listed: Dirent[]
    try {
      listed = readdirSync(folder, { withFileTypes: true })
    } catch (error) {
      problems.push({ file: name(folder), says: whyUnreadable(error) })
      return 1
    }
    let count = 0
    for (const one of listed) {
      const path = join(folder, one.name)
      const house = houses.of(path)
      if (house.isIgnored(path)) continue
      if (one.isDirectory()) {
        if (isSearched(one.name)) count += search(path)
      } else if (house.isPlan(path) ?? isPlan(one.name)) {
        count += 1
        if (one.isSymbolicLink() && linkLeadsOutside(path)) {
          problems.push({
            file: name(path),
            says: `is a link that leads outside ${rootName(rootOf(path), ground)}; it was not read`,
          })
        } else files.add(name(path))
      }
    }
    return count
  }

  for (const path of paths) {
    const full = resolve(ground.workingFolder, path)
    try {
      if (!statSync(full).isDirectory()) files.add(name(full))
      else if (search(full) === 0) {
        problems.push({
          file: name(full),
          says: 'holds no plan: a folder is searched for files named *.plan.yaml',
        })
      }
    } catch (error) {
      problems.push({ file: name(full), says: whyUnreadable(error) })
    }
  }
  return {
    files: [...files].sort(byName),
    problems: problems.sort((a, b) => byName(a.file, b.file)),
  }
}
