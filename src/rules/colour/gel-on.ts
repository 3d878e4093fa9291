/** Advice to gel a light, past the gel that it may have. */
import type { Light } from '../../language/plan.js'
import { throughFilter } from '../../light/colour/mired.js'
import { colourApart } from '../../light/colour/mix.js'
import { usualDuv, type White } from '../../light/colour/white.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Mend } from '../rule.js'
import type { Words } from '../words.js'
import { asLight, gelBetween, greenerThanUsual } from './casts.js'

/** Sheets over a window are a day's work, and nobody gels the sun. */
export const canGel = ({ unit }: Light): boolean => unit.kind !== 'sun' && unit.kind !== 'window'

/** Nearer than this a light is of the colour that it should have, mired. */
const near = 10

/**
 * Lights of one colour brought to another. Undefined for lights that take no gel, and where none that are sold would do.
 *
 * @param more what else goes with it: `, the white balance set to match`
 */
export const gelOn = (
  set: ComputedSet,
  lights: readonly Light[],
  to: White,
  words: Words,
  { more = '', gives, costs }: { readonly more?: string; readonly gives: string; readonly costs?: string },
): Mend | undefined => {
  const [first] = lights
  const now = first && set.lightColour(first.name)
  if (now === undefined || !lights.every(canGel)) return undefined
  const names = words.list(lights.map(({ name }) => name))
  const shift = first!.gel?.shift ?? 0
  const has = first!.gel !== undefined
  const bare = has ? without(now, shift, first!.gel!.duv ?? 0) : now
  if (has && colourApart(asLight(bare), asLight(to)).mired < near)
    return { title: `${names} without its gel${more}`, gives, ...(costs === undefined ? {} : { costs }) }
  const gel = gelBetween(bare, to)
  return (
    gel && {
      title: `${gel.name} ${has ? 'in place of the gel ' : ''}on ${names}${more}`,
      gives: `${gives}${gel.come === '' ? '' : `: ${gel.come}`}`,
      costs: `${words.howMany(gel.loss)} of its light${costs === undefined ? '' : `; ${costs}`}`,
    }
  )
}

const without = (now: White, shift: number, duv: number): White => {
  const kelvin = throughFilter(now.kelvin, -shift)
  return { kelvin, duv: usualDuv(kelvin) + greenerThanUsual(now) - duv }
}
