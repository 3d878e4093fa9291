/** The meter card for people. */
import type { MeterCard } from '../tasks/meter.js'
import type { Look } from './look.js'
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
import { table } from './table.js'
import { wrap } from './width.js'

export const meterTable = (card: MeterCard, look: Look): string => {
  const { paint, show, columns } = look
  const sentence = (text: string): string[] => wrap(show(text), columns)
  const order = orderRows(card)
  const ways = wayRows(card)
  return [
    ...sentence(cardTitle(card)).map(paint.strong),
    ...sentence(cameraSentence(card)),
    ...sentence(keySentence(card)),
    ...shadowSentences(card).flatMap(sentence),
    ...card.caveats.flatMap(sentence),
    ...(order.length < 2 ? [] : ['', ...table(order, look), ...orderSentences(card).flatMap(sentence)]),
    '',
    ...table(pointRows(card), look),
    ...(ways.length < 2 ? [] : ['', ...table(ways, look)]),
    ...(card.tones.length === 0 ? [] : ['', ...table(toneRows(card), look)]),
    '',
    ...sentence(closing(card)),
    '',
  ].join('\n')
}
