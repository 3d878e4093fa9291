/** A plan and its scene as the tracer takes them: bodies and lamps. */
import type { Light, Plan } from '../../src/language/plan.js'
import type { Scene, Solid } from '../../src/scene/scene.js'
import type { Body, Shape } from './bodies.js'
import { Bodies, black } from './bodies.js'
import { lampPattern } from './lamp-files.js'
import { beam, cosine, eggCrate, honeycomb, type Lamp, type Pattern, zoomHead } from './lamps.js'

/** Both sides of a figure's coat are the same; what is inside is never seen. */
const coat = (reflectance: number) => ({ front: reflectance, back: 0, transmits: 0 })

const shapeOf = ({ body }: Solid): Shape => {
  if (body.shape === 'plate') return { shape: 'rectangle', face: body.face }
  return body
}

/**
 * Matte surfaces first, so that where one lies on a plate the surface is met.
 * @param subject reflectance of the people or the object: 0 as the program has it
 */
export const bodiesOf = (scene: Scene, subject = 0): Bodies =>
  new Bodies([
    ...scene.surfaces.map(
      (one): Body => ({
        name: one.name,
        shape: { shape: 'rectangle', face: one.face },
        matte: {
          front: one.front.reflectance,
          back: one.back?.reflectance ?? 0,
          transmits: one.transmits,
        },
      }),
    ),
    ...scene.solids.map(
      (one): Body => ({
        name: one.name,
        shape: shapeOf(one),
        matte: one.of === 'figure' ? coat(subject) : black,
        ...(one.of === 'light' ? { housing: one.name } : {}),
      }),
    ),
  ])

const gridded = (light: Light, pattern: Pattern): Pattern => {
  const grid = light.grid ?? light.modifier?.grid
  if (grid === undefined) return pattern
  return grid.kind === 'egg-crate' ? eggCrate(pattern, grid.cutOff) : honeycomb(pattern, grid.halfPeak)
}

const patternOf = (light: Light): Pattern => {
  const { modifier, unit } = light
  if (modifier !== undefined) return cosine(modifier.emission.cosine, modifier.emission.both)
  if (unit.kind === 'window') return cosine(1)
  if (unit.kind === 'flash') {
    const { strength } = unit
    if (strength.kind !== 'guide-number') return beam(strength.reflector ?? Math.PI / 3)
    // At other zooms the beam is widened so as to let all flux out: these sets leave that to other tests.
    if (strength.ratedWith === 'zoom' && light.zoom === 0.035) return zoomHead(35)
  }
  if (unit.kind === 'continuous')
    return unit.strength.kind === 'photometric file'
      ? lampPattern(unit.strength.file, light.lying)
      : beam(unit.strength.beam ?? (2 * Math.PI) / 3)
  throw new Error(`the tracer has no pattern for ${light.name}`)
}

/** Every light that is on. */
export const lampsOf = (plan: Plan, scene: Scene): readonly Lamp[] =>
  [...plan.lights.values()]
    .filter((light) => light.on)
    .map((light): Lamp => {
      const placed = scene.lights.get(light.name)!
      const { front, axis } = placed
      if (front === undefined) return { name: light.name, from: [-axis[0], -axis[1], -axis[2]] }
      return { name: light.name, face: front, pattern: gridded(light, patternOf(light)) }
    })
