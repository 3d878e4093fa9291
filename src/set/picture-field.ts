/**
 * What the camera records over its frame: each place's ray finds subject, panel, backdrop, floor, table, wall or light;
 * what each light gives there, past what stands between and as it would without; the tone; in which lights' shadows it
 * lies. Places run from −1 to 1 from edge to edge, x to the right, y up. Nothing is computed before it is asked for, and
 * light straight from the lights without what surfaces add: a shadow's edge is found by hundreds of places.
 */
import type { Receptor } from '../light/receptor.js'
import { response } from '../light/response.js'
import type { Source } from '../light/source.js'
import { type Blocker, blockersOf } from '../light/visibility/blockers.js'
import { type Outlook, outlookFrom } from '../light/visibility/outlook.js'
import { visibleResponse } from '../light/visibility/visible.js'
import { recordedLinear } from '../picture/tone.js'
import { rayThrough } from '../scene/camera-view.js'
import { firstHit, type Hit } from '../scene/first-hit.js'
import { lazy } from '../scene/lazy.js'
import { dot } from '../scene/vector.js'
import type { ComputedSet, Exposed } from './computed-set.js'

export interface FieldPlace {
  readonly x: number
  readonly y: number
  /** What is seen there; undefined where it is dark and open. */
  readonly hit: Hit | undefined
  /** Share that the surface gives back; 0 for lights and where nothing is seen. */
  readonly reflectance: number
  /** Straight from a light, were nothing in between; lx·s. */
  open(light: string): number
  /** Straight from a light past what stands in its way, but for the figures of this name; lx·s. */
  direct(light: string, without?: string): number
  /** What one figure alone keeps of a light from the place; lx·s. */
  taken(light: string, figure: string): number
  /** From surfaces; undefined where nothing comes from them. */
  readonly indirect: Exposed | undefined
  /** Lights in whose shadow it lies at least in part. */
  readonly shadows: readonly string[]
  /** Recorded with all light counted; not clipped. Infinite for the front of a light that is on. */
  readonly linear: number
}

export interface PictureField {
  /** Recorded linear value of a perfect reflector per lx·s on it. */
  readonly perLuxSecond: number
  place(x: number, y: number): FieldPlace
}

export const pictureField = (set: ComputedSet, perLuxSecond: number): PictureField => {
  const solids = set.scene.solids
  const fewer = new Map<string, readonly Blocker[]>()
  const without = (name: string): readonly Blocker[] => {
    let made = fewer.get(name)
    if (made === undefined) {
      made = blockersOf(solids.filter((solid) => solid.name !== name))
      fewer.set(name, made)
    }
    return made
  }
  const around: Around = { set, perLuxSecond, all: lazy(() => blockersOf(solids)), without }
  return { perLuxSecond, place: (x, y) => new Place(around, x, y) }
}

interface Around {
  readonly set: ComputedSet
  readonly perLuxSecond: number
  readonly all: () => readonly Blocker[]
  without(figure: string): readonly Blocker[]
}

/** A class, because a picture makes hundreds and each is asked for little. */
class Place implements FieldPlace {
  private readonly known = new Map<string, number>()
  private readonly outlooks = new Map<string, Outlook>()
  private met: Hit | undefined | null = null

  constructor(
    private readonly around: Around,
    readonly x: number,
    readonly y: number,
  ) {}

  get hit(): Hit | undefined {
    if (this.met === null) {
      const { scene } = this.around.set
      this.met = firstHit(scene, scene.camera.eye, rayThrough(scene.camera, this.x, this.y))
    }
    return this.met
  }
  private get receptor(): Receptor | undefined {
    const { hit } = this
    return hit && { at: hit.at, normal: hit.normal, kind: 'flat', onSurface: true }
  }
  get reflectance(): number {
    const { hit } = this
    const own = hit?.on === 'figure' ? this.around.set.plan.subject.reflectance : hit?.surface?.reflectance
    return own ?? 0
  }

  open(light: string): number {
    return this.given(light, this.clear(light))
  }
  direct(light: string, without?: string): number {
    return this.given(light, this.visible(light, without))
  }
  taken(light: string, figure: string): number {
    return this.visible(light) === this.clear(light)
      ? 0
      : this.given(light, Math.max(0, this.visible(light, figure) - this.visible(light)))
  }
  private clear(light: string): number {
    return this.remembered(light, light, (source) => response(source, this.receptor!))
  }
  private visible(light: string, without?: string): number {
    const key = without === undefined ? 'all' : `but ${without}`
    return this.remembered(`${light}\n${key}`, light, (source) =>
      visibleResponse(
        source,
        this.outlook(key, () => (without === undefined ? this.around.all() : this.around.without(without))),
        this.clear(light),
      ),
    )
  }
  get indirect(): Exposed | undefined {
    const { receptor } = this
    return receptor && this.around.set.exposure(receptor, 'all', ['room', 'panels', 'backdrop'])
  }
  get shadows(): readonly string[] {
    return this.around.set.giving.filter((light) => this.visible(light) < this.clear(light))
  }
  get linear(): number {
    const { hit } = this
    const { set, perLuxSecond } = this.around
    if (hit === undefined) return 0
    if (hit.on === 'light') return shines(set, hit) ? Number.POSITIVE_INFINITY : 0
    const direct = set.giving.reduce((sum, light) => sum + this.direct(light), 0)
    return recordedLinear(this.reflectance * (direct + (this.indirect?.luxSeconds ?? 0)) * perLuxSecond, 0)
  }

  private given(light: string, response: number): number {
    return response === 0 ? 0 : response * (this.around.set.strength(light)?.candelaSeconds ?? 0)
  }
  private outlook(key: string, blockers: () => readonly Blocker[]): Outlook {
    let made = this.outlooks.get(key)
    if (made === undefined) {
      made = outlookFrom(this.receptor!, blockers())
      this.outlooks.set(key, made)
    }
    return made
  }
  private remembered(key: string, light: string, compute: (source: Source) => number): number {
    let value = this.known.get(key)
    if (value === undefined) {
      const source = this.around.set.source(light)
      value = source === undefined || this.hit === undefined ? 0 : compute(source)
      this.known.set(key, value)
    }
    return value
  }
}

/** Seen from in front, and on. */
const shines = (set: ComputedSet, { name, normal }: Hit): boolean => {
  const front = set.scene.lights.get(name)?.front
  return front !== undefined && dot(front.normal, normal) > 0.99 && set.strength(name) !== undefined
}
