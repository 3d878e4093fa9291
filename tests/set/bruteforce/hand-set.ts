/** A set worked out by hand beside the plan that says the same. */
import type { Lamp } from './lamps.js'
import { plus, type Vector } from './vectors.js'

export interface HandPoint {
  readonly at: Vector
  /** Square out of the surface that it lies on; a meter lies there flat unless told otherwise. */
  readonly out?: Vector
  /** Where the face there looks. */
  readonly looks?: Vector
}

export interface HandSet {
  readonly name: string
  readonly plan: string
  readonly eye: Vector
  /** Losses: filter and close focus, stops. */
  readonly setting: { readonly fNumber: number; readonly iso: number; readonly losses?: number }
  readonly points: Readonly<Record<string, HandPoint>>
  readonly lamps: Readonly<Record<string, Lamp>>
  /** Those that the key reading counts. */
  readonly key: readonly string[]
  /** Lamps whose fronts the program has no closed form for. */
  readonly numeric?: readonly string[]
}

/** Face of a standing person of the usual height. */
export const standing: Vector = [0, 0, 0.94 * 1.72]

export const onTheBackdrop: Vector = [0, -1, 0]

/**
 * Lens and the sensor's sides as they stand in millimetres. Focused on the subject point, a thin lens stands further
 * from the sensor than its focal length, and sees less. Kept 3 % inside what is seen.
 *
 * @param hiddenUnder height on the paper, metres, under which something before it hides it
 */
export const seenOfBackdrop = (
  eye: Vector,
  behind: number,
  lens: number,
  sensor: readonly [width: number, height: number],
  paper: { readonly width: number; readonly height: number } = { width: 2.72, height: 2.8 },
  hiddenUnder = 0,
): Readonly<Record<string, HandPoint>> => {
  const reach = behind - eye[1]
  const focus = -eye[1] * 1000
  const extension = (lens * focus) / (focus - lens)
  const [half, tall] = [(reach * sensor[0]) / 2 / extension, (reach * sensor[1]) / 2 / extension]
  const left = Math.max(eye[0] - half, -paper.width / 2)
  const right = Math.min(eye[0] + half, paper.width / 2)
  const bottom = Math.max(eye[2] - tall, hiddenUnder)
  const top = Math.min(eye[2] + tall, paper.height)
  const [x, z] = [(left + right) / 2, (bottom + top) / 2]
  const [aside, up] = [0.03 * (right - left), 0.03 * (top - bottom)]
  const lying = (across: number, height: number): HandPoint => ({
    at: [across, behind, height],
    out: onTheBackdrop,
  })
  return {
    backdrop: lying(x, z),
    'backdrop-left': lying(left + aside, z),
    'backdrop-right': lying(right - aside, z),
    'backdrop-top': lying(x, top - up),
    'backdrop-bottom': lying(x, bottom + up),
  }
}

/** Before the subject point, on the centre line, at a height. */
export const cameraAt = (distance: number, height: number): Vector => [0, -distance, height]

export const beside = (from: Vector, right: number, behind: number, up: number): Vector =>
  plus(from, [right, behind, up])
