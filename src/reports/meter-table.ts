/** The meter card for people. */
import type { CardEntry, MeterCard } from '../tasks/meter.js'
import { writeFNumber } from '../units/marks.js'
import { writeShutter } from '../units/shutter.js'
import { type Look, pageWidth } from './look.js'
import { listed, signed } from './notation.js'
import { padLeft, padRight, width, wrap } from './width.js'

export const meterTable = (card: MeterCard, look: Look): string => {
  const { paint, show } = look
  const camera = `camera ${writeFNumber(card.camera.fNumber)}, ${writeShutter(card.camera.marked)}, ISO ${card.camera.iso}`
  const rows = card.entries.map((entry, index) => row(entry, card.entries[index - 1]))
  return [
    paint.strong(show(card.title === '' ? card.file : card.title)),
    show(camera),
    ...wrap(show(keySentence(card)), pageWidth),
    '',
    ...table([['point', 'light', 'reads', 'over camera', 'over key', '±', 'dome'], ...rows], look),
    ...(card.tones.length === 0 ? [] : ['', ...table(toneRows(card), look)]),
    '',
    ...wrap(show(closing(card)), pageWidth),
    '',
  ].join('\n')
}

const keySentence = ({ key, keyLights }: MeterCard): string =>
  key === undefined
    ? 'no key reading: nothing in the plan tells how strong the key is'
    : `key reading ${writeFNumber(key.figure.fNumber)} (${listed(keyLights)}), ${signed(key.overCamera, 1)} stop over the camera, ± ${(2 * key.u).toFixed(1)}`

const row = ({ figure, overCamera, overKey, u }: CardEntry, before: CardEntry | undefined): string[] => [
  before?.figure.point === figure.point && before.figure.dome === figure.dome ? '' : figure.point,
  figure.of === 'all' ? 'all' : figure.of.join(' + '),
  writeFNumber(figure.fNumber),
  signed(overCamera, 1),
  overKey === undefined ? '' : signed(overKey, 1),
  (2 * u).toFixed(1),
  `${figure.dome}, facing ${figure.faces}`,
]

const toneRows = ({ tones }: MeterCard): string[][] => [
  ['records', 'surface', 'sRGB', 'over mid grey', 'over sure white'],
  ...tones.map((tone) => [
    tone.point,
    `${tone.surface} ${tone.reflectance}`,
    String(tone.srgb),
    signed(tone.stopsFromMid, 1),
    signed(tone.stopsFromWhite, 1),
  ]),
]

/** Numbers stand right, words left. */
const table = (rows: readonly (readonly string[])[], { paint, show }: Look): string[] => {
  const shown = rows.map((cells) => cells.map(show))
  const widths = shown[0]!.map((_, column) => Math.max(...shown.map((cells) => width(cells[column] ?? ''))))
  const isNumber = widths.map((_, column) =>
    shown.slice(1).every((cells) => /^$|^[-+]?[\d.]+$/.test(cells[column] ?? '')),
  )
  return shown.map((cells, index) => {
    const line = cells
      .map((cell, column) => (isNumber[column] ? padLeft : padRight)(cell, widths[column]!))
      .join('   ')
      .trimEnd()
    return index === 0 ? paint.faint(line) : line
  })
}

const closing = ({ unknown }: MeterCard): string =>
  [
    '± is two standard deviations, in stops. A point faces what a meter reading there faces by default.',
    'Direct light only: bounce from room, panels and backdrop is not computed yet.',
    ...(unknown.length === 0
      ? []
      : [`Not counted, since nothing tells how strong it is: ${listed(unknown)} (write meters or power).`]),
  ].join(' ')
