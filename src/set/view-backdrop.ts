/** Meters what the camera sees of the backdrop: see `backdrop-grid` for where. */
import type { Figure } from '../light/figure.js'
import { difference } from '../light/figure.js'
import { recordedLinear, srgbCode } from '../picture/tone.js'
import { type BackdropGrid, type GridPlace, whereOnGrid } from './backdrop-grid.js'
import type { BackdropSample, BackdropView } from './backdrop-view.js'

interface Sampled {
  readonly place: GridPlace
  readonly sample: BackdropSample
}

/** Rounds of looking closer; each halves the distance between places. */
const rounds = 3

/**
 * @param overCamera stops over the camera's setting of a flat receptor lying there, facing out; undefined where nothing arrives
 */
export const viewBackdrop = (
  grid: BackdropGrid,
  reflectance: number,
  overCamera: (place: GridPlace) => Figure | undefined,
): BackdropView | undefined => {
  const found: Sampled[] = []
  const sample = (place: GridPlace): Sampled | undefined => {
    const figure = overCamera(place)
    if (figure === undefined) return undefined
    const linear = recordedLinear(reflectance, figure.stops)
    const one = {
      place,
      sample: {
        at: place.at,
        where: whereOnGrid(place),
        overCamera: figure,
        linear,
        srgb: srgbCode(linear),
      },
    }
    found.push(one)
    return one
  }
  for (const place of grid.places) sample(place)
  const middle = found.find((one) => one.place === grid.middle)
  if (middle === undefined) return undefined
  const brightest = closer(grid, sample, most(found, 1), 1)
  const darkest = closer(grid, sample, most(found, -1), -1)
  return {
    left: grid.left as BackdropView['left'],
    right: grid.right as BackdropView['right'],
    bottom: grid.bottom as BackdropView['bottom'],
    top: grid.top as BackdropView['top'],
    samples: found.map((one) => one.sample),
    middle: middle.sample,
    darkest: darkest.sample,
    brightest: brightest.sample,
    spread: difference(brightest.sample.overCamera, darkest.sample.overCamera),
  }
}

const most = (of: readonly Sampled[], sign: 1 | -1): Sampled =>
  of.reduce((best, one) =>
    sign * (one.sample.overCamera.stops - best.sample.overCamera.stops) > 0 ? one : best,
  )

/** Climbs to a place between those of the grid: the best of its neighbours, ever nearer. */
const closer = (
  grid: BackdropGrid,
  sample: (place: GridPlace) => Sampled | undefined,
  from: Sampled,
  sign: 1 | -1,
): Sampled => {
  let best = from
  for (let round = 1; round <= rounds; round++) {
    const around = [best]
    for (const place of grid.finer(best.place, round)) {
      const one = sample(place)
      if (one !== undefined) around.push(one)
    }
    best = most(around, sign)
  }
  return best
}
