/** The folder that a plan and everything it names must lie in. */
import { existsSync, realpathSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { liesIn } from './name.js'

/** Where a call stands. */
export interface Ground {
  /** Absolute; names are relative to it. */
  readonly workingFolder: string
  /** `--root`, relative to the working folder. */
  readonly root?: string
}

/**
 * Answers the root for a file, as a real path: what `--root` says; else the repository that holds the file, else the
 * working folder if that holds it, else the file's own folder. The file need not exist. Folders are remembered, since
 * many plans share a few.
 */
export const rootFinder = (ground: Ground): ((path: string) => string) => {
  const working = realFolder(ground.workingFolder)
  if (ground.root !== undefined) {
    const stated = realFolder(resolve(ground.workingFolder, ground.root))
    return () => stated
  }
  const repositories = new Map<string, string | undefined>()

  /** A worktree's `.git` is a file, a repository's a folder: either marks the root. */
  const repositoryAbove = (folder: string): string | undefined => {
    if (repositories.has(folder)) return repositories.get(folder)
    const above = dirname(folder)
    const found = existsSync(join(folder, '.git'))
      ? folder
      : above === folder
        ? undefined
        : repositoryAbove(above)
    repositories.set(folder, found)
    return found
  }

  return (path) => {
    const folder = realFolder(dirname(resolve(ground.workingFolder, path)))
    return repositoryAbove(folder) ?? (liesIn(folder, working) ? working : folder)
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
