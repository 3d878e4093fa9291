/** What the meter card says, in rows and sentences: for a terminal and for Markdown. */

import type { LightPath, MeterFigure } from '../set/computed-set.js'
import type { CardEntry, MeterCard } from '../tasks/meter.js'
import { writeFNumber } from '../units/marks.js'
import { writeShutter } from '../units/shutter.js'
import { listed, signed } from './notation.js'

export const cardTitle = ({ title, file }: MeterCard): string => (title === '' ? file : title)

export const cameraSentence = ({ camera }: MeterCard): string =>
  `camera ${writeFNumber(camera.fNumber)}, ${writeShutter(camera.marked)}, ISO ${camera.iso}`

export const keySentence = ({ key, keyLights }: MeterCard): string =>
  key === undefined
    ? 'no key reading: nothing in the plan tells how strong the key is'
    : `key reading ${writeFNumber(key.figure.fNumber)} ± ${(2 * key.u).toFixed(1)} (${listed(keyLights)}): ${overCamera(key.overCamera)}`

const overCamera = (stops: number): string => {
  const size = Math.abs(stops).toFixed(1)
  return Number(size) === 0
    ? 'what the camera is set to'
    : `${size} ${Number(size) > 1 ? 'stops' : 'stop'} ${stops < 0 ? 'under' : 'over'} the camera`
}

export const domeText = ({ dome, faces }: Pick<MeterFigure, 'dome' | 'faces'>): string =>
  dome === 'flat' ? `${faces}, flat` : faces

/** Every light where it matters, and all together; the first row is the head. */
export const pointRows = ({ entries }: MeterCard): string[][] => [
  ['point', 'light', 'reads', 'over camera', '±', 'over key', '±', 'dome to'],
  ...entries.map((entry, index) => row(entry, entries[index - 1])),
]

const row = (entry: CardEntry, before: CardEntry | undefined): string[] => {
  const { figure, overCamera, overKey, u } = entry
  const readable = entry.hardlyAny ? undefined : 2 * u
  return [
    before?.figure.point === figure.point && before.figure.dome === figure.dome ? '' : figure.point,
    figure.of === 'all' ? 'all' : figure.of.join(' + '),
    readable === undefined ? 'hardly any' : writeFNumber(figure.fNumber),
    readable === undefined ? '' : signed(overCamera, 1),
    readable?.toFixed(1) ?? '',
    readable === undefined || overKey === undefined ? '' : signed(overKey.stops, 1),
    readable === undefined || overKey === undefined ? '' : (2 * overKey.u).toFixed(1),
    domeText(figure),
  ]
}

/** Less than this share of bounce is not worth a row: a tenth of a stop. */
const worthTelling = 0.07

/** How the light came, where a part that matters did not come straight: shares by what threw it there last. */
export const wayRows = ({ entries }: MeterCard): string[][] => {
  const bounced = entries.filter(
    ({ figure, hardlyAny }) => !hardlyAny && figure.byPath.direct < (1 - worthTelling) * figure.luxSeconds,
  )
  const share = ({ figure }: CardEntry, way: LightPath): string => {
    const percent = Math.round((100 * figure.byPath[way]) / figure.luxSeconds)
    return percent === 0 ? '' : `${percent} %`
  }
  return [
    ['came by', 'light', 'straight', 'room', 'panels', 'backdrop'],
    ...bounced.map((entry, index) => [
      bounced[index - 1]?.figure.point === entry.figure.point ? '' : entry.figure.point,
      entry.figure.of === 'all' ? 'all' : entry.figure.of.join(' + '),
      share(entry, 'direct'),
      share(entry, 'room'),
      share(entry, 'panels'),
      share(entry, 'backdrop'),
    ]),
  ]
}

/** What the camera records of the backdrop. */
export const toneRows = ({ tones }: MeterCard): string[][] => [
  ['records', 'surface', 'sRGB', 'over mid grey', 'over sure white'],
  ...tones.map((tone) => [
    tone.point,
    `${tone.surface} ${tone.reflectance}`,
    String(tone.srgb),
    stops(tone.stopsFromMid),
    stops(tone.stopsFromWhite),
  ]),
]

/** A surface that reflects nothing is no number of stops from anything. */
const stops = (value: number): string => (Number.isFinite(value) ? signed(value, 1) : '')

/** The camera gets less than the meter, by a filter or by what close focus takes: enough to show in the figures. */
const lessArrives = ({ overCamera, figure }: CardEntry, { camera }: MeterCard): boolean =>
  2 * Math.log2(figure.fNumber / camera.fNumber) - overCamera > 0.05

export const closing = (card: MeterCard): string => {
  const { unknown, entries } = card
  return [
    '± is two standard deviations, in stops, of the figure before it. The dome is raised but where it says flat.',
    ...(entries.some(({ hardlyAny }) => hardlyAny) ? ['Hardly any: less than a meter shows.'] : []),
    ...(unknown.length === 0
      ? []
      : [`Not counted, since nothing tells how strong it is: ${listed(unknown)} (write meters or power).`]),
    ...(wayRows(card).length < 2
      ? []
      : [
          'Came by: what threw the light there last; the table counts with the room, what a scrim lets through with the panels.',
        ]),
    ...(entries.some((entry) => lessArrives(entry, card))
      ? ['Over camera counts what a filter and close focus take.']
      : []),
  ].join(' ')
}
