/** How soon a flash is ready again, and how long its charge lasts. */
import type { Light } from '../language/plan.js'
import { flashesPerCharge, type Known, recycleAt } from '../light/charge.js'
import { secondsText } from '../rules/gear.js'
import { pointer } from '../text/place.js'
import type { PowerShare } from '../units/quantity.js'

/** Rows for `--explain-plan`: what a session is judged by, as stated or as such units usually have it. */
export const chargeRows = ({
  name,
  unit,
}: Light): readonly (readonly [below: string, value: string | number | undefined, at: string])[] => {
  if (unit.kind !== 'flash') return []
  const at = (key: string) => pointer('lights', name, 'unit', key)
  const full = 1 as PowerShare
  const recycle = recycleAt(unit, full)
  const flashes = flashesPerCharge(unit, full)
  return [
    ['/recycle', said(recycle, secondsText(recycle.value)), at('recycle')],
    [
      '/flashes-per-charge',
      flashes === undefined ? undefined : said(flashes, String(Math.round(flashes.value))),
      at('flashes-per-charge'),
    ],
    ['/spare-charges', unit.spareCharges, at('spare-charges')],
  ]
}

const said = ({ guessed }: Known<number>, value: string): string =>
  guessed ? `about ${value} at full power, built in` : `${value} at full power`
