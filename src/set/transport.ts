/**
 * How light gets from each light of one scene to each receptor, computed when first asked and remembered. Strengths are
 * kept out of it, so that a change of power, or of the camera's settings, asks nothing of it again.
 *
 * Unhindered light depends on the source and the receptor alone, and is remembered by them, also for scenes that differ
 * elsewhere. What stands between them and what the room throws back belong to one scene (see `bounced` for what of that
 * is kept).
 */
import type { Light, Plan } from '../language/plan.js'
import type { Rgb } from '../light/colour/rgb.js'
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
import { type Bounce, type Bounced, bouncedOf, noBounce, type ThrownBy } from './bounced.js'
import type { MeterAsk } from './computed-set.js'
import { planScene } from './plan-scene.js'
import { type MeterPlace, meterPlace } from './receptor-at.js'
import { noWork, type Work } from './work.js'

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

/** A receptor and what it was found to answer. */
export interface Probe {
  readonly receptor: Receptor
  // Exposures from a light of unit strength; 0 for a light without a source.
  /** By all ways together, past what stands between. */
  response(light: string): number
  /** Straight from the light, past what stands between. */
  direct(light: string): number
  /** Straight from the light, were nothing in between. */
  clear(light: string): number
  /** By what threw it here last. */
  bounce(light: string): Bounce
  /** All of that of white light, by channel of linear sRGB: it takes on the surfaces' colour. */
  tint(light: string): Rgb
  /** The same by what threw it here last. */
  thrown(light: string): readonly ThrownBy[]
  /** What hides how much of the light that would come straight, by the solid's name: shares. */
  hides(light: string): ReadonlyMap<string, number>
}

/** How a place is looked at, where not as the picture is taken. */
export interface Sight {
  /** Who steps aside and shades nothing: whoever stands behind the camera, or the subject too. */
  readonly aside: 'operator' | 'people'
  /** Where the receptor is for what stands round it, where that is not its place. */
  readonly held?: Vec3 | undefined
}

export interface Transport {
  readonly plan: Plan
  readonly scene: Scene
  /** Where the backdrop in frame is metered; undefined where nothing of it is. */
  readonly grid: BackdropGrid | undefined
  readonly work: Work
  source(light: string): Source | undefined
  /** True of the source of a light that a what-if has moved or changed. */
  isTried(source: Source): boolean
  probe(receptor: Receptor, sight?: Sight): Probe
  /** Flat on the backdrop, facing out; nobody's shadow on it. */
  onBackdrop(place: GridPlace): Probe
  /** By the language's defaults; undefined for a name that the set does not have. */
  asked(ask: MeterAsk): { readonly place: MeterPlace; readonly probe: Probe } | undefined
  /** The same for a plan whose places have changed; sources that stay are kept with what is known of them. */
  moved(plan: Plan): Transport
  /** The same by quick light: see `ComputedSet`. */
  quick(): Transport
  readonly isQuick: boolean
}

/** What one receptor got from each source. */
type Known = Map<Source, number>

/** What was found here, then what the sets before this one had found. */
interface Memory {
  readonly own: Map<string, Known>
  readonly before: Memory | undefined
}

export const makeTransport = (plan: Plan): Transport => transportOf(plan, undefined, noWork(), false)

interface Before {
  readonly transport: Transport
  readonly memory: Memory
  /** What surfaces throw back, by the same light. */
  readonly bounced: (() => Bounced) | undefined
}

const transportOf = (plan: Plan, before: Before | undefined, work: Work, isQuick: boolean): Transport => {
  const memory: Memory = { own: new Map(), before: before?.memory }
  const scene = lazy(() => planScene(plan))
  const grid = lazy(() => backdropGrid(scene()))
  const sources = new Map<string, Source | undefined>()
  const probes = new Map<string, Probe>()
  const places = new Map<string, ReturnType<Transport['asked']>>()

  /** Lights that stand where only a trial puts them. */
  const tried = new WeakSet<Source>()
  const makeOrKeep = (name: string): Source | undefined => {
    if (name === ambientName) return ambientSource
    const lamp = modellingOf(plan, name)
    if (lamp !== undefined) return source(lamp.name)
    const light = plan.lights.get(name)
    const sceneLight = scene().lights.get(name)
    if (light === undefined || sceneLight === undefined) return undefined
    const was = before && keptSource(before.transport, light, sceneLight)
    const now = was ?? makeSource(light, sceneLight, plan)
    if (now !== undefined && before !== undefined && (was === undefined || before.transport.isTried(was)))
      tried.add(now)
    return now
  }
  const source = (name: string): Source | undefined => {
    if (!sources.has(name)) sources.set(name, makeOrKeep(name))
    return sources.get(name)
  }

  const blockers = lazy(() => blockersOf(scene().solids))
  const withoutOperator = lazy(() => blockersOf(scene().solids.filter(({ of }) => of !== 'operator')))
  const things = lazy(() =>
    blockersOf(scene().solids.filter(({ of }) => of !== 'operator' && of !== 'figure')),
  )
  const inTheWay = (aside: Sight['aside'] | undefined) =>
    aside === undefined ? blockers() : aside === 'operator' ? withoutOperator() : things()
  const bounced: () => Bounced = lazy(() => bouncedOf(plan, scene(), before?.bounced?.(), isQuick))

  const makeProbe = (receptor: Receptor, key: string, sight: Sight | undefined): Probe => {
    const known: Known = new Map()
    memory.own.set(key, known)
    const held = sight?.held
    const there = held === undefined ? receptor : { ...receptor, at: held }
    const outlook = lazy(() => outlookFrom(there, inTheWay(sight?.aside)))
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
        value =
          clear === 0 ? 0 : held === undefined ? visibleResponse(from, outlook(), clear) : clear * seen(from)
        directs.set(from, value)
      }
      return value
    }
    /** The share that reaches the place where it is held. */
    const seen = (from: Source): number => {
      const whole = response(from, there)
      return whole > 0 ? visibleResponse(from, outlook(), whole) / whole : 1
    }
    const bounceOf = (from: Source): Bounce => {
      let value = bounces.get(from)
      if (value === undefined) {
        value = bounced().at(outlook(), key, from, tried.has(from))
        bounces.set(from, value)
      }
      return value
    }
    const of = <T>(name: string, none: T, found: (from: Source) => T): T => {
      const from = source(name)
      return from === undefined ? none : found(from)
    }
    return {
      receptor,
      response: (name) =>
        of(name, 0, (from) => {
          const { room, panels, backdrop } = bounceOf(from)
          return directOf(from) + room + panels + backdrop
        }),
      direct: (name) => of(name, 0, directOf),
      clear: (name) => of(name, 0, clearOf),
      bounce: (name) => of(name, noBounce, bounceOf),
      tint: (name) => of(name, untinted, (from) => bounced().tint(outlook(), key, from, tried.has(from))),
      thrown: (name) => of(name, [], (from) => bounced().bySurface(outlook(), key, from, tried.has(from))),
      hides: (name) => of(name, nothing, (from) => hiddenShares(from, outlook())),
    }
  }
  const probe = (receptor: Receptor, sight?: Sight): Probe => {
    const key =
      receptorKey(receptor) + (sight === undefined ? '' : ` ${sight.aside} ${sight.held?.join(' ') ?? ''}`)
    let made = probes.get(key)
    if (made === undefined) {
      made = makeProbe(receptor, key, sight)
      probes.set(key, made)
    }
    return made
  }

  const gridProbes = new Map<GridPlace, Probe>()
  const onBackdrop = (place: GridPlace): Probe => {
    let made = gridProbes.get(place)
    if (made === undefined) {
      made = probe({ at: place.at, normal: [0, -1, 0], kind: 'flat', onSurface: true }, { aside: 'people' })
      gridProbes.set(place, made)
    }
    return made
  }

  const asked = (ask: MeterAsk) => {
    const key = askKey(ask)
    if (!places.has(key)) {
      const place = meterPlace(plan, scene(), ask)
      places.set(
        key,
        place && {
          place,
          probe: probe(place.receptor, place),
        },
      )
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
    isTried: (from) => tried.has(from),
    source,
    probe,
    onBackdrop,
    asked,
    moved: (changed) => transportOf(changed, { transport, memory, bounced }, work, isQuick),
    quick: () =>
      isQuick ? transport : transportOf(plan, { transport, memory, bounced: undefined }, work, true),
    isQuick,
  }
  return transport
}

const nothing: ReadonlyMap<string, number> = new Map()
const untinted: Rgb = [0, 0, 0]

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

const askKey = ({ at, of, dome, faces, aside }: MeterAsk): string => {
  const place = typeof at === 'string' ? at : `@${at.join(' ')}`
  const lone = of !== 'all' && of.length === 1 ? of[0]! : ''
  const facing =
    typeof faces !== 'object'
      ? (faces ?? `default ${lone}`)
      : 'light' in faces
        ? `light ${faces.light}`
        : faces.direction.join(' ')
  return `${place}\n${dome ?? ''}\n${facing}\n${aside ?? ''}`
}
