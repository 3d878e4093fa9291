/**
 * Writes files so that an interrupt leaves either the old text or the new, never a part: a sibling is written, brought
 * to the disk, and renamed over the file. Mode and links stay.
 */
import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import { liesIn, nameOf } from './name.js'
import { type Ground, rootFinder, rootName } from './root.js'
import { whyUnwritable } from './why-unwritable.js'

export type Written = { readonly ok: true } | { readonly ok: false; readonly says: string }

/** Replaces a file's text, unless it is no longer `before`: someone else wrote it meanwhile, and their work stays. */
export const replaceFile = (path: string, before: string, after: string, ground: Ground): Written => {
  try {
    const real = realpathSync(resolve(ground.workingFolder, path))
    const root = rootFinder(ground)(path)
    if (!liesIn(real, root)) {
      return { ok: false, says: `leads outside ${rootName(root, ground)}; nothing was written` }
    }
    const changed = (): boolean => readFileSync(real, 'utf8') !== before
    if (changed()) return changedMeanwhile
    const mode = statSync(real).mode & 0o7777
    // A rename asks only the folder: what its owner has locked must be asked of the file.
    if ((mode & 0o222) === 0) return { ok: false, says: 'cannot be written: it is read-only' }
    accessSync(real, constants.W_OK)
    const sibling = writeSibling(real, after, mode)
    try {
      if (changed()) return changedMeanwhile
      renameSync(sibling, real)
      return { ok: true }
    } finally {
      removeQuietly(sibling)
    }
  } catch (error) {
    return { ok: false, says: whyUnwritable(error) }
  }
}

/** Writes new files, all or none; none where one of them exists already. */
export const createFiles = (
  files: readonly { readonly path: string; readonly text: string }[],
  ground: Ground,
): Written => {
  const made: string[] = []
  for (const { path, text } of files) {
    const full = resolve(ground.workingFolder, path)
    try {
      mkdirSync(dirname(full), { recursive: true })
      const descriptor = openSync(full, 'wx')
      made.push(full)
      try {
        writeAll(descriptor, text)
      } finally {
        closeSync(descriptor)
      }
    } catch (error) {
      made.forEach(removeQuietly)
      return { ok: false, says: `${nameOf(full, ground.workingFolder)} ${whyUnwritable(error)}` }
    }
  }
  return { ok: true }
}

const changedMeanwhile: Written = {
  ok: false,
  says: 'was changed by someone else since it was read; nothing was written',
}

const writeSibling = (file: string, text: string, mode: number): string => {
  const sibling = join(dirname(file), `.${basename(file)}.${process.pid}.part`)
  const descriptor = openSync(sibling, constants.O_WRONLY | constants.O_CREAT | constants.O_EXCL, mode)
  try {
    // The process's mask takes bits away from the mode of a new file.
    fchmodSync(descriptor, mode)
    writeAll(descriptor, text)
    fsyncSync(descriptor)
    return sibling
  } catch (error) {
    removeQuietly(sibling)
    throw error
  } finally {
    closeSync(descriptor)
  }
}

const writeAll = (descriptor: number, text: string): void => {
  const bytes = Buffer.from(text, 'utf8')
  for (let done = 0; done < bytes.length; ) done += writeSync(descriptor, bytes, done)
}

const removeQuietly = (path: string): void => {
  try {
    unlinkSync(path)
  } catch {
    // Renamed already, or never made.
  }
}
