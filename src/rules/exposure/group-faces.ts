/** The light on each face of a group. */
import type { Figure } from '../../light/figure.js'
import type { SceneFigure } from '../../scene/scene.js'
import type { ComputedSet } from '../../set/computed-set.js'

export interface Face {
  readonly figure: SceneFigure
  readonly over: Figure
}

/** Key and fill, dome toward the camera, nobody in anybody's light; in the scene's order. */
export const metered = (set: ComputedSet): readonly Face[] => {
  const names = set.keyLights.map((light) => light.name)
  return set.scene.subject.figures.flatMap((figure) => {
    const over = set.reading({
      at: figure.face,
      of: names,
      dome: 'raised',
      faces: 'camera',
      aside: 'people',
    })?.overCamera
    return over === undefined ? [] : [{ figure, over }]
  })
}

/** Stops between the brightest and the darkest; undefined for fewer than two faces that are lit. */
export const spreadOf = (set: ComputedSet): number | undefined => {
  const stops = metered(set).map((face) => face.over.stops)
  return stops.length < 2 ? undefined : Math.max(...stops) - Math.min(...stops)
}
