/**
 * How light gets from each light of one scene to each receptor, computed when first asked and remembered. Strengths are
 * kept out of it, so that a change of power, or of the camera's settings, asks nothing of it again.
 *
 * Unhindered light depends on the source and the receptor alone, and is remembered by them, also for scenes that differ
 * elsewhere. What stands between them and what the room throws back belong to one scene (see `bounced` for what of that
 * is kept).
 */
import type { Light, Plan } from '../language/plan.js'
import { ambientSource, makeSource } from '../light/make-source.js'
import type { Receptor } from '../light/receptor.js'
import { response } from '../light/response.js'
import type { Source } from '../light/source.js'
import { blockersOf } from '../light/visibility/blockers.js'
import { outlookFrom } from '../light/visibility/outlook.js'
import { hiddenShares, visibleResponse } from '../light/visibility/visible.js'
import { lazy } from '../scene/lazy.js'
import type { Scene, SceneLight } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'
import { type BackdropGrid, backdropGrid, type GridPlace } from './backdrop-grid.js'
import { type Bounce, type Bounced, bouncedOf } from './bounced.js'
import type { LightPath, MeterAsk } from './computed-set.js'
import { planScene } from './plan-scene.js'
import { type MeterPlace, meterPlace } from './receptor-at.js'

/** The name under which the ambient light counts as a light. */
export const ambientName = ambientSource.light

/** A modelling lamp counts as a continuous light of its own, in the same front as its flash. */
export const modellingName = (light: string): string => `${light} modelling lamp`

/** The light whose modelling lamp this name is of. */
export const modellingOf = (plan: Plan, name: string): Light | undefined => {
  const light = name.endsWith(lampEnding) ? plan.lights.get(name.slice(0, -lampEnding.length)) : undefined
  return light?.modelling === true && !plan.lights.has(name) ? light : undefined
}
const lampEnding = modellingName('')

/** What was computed so far, over a set and all sets made from it. */
export interface Work {
  /** Responses of one receptor to one light. */
  responses: number
}

/** A receptor and what it was found to answer. */
export interface Probe {
  readonly receptor: Receptor
  /** Exposure straight from a light of unit strength, were nothing in between; 0 for a light without a source. */
  response(light: string): number
  /** By one way, past what stands between: what is asked way by way counts blockers and bounce. */
  by(light: string, way: LightPath): number
  /** What hides how much of the light that would come straight, by the solid's name: shares. */
  hides(light: string): ReadonlyMap<string, number>
}

export interface Transport {
  readonly plan: Plan
  readonly scene: Scene
  /** Where the backdrop in frame is metered; undefined where nothing of it is. */
  readonly grid: BackdropGrid | undefined
  readonly work: Work
  source(light: string): Source | undefined
  probe(receptor: Receptor): Probe
  /** Flat on the backdrop, facing out. */
  onBackdrop(place: GridPlace): Probe
  /** By the language's defaults; undefined for a name that the set does not have. */
  asked(ask: MeterAsk): { readonly place: MeterPlace; readonly probe: Probe } | undefined
  /** The same for a plan whose places have changed; sources that stay are kept with what is known of them. */
  moved(plan: Plan): Transport
}

/** What one receptor got from each source. */
type Known = Map<Source, number>

/** What was found here, then what the sets before this one had found. */
interface Memory {
  readonly own: Map<string, Known>
  readonly before: Memory | undefined
}

export const makeTransport = (plan: Plan): Transport => transportOf(plan, undefined, { responses: 0 })

interface Before {
  readonly transport: Transport
  readonly memory: Memory
  readonly bounced: () => Bounced
}

const transportOf = (plan: Plan, before: Before | undefined, work: Work): Transport => {
  const memory: Memory = { own: new Map(), before: before?.memory }
  const scene = lazy(() => planScene(plan))
  const grid = lazy(() => backdropGrid(scene()))
  const sources = new Map<string, Source | undefined>()
  const probes = new Map<string, Probe>()
  const places = new Map<string, ReturnType<Transport['asked']>>()

  const makeOrKeep = (name: string): Source | undefined => {
    if (name === ambientName) return ambientSource
    const lamp = modellingOf(plan, name)
    if (lamp !== undefined) return source(lamp.name)
    const light = plan.lights.get(name)
    const sceneLight = scene().lights.get(name)
    if (light === undefined || sceneLight === undefined) return undefined
    const was = before && keptSource(before.transport, light, sceneLight)
    return was ?? makeSource(light, sceneLight, plan)
  }
  const source = (name: string): Source | undefined => {
    if (!sources.has(name)) sources.set(name, makeOrKeep(name))
    return sources.get(name)
  }

  const blockers = lazy(() => blockersOf(scene().solids))
  const bounced: () => Bounced = lazy(() => bouncedOf(plan, scene(), before?.bounced()))

  const makeProbe = (receptor: Receptor, key: string): Probe => {
    const known: Known = new Map()
    memory.own.set(key, known)
    const outlook = lazy(() => outlookFrom(receptor, blockers()))
    const directs = new Map<Source, number>()
    const bounces = new Map<Source, Bounce>()

    const clearOf = (from: Source): number => {
      let value = known.get(from)
      if (value === undefined) {
        value = recalled(memory.before, key, from) ?? compute(from, receptor, work)
        known.set(from, value)
      }
      return value
    }
    const directOf = (from: Source): number => {
      let value = directs.get(from)
      if (value === undefined) {
        const clear = clearOf(from)
        value = clear === 0 ? 0 : visibleResponse(from, outlook(), clear)
        directs.set(from, value)
      }
      return value
    }
    const bounceOf = (from: Source): Bounce => {
      let value = bounces.get(from)
      if (value === undefined) {
        value = bounced().at(outlook(), key, from)
        bounces.set(from, value)
      }
      return value
    }
    const unhindered = (name: string): number => {
      const from = source(name)
      return from === undefined ? 0 : clearOf(from)
    }
    return {
      receptor,
      response: unhindered,
      by: (name, way) => {
        const from = source(name)
        return from === undefined ? 0 : way === 'direct' ? directOf(from) : bounceOf(from)[way]
      },
      hides: (name) => {
        const from = source(name)
        return from === undefined ? new Map() : hiddenShares(from, outlook())
      },
    }
  }
  const probe = (receptor: Receptor): Probe => {
    const key = receptorKey(receptor)
    let made = probes.get(key)
    if (made === undefined) {
      made = makeProbe(receptor, key)
      probes.set(key, made)
    }
    return made
  }

  const gridProbes = new Map<GridPlace, Probe>()
  const onBackdrop = (place: GridPlace): Probe => {
    let made = gridProbes.get(place)
    if (made === undefined) {
      made = probe({ at: place.at, normal: [0, -1, 0], kind: 'flat', onSurface: true })
      gridProbes.set(place, made)
    }
    return made
  }

  const asked = (ask: MeterAsk) => {
    const key = askKey(ask)
    if (!places.has(key)) {
      const place = meterPlace(plan, scene(), ask)
      places.set(key, place && { place, probe: probe(place.receptor) })
    }
    return places.get(key)
  }

  const transport: Transport = {
    plan,
    get scene() {
      return scene()
    },
    get grid() {
      return grid()
    },
    work,
    source,
    probe,
    onBackdrop,
    asked,
    moved: (changed) => transportOf(changed, { transport, memory, bounced }, work),
  }
  return transport
}

const compute = (from: Source, receptor: Receptor, work: Work): number => {
  work.responses++
  return response(from, receptor)
}

const recalled = (memory: Memory | undefined, key: string, from: Source): number | undefined => {
  for (let at = memory; at !== undefined; at = at.before) {
    const found = at.own.get(key)?.get(from)
    if (found !== undefined) return found
  }
  return undefined
}

/** The source that the light had before, where neither it nor its place has changed. */
const keptSource = (before: Transport, light: Light, now: SceneLight): Source | undefined => {
  const was = before.plan.lights.get(light.name)
  const stood = before.scene.lights.get(light.name)
  if (was === undefined || stood === undefined) return undefined
  const sameGear =
    was.unit === light.unit &&
    was.modifier === light.modifier &&
    was.grid === light.grid &&
    was.zoom === light.zoom &&
    was.lying === light.lying &&
    was.size === light.size
  return sameGear && samePlace(stood, now) ? before.source(light.name) : undefined
}

const samePlace = (a: SceneLight, b: SceneLight): boolean =>
  a.front === undefined || b.front === undefined
    ? a.front === b.front && same(a.axis, b.axis)
    : same(a.front.centre, b.front.centre) &&
      same(a.front.normal, b.front.normal) &&
      same(a.front.across, b.front.across) &&
      same(a.front.up, b.front.up) &&
      a.front.outline === b.front.outline &&
      a.front.width === b.front.width &&
      a.front.height === b.front.height

const same = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2]

const receptorKey = ({ at, normal, kind, onSurface, against }: Receptor): string =>
  `${kind}${onSurface === true ? '|' : ' '}${at[0]} ${at[1]} ${at[2]} ${normal[0]} ${normal[1]} ${normal[2]}${
    against === undefined ? '' : ` ${against[0]} ${against[1]} ${against[2]}`
  }`

const askKey = ({ at, of, dome, faces }: MeterAsk): string => {
  const place = typeof at === 'string' ? at : `@${at.join(' ')}`
  const lone = of !== 'all' && of.length === 1 ? of[0]! : ''
  const facing =
    typeof faces !== 'object'
      ? (faces ?? `default ${lone}`)
      : 'light' in faces
        ? `light ${faces.light}`
        : faces.direction.join(' ')
  return `${place}\n${dome ?? ''}\n${facing}`
}
