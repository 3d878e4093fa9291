/** What a light's unit, modifier and grid make of its pattern, and the flux that goes with it. */
import type { PhotometricTable } from '../language/photometric/table.js'
import type { FlashUnit, Grid, Light } from '../language/plan.js'
import type { Metres, Radians } from '../units/quantity.js'
import { beamExponent, beamSolidAngle, standardReflector } from './beam.js'
import { framePattern, headOfSolidAngle, headSolidAngle, ratedZoom } from './flash-head.js'
import { type GuideNumberEntry, guideNumberAt } from './guide-number.js'
import { photometryOf } from './photometric.js'
import type { GridPattern, HeadPattern, Pattern } from './source.js'

export interface Emission {
  readonly pattern: Pattern
  readonly both: boolean
  /** Flux over on-axis intensity before any grid, sr; both sides counted. */
  readonly solidAngle: number
}

export const emissionOf = (light: Light): Emission => {
  const grid = gridPattern(light.grid ?? light.modifier?.grid)
  const { unit, modifier } = light
  if (modifier !== undefined) return cosine(modifier.emission.cosine, modifier.emission.both, grid)
  switch (unit.kind) {
    case 'flash':
      return bareFlash(unit, light, grid)
    case 'continuous':
      if (unit.strength.kind === 'photometric file') return byTable(unit.strength.table, light.lying, grid)
      return cosine(unit.strength.beam === undefined ? 1 : beamExponent(unit.strength.beam), false, grid)
    case 'sun':
    case 'window':
      return cosine(1, false, grid)
  }
}

const cosine = (exponent: number, both: boolean, grid: GridPattern | undefined): Emission => ({
  pattern: { cosine: exponent, head: undefined, grid },
  both,
  solidAngle: (both ? 2 : 1) * beamSolidAngle(exponent),
})

const byTable = (table: PhotometricTable, lying: boolean, grid: GridPattern | undefined): Emission => {
  const { reference, flux, both } = photometryOf(table)
  return {
    pattern: { cosine: undefined, head: undefined, grid, table: { table, gain: 1 / reference, lying } },
    both,
    solidAngle: flux / reference,
  }
}

/** A bare tube throws alike to all sides. */
const bareFlash = (unit: FlashUnit, light: Light, grid: GridPattern | undefined): Emission => {
  const { strength } = unit
  if (strength.kind !== 'guide-number') return cosine(beamExponent(reflectorOf(unit)), false, grid)
  switch (strength.ratedWith) {
    case 'bare':
      return cosine(0, true, grid)
    case 'standard reflector':
      return cosine(beamExponent(standardReflector), false, grid)
    case 'zoom': {
      const upright = headAt(strength.table, zoomOf(unit, light.zoom))
      const head = light.lying ? { tanAcross: upright.tanUp, tanUp: upright.tanAcross } : upright
      return {
        pattern: { cosine: undefined, head, grid },
        both: false,
        solidAngle: headSolidAngle(head),
      }
    }
  }
}

/** Beam of the reflector that a head without a modifier stands in. */
const reflectorOf = (unit: FlashUnit): Radians =>
  unit.strength.kind === 'guide-number' ? standardReflector : (unit.strength.reflector ?? standardReflector)

/** The zoom that a flashgun is set to: as stated, else that of its rating where it is fixed, else 35 mm. */
export const zoomOf = (unit: FlashUnit, zoom: Metres | undefined): Metres => {
  if (zoom !== undefined) return zoom
  if (unit.zoom !== undefined) return Math.min(Math.max(ratedZoom, unit.zoom.from), unit.zoom.to) as Metres
  return (unit.strength.kind === 'guide-number' ? unit.strength.table[0]?.zoom : undefined) ?? ratedZoom
}

/** Flux of a zoom head may fall by this much where long zooms throw some of it away. */
const leastFlux = 2 ** -0.5

/**
 * A zoom head's pattern. The flux of its rating at 35 mm is carried to every zoom: a wider zoom spreads it over as much
 * angle as its guide number leaves; a longer one keeps to its frame while that gives out at most all and at least
 * 2^−½ of it.
 */
export const headAt = (table: readonly GuideNumberEntry[], zoom: Metres): HeadPattern => {
  const rated = guideNumberAt(table, ratedZoom).metres
  const whole = headSolidAngle(framePattern(ratedZoom)) * (rated / guideNumberAt(table, zoom).metres) ** 2
  const frame = framePattern(zoom)
  const framed = headSolidAngle(frame)
  if (zoom === ratedZoom) return frame
  if (zoom > ratedZoom && framed >= whole * leastFlux && framed <= whole) return frame
  const wanted = zoom > ratedZoom && framed < whole * leastFlux ? whole * leastFlux : whole
  return headOfSolidAngle(zoom, Math.min(wanted, widest))
}

/** A head throws nothing backwards, whatever its guide numbers say. */
const widest = 0.9 * 2 * Math.PI

const gridPattern = (grid: Grid | undefined): GridPattern | undefined =>
  grid === undefined
    ? undefined
    : grid.kind === 'egg-crate'
      ? { kind: 'egg-crate', tanCutOff: Math.tan(grid.cutOff) }
      : { kind: 'honeycomb', halfPeak: grid.halfPeak }
