/** What stands in the light of a face, and what that takes. */
import { difference, type Figure } from '../../light/figure.js'
import type { Receptor } from '../../light/receptor.js'
import { response } from '../../light/response.js'
import { sumFigure } from '../../light/sum-light.js'
import { subtract, unit } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { LuxSeconds, Stops } from '../../units/quantity.js'

export interface FaceShade {
  /** The figure's name in the scene. */
  readonly figure: string
  /** What stands in the light: a solid's name. */
  readonly by: string
  /** The light of which it takes most. */
  readonly light: string
  /** Stops that the face would get more without it. */
  readonly lost: Figure
}

/** A face from which all light is taken: more than anyone measures, and a figure to write. */
const dark = 12

/**
 * Of every face and everything in its way that `counts`, how much of the lights' light it takes: key and fill, the dome
 * toward the camera; what comes by way of surfaces still arrives.
 */
export const faceShades = (set: ComputedSet, counts: (solid: string) => boolean): readonly FaceShade[] => {
  const lights = set.keyLights.map(({ name }) => name).filter((name) => set.strength(name) !== undefined)
  return set.scene.subject.figures.flatMap((figure) => {
    const receptor: Receptor = {
      at: figure.face,
      normal: unit(subtract(set.scene.camera.eye, figure.face)),
      kind: 'dome',
      against: figure.looks,
    }
    const taken = new Map<string, Map<string, number>>()
    for (const light of lights)
      for (const [by, share] of set.hides(receptor, light)) {
        if (!counts(by) || by === figure.name) continue
        const of = taken.get(by) ?? new Map<string, number>()
        of.set(light, share * openAt(set, receptor, light))
        taken.set(by, of)
      }
    if (taken.size === 0) return []
    const left = set.exposure(receptor, lights)?.byLight ?? new Map<string, LuxSeconds>()
    return [...taken].map(([by, of]): FaceShade => {
      const whole = new Map(
        lights.map((light) => [light, ((left.get(light) ?? 0) + (of.get(light) ?? 0)) as LuxSeconds]),
      )
      const lost = difference(sumFigure(whole), sumFigure(left))
      const [most] = [...of].reduce((best, one) => (one[1] > best[1] ? one : best))
      return {
        figure: figure.name,
        by,
        light: most,
        lost: { ...lost, stops: Math.min(dark, lost.stops) as Stops },
      }
    })
  })
}

/** Straight from a light, were nothing in between; lx·s. */
const openAt = (set: ComputedSet, receptor: Receptor, light: string): number => {
  const source = set.source(light)
  return source === undefined ? 0 : response(source, receptor) * (set.strength(light)?.candelaSeconds ?? 0)
}

export const mostLost = (shades: readonly FaceShade[]): FaceShade | undefined =>
  shades.reduce<FaceShade | undefined>(
    (most, one) => (most === undefined || one.lost.stops > most.lost.stops ? one : most),
    undefined,
  )
