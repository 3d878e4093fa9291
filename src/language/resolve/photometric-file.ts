/** The photometric file that a unit names, relative to the file that names it; what is wrong in it is told where it stands there. */
import { type PhotometricReading, readPhotometric } from '../photometric/read-photometric.js'
import type { PhotometricTable } from '../photometric/table.js'
import type { FilePort } from '../port.js'
import { type Desk, refuse } from './desk.js'

interface Known {
  readonly text: string
  readonly reading: PhotometricReading
}

/** Many plans of one run hold the same light: its file is read once for each port. */
const known = new WeakMap<FilePort, Map<string, Known>>()

const readOnce = (port: FilePort, file: string, text: string): PhotometricReading => {
  const files = known.get(port) ?? new Map<string, Known>()
  known.set(port, files)
  const before = files.get(file)
  if (before?.text === text) return before.reading
  const reading = readPhotometric(text)
  files.set(file, { text, reading })
  return reading
}

export interface PhotometricFile {
  readonly file: string
  readonly table: PhotometricTable
}

/** @param at pointer to where it is named. Undefined where it is refused. */
export const photometricFileAt = (desk: Desk, at: string, path: string): PhotometricFile | undefined => {
  const { places, mistakes, files } = desk
  const named = places.of(at)
  const answer = files.port.read(path, named.file, 'photometric')
  if (!answer.ok) {
    refuse(desk, at, answer.says, 'the photometric file is named here')
    return undefined
  }
  const { file, text } = answer
  const reading = readOnce(files.port, file, text)
  if (reading.ok) return { file, table: reading.table }
  files.texts.set(file, text)
  const used = places.usedAt(at)
  mistakes.add({
    rule: 'plan-unreadable',
    at: { file, start: reading.start, end: reading.end },
    pointer: '',
    message: reading.says,
    why: reading.why,
    also: [
      { ...named, says: 'the file is named here' },
      ...(used === undefined ? [] : [{ ...used, says: 'used here' }]),
    ],
  })
  return undefined
}
