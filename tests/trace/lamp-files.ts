/**
 * Photometric files of lamps of our own invention, written from closed forms; the tracer takes the form, the program reads
 * the file.
 */
import { photometricText, steps } from '../helpers/photometric-text.js'
import type { Pattern } from './lamps.js'

/** Candela toward a unit vector: along horizontal angle 0, along 90, out. */
type Form = (along: number, aside: number, out: number) => number

/** A panel behind a lens sheet that throws most of its light to one side. */
const sideways: Form = (along, aside, out) =>
  out > 0 ? 2500 * out * Math.exp(-1.1 * along * along - 0.5 * aside * aside) * (1 + 0.7 * along) : 0

/** A globe over a plate: most of it forward, some back, with nothing right at its side. */
const bothWays: Form = (along, _aside, out) => (out > 0 ? 900 : 500) * out * out * (1 + 0.4 * along)

const radians = Math.PI / 180

const fileOf = (form: Form, to: number, opening: readonly [number, number, number]): string =>
  photometricText({
    vertical: steps(0, to, 2.5),
    horizontal: steps(0, 360, 15),
    opening,
    candela: (v, h) => {
      const off = Math.sin(v * radians)
      return form(off * Math.cos(h * radians), off * Math.sin(h * radians), Math.cos(v * radians))
    },
  })

interface LampFile {
  readonly text: string
  readonly form: Form
}

export const lampFiles: Readonly<Record<string, LampFile>> = {
  'sideways.ies': { text: fileOf(sideways, 90, [0.3, 0.6, 0]), form: sideways },
  'both-ways.ies': { text: fileOf(bothWays, 180, [-0.25, -0.25, 0]), form: bothWays },
}

/** Against that on the axis, in the front's frame; one that lies has its horizontal angle 0 up. */
export const lampPattern = (file: string, lying: boolean): Pattern => {
  const found = lampFiles[file]
  if (found === undefined) throw new Error(`the tracer does not know ${file}`)
  const { form } = found
  const ahead = form(0, 0, 1)
  return lying ? (x, y, z) => form(y, -x, z) / ahead : (x, y, z) => form(x, y, z) / ahead
}
