/** Mends of a group that is lit unevenly: the lights up, back, feathered, or round to the camera. */
import type { Light } from '../../language/plan.js'
import { add, subtract, unit, type Vec3 } from '../../scene/vector.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { roundForTape } from '../../units/length.js'
import type { Metres, Radians } from '../../units/quantity.js'
import { turn } from '../gear.js'
import { inTurn, type Mend, type RuleContext } from '../rule.js'
import { allHeld, inside, movedAndHeld, solveSet } from '../solving.js'
import type { Words } from '../words.js'
import { spreadOf } from './group-faces.js'

/** What of the finding its mends go by. */
interface GroupUneven {
  /** Stops between the brightest and the darkest face, and what is allowed. */
  readonly spread: number
  readonly limit: number
  readonly u: number
}

/** @param light the one that gives the group most */
export const evened = (
  evidence: GroupUneven,
  light: Light,
  words: Words,
  context: RuleContext,
): Iterable<Mend> =>
  inTurn(
    () => raised(evidence, words, context),
    () => lightBack(evidence, light, words, context),
    () => feathered(evidence, light, words, context),
    () => nearerAxis(evidence, light, words, context),
  )

/** What takes off less than a third of what is too much is not worth the walk. */
const worthIt = (after: number, { spread, limit }: GroupUneven): boolean =>
  after <= spread - Math.max(0.05, (spread - limit) / 3)

/** Higher than this few stands go. Common practice, no source. */
const highest = 4
const step = 0.2
/** Of its tape a light rises over the faces no more than this: beyond it light comes from overhead. */
const steepest = 0.9

/**
 * From higher up the way to the front row and to the back row differs less. Straight up, over the same place on the floor:
 * by the same tape the light would come in toward the camera as it rises.
 */
const raised = (evidence: GroupUneven, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const { lights: placed, room, subject } = set.scene
  const top = Math.min(highest, (room?.height ?? highest) - 0.3)
  const movable = set.keyLights.filter(
    ({ at, unit, name }) =>
      (unit.kind === 'flash' || unit.kind === 'continuous') &&
      at.by !== 'camera' &&
      at.height !== undefined &&
      placed.get(name)?.front !== undefined,
  )
  if (movable.length === 0) return []
  const heightOf = (name: string): number => placed.get(name)!.front!.centre[2]
  const highestToday = Math.max(...movable.map(({ name }) => heightOf(name)))
  const style = plan.lengths === 'feet' ? 'feet' : 'metric'
  const changed = (by: number) => {
    const lights = new Map(plan.lights)
    const places = movable.map((light) => {
      const { at, name } = light
      if (at.by === 'camera' || at.height === undefined) return ''
      // Over whatever it is measured from.
      const metres = roundForTape((at.height.metres + by) as Metres, style)
      const height = { ...at.height, metres }
      const title = `lights.${name}.at.height → ${words.length(metres)}`
      if (at.by === 'offsets') {
        lights.set(name, { ...light, at: { ...at, height } })
        return title
      }
      const [x, y, z] = subtract(placed.get(name)!.front!.centre, subject.tapeFrom)
      const rise = z + metres - at.height.metres
      const distance = roundForTape(Math.hypot(x, y, rise) as Metres, style)
      if (rise > steepest * distance) return undefined
      lights.set(name, { ...light, at: { ...at, height, distance } })
      return `${title}, lights.${name}.at.distance → ${words.length(distance)}`
    })
    if (places.includes(undefined)) return undefined
    const names = movable.map(({ name }) => name)
    const after = allHeld(set, computeSet({ ...plan, lights }), names)
    const spread = spreadOf(after)
    return spread === undefined ? undefined : { title: places.join(', '), after, spread }
  }
  let best: ReturnType<typeof changed>
  const target = evidence.limit - inside(evidence.u)
  for (let by = step; highestToday + by <= top + 1e-9; by += step) {
    const tried = changed(by)
    if (tried === undefined) break
    if (best === undefined || tried.spread < best.spread) best = tried
    if (tried.spread <= target) break
  }
  return best === undefined || !worthIt(best.spread, evidence)
    ? []
    : [
        {
          title: best.title,
          gives: `straight up where ${movable.length === 1 ? 'it stands' : 'they stand'}: ${words.howMany(best.spread)} between the faces${best.spread > evidence.limit ? ', still over the limit' : ''}`,
          costs: [
            ...morePower(set, best.after, movable, words),
            'light from higher up: look at the eye sockets',
          ].join('; '),
          after: best.after,
          ...(best.spread > target ? { partial: true } : {}),
        },
      ]
}

/** What the lights must give more for the same exposure, the most of them. */
const morePower = (
  before: ComputedSet,
  after: ComputedSet,
  lights: readonly Light[],
  words: Words,
): readonly string[] => {
  const more = lights.map(({ name }) => {
    const [was, is] = [before.strength(name), after.strength(name)]
    return was === undefined || is === undefined ? 0 : Math.log2(is.candelaSeconds / was.candelaSeconds)
  })
  const most = Math.max(...more)
  return most < 0.1 ? [] : [`${words.howMany(most)} more power`]
}

/** The beam turned past the near end, so that its edge falls there: the least turn that does, of those that people use. */
const feathered = (
  evidence: GroupUneven,
  light: Light,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const { aim, name } = light
  const from = set.scene.lights.get(name)?.front?.centre
  if (aim.at !== 'point' || aim.feather !== undefined || from === undefined) return []
  const target = evidence.limit - inside(evidence.u)
  const sides = ['backdrop', from[0] < 0 ? 'right' : 'left'] as const
  let best: { readonly turn: string; readonly after: ComputedSet; readonly spread: number } | undefined
  for (const degrees of [10, 15, 20, 30])
    for (const towards of sides) {
      const by = ((degrees * Math.PI) / 180) as Radians
      const lights = new Map(plan.lights).set(name, { ...light, aim: { ...aim, feather: { by, towards } } })
      const after = allHeld(set, computeSet({ ...plan, lights }), [name])
      const spread = spreadOf(after)
      if (spread === undefined || (best !== undefined && (best.spread <= target || spread >= best.spread)))
        continue
      best = { turn: `${degrees} deg towards ${towards}`, after, spread }
    }
  return best === undefined || !worthIt(best.spread, evidence)
    ? []
    : [
        {
          title: `lights.${name}.aim → { at: ${aim.point}, feather: ${best.turn} }`,
          gives: `${words.howMany(best.spread)} between the faces${best.spread > evidence.limit ? ', still over the limit' : ''}`,
          costs: `more power to hold the exposure: meter ${name} again`,
          after: best.after,
          ...(best.spread > target ? { partial: true } : {}),
        },
      ]
}

const lightBack = (
  evidence: GroupUneven,
  light: Light,
  words: Words,
  { set, plan }: RuleContext,
): readonly Mend[] => {
  const { limit, u } = evidence
  const from = set.scene.lights.get(light.name)?.distance
  if (from === undefined || light.at.by === 'camera' || light.unit.kind === 'window') return []
  const at = (one: ComputedSet, distance: number) => movedAndHeld(one, light.name, distance)?.set ?? one
  const solve = (target: number) => solveSet(set, from, from * 6, at, spreadOf, target)
  const solved = solve(limit - inside(u)) ?? solve(limit - 0.02)
  const turned =
    solved === undefined ? undefined : turn(plan, { knob: 'light-distance', light: light.name }, solved)
  const moved = turned && movedAndHeld(set, light.name, turned.change.to)
  const after = moved && spreadOf(moved.set)
  if (turned === undefined || moved === undefined || after === undefined || !worthIt(after, evidence))
    return []
  return [
    {
      title: turned.title,
      gives: `${words.howMany(after)} between the faces${turned.short > 0 ? ', as far as the room goes' : after > limit ? ', still over the limit' : ''}`,
      costs: `${words.howMany(moved.stops)} more power for the same exposure, and harder light`,
      after: moved.set,
      ...(after > limit - inside(u) ? { partial: true } : {}),
    },
  ]
}

/**
 * On the camera's axis the two ends are alike, and only the depth of the rows is left. The light turned about the subject
 * does to the faces what it does today to faces turned the other way.
 */
const nearerAxis = (
  evidence: GroupUneven,
  light: Light,
  words: Words,
  { set }: RuleContext,
): readonly Mend[] => {
  if (light.at.by !== 'tape' || Math.abs(light.at.angleLeft) < 0.1) return []
  const angle = light.at.angleLeft
  const { camera, subject } = set.scene
  const others = set.keyLights.filter((one) => one !== light).map((one) => one.name)
  const levels = subject.figures.map(({ face }) => {
    const normal = unit(subtract(camera.eye, face))
    const turned = add(subject.tapeFrom, about(subtract(face, subject.tapeFrom), -angle))
    const from = set.unshadowed({ at: turned, normal: about(normal, -angle), kind: 'dome' }, [light.name])
    const rest = others.length === 0 ? undefined : set.unshadowed({ at: face, normal, kind: 'dome' }, others)
    return Math.log2((from?.luxSeconds ?? 0) + (rest?.luxSeconds ?? 0))
  })
  const after = Math.max(...levels) - Math.min(...levels)
  return !Number.isFinite(after) || !worthIt(after, evidence)
    ? []
    : [
        {
          title: `${light.name} round to the camera's axis, over the lens, same distance and height`,
          gives: `${words.howMany(after)} between the faces${after > evidence.limit ? ', still over the limit' : ''}`,
          costs: 'flatter light',
        },
      ]
}

/** Turned about the upright, counter-clockwise from above. */
const about = ([x, y, z]: Vec3, angle: number): Vec3 => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
  z,
]
