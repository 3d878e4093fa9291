/** A dark band along a long edge of the frame: where it lies, and how it is told. */
import type { Camera } from '../../language/plan.js'
import type { Band } from '../../picture/shutter.js'
import { project } from '../../scene/camera-view.js'
import { reach } from '../../scene/capsule.js'
import type { Capsule, Scene } from '../../scene/scene.js'
import type { Vec3 } from '../../scene/vector.js'
import type { Short } from './edge-of-flash.js'

/** `up to 40 % of the frame stays dark and 60 % in all over 1 stop short, in a band along one side that crosses the subject`. */
export const darkText = (
  { dark }: Band,
  { share, upTo }: Short,
  stops: string,
  crosses: boolean,
  { frame }: Camera,
): string => {
  const most = (part: number, ranges: boolean): string => `${ranges ? 'up to ' : ''}${percent(part)}`
  const darkPart = most(dark.most, dark.most - dark.least >= 0.005)
  const shortPart = most(share, upTo)
  const seen =
    dark.most < 0.005
      ? `${shortPart} of the frame comes out over ${stops} short`
      : share - dark.most < telling
        ? `${darkPart} of the frame stays dark`
        : `${darkPart} of the frame stays dark and ${shortPart} in all over ${stops} short`
  return `${seen}, in a band along ${frame === 'vertical' ? 'one side' : 'the top or the bottom'} ${crosses ? 'that crosses' : 'beside'} the subject`
}

/** Less than this beside the dark band is not worth words. */
const telling = 0.02

export const percent = (value: number): string => `${Math.round(value * 100)} %`

/** From which long edge it comes depends on how the camera is held: it crosses if it does from either. */
export const subjectInBand = (scene: Scene, frame: 'vertical' | 'horizontal', dark: number): boolean => {
  const inner = 1 - 2 * dark
  return scene.subject.figures.some((figure) => {
    const points = [figure.body, ...(figure.head === undefined ? [] : [figure.head])].flatMap(extremes)
    const seen = points.map((point) => project(scene.camera, point))
    const across = seen.map((one) => (frame === 'vertical' ? one.x : one.y))
    return Math.max(...across) > inner || Math.min(...across) < -inner
  })
}

const axes: readonly Vec3[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 0, 1],
  [0, 0, -1],
]

/** The outermost places of a capsule to all four sides, in the plane of its middle. */
const extremes = (capsule: Capsule): readonly Vec3[] => {
  const y = (capsule.from[1] + capsule.to[1]) / 2
  const [right, left, top, bottom] = axes.map((axis) => reach(capsule, axis)) as [
    number,
    number,
    number,
    number,
  ]
  const x = (right - left) / 2
  const z = (top - bottom) / 2
  return [
    [right, y, z],
    [-left, y, z],
    [x, y, top],
    [x, y, -bottom],
  ]
}
