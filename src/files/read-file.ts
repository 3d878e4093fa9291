/**
 * Reads one file's text, or says in one sentence why not. Nothing that a path can name may hang the reader or fill
 * the memory: pipes and devices are refused before a byte is read, and no more than the limit is ever read.
 */
import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs'

/** Largest file that is read. */
export const largestFile = 1024 * 1024

export type Text =
  | { readonly ok: true; readonly text: string }
  /** Begins in lower case and stands after a file's name: `cannot be read: no such file`. */
  | { readonly ok: false; readonly says: string }

const refused = (says: string): Text => ({ ok: false, says })

/** @param latin what is not UTF-8 is Latin-1, and not refused */
export const readFile = (path: string, latin = false): Text => {
  let descriptor: number
  try {
    // Without O_NONBLOCK the mere opening of a pipe waits for its other end.
    descriptor = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0))
  } catch (error) {
    return refused(whyUnreadable(error))
  }
  try {
    const about = fstatSync(descriptor)
    if (about.isDirectory()) return refused('cannot be read: it is a folder, a file is needed')
    if (!about.isFile()) return refused('cannot be read: it is a pipe or a device, a plain file is needed')
    if (about.size > largestFile) return refused(tooLarge)
    const bytes = readUpTo(descriptor, largestFile + 1, false)
    return decode(bytes, latin)
  } catch (error) {
    return refused(whyUnreadable(error))
  } finally {
    closeSync(descriptor)
  }
}

const tooLarge = 'is larger than 1 MiB; a plan, kit or room file is a few kilobytes of text'

/** The size that the system states may be wrong (it is 0 for generated files), so the limit is kept while reading. */
export const readUpTo = (descriptor: number, most: number, waits = true): Buffer => {
  const parts: Buffer[] = []
  let total = 0
  while (total < most) {
    const part = Buffer.allocUnsafe(Math.min(65536, most - total))
    const count = readPart(descriptor, part, waits)
    if (count === 0) break
    parts.push(part.subarray(0, count))
    total += count
  }
  return parts.length === 1 ? parts[0]! : Buffer.concat(parts)
}

const readPart = (descriptor: number, part: Buffer, waits: boolean): number => {
  for (;;) {
    try {
      return readSync(descriptor, part, 0, part.length, null)
    } catch (error) {
      const { code } = error as { code?: unknown }
      if (code === 'EOF') return 0
      // A pipe that does not block, and whose writer needs a moment. A plain file has its bytes or never will.
      if (code !== 'EAGAIN' || !waits) throw error
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5)
    }
  }
}

/**
 * UTF-8, strictly: bytes that are none are refused, since replacing them would move every later place; so is what is too
 * large.
 */
export const decode = (bytes: Uint8Array, latin = false): Text => {
  if (bytes.length > largestFile) return refused(tooLarge)
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) }
  } catch {
    if (latin) return { ok: true, text: new TextDecoder('latin1').decode(bytes) }
    const loose = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)
    const line = loose.slice(0, loose.indexOf('\uFFFD')).split('\n').length
    return refused(`is not UTF-8 text (first in line ${line}); save it as UTF-8`)
  }
}

/** The system's reason in words that need no manual. */
export const whyUnreadable = (error: unknown): string => {
  const code = (error as { code?: unknown } | undefined)?.code
  const reason = typeof code === 'string' ? reasons[code] : undefined
  return `cannot be read: ${reason ?? (typeof code === 'string' ? code : String(error))}`
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  ENOTDIR: 'no such file',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EISDIR: 'it is a folder, a file is needed',
  ELOOP: 'its links go in a circle',
  ENAMETOOLONG: 'its name is too long',
  ENXIO: 'it is a pipe or a device, a plain file is needed',
  EAGAIN: 'it gives nothing to read',
  EMFILE: 'too many files are open',
  ERR_INVALID_ARG_VALUE: 'its name holds a NUL character',
}
