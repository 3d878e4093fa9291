/** Which settings hold for a file: those of the nearest `thirdstop.yaml`, from the file's folder up to the root. */
import { lstatSync, realpathSync } from 'node:fs'
import { dirname, join, relative, resolve, sep } from 'node:path'
import type { Problem } from '../tasks/problem.js'
import { noSettings, readSettings, type Settings } from '../tasks/settings.js'
import { liesIn, nameOf } from './name.js'
import { matches } from './pattern.js'
import { readFile, type Text, whyUnreadable } from './read-file.js'
import { type Ground, realFolder, rootFinder, rootName, settingsName } from './root.js'

export interface House {
  readonly settings: Settings
  /** Whether its patterns take a file for a plan; undefined where it has none. */
  readonly isPlan: (path: string) => boolean | undefined
  readonly isIgnored: (path: string) => boolean
}

export interface Houses {
  /** The house of a file or folder. */
  readonly of: (path: string) => House
  /** What is wrong with the settings that were read so far. */
  readonly problems: readonly Problem[]
}

export const findHouses = (ground: Ground): Houses => {
  const rootOf = rootFinder(ground)
  const problems: Problem[] = []
  const houses = new Map<string, House>()

  const houseOf = (folder: string, root: string): House => {
    const known = houses.get(folder)
    if (known !== undefined) return known
    const above = dirname(folder)
    const file = join(folder, settingsName)
    // A link that leads nowhere is there too: to pass over it would lose the house's levels without a word.
    const house = lstatSync(file, { throwIfNoEntry: false })
      ? open(file, folder, root)
      : above === folder || !liesIn(realFolder(above), root)
        ? noHouse
        : houseOf(above, root)
    houses.set(folder, house)
    return house
  }

  const inside = (file: string, root: string): Text => {
    try {
      const real = realpathSync(file)
      return liesIn(real, root)
        ? readFile(real)
        : { ok: false, says: `leads outside ${rootName(root, ground)}` }
    } catch (error) {
      return { ok: false, says: whyUnreadable(error) }
    }
  }

  const open = (file: string, folder: string, root: string): House => {
    const name = nameOf(file, ground.workingFolder)
    const opened = inside(file, root)
    const read = opened.ok
      ? readSettings(name, opened.text)
      : { settings: noSettings, problems: [{ file: name, says: opened.says }] }
    problems.push(...read.problems)
    const { settings } = read
    const below = (path: string): string =>
      relative(folder, resolve(ground.workingFolder, path)).split(sep).join('/')
    return {
      settings,
      isPlan: (path) => settings.plans?.some((pattern) => matches(pattern, below(path))),
      isIgnored: (path) => settings.ignore.some((pattern) => matches(pattern, below(path))),
    }
  }

  return {
    of: (path) => {
      const folder = dirname(resolve(ground.workingFolder, path))
      return houses.get(folder) ?? houseOf(folder, rootOf(path))
    },
    problems,
  }
}

const noHouse: House = { settings: noSettings, isPlan: () => undefined, isIgnored: () => false }
