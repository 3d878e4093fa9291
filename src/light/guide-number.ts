/**
 * Guide numbers in metres at ISO 100: N = GN/d on the axis, so that H(d) = (C/100)·(GN/d)² and the intensity over the
 * flash is I = (C/100)·GN², 2.5·GN² cd·s with C = 250.
 */
import type { CandelaSeconds, Iso, Metres } from '../units/quantity.js'
import { incidentConstant } from './exposure.js'
import { ratedZoom } from './flash-head.js'

/** On-axis intensity of a flash with this guide number. */
export const intensityOfGuideNumber = (metres: number, c: number = incidentConstant): CandelaSeconds =>
  ((c / 100) * metres * metres) as CandelaSeconds

/** The guide number, in metres at this speed, of an on-axis intensity. */
export const guideNumberOf = (
  intensity: CandelaSeconds,
  iso: Iso = 100 as Iso,
  c: number = incidentConstant,
): number => Math.sqrt((intensity * iso) / c)

/** Guide number against that at 35 mm: as zoom^0.65 below 35 mm, ^0.45 from there to 105, flat above. From memory. */
const zoomGain = (zoom: Metres): number => {
  const times = zoom / ratedZoom
  return times < 1 ? times ** 0.65 : Math.min(times, 3) ** 0.45
}

export interface GuideNumberEntry {
  readonly metres: number
  readonly zoom: Metres | undefined
}

/**
 * The guide number at a zoom from one figure or a table: as stated, between two entries along the straight line of
 * their logarithms, beyond them by the usual gain of zoom heads. `converted` says that the latter was used.
 */
export const guideNumberAt = (
  table: readonly GuideNumberEntry[],
  zoom: Metres,
): { readonly metres: number; readonly converted: boolean } => {
  const entries = table
    .map((entry) => ({ metres: entry.metres, zoom: entry.zoom ?? ratedZoom }))
    .sort((a, b) => a.zoom - b.zoom)
  let below: (typeof entries)[number] | undefined
  let above: (typeof entries)[number] | undefined
  for (const entry of entries) {
    if (entry.zoom <= zoom * 1.001) below = entry
    if (above === undefined && entry.zoom >= zoom * 0.999) above = entry
  }
  if (below !== undefined && above !== undefined) {
    if (below.zoom >= above.zoom) return { metres: below.metres, converted: false }
    const share = Math.log(zoom / below.zoom) / Math.log(above.zoom / below.zoom)
    return { metres: below.metres * (above.metres / below.metres) ** share, converted: false }
  }
  const nearest = (below ?? above)!
  return { metres: nearest.metres * (zoomGain(zoom) / zoomGain(nearest.zoom)), converted: true }
}
