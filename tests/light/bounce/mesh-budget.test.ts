/** However large and near to each other surfaces are, the patches that they are cut into stay bounded. */
import { describe, expect, it } from 'vitest'
import { meshOf } from '../../../src/light/bounce/mesh.js'
import { buildScene } from '../../../src/scene/build-scene.js'
import { planOf } from '../../rules/check-text.js'

const plan = (panels: readonly string[]) => `plan: 1
title: Very large panels
room: { width: 12 m, length: 14 m, height: 5 m }
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: flashgun, power: full, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
panels:
${panels.join('\n')}
wanted: { backdrop: any, shadow: any }
`

describe('a mesh', () => {
  it.each([
    ['sixteen sheets two centimetres apart', 16, '20 x 20 m'],
    ['one of a kilometre', 1, '1000 x 1000 m'],
  ])('of %s stays near its budget', (_, count, size) => {
    const panels = Array.from(
      { length: count },
      (_one, i) =>
        `  p${i}: { kind: reflector, size: ${size}, at: { left: ${30 + 20 * i} mm, front: 3 m, height: 1 m }, faces: subject }`,
    )
    const scene = buildScene(planOf(plan(panels)))
    const near = [...scene.panels.values()].flatMap(({ faces }) => faces.map(({ centre }) => centre))
    expect(meshOf(scene.surfaces, near, 700).patches.length).toBeLessThan(1000)
  })
})
