/** Tables that a flash comes with: guide numbers over the zoom, durations and colours over the power. */
import { pointer, pointerKeys } from '../../text/place.js'
import { writePower } from '../../units/power.js'
import type { PowerShare } from '../../units/quantity.js'
import type { Flash } from '../generated/types.js'
import type { FlashUnit } from '../plan.js'
import { type Desk, extentAt, focalLengthAt, maybe, refuse, timeAt } from './desk.js'
import { powerOf } from './power.js'

/** By zoom, widest first. */
export const guideNumbersOf = (desk: Desk, at: string, written: Readonly<Record<string, string>>) => {
  const rows = Object.entries(written).map(([zoom, length]) => ({
    at: at + pointer(zoom),
    metres: extentAt(desk, at + pointer(zoom), length) as number,
    zoom: focalLengthAt(desk, at + pointer(zoom), zoom),
  }))
  onceEach(
    desk,
    rows.map((row) => ({ at: row.at, value: row.zoom })),
    (first) => `this zoom stands in the table twice, ${nameOf(first.at)} too`,
  )
  return rows.map(({ metres, zoom }) => ({ metres, zoom })).sort((a, b) => a.zoom - b.zoom)
}

const nameOf = (at: string): string => pointerKeys(at).at(-1)!

interface Row {
  readonly at: string
  readonly value: number
}

/** Refuses a row of a table for which another stands already: `25 %` beside `1/4`. */
const onceEach = (desk: Desk, rows: readonly Row[], says: (first: Row) => string): void =>
  rows.forEach((row, i) => {
    const first = rows.slice(0, i).find(({ value }) => Math.abs(value / row.value - 1) < 1e-6)
    if (first !== undefined) refuse(desk, row.at, says(first), 'one value holds at a time: keep one of them')
  })

/** Powers of a table over power: each once, none that the unit cannot be set to. */
export const powersOf = (
  desk: Desk,
  at: string,
  rows: readonly { readonly power: string }[],
  unit: FlashUnit,
): readonly PowerShare[] => {
  const powers = rows.map((row, i) => powerOf(desk, `${at}/${i}/power`, row.power, unit))
  powers.forEach((power, i) => {
    if (power > unit.power.to * (1 + 1e-6))
      refuse(
        desk,
        `${at}/${i}/power`,
        `${rows[i]!.power} is over the most that ${unit.name} gives, ${writePower(unit.power.to, unit.power.step)}`,
        'a power that can be set is needed',
      )
  })
  onceEach(
    desk,
    powers.map((value, i) => ({ at: `${at}/${i}/power`, value })),
    (first) =>
      `this power stands in the table twice, as ${rows[Number(pointerKeys(first.at).at(-2))]!.power} too`,
  )
  return powers
}

export const durationsOf = (
  desk: Desk,
  at: string,
  rows: NonNullable<Flash['durations']>,
  unit: FlashUnit,
): FlashUnit['durations'] => {
  const powers = powersOf(desk, at, rows, unit)
  return rows.map((row, i) => {
    const t01 = maybe(timeAt, desk, `${at}/${i}/t0.1`, row['t0.1'])
    const t05 = maybe(timeAt, desk, `${at}/${i}/t0.5`, row['t0.5'])
    if (t01 !== undefined && t05 !== undefined && t01 < t05)
      refuse(
        desk,
        `${at}/${i}/t0.1`,
        `a flash is longer over a tenth of its peak than over half of it; here t0.1 is ${row['t0.1']} and t0.5 ${row['t0.5']}`,
        'are they the other way round? t0.1 is usually two to three times t0.5',
      )
    return { power: powers[i]!, t01, t05 }
  })
}
