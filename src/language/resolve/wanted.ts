/** The picture that is wanted. */
import { stops } from '../../units/quantity.js'
import * as defaults from '../defaults.js'
import type { PlanFile } from '../generated/types.js'
import type { Light, Subject, Wanted, WantedBackdrop } from '../plan.js'
import { amountAt, type Desk, extentAt, maybe, ratioAt, stopsAt, stopsRangeAt, timeAt } from './desk.js'

type File = NonNullable<PlanFile['wanted']>

const backdropOf = (file: File['backdrop']): WantedBackdrop | undefined => {
  if (file === undefined) return undefined
  if (typeof file === 'object')
    return 'colour' in file
      ? { tone: 'colour', colour: file.colour as string }
      : { tone: 'range', name: `tone ${file.tone}`, from: file.tone, to: file.tone }
  if (file !== 'grey') return { tone: file }
  const [from, to] = defaults.tones.grey
  return { tone: 'range', name: 'grey', from, to }
}

const ratioOf = (desk: Desk, file: File['ratio']): Wanted['ratio'] => {
  for (const kind of ['lit-to-shadow', 'key-to-fill'] as const) {
    const text = file?.[kind]
    if (text !== undefined) return { kind, ratio: ratioAt(desk, `/wanted/ratio/${kind}`, text) }
  }
  return undefined
}

const sharpOf = (desk: Desk, text: File['sharp'], subject: Subject): Wanted['sharp'] => {
  if (text === undefined) return subject.kind === 'person' ? { what: 'face' } : undefined
  return text === 'face' || text === 'subject' || text === 'rows'
    ? { what: text }
    : { what: 'depth', depth: extentAt(desk, '/wanted/sharp', text) }
}

/** Where every light flashes, what is there anyway is not wanted in the picture. */
const ambientOf = (
  desk: Desk,
  file: File['ambient'],
  lights: ReadonlyMap<string, Light>,
): Wanted['ambient'] => {
  if (typeof file === 'object')
    return { underKey: stopsAt(desk, '/wanted/ambient/under-key', file['under-key']) }
  if (file !== undefined) return file
  const on = [...lights.values()].filter((light) => light.on)
  return on.length > 0 && on.every((light) => light.unit.kind === 'flash') ? 'none' : 'any'
}

export const resolveWanted = (
  desk: Desk,
  file: File,
  subject: Subject,
  lights: ReadonlyMap<string, Light>,
): Wanted => {
  const backdrop = backdropOf(file.backdrop)
  return {
    framing: file.framing,
    backdrop,
    backdropOverKey: maybe(stopsRangeAt, desk, '/wanted/backdrop-over-key', file['backdrop-over-key']),
    backdropEven: maybe(amountAt, desk, '/wanted/backdrop-even', file['backdrop-even']),
    floor: file.floor,
    exposure: maybe(stopsAt, desk, '/wanted/exposure', file.exposure) ?? stops(0),
    ratio: ratioOf(desk, file.ratio),
    shadow: file.shadow ?? (backdrop?.tone === 'white' ? 'hidden' : 'any'),
    sharp: sharpOf(desk, file.sharp, subject),
    motion: file.motion === 'frozen' ? 'frozen' : undefined,
    ambient: ambientOf(desk, file.ambient, lights),
    shooting: file.shooting && {
      every: timeAt(desk, '/wanted/shooting/every', file.shooting.every),
      frames: file.shooting.frames,
    },
  }
}
