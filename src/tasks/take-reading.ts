/** Writes what a meter did read into a plan, stamped with what the lights are set to, so that it goes on holding. */
import { nearest } from '../language/nearest.js'
import type { Light, Plan } from '../language/plan.js'
import { buildScene } from '../scene/build-scene.js'
import { stampToday } from '../set/stamp.js'
import { insertEntry } from '../text/edit.js'
import { pointer } from '../text/place.js'
import { readText } from '../text/read.js'
import { readAperture } from '../units/aperture.js'
import { markedFNumber, nearestFNumber } from '../units/marks.js'
import { fNumber } from '../units/quantity.js'
import { asBlockList, bracketedColumns } from './block-list.js'

/** Which way the dome was turned, where the caller says so; `out`: straight out of the surface. */
export type Faces = 'camera' | 'light' | 'out'

export type Taken =
  | {
      readonly ok: true
      /** The plan's text with the reading in it. */
      readonly text: string
      /** The reading as it stands there. */
      readonly reading: string
    }
  | { readonly ok: false; readonly says: string }

const refused = (says: string): Taken => ({ ok: false, says })

/**
 * @param said `key@subject=f/5.6`, `key+fill@subject=f/5.6 + 0.3`, `all@backdrop=f/8`
 */
export const takeReading = (plan: Plan, text: string, said: string, faces?: Faces): Taken => {
  const [, lights, at, reads] = /^([^@=]+)@([^@=]+)=(.+)$/.exec(said)?.map((part) => part.trim()) ?? []
  if (lights === undefined || at === undefined || reads === undefined) {
    return refused(`a reading is written key@subject=f/5.6, not ${said}`)
  }
  const scene = buildScene(plan)
  if (!scene.points.has(at)) return unknown('point', at, [...scene.points.keys()])
  const aperture = readAperture(reads)
  if (!aperture.ok) return refused(aperture.says)
  const odd = oddMark(reads)
  if (odd !== undefined) return refused(odd)

  const names = lights === 'all' || lights === 'ambient' ? lights : lights.split('+').map((one) => one.trim())
  const stamped: Light[] = []
  for (const name of names === 'all' ? [...plan.lights.keys()] : names === 'ambient' ? [] : names) {
    const light = plan.lights.get(name)
    if (light === undefined) return unknown('light', name, [...plan.lights.keys(), 'all', 'ambient'])
    if (light.on) stamped.push(light)
    else if (names !== 'all') return refused(`${name} is off in the plan; a reading of it would say nothing`)
  }

  const onSurface = ['backdrop', 'floor'].includes(scene.points.get(at)?.on ?? 'air')
  if (faces === 'out' && !onSurface)
    return refused(`${at} lies on no surface that the dome could face out of`)
  if (faces === 'light' && stamped.length !== 1) {
    return refused('only a reading of one light can face the light')
  }
  const of = typeof names === 'string' ? names : `[${names.join(', ')}]`
  const taken = stampToday(stamped, plan, scene)
  const reading = [
    `at: ${at}`,
    `of: ${of}`,
    `reads: ${reads}`,
    ...(faces === undefined || faces === 'out' ? [] : [`faces: ${faces}`]),
    `iso: ${plan.camera.iso}`,
    ...(taken === undefined ? [] : [`taken: ${taken}`]),
  ].join(', ')
  const { root } = readText(plan.file, text)
  const others = root?.kind === 'map' && root.entries.has('readings')
  const edit = others
    ? insertEntry(text, pointer('readings'), '', `{ ${reading} }`)
    : insertEntry(text, '', 'readings', `[{ ${reading} }]`)
  if (!edit.ok) return edit
  const long = bracketedColumns(edit.text, 'readings') > longestLine
  const shown = others && !long ? edit.text : asBlockList(edit.text, 'readings')
  return { ok: true, text: shown, reading: `{ ${reading} }` }
}

/** Readings in brackets stay on one line up to this many columns. */
const longestLine = 100

/** A meter that shows tenths behind its mark: f/8 and five tenths are not f/8.5. */
const oddMark = (reads: string): string | undefined => {
  const marked = Number(/^[^\d]*(\d+(?:\.\d+)?)/.exec(reads)?.[1])
  const isMark = (['third', 'half'] as const).some((series) => {
    const { marked: mark, over } = nearestFNumber(fNumber(marked), series)
    return Math.abs(over) < exactEnough || mark === marked
  })
  if (isMark) return undefined
  const [whole, tenths] = [Math.floor(marked), Math.round((marked % 1) * 10)]
  const nearest = `f/${nearestFNumber(fNumber(marked)).marked}`
  return `${reads} is no mark of the aperture scale: ${
    markedFNumber(fNumber(whole)) === whole && tenths > 0
      ? `did the meter show f/${whole} + 0.${tenths}? Write that, or ${nearest}`
      : `write the nearest, ${nearest}`
  }`
}

/** Stops: a number as far from a mark as this has been worked out, not misread. */
const exactEnough = 0.01

const unknown = (what: string, name: string, known: readonly string[]): Taken => {
  const meant = nearest(name, known)
  return refused(
    `the plan has no ${what} ${name}${meant === undefined ? '' : `; did you mean ${meant}?`} It has ${known.join(', ')}`,
  )
}
