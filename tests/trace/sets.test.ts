/** The sets that the tracer judges must be ones that can be built: it takes no light through a wall or ceiling. */
import { expect, it } from 'vitest'
import { inSpace, outlineOf } from '../../src/light/outline.js'
import { computeSet } from '../../src/set/compute-set.js'
import { planOf, setNames } from './set.js'

it.each(setNames)('%s has all its fronts within its room', (name) => {
  const { room, lights } = computeSet(planOf(name)).scene
  for (const { name: light, front } of lights.values()) {
    if (front === undefined || room === undefined) continue
    for (const [x, y, z] of inSpace(front, outlineOf(front).corners)) {
      const within = x > room.left && x < room.right && y > room.front && y < room.back
      expect(within && z > 0 && z < room.height, `${light} reaches to ${x} ${y} ${z}`).toBe(true)
    }
  }
})
