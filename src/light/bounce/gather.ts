/** What a receptor gets from each side of the mesh. */
import type { Receptor } from '../receptor.js'
import type { Outlook } from '../visibility/outlook.js'
import { sees } from '../visibility/sees.js'
import { placeOn } from './layout.js'
import type { Mesh } from './mesh.js'
import { weightOf } from './weight.js'

/** Nearly all that a receptor in a closed box sees is the box: then it is taken as all. */
const nearly = 0.05
/** Shares of all that a receptor takes, from which on a patch is looked at in four and in nine places. */
const large = [0.02, 0.08] as const

const middles: readonly (readonly number[])[] = [[0], [-0.5, 0.5], [-2 / 3, 0, 2 / 3]]

/** Exposure at the receptor per unit exitance of each side. In a closed box a flat one gets 1 in all, a dome in free air 2. */
export const gatherFrom = (mesh: Mesh, outlook: Outlook): Float64Array => {
  const { receptor } = outlook
  const { layout, encloses, closed, patches } = mesh
  const weights = new Float64Array(2 * layout.count)
  let box = 0
  for (let i = 0; i < layout.count; i++) {
    const p = 3 * i
    const off =
      (receptor.at[0] - layout.at[p]!) * layout.normal[p]! +
      (receptor.at[1] - layout.at[p + 1]!) * layout.normal[p + 1]! +
      (receptor.at[2] - layout.at[p + 2]!) * layout.normal[p + 2]!
    const { surface } = patches[i]!
    const oneSided = surface.back === undefined && surface.transmits === 0
    // In the plane of a surface that has one side only, a receptor lies before it.
    const back = off < 0 && !(oneSided && off > -1e-6)
    if (back && oneSided) continue
    const weight = weightOf(layout, i, receptor, Math.max(Math.abs(off), oneSided ? 1e-6 : 0), back)
    if (!(weight > 0)) continue
    weights[2 * i + (back ? 1 : 0)] = weight
    if (encloses[i] === 1) box += weight
  }
  const all = whole(receptor)
  const scale = closed && all !== undefined && Math.abs(box / all - 1) < nearly ? all / box : 1
  const usual = receptor.kind === 'dome' ? 2 : 1
  const to: [number, number, number] = [0, 0, 0]
  for (let side = 0; side < weights.length; side++) {
    const weight = weights[side]!
    if (weight === 0) continue
    const i = side >> 1
    const places = middles[weight > large[1] * usual ? 2 : weight > large[0] * usual ? 1 : 0]!
    let seen = 0
    for (const s of places) for (const t of places) if (sees(outlook, placeOn(layout, i, s, t, to))) seen++
    weights[side] = ((encloses[i] === 1 ? scale : 1) * weight * seen) / (places.length * places.length)
  }
  return weights
}

/** What a receptor takes in surroundings of one exitance; undefined where a plane cuts into it that is not its own. */
const whole = ({ kind, onSurface, against }: Receptor): number | undefined => {
  if (against !== undefined) return undefined
  if (kind === 'flat') return 1
  return onSurface === true ? 1.5 : 2
}
