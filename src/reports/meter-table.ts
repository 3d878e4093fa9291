/** The meter card for people. */
import type { CardEntry, MeterCard } from '../tasks/meter.js'
import { writeFNumber } from '../units/marks.js'
import { writeShutter } from '../units/shutter.js'
import type { Look } from './look.js'
import { listed, signed } from './notation.js'
import { table } from './table.js'
import { wrap } from './width.js'

export const meterTable = (card: MeterCard, look: Look): string => {
  const { paint, show, columns } = look
  const camera = `camera ${writeFNumber(card.camera.fNumber)}, ${writeShutter(card.camera.marked)}, ISO ${card.camera.iso}`
  const rows = card.entries.map((entry, index) => row(entry, card.entries[index - 1]))
  return [
    ...wrap(show(card.title === '' ? card.file : card.title), columns).map(paint.strong),
    show(camera),
    ...wrap(show(keySentence(card)), columns),
    ...card.caveats.flatMap((caveat) => wrap(show(caveat), columns)),
    '',
    ...table([['point', 'light', 'reads', 'over camera', '±', 'over key', '±', 'dome to'], ...rows], look),
    ...(card.tones.length === 0 ? [] : ['', ...table(toneRows(card), look)]),
    '',
    ...wrap(show(closing(card)), columns),
    '',
  ].join('\n')
}

const keySentence = ({ key, keyLights }: MeterCard): string =>
  key === undefined
    ? 'no key reading: nothing in the plan tells how strong the key is'
    : `key reading ${writeFNumber(key.figure.fNumber)} ± ${(2 * key.u).toFixed(1)} (${listed(keyLights)}): ${overCamera(key.overCamera)}`

const overCamera = (stops: number): string => {
  const size = Math.abs(stops).toFixed(1)
  return Number(size) === 0
    ? 'what the camera is set to'
    : `${size} ${Number(size) > 1 ? 'stops' : 'stop'} ${stops < 0 ? 'under' : 'over'} the camera`
}

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
    figure.dome === 'flat' ? `${figure.faces}, flat` : figure.faces,
  ]
}

const toneRows = ({ tones }: MeterCard): string[][] => [
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

const closing = ({ unknown, entries }: MeterCard): string =>
  [
    '± is two standard deviations, in stops, of the figure before it. The dome is raised but where it says flat.',
    ...(entries.some(({ hardlyAny }) => hardlyAny) ? ['Hardly any: less than a meter shows.'] : []),
    'Direct light only: bounce from room, panels and backdrop is not computed yet.',
    ...(unknown.length === 0
      ? []
      : [`Not counted, since nothing tells how strong it is: ${listed(unknown)} (write meters or power).`]),
  ].join(' ')
