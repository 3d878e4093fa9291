/** The meter card as a page, for Markdown. */
import type { MeterCard } from '../tasks/meter.js'
import { orderRows, orderSentences } from './meter-order-rows.js'
import {
  cameraSentence,
  cardTitle,
  closing,
  keySentence,
  pointRows,
  shadowSentences,
  toneRows,
  wayRows,
} from './meter-rows.js'
import type { Block } from './page.js'

export const meterPage = (card: MeterCard): readonly Block[] => [
  { heading: cardTitle(card), level: 1 },
  { items: [cameraSentence(card), keySentence(card), ...shadowSentences(card), ...card.caveats] },
  ...section('What to meter, in this order', orderRows(card)),
  ...orderSentences(card).map((paragraph) => ({ paragraph })),
  ...section('What a meter will read', pointRows(card)),
  ...section('How the light came', wayRows(card)),
  ...(card.tones.length === 0 ? [] : section('What the camera records of the backdrop', toneRows(card))),
  { paragraph: closing(card) },
]

const section = (heading: string, [head, ...rows]: readonly (readonly string[])[]): readonly Block[] =>
  head === undefined || rows.length === 0
    ? []
    : [
        { heading, level: 2 },
        { head, table: rows },
      ]
