/** The lighting ratio, of the kind that is wanted. */
import type { Light } from '../../language/plan.js'
import { difference, type Figure } from '../../light/figure.js'
import { sumFigure } from '../../light/sum-light.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { shadowSide } from '../../set/shadow-side.js'
import type { LuxSeconds } from '../../units/quantity.js'
import { keyLightsOf } from '../key-lights.js'

/** In stops: light against light, each alone; or the lit side of the face against its shadow side, whatever fills it. */
export const ratioOf = (set: ComputedSet): Figure | undefined => {
  if (set.plan.wanted.ratio?.kind === 'key-to-fill') {
    const [key, fill] = [keyAlone(set), fillAlone(set)]
    return key && fill && difference(key, fill)
  }
  const sides = shadowSide(set)
  return sides && difference(sides.lit.figure, sides.shadow.figure)
}

export const keyAlone = (set: ComputedSet): Figure | undefined => sumOf(set, 'key')
export const fillAlone = (set: ComputedSet): Figure | undefined => sumOf(set, 'fill')

/** All lights of a role, each metered alone with the dome toward it. */
const sumOf = (set: ComputedSet, role: Light['role']): Figure | undefined => {
  const parts = new Map<string, LuxSeconds>()
  for (const { name } of keyLightsOf(set, role)) {
    const alone = set.reading({ at: 'subject', of: [name], dome: 'raised', faces: { light: name } })
    if (alone !== undefined) parts.set(name, alone.luxSeconds)
  }
  return parts.size === 0 ? undefined : sumFigure(parts)
}

/** Stops that the ratio lies over the wanted one. */
export const offIn = (set: ComputedSet): number | undefined => {
  const figure = ratioOf(set)
  return figure && figure.stops - Math.log2(set.plan.wanted.ratio!.ratio)
}
