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

/** For a plan that differs in nothing that a scene is made of. */
export const shareScene = (plan: Plan, as: Plan): void => {
  scenes.set(plan, planScene(as))
}

/** Plans never change, and a scene goes with its plan. */
const scenes = new WeakMap<Plan, Scene>()
