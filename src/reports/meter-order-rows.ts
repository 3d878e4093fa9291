/** What to meter one after the other, what it will read and what it did read, in rows and sentences. */
import type { MeterCard } from '../tasks/meter.js'
import type { MeterStep } from '../tasks/meter-order.js'
import { type CardReading, isOfLine } from '../tasks/meter-readings.js'
import { writeFNumber } from '../units/marks.js'
import { domeText } from './meter-rows.js'
import { listed, signed } from './notation.js'

interface Line {
  /** What fires the lights; a line that has the same as the one before shows none. */
  readonly fire: string
  readonly step: string
  readonly meter: string
  readonly at: string
  readonly dome: string
  readonly reads: string
  readonly u: string
  readonly reading: CardReading | undefined
  readonly note: string
}

/** The first row is the head. Columns in which nothing stands are left out. */
export const orderRows = (card: MeterCard): string[][] => {
  const all = lines(card)
  const columns: readonly (readonly [string, (line: Line) => string])[] = [
    ['fire', ({ fire }) => fire],
    ['step', ({ step }) => step],
    ['light', ({ meter }) => meter],
    ['at', ({ at }) => at],
    ['dome to', ({ dome }) => dome],
    ['will read', ({ reads }) => reads],
    ['±', ({ u }) => u],
    [
      'did read',
      ({ reading }) => (reading === undefined ? '' : `${reading.reads}${reading.carried ? ' *' : ''}`),
    ],
    ['differs', ({ reading }) => (reading?.held === undefined ? '' : signed(reading.held.difference, 1))],
    ['note', ({ note }) => note],
  ]
  const shown = columns.filter(([, cell]) => all.some((line) => cell(line) !== ''))
  return [
    shown.map(([head]) => head),
    ...all.map((line, i) =>
      shown.map(([head, cell]) => (head === 'fire' && all[i - 1]?.fire === line.fire ? '' : cell(line))),
    ),
  ]
}

const lines = ({ order, readings }: MeterCard): readonly Line[] => {
  const left = [...readings]
  const steps = order.map((step, index): Line => {
    // Of several readings of one line the last that was taken as the set stands today; the others are told below.
    const own = left.filter((reading) => isOfLine(reading, step.figure))
    const reading = own.findLast(({ carried }) => !carried) ?? own.at(-1)
    if (reading !== undefined) left.splice(left.indexOf(reading), 1)
    return stepLine(step, index, reading)
  })
  return [...steps, ...left.map(readingLine)]
}

const stepLine = (
  { fires, without, figure, u, sets }: MeterStep,
  index: number,
  reading: CardReading | undefined,
): Line => ({
  fire: fires ?? (figure.of === 'all' || figure.of.length > 1 ? 'together' : 'alone'),
  step: String(index + 1),
  meter: figure.of === 'all' ? 'all' : figure.of.join(' + '),
  at: figure.point,
  dome: domeText(figure),
  reads: writeFNumber(figure.fNumber),
  u: (2 * u).toFixed(1),
  reading,
  note: [
    ...(without.length === 0 ? [] : [`${listed(without)} off`]),
    ...(sets === 'camera' ? ['sets camera'] : []),
    ...(reading === undefined ? [] : oddity(reading)),
  ].join('; '),
})

const readingLine = (reading: CardReading): Line => ({
  fire: 'also read',
  step: '',
  meter: typeof reading.of === 'string' ? reading.of : reading.of.join(' + '),
  at: reading.point,
  dome: reading.faces === 'surface' ? 'off the surface' : domeText(reading),
  reads: '',
  u: '',
  reading,
  note: oddity(reading).join('; '),
})

const oddity = ({ held, unused }: CardReading): readonly string[] => [
  ...(held?.odd === true ? ['odd'] : []),
  ...(unused === undefined ? [] : [`not used: ${unused}`]),
]

export const orderSentences = ({ readings, order }: MeterCard): readonly string[] => {
  const said = [
    ...(order.some(({ figure }) => figure.of !== 'all' && figure.of.length === 1)
      ? ['Each light alone first, the others off.']
      : []),
    ...(readings.some(({ held }) => held !== undefined)
      ? ['Differs: what was read over what all else in the plan tells, in stops.']
      : []),
    ...(readings.some(({ held }) => held?.odd === true)
      ? ['Odd: it contradicts the rest, and check says more.']
      : []),
    ...(readings.some(({ carried }) => carried) ? ["* taken at other settings than today's."] : []),
  ]
  return said.length === 0 ? [] : [said.join(' ')]
}
