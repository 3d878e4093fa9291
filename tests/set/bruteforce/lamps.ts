/**
 * What lights of known strength give a receptor, by adding up the cells of the front: every cell throws its share of
 * the light's intensity, in the light's own pattern, and falls off with the square of its own distance.
 */
import type { Shape } from './fronts.js'
import type { Pattern } from './patterns.js'
import { degrees, inner, minus, outer, size, times, toward, type Vector } from './vectors.js'

/** How much a receptor takes of light that comes at this cosine to its axis. */
export type Kernel = (cosine: number) => number
export const flat: Kernel = (c) => Math.max(0, c)
export const dome: Kernel = (c) => (1 + c) / 2
/** A dome set down on a surface: what comes from under the surface does not reach it. */
export const domeOnSurface: Kernel = (c) => (c > 0 ? (1 + c) / 2 : 0)

export interface Receptor {
  readonly at: Vector
  readonly faces: Vector
  readonly kernel: Kernel
}

export interface Lamp {
  /** Exposure in lx·s. */
  readonly gives: (receptor: Receptor) => number
  /** What a meter is pointed at. */
  readonly from: (at: Vector) => Vector
  /** The same lamp, this many times as strong. */
  readonly times: (factor: number) => Lamp
}

export interface Front {
  readonly middle: Vector
  /** A point that the front looks at, or the way that it looks. */
  readonly aim?: Vector
  readonly axis?: Vector
  readonly shape: Shape
  readonly pattern: Pattern
  /** cd·s on the axis from far off. */
  readonly strength: number
}

/** Upright: its across is level. */
const frame = (axis: Vector): readonly [Vector, Vector, Vector] => {
  const across = toward([0, 0, 0], outer([0, 0, 1], axis))
  return [across, outer(axis, across), axis]
}

export const front = (of: Front): Lamp => {
  const axis = of.axis ?? toward(of.middle, of.aim ?? [0, 0, 0])
  const [across, up] = frame(axis)
  const cells = of.shape.map(([u, v, share]) => ({
    at: [0, 1, 2].map((i) => of.middle[i]! + u * across[i]! + v * up[i]!) as unknown as Vector,
    share,
  }))
  const gives = ({ at, faces, kernel }: Receptor): number => {
    let sum = 0
    for (const cell of cells) {
      const way = minus(at, cell.at)
      const far = size(way)
      const out = times(way, 1 / far)
      const thrown = of.pattern([inner(out, across), inner(out, up), inner(out, axis)])
      sum += (cell.share * thrown * kernel(-inner(out, faces))) / (far * far)
    }
    return of.strength * sum
  }
  return {
    gives,
    from: (at) => toward(at, of.middle),
    times: (factor) => front({ ...of, strength: of.strength * factor }),
  }
}

/** Parallel light. @param square lx·s on a plane square to it */
export const parallel = (angleLeft: number, up: number, square: number): Lamp => {
  const [a, e] = [degrees(angleLeft), degrees(up)]
  const from: Vector = [-Math.cos(e) * Math.sin(a), -Math.cos(e) * Math.cos(a), Math.sin(e)]
  return {
    gives: ({ faces, kernel }) => square * kernel(inner(from, faces)),
    from: () => from,
    times: (factor) => parallel(angleLeft, up, square * factor),
  }
}

/** The same brightness from everywhere over the horizon. @param luminance cd·s/m² */
export const upperHalf = (luminance: number): Lamp => {
  const [rows, around] = [60, 120]
  const gives = ({ faces, kernel }: Receptor): number => {
    let sum = 0
    for (let i = 0; i < rows; i++) {
      const z = (i + 0.5) / rows
      const level = Math.sqrt(1 - z * z)
      for (let j = 0; j < around; j++) {
        const turn = (2 * Math.PI * (j + 0.5)) / around
        sum += kernel(inner(faces, [level * Math.cos(turn), level * Math.sin(turn), z]))
      }
    }
    return (luminance * 2 * Math.PI * sum) / (rows * around)
  }
  return { gives, from: () => [0, 0, 1], times: (factor) => upperHalf(luminance * factor) }
}

/** The lamp as strong as makes it give this exposure here. */
export const metered = (lamp: Lamp, receptor: Receptor, luxSeconds: number): Lamp =>
  lamp.times(luxSeconds / lamp.gives(receptor))
