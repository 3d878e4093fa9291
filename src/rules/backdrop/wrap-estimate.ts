/**
 * What an evenly lit backdrop throws back on the subject and into the lens: enough to say what a hotter backdrop costs.
 * The backdrop counts as lit all over as at its middle, the subject's own shade of it is left out.
 */
import { clipByHorizon, contourIrradiance } from '../../light/polygon.js'
import type { ComputedSet } from '../../set/computed-set.js'

/** From this level on (stops against the key) an outline starts to dissolve: the wrap's own limit for a note. */
export const wrapShows = -1.5

/**
 * Stops against the key that a surface at the subject's outline gets from the backdrop, turned 45° past that edge toward
 * it, for a backdrop `over` stops over the key: E = ρ·2^over·F, with the form factor F by Lambert's contour formula.
 */
export const wrapOf = (set: ComputedSet, over: number): number | undefined => {
  const { backdrop, subject } = set.scene
  const reflectance = set.plan.backdrop?.surface.reflectance
  const figure = subject.figures[0]
  if (backdrop === undefined || reflectance === undefined || figure === undefined) return undefined
  const x = set.plan.subject.width / 2
  // On the backdrop's own plane seen from the subject: u runs to camera-left, so that corners go counter-clockwise.
  const outline = [
    -backdrop.right,
    backdrop.bottom,
    -backdrop.left,
    backdrop.bottom,
    -backdrop.left,
    backdrop.top,
    -backdrop.right,
    backdrop.top,
  ]
  const place = [-x, figure.face[2], backdrop.y - figure.face[1]] as const
  if (place[2] <= 0) return undefined
  const normal = [-Math.SQRT1_2, 0, -Math.SQRT1_2] as const
  const seen = clipByHorizon(outline, ...place, ...normal)
  const factor = seen.length < 6 ? 0 : contourIrradiance(seen, ...place, ...normal) / Math.PI
  return factor > 0 ? Math.log2(reflectance * factor) + over : undefined
}

/** Veiling glare index of an ordinary lens, within a factor of two. From memory; the measure is that of ISO 9358. */
const glareIndex = 0.015
const deepBlack = 0.02

/** Stops by which the glare of a frame full of the backdrop lifts a black of 0.02, at most. */
export const hazeOf = (linear: number): number => Math.log2(1 + (glareIndex * linear) / deepBlack)
