/**
 * What the surfaces of one scene throw back: patches and form factors once, the exitance of all patches once for each
 * light, what each receptor gets of them once for each receptor. Nothing of it is computed before somebody asks.
 *
 * A set in which only lights have moved keeps patches, form factors, what receptors get of them, and the exitance of
 * the lights that stayed: that their light finds another modifier in its way is left out of the bounce.
 */
import type { Plan, Surface } from '../language/plan.js'
import { firstLight } from '../light/bounce/first-light.js'
import { gatherFrom } from '../light/bounce/gather.js'
import { type Mesh, meshOf } from '../light/bounce/mesh.js'
import { liesOnSurface, patchesRound } from '../light/bounce/on-surface.js'
import { radiosity } from '../light/bounce/radiosity.js'
import type { Round } from '../light/bounce/sheet.js'
import { carrierOf, noTransfer, type Transfer, transferOf } from '../light/bounce/transfer.js'
import type { Rgb } from '../light/colour/rgb.js'
import { isColoured, surfaceShares } from '../light/colour/surface-colour.js'
import type { Source } from '../light/source.js'
import { blockersOf } from '../light/visibility/blockers.js'
import type { Outlook } from '../light/visibility/outlook.js'
import { lazy, lazyOf } from '../scene/lazy.js'
import type { Scene, SceneSurface } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'
import { patchBudget } from './patch-budget.js'

/** Exposure at one receptor for a light of unit strength, by what threw it there last. */
export interface Bounce {
  readonly room: number
  readonly panels: number
  readonly backdrop: number
  /** What of all that came off surfaces that the plan does not name. */
  readonly guessed: number
}

export interface Bounced {
  /**
   * @param key names the receptor
   * @param tried of a light that a trial has moved: good to some hundredths of a stop
   */
  at(outlook: Outlook, key: string, source: Source, tried: boolean): Bounce
  /** All of it of white light, by channel of linear sRGB. */
  tint(outlook: Outlook, key: string, source: Source, tried: boolean): Rgb
  /** Of all of it, what each side of a surface threw there last. */
  bySurface(outlook: Outlook, key: string, source: Source, tried: boolean): readonly ThrownBy[]
}

export interface ThrownBy {
  readonly surface: SceneSurface
  /** Of the side that threw it. */
  readonly side: Surface
  /** lx·s; of a light of unit strength where one is asked for. */
  readonly exposure: number
}

export const noBounce: Bounce = { room: 0, panels: 0, backdrop: 0, guessed: 0 }

interface Kept extends Bounced {
  readonly plan: Plan
  readonly parts: Parts
  readonly coarse: () => Parts
}

interface Parts {
  readonly mesh: () => Mesh
  exitance(source: Source): Float64Array
  weights(outlook: Outlook, key: string): Float64Array
  /** For a receptor that lies on a surface; `dark` where surfaces exchange nothing. */
  round(outlook: Outlook, key: string): Round | 'dark' | undefined
  /** By side: exposure by what threw it there last. */
  thrown(source: Source): Thrown
  /** By channel: exitance by side, and exposure by side. */
  readonly tints: ((source: Source) => readonly Tinted[]) | undefined
}

interface Tinted {
  readonly exitance: Float64Array
  /** For receptors that lie on surfaces. */
  readonly exposure: () => Float64Array
}

/**
 * @param before of the set that this one was made from, by the same light
 * @param isQuick only what the backdrop and panels throw back of what comes to them straight
 */
export const bouncedOf = (
  plan: Plan,
  scene: Scene,
  before: Bounced | undefined,
  isQuick: boolean,
): Bounced => {
  const kept = before as Kept | undefined
  const { parts, coarse } =
    kept !== undefined && sameSurroundings(kept.plan, plan)
      ? kept
      : isQuick
        ? quickParts(scene)
        : newParts(scene, kept !== undefined)
  const at = (outlook: Outlook, key: string, source: Source, isTried: boolean): Bounce => {
    const { mesh, round, weights, exitance, thrown } = isTried ? coarse() : parts
    // Ambient light was metered with all that it does in the room.
    if (source.kind === 'uniform' || mesh().patches.length === 0) return noBounce
    const lying = round(outlook, key)
    if (lying === 'dark') return noBounce
    return lying === undefined
      ? sum(mesh(), weights(outlook, key), exitance(source))
      : blend(lying, thrown(source))
  }
  const tint = (outlook: Outlook, key: string, source: Source, isTried: boolean): Rgb => {
    const { mesh, round, weights, tints } = isTried ? coarse() : parts
    if (tints === undefined || source.kind === 'uniform' || mesh().patches.length === 0) {
      const { room, panels, backdrop } = at(outlook, key, source, isTried)
      const all = room + panels + backdrop
      return [all, all, all]
    }
    const lying = round(outlook, key)
    if (lying === 'dark') return [0, 0, 0]
    const [r, g, b] = tints(source).map(({ exitance, exposure }) =>
      lying === undefined ? inner(weights(outlook, key), exitance) : onRound(lying, exposure()),
    )
    return [r!, g!, b!]
  }
  const bySurface = (
    outlook: Outlook,
    key: string,
    source: Source,
    isTried: boolean,
  ): readonly ThrownBy[] => {
    const { mesh, weights, exitance } = isTried ? coarse() : parts
    if (source.kind === 'uniform' || mesh().patches.length === 0) return []
    return split(mesh(), weights(outlook, key), exitance(source))
  }
  const made: Kept = { plan, parts, coarse, at, tint, bySurface }
  return made
}

const inner = (weights: Float64Array, exitance: Float64Array): number =>
  weights.reduce((sum, weight, k) => sum + weight * exitance[k]!, 0)

const onRound = ({ sides, shares }: Round, exposure: Float64Array): number =>
  Math.max(
    0,
    sides.reduce((sum, side, k) => sum + shares[k]! * exposure[side]!, 0),
  )

const newParts = (scene: Scene, isTried: boolean): Pick<Kept, 'parts' | 'coarse'> => {
  const coarse = lazy(() => partsOf(scene, patchBudget(scene, 'trial'), transferOf))
  return {
    parts: isTried ? coarse() : partsOf(scene, patchBudget(scene, 'plan'), transferOf),
    coarse,
  }
}

const quickParts = (scene: Scene): Pick<Kept, 'parts' | 'coarse'> => {
  const surfaces = scene.surfaces.filter(({ path }) => path !== 'room')
  const parts = partsOf({ ...scene, surfaces }, patchBudget(scene, 'quick light'), noTransfer)
  return { parts, coarse: () => parts }
}

/** Changes keep what they do not touch, so it need not be compared. */
const sameSurroundings = (a: Plan, b: Plan): boolean =>
  a.panels === b.panels && a.subject === b.subject && a.backdrop === b.backdrop && a.room === b.room

const partsOf = (scene: Scene, budget: number, exchanged: typeof transferOf): Parts => {
  const blockers = lazy(() => blockersOf(scene.solids))
  const mesh = lazy(() => meshOf(scene.surfaces, thatMatter(scene), budget))
  const transfer = lazy(() => exchanged(mesh(), blockers()))
  const first = lazyOf((source: Source) => firstLight(mesh(), source, blockers()))
  const exitances = new WeakMap<Source, Float64Array>()
  const weights = new Map<string, Float64Array>()
  const exitance = (source: Source): Float64Array => {
    let known = exitances.get(source)
    if (known === undefined) {
      known = radiosity(mesh(), transfer(), first(source))
      exitances.set(source, known)
    }
    return known
  }
  const weightsOf = (outlook: Outlook, key: string): Float64Array => {
    let known = weights.get(key)
    if (known === undefined) {
      known = gatherFrom(mesh(), outlook)
      weights.set(key, known)
    }
    return known
  }
  const rounds = new Map<string, Round | 'dark' | undefined>()
  const found = (outlook: Outlook): Round | 'dark' | undefined =>
    transfer().links.shared.length === 0 && liesOnSurface(mesh(), outlook)
      ? 'dark'
      : patchesRound(mesh(), outlook)
  const round = (outlook: Outlook, key: string): Round | 'dark' | undefined => {
    if (!rounds.has(key)) rounds.set(key, found(outlook))
    return rounds.get(key)
  }
  const throws = new WeakMap<Source, Thrown>()
  const thrown = (source: Source): Thrown => {
    let known = throws.get(source)
    if (known === undefined) {
      known = thrownBy(mesh(), transfer(), exitance(source))
      throws.set(source, known)
    }
    return known
  }
  const tinted = (source: Source): readonly Tinted[] =>
    [0, 1, 2].map((channel) => {
      const given = radiosity(
        mesh(),
        transfer(),
        first(source),
        (surface) => surfaceShares(surface)[channel]!,
      )
      return { exitance: given, exposure: lazy(() => carried(mesh(), transfer(), given)) }
    })
  const tints = scene.surfaces.some(({ front, back }) => isColoured(front) || isColoured(back))
    ? lazyOf(tinted)
    : undefined
  return { mesh, exitance, weights: weightsOf, round, thrown, tints }
}

type Way = SceneSurface['path']

/** By way: exposure by side, and how much of it came off surfaces that the plan does not name. */
type Thrown = ReadonlyMap<Way, { readonly exposure: Float64Array; readonly guessed: number }>

const thrownBy = (mesh: Mesh, transfer: Transfer, exitance: Float64Array): Thrown => {
  const { patches } = mesh
  const thrown = new Map<Way, { exposure: Float64Array; guessed: number }>()
  if (transfer.links.shared.length === 0) return thrown
  const { carry } = carrierOf(mesh, transfer)
  const ways = [...new Set(patches.map(({ surface }) => surface.path))]
  /** What is left of it all is of the last way. */
  const rest = new Float64Array(exitance.length)
  if (ways.length > 1) carry(exitance, rest)
  ways.forEach((way, at) => {
    const given = exitance.slice()
    let [all, guessed] = [0, 0]
    patches.forEach(({ surface, area }, i) => {
      if (surface.path !== way) given.fill(0, 2 * i, 2 * i + 2)
      const flux = area * (given[2 * i]! + given[2 * i + 1]!)
      all += flux
      if (!surface.stated) guessed += flux
    })
    if (all === 0) return
    let exposure = new Float64Array(given.length)
    if (at > 0 && at === ways.length - 1) exposure = rest
    else {
      carry(given, exposure)
      for (let k = 0; k < rest.length; k++) rest[k]! -= exposure[k]!
    }
    thrown.set(way, { exposure, guessed: guessed / all })
  })
  return thrown
}

/** Exposure by side from all sides. */
const carried = (mesh: Mesh, transfer: Transfer, exitance: Float64Array): Float64Array => {
  const exposure = new Float64Array(exitance.length)
  if (transfer.links.shared.length > 0) carrierOf(mesh, transfer).carry(exitance, exposure)
  return exposure
}

const blend = (round: Round, thrown: Thrown): Bounce => {
  const bounce = { ...noBounce }
  for (const [way, { exposure, guessed }] of thrown) {
    const given = onRound(round, exposure)
    bounce[way] += given
    bounce.guessed += guessed * given
  }
  return bounce
}

/** Near these, patches are finer: fronts of lights, the faces, the middle of panels. */
const thatMatter = (scene: Scene): readonly Vec3[] => [
  ...[...scene.lights.values()].flatMap(({ front }) => (front === undefined ? [] : [front.centre])),
  ...scene.subject.figures.map(({ face }) => face),
  ...[...scene.panels.values()].flatMap(({ faces }) => faces.map(({ centre }) => centre)),
]

const split = ({ patches }: Mesh, weights: Float64Array, exitance: Float64Array): readonly ThrownBy[] => {
  const sums = new Map<SceneSurface, [front: number, back: number]>()
  patches.forEach(({ surface }, i) => {
    const [front, back] = sums.get(surface) ?? [0, 0]
    sums.set(surface, [
      front + weights[2 * i]! * exitance[2 * i]!,
      back + weights[2 * i + 1]! * exitance[2 * i + 1]!,
    ])
  })
  return [...sums].flatMap(([surface, [front, back]]) => [
    ...(front > 0 ? [{ surface, side: surface.front, exposure: front }] : []),
    ...(back > 0 ? [{ surface, side: surface.back ?? surface.front, exposure: back }] : []),
  ])
}

const sum = ({ patches }: Mesh, weights: Float64Array, exitance: Float64Array): Bounce => {
  let [room, panels, backdrop, guessed] = [0, 0, 0, 0]
  for (let i = 0; i < patches.length; i++) {
    const given = weights[2 * i]! * exitance[2 * i]! + weights[2 * i + 1]! * exitance[2 * i + 1]!
    if (given === 0) continue
    const { path, stated } = patches[i]!.surface
    if (path === 'room') room += given
    else if (path === 'panels') panels += given
    else backdrop += given
    if (!stated) guessed += given
  }
  return { room, panels, backdrop, guessed }
}
