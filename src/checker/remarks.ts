/** Lines that say how the light of this plan was computed, and what was left out of it. */
import type { Plan } from '../language/plan.js'
import type { Words } from '../rules/words.js'

export const remarksOn = (plan: Plan, words: Words): readonly string[] => {
  const on = [...plan.lights.values()].filter((light) => light.on)
  const photometric = on.filter(
    ({ unit }) => unit.kind === 'continuous' && unit.strength.kind === 'photometric file',
  )
  const together = plan.readings.filter(({ of }) => of === 'all' || (of !== 'ambient' && of.length > 1))
  const flash = on.some(({ unit }) => unit.kind === 'flash')
  return [
    'no bounce and no blockers are computed yet: walls, panels and shadows are not in these figures',
    ...(plan.room === undefined ? ['dark and open: the plan states no room'] : []),
    ...(flash && plan.camera.shutterKind === 'focal-plane' && !plan.places.stated('/camera/sync')
      ? [`sync taken as ${words.shutter(plan.camera.sync)}: the plan states none`]
      : []),
    ...photometric.map(({ name }) => `${name} is left out: photometric files are not computed yet`),
    ...(together.length > 0
      ? ['readings of several lights at once are not used yet: a reading of each light alone is']
      : []),
  ]
}
