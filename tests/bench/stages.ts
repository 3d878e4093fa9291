/** Where the time of one plan goes: the parts of a check, each timed on a set that has done what comes before it. */
import { checkReading } from '../../src/checker/check-plan.js'
import type { FilePort } from '../../src/language/port.js'
import { readPlan } from '../../src/language/read-plan.js'
import { firstLight } from '../../src/light/bounce/first-light.js'
import { gatherFrom } from '../../src/light/bounce/gather.js'
import { meshOf } from '../../src/light/bounce/mesh.js'
import { radiosity } from '../../src/light/bounce/radiosity.js'
import { transferOf } from '../../src/light/bounce/transfer.js'
import { blockersOf } from '../../src/light/visibility/blockers.js'
import { outlookFrom } from '../../src/light/visibility/outlook.js'
import { buildScene } from '../../src/scene/build-scene.js'
import { computeSet } from '../../src/set/compute-set.js'
import { patchBudget } from '../../src/set/patch-budget.js'

const noFiles: FilePort = { read: () => ({ ok: false, says: 'no files here' }) }

/** Milliseconds by stage; of the bounce as its parts take alone. */
export const stagesOf = (text: string): ReadonlyMap<string, number> => {
  const taken = new Map<string, number>()
  const timed = <T>(stage: string, work: () => T): T => {
    const start = process.hrtime.bigint()
    const made = work()
    taken.set(stage, Number(process.hrtime.bigint() - start) / 1e6)
    return made
  }
  const reading = timed('read', () => readPlan('bench.plan.yaml', text, noFiles))
  const plan = reading.plan!
  const scene = timed('scene', () => buildScene(plan))
  const blockers = blockersOf(scene.solids)
  const near = [...scene.lights.values()].flatMap(({ front }) => (front === undefined ? [] : [front.centre]))
  const mesh = timed('mesh', () => meshOf(scene.surfaces, near, patchBudget(scene, 'plan')))
  const transfer = timed('transfer', () => transferOf(mesh, blockers))
  const set = computeSet(plan)
  const sources = [...plan.lights.keys()].flatMap((name) => set.source(name) ?? [])
  const first = timed('first light', () => sources.map((source) => firstLight(mesh, source, blockers)))
  timed('radiosity', () => first.map((one) => radiosity(mesh, transfer, one)))
  const face = scene.subject.tapeFrom
  timed('one gather', () =>
    gatherFrom(mesh, outlookFrom({ at: face, normal: [0, -1, 0], kind: 'dome' }, blockers)),
  )
  timed('key reading', () => set.key)
  timed('backdrop in frame', () => set.backdropView)
  timed('shadows', () => set.shadows)
  timed('wrap and haze', () => [set.wrap, set.haze])
  const checked = timed('whole check', () => checkReading(reading, {}))
  timed('its mends', () => checked.findings.map(({ advice }) => advice.length))
  return taken
}
