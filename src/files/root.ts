/** The folder that a plan and everything it names must lie in. */
import { existsSync, realpathSync, statSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { liesIn, nameOf } from './name.js'

/** Where a call stands. */
export interface Ground {
  /** Absolute; names are relative to it. */
  readonly workingFolder: string
  /** `--root`, relative to the working folder. */
  readonly root?: string
}

/**
 * Answers the root for a file, as a real path: what `--root` says; else the repository that holds the file, else the
 * nearest folder upward with settings, else the working folder if that holds it, else the file's own folder. The file
 * need not exist. Folders are remembered, since many plans share a few.
 */
export const rootFinder = (ground: Ground): ((path: string) => string) => {
  const working = realFolder(ground.workingFolder)
  if (ground.root !== undefined) {
    const stated = realFolder(resolve(ground.workingFolder, ground.root))
    return () => stated
  }
  /** A worktree's `.git` is a file, a repository's a folder: either marks the root. */
  const repositoryAbove = nearestWith('.git')
  const settingsAbove = nearestWith(settingsName)
  return (path) => {
    const folder = realFolder(dirname(resolve(ground.workingFolder, path)))
    return repositoryAbove(folder) ?? settingsAbove(folder) ?? (liesIn(folder, working) ? working : folder)
  }
}

export const settingsName = 'thirdstop.yaml'

/** Finds the nearest folder from a folder upward that holds an entry of a name. */
const nearestWith = (name: string): ((folder: string) => string | undefined) => {
  const known = new Map<string, string | undefined>()
  const nearest = (folder: string): string | undefined => {
    if (known.has(folder)) return known.get(folder)
    const above = dirname(folder)
    const found = existsSync(join(folder, name)) ? folder : above === folder ? undefined : nearest(above)
    known.set(folder, found)
    return found
  }
  return nearest
}

/** How a refusal names the root. */
export const rootName = (root: string, ground: Ground): string => {
  const name = nameOf(root, realFolder(ground.workingFolder))
  return name === '.' ? 'the working folder' : `the folder ${name}`
}

/** Whether a folder of this name is there. */
export const isFolder = (folder: string, workingFolder: string): boolean => {
  try {
    return statSync(resolve(workingFolder, folder)).isDirectory()
  } catch {
    return false
  }
}

/** The folder with links followed, or as named where it does not exist. */
export const realFolder = (folder: string): string => {
  try {
    return realpathSync(folder)
  } catch {
    return resolve(folder)
  }
}
