/** Whether the backdrop records the colour that is wanted of it: which hue, not how deep it is. */
import { colourNames, readColour } from '../../language/catalogue/colours.js'
import { scaledXyz } from '../../light/colour/chromaticity.js'
import { chromaOf, hueApart, type Lab, labOfRgb } from '../../light/colour/lab.js'
import { linearRgb } from '../../light/colour/linear.js'
import { clippedRgb, recordedRgb } from '../../picture/recorded-colour.js'
import { surelyWhite } from '../../picture/tone.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { balancedFor } from '../colour/balance.js'
import { onBackdrop } from '../on-surface.js'
import { hasColour, leastUnknown, palest } from './washed.js'

export interface OffColour {
  readonly wanted: string
  /** What is recorded in place of it; undefined where nothing on the backdrop is of a colour. */
  readonly recorded: { readonly name: string; readonly apart: number } | undefined
}

/** Undefined where no colour is wanted, where what is wanted is a grey, or where not all light there is known. */
export const offColour = (set: ComputedSet): OffColour | undefined => {
  const { wanted, backdrop, camera } = set.plan
  if (wanted.backdrop?.tone !== 'colour' || backdrop === undefined) return undefined
  const { colour } = wanted.backdrop
  const want = labOf(colour)
  if (want === undefined || chromaOf(want) < palest) return undefined
  const view = set.backdropView
  const white = balancedFor(set)
  if (view === undefined || white === undefined) return undefined
  if (!hasColour(set)) return { wanted: colour, recorded: undefined }
  const mix = set.colour(onBackdrop(view.middle.at), 'all', { unshadowed: true })
  if (mix === undefined || mix.unknown > leastUnknown) return undefined
  const light = scaledXyz(mix.xyz, 2 ** view.middle.overCamera.stops / mix.xyz[1])
  const most = surelyWhite(camera.headroom)
  const lab = labOfRgb(clippedRgb(recordedRgb(backdrop.surface, light, white), most))
  // What is too pale to have a hue is told as washed out.
  return chromaOf(lab) < palest
    ? undefined
    : { wanted: colour, recorded: { name: nameOf(lab), apart: hueApart(lab, want) } }
}

const labOf = (colour: string): Lab | undefined => {
  const rgb = readColour(colour)
  return rgb && labOfRgb(linearRgb(rgb))
}

/** The named colour of the nearest hue. */
const nameOf = (lab: Lab): string =>
  colourNames.reduce<{ readonly name: string; readonly apart: number }>(
    (best, name) => {
      const one = labOf(name)
      const apart =
        one === undefined || chromaOf(one) < palest ? Number.POSITIVE_INFINITY : hueApart(lab, one)
      return apart < best.apart ? { name, apart } : best
    },
    { name: colourNames[0]!, apart: Number.POSITIVE_INFINITY },
  ).name
