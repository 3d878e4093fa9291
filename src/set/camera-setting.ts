import type { Plan } from '../language/plan.js'
import type { ExposureSetting } from '../light/exposure.js'
import { closeUpLoss, magnification } from '../picture/lens.js'
import type { Scene } from '../scene/scene.js'

/** The camera's setting as exposure sees it: its filter and its close-up loss are on everything. */
export const cameraSetting = ({ camera }: Plan, scene: Scene): ExposureSetting => ({
  aperture: camera.aperture,
  iso: camera.iso,
  losses: camera.filter + closeUpLoss(magnification(camera.lens, scene.camera.focus)),
})
