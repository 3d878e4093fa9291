/** Writes readings into a plan, and tells of each what was taken for granted and what it taught. */
import { checkReading } from '../checker/check-plan.js'
import type { CheckedPlan } from '../checker/finding.js'
import type { MeterReading, Plan } from '../language/plan.js'
import type { FilePort } from '../language/port.js'
import { readPlan } from '../language/read-plan.js'
import { computeSet } from '../set/compute-set.js'
import type { ComputedSet } from '../set/computed-set.js'
import { facingOf } from '../set/read-reading.js'
import { setValue } from '../text/edit.js'
import { writeFNumber } from '../units/marks.js'
import { type Faces, takeReading } from './take-reading.js'

export type TakenAll =
  | { readonly ok: true; readonly text: string; readonly readings: readonly WrittenReading[] }
  | { readonly ok: false; readonly checked: CheckedPlan }
  | { readonly ok: false; readonly says: string }

export interface WrittenReading {
  /** As it stands in the plan. */
  readonly reading: string
  /** What the reading whose place it takes said. */
  readonly inPlaceOf: string | undefined
  /** Sentences: what was taken for granted, what it taught, what is odd about it. */
  readonly says: readonly string[]
}

/** Writes several readings, or none where one of them cannot be. */
export const takeReadings = (
  file: string,
  before: string,
  port: FilePort,
  said: readonly string[],
  faces?: Faces,
): TakenAll => {
  let text = before
  const readings: WrittenReading[] = []
  for (const one of said) {
    const { plan } = readPlan(file, text, port)
    if (plan === undefined) return { ok: false, checked: checkReading(readPlan(file, text, port), {}) }
    const taken = takeReading(plan, text, one, faces)
    if (!taken.ok) return taken
    const added = readPlan(file, taken.text, port).plan
    const fresh = added?.readings.at(-1)
    if (added === undefined || fresh === undefined) {
      return { ok: false, says: `${one} would leave the plan unreadable; nothing was written` }
    }
    const again = repeated(plan, text, fresh, added)
    const after = again === undefined ? added : (readPlan(file, again.text, port).plan ?? added)
    text = again?.text ?? taken.text
    readings.push({
      reading: taken.reading,
      inPlaceOf: again?.before,
      says: [
        ...(faces === undefined ? assumed(fresh) : []),
        ...taught(computeSet(plan), computeSet(after), fresh, again?.index ?? added.readings.length - 1),
      ],
    })
  }
  return { ok: true, text, readings }
}

/** The same lights metered again, at the same place and settings: the new figure stands in place of the old one. */
const repeated = (
  plan: Plan,
  text: string,
  fresh: MeterReading,
  added: Plan,
): { readonly index: number; readonly text: string; readonly before: string } | undefined => {
  const reads = added.places.written(`/readings/${added.readings.length - 1}/reads`)
  const index = plan.readings.findIndex((one) => 'reads' in one.read && sameButFigure(one, fresh))
  const place = plan.places.of(`/readings/${index}/reads`)
  if (index < 0 || reads === undefined || place.file !== plan.file) return undefined
  const edit = setValue(text, place.pointer, reads)
  return edit.ok ? { index, text: edit.text, before: text.slice(place.start, place.end) } : undefined
}

const sameButFigure = (a: MeterReading, b: MeterReading): boolean => identity(a) === identity(b)

const identity = ({ at, of, taken, kind, dome, faces, iso }: MeterReading): string =>
  JSON.stringify([
    at,
    typeof of === 'string' ? of : [...of].sort(),
    [...(taken ?? [])].sort(([one], [other]) => (one < other ? -1 : 1)),
    kind,
    dome,
    faces,
    iso,
  ])

const assumed = ({ of, dome, faces }: MeterReading): string[] => {
  if (dome === 'flat') return []
  return faces === 'light' && typeof of !== 'string'
    ? [`taken as metered with the dome turned to ${of[0]!}; --faces camera where it was turned to the camera`]
    : ['taken as metered with the dome turned to the camera']
}

/** The same reading as it was expected before and is now, and whether all else contradicts it. */
const taught = (before: ComputedSet, after: ComputedSet, reading: MeterReading, index: number): string[] => {
  const what = `${typeof reading.of === 'string' ? reading.of : reading.of.join(' + ')} at ${reading.at}`
  const [was, is] = [expected(before, reading), expected(after, reading)]
  const held = after.readings.find((one) => one.index === index)
  const beyond = held === undefined ? 0 : Math.abs(held.difference) - 2 * held.u
  return [
    ...(is === undefined
      ? [`${what}: it tells nothing of the lights as they are set today`]
      : [`${what}: ${was ?? 'not known'} before, ${is} now`]),
    ...(held !== undefined && beyond > 0
      ? [
          `that is ${Math.abs(held.difference).toFixed(1)} stops ${held.difference > 0 ? 'more' : 'less'} than all else in the plan tells: a slip?`,
        ]
      : []),
  ]
}

const expected = (set: ComputedSet, reading: MeterReading): string | undefined => {
  const faces = facingOf(set.scene, reading)
  const of = reading.of === 'ambient' ? ['ambient'] : reading.of
  const unknown = new Set(set.unknown.map(({ name }) => name))
  if (typeof of !== 'string' && of.some((name) => unknown.has(name))) return undefined
  const figure =
    faces === undefined ? undefined : set.reading({ at: reading.at, of, dome: reading.dome, faces })
  return figure && `${writeFNumber(figure.fNumber)} ± ${(2 * set.u(figure.figure)).toFixed(1)}`
}
