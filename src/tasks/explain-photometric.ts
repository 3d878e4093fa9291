/** What a photometric file gives to a light that it does not state itself. */
import type { Light } from '../language/plan.js'
import { isOneSided } from '../light/photometric.js'
import type { Words } from '../rules/words.js'

/** The front that a photometric file gives to a light that states none. */
export const openingText = ({ unit, modifier }: Light, words: Words): string | undefined => {
  if (unit.kind !== 'continuous' || unit.strength.kind !== 'photometric file') return undefined
  const { opening } = unit.strength.table
  if (unit.size !== undefined || modifier !== undefined || opening === undefined) return undefined
  const { outline, width, height } = opening
  return `${words.length(width)} x ${words.length(height)}${outline === 'disc' ? ', round' : ''}, by its photometric file`
}

/** Which way a photometric file's angles are taken to go: accounts of the standard differ, so that it is told. */
export const anglesText = ({ unit, modifier, lying }: Light): string | undefined => {
  if (modifier !== undefined || unit.kind !== 'continuous' || unit.strength.kind !== 'photometric file')
    return undefined
  const { table } = unit.strength
  if (table.planes.length === 1) return undefined
  const way =
    table.type === 'C'
      ? lying
        ? 'horizontal angle 0 up, 90 to the left of who faces it'
        : 'horizontal angle 0 to the right of who faces it, 90 up'
      : lying
        ? 'vertical angles to the left of who faces it, horizontal ones down'
        : 'vertical angles up, horizontal ones to the left of who faces it'
  return isOneSided(table, lying) ? `${way}; left and right stay as they are where a light is mirrored` : way
}
