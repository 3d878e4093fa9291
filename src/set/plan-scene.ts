/** A plan's scene, built once: knobs, changes and the set itself all ask for it. */
import type { Plan } from '../language/plan.js'
import { buildScene } from '../scene/build-scene.js'
import type { Scene } from '../scene/scene.js'

export const planScene = (plan: Plan): Scene => {
  const known = scenes.get(plan)
  if (known !== undefined) return known
  const scene = buildScene(plan)
  scenes.set(plan, scene)
  return scene
}

/** Plans never change, and a scene goes with its plan. */
const scenes = new WeakMap<Plan, Scene>()
