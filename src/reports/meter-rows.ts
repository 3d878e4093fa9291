/** What the meter card says, in rows and sentences: for a terminal and for Markdown. */

import { farthestWhite, usualDuv } from '../light/colour/white.js'
import type { MeterFigure } from '../set/computed-set.js'
import type { CardEntry, CardShadow, MeterCard } from '../tasks/meter.js'
import { writeFNumber } from '../units/marks.js'
import { roundRatio } from '../units/ratio.js'
import { writeShutter } from '../units/shutter.js'
import { listed, signed } from './notation.js'

export const cardTitle = ({ title, file }: MeterCard): string => (title === '' ? file : title)

export const cameraSentence = ({ camera }: MeterCard): string =>
  `camera ${writeFNumber(camera.fNumber)}, ${writeShutter(camera.marked)}, ISO ${camera.iso}`

export const keySentence = (card: MeterCard): string => {
  const { key, keyLights } = card
  return key === undefined
    ? `no key reading: ${whyNoKey(card)}`
    : `key reading ${writeFNumber(key.figure.fNumber)} ± ${(2 * key.u).toFixed(1)} (${listed(keyLights)}): ${overCamera(key.overCamera)}`
}

const whyNoKey = ({ keyLights, unknown }: MeterCard): string =>
  keyLights.length === 0
    ? 'no light of the plan is a key or a fill'
    : keyLights.some((light) => unknown.includes(light))
      ? 'nothing in the plan tells how strong the key is'
      : `nothing of ${listed(keyLights)} reaches the subject`

const overCamera = (stops: number): string => {
  const size = Math.abs(stops).toFixed(1)
  return Number(size) === 0
    ? 'what the camera is set to'
    : `${size} ${Number(size) > 1 ? 'stops' : 'stop'} ${stops < 0 ? 'under' : 'over'} the camera`
}

export const domeText = ({ dome, faces }: Pick<MeterFigure, 'dome' | 'faces'>): string =>
  dome === 'flat' ? `${faces}, flat` : faces

/** Every light where it matters, and all together; the first row is the head. */
export const pointRows = (card: MeterCard): string[][] => {
  const { entries, shadow } = card
  const last = entries.findLastIndex(({ figure }) => figure.point === 'subject')
  return filledColumns([
    ['point', 'light', 'reads', 'over camera', '±', 'over key', '±', 'colour', 'dome to'],
    ...entries.flatMap((entry, index) => [
      row(entry, entries[index - 1]),
      ...(shadow === undefined || index !== last ? [] : [shadowRow(shadow)]),
    ]),
  ])
}

const row = (entry: CardEntry, before: CardEntry | undefined): string[] => [
  before?.figure.point === entry.figure.point && before.figure.dome === entry.figure.dome
    ? ''
    : entry.figure.point,
  entry.figure.of === 'all' ? 'all' : entry.figure.of.join(' + '),
  ...figures(entry),
  colourText(entry),
  domeText(entry.figure),
]

/** Bluer than the sky's shade no light is that is called white, kelvin. */
const bluest = 20_000
/** Off the usual by so much light is called green or magenta. */
const tinted = 0.006

/** As a colour meter shows it, to tens of kelvin. */
const colourText = ({ colour, hardlyAny }: CardEntry): string => {
  if (colour === undefined || hardlyAny) return ''
  const { kelvin, duv } = colour
  if (Math.abs(duv) > farthestWhite || kelvin > bluest) return 'coloured'
  const tint = Math.abs(duv - usualDuv(kelvin)) < tinted ? '' : duv > usualDuv(kelvin) ? ' green' : ' magenta'
  return `${Math.round(kelvin / 10) * 10} K${tint}`
}

const shadowRow = ({ entry, toward }: CardShadow): string[] => [
  '',
  'shadow',
  ...figures(entry),
  '',
  toward === 'camera' ? toward : 'aside',
]

const figures = ({ figure, overCamera, overKey, u, hardlyAny }: CardEntry): string[] => {
  const readable = hardlyAny ? undefined : 2 * u
  return [
    readable === undefined ? 'hardly any' : writeFNumber(figure.fNumber),
    readable === undefined ? '' : signed(overCamera, 1),
    readable?.toFixed(1) ?? '',
    readable === undefined || overKey === undefined ? '' : signed(overKey.stops, 1),
    readable === undefined || overKey === undefined ? '' : (2 * overKey.u).toFixed(1),
  ]
}

/** How far the lit side stands over the shadow side, as the trade writes it. */
export const shadowSentences = ({ shadow }: MeterCard): string[] =>
  shadow === undefined || shadow.entry.hardlyAny
    ? []
    : [
        `lit side to shadow side ${roundRatio(shadow.ratio)}: shadow side ${writeFNumber(shadow.entry.figure.fNumber)} ± ${(2 * shadow.entry.u).toFixed(1)}`,
      ]

/** Less than this share of bounce is not worth a row: a tenth of a stop. */
const worthTelling = 0.07

/** How the light came, where a part that matters did not come straight: shares by what threw it there last. */
export const wayRows = (card: MeterCard): string[][] => {
  const { entries } = card
  const isBounced = ({ figure, hardlyAny }: CardEntry): boolean =>
    !hardlyAny && figure.byPath.direct < (1 - worthTelling) * figure.luxSeconds
  const bounced = entries.filter(isBounced)
  const shares = ({ byPath, luxSeconds }: MeterFigure): string[] =>
    (['direct', 'room', 'panels', 'backdrop'] as const).map((way) => {
      const percent = Math.round((100 * byPath[way]) / luxSeconds)
      return percent === 0 ? '' : `${percent} %`
    })
  const rows = bounced.map(({ figure }, index) => [
    bounced[index - 1]?.figure.point === figure.point ? '' : figure.point,
    figure.of === 'all' ? 'all' : figure.of.join(' + '),
    ...shares(figure),
  ])
  const { shadow } = card
  if (shadow !== undefined && isBounced(shadow.entry)) {
    const last = bounced.findLastIndex(({ figure }) => figure.point === 'subject')
    rows.splice(last + 1, 0, [last < 0 ? 'subject' : '', 'shadow', ...shares(shadow.entry.figure)])
  }
  return filledColumns([
    ['came by', 'light', 'straight', card.surroundings ?? 'room', panelsHead(card), 'backdrop'],
    ...rows,
  ])
}

/** Without the columns that have a head and nothing under it. */
const filledColumns = ([head = [], ...rows]: readonly string[][]): string[][] => {
  const filled = (column: number): boolean => column < 2 || rows.some((row) => row[column] !== '')
  return [head, ...rows].map((row) => row.filter((_, column) => filled(column)))
}

/** Wider than this its names would push the table out of a narrow terminal. */
const widestHead = 28

/** `through silk`, `off card`, `through silk, off card`; where they are many, just `panels`. */
const panelsHead = ({ panels }: MeterCard): string => {
  const head = panels.map(({ name, scrim }) => `${scrim ? 'through' : 'off'} ${name}`).join(', ')
  return head === '' || head.length > widestHead ? 'panels' : head
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
  const { unknown, entries, shadow } = card
  return [
    '± is two standard deviations, in stops, of the figure before it. The dome is raised but where it says flat.',
    ...(entries.some(({ hardlyAny }) => hardlyAny) ? ['Hardly any: less than a meter shows.'] : []),
    ...(shadow === undefined
      ? []
      : [
          `Shadow: what fills the side that the key leaves dark, the dome turned ${shadow.toward === 'camera' ? 'to the camera' : `aside, ${shadow.toward}`} and ${listed(shadow.shaded)} kept off it by a hand.`,
        ]),
    ...(unknown.length === 0
      ? []
      : [`Not counted, since nothing tells how strong it is: ${listed(unknown)} (write meters or power).`]),
    ...(wayRows(card).length < 2
      ? []
      : [
          `Came by: what threw the light there last${panelsHead(card) === 'panels' && card.panels.some(({ scrim }) => scrim) ? '; what a scrim lets through counts with the panels' : ''}.`,
        ]),
    ...(entries.some((entry) => lessArrives(entry, card))
      ? ['Over camera counts what a filter and close focus take.']
      : []),
  ].join(' ')
}
