/**
 * What the camera records over its frame: each place's ray finds the subject, a panel, the backdrop, the room or a
 * light; the light there, and the tone. Places of the frame run from -1 to 1, x to the right, y up. Nothing is computed
 * before it is asked for.
 */
import type { Figure } from '../light/figure.js'
import type { Receptor } from '../light/receptor.js'
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
  readonly receptor: Receptor | undefined
  readonly exposed: Exposed | undefined
  /** The same, were nothing in the way of what comes straight from the lights. */
  readonly unshaded: Exposed | undefined
  /** Stops that what stands in the light takes: 0 or more. */
  readonly shade: number
  /** Share that the surface gives back; undefined for lights and where nothing is seen. */
  readonly reflectance: number | undefined
  /** Recorded, not clipped; infinite for the front of a light that is on. */
  readonly linear: number
}

export interface FieldCell {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
  /** Lower left, lower right, upper left, upper right. */
  readonly corners: readonly [FieldPlace, FieldPlace, FieldPlace, FieldPlace]
}

export interface PictureField {
  place(x: number, y: number): FieldPlace
  /** What would be seen there without the subject. */
  behind(x: number, y: number): FieldPlace
  /** The frame in cells that do not overlap, small where the picture changes. */
  readonly cells: readonly FieldCell[]
}

/** Cells along the long and the short side before any is quartered. */
const coarse = { long: 24, short: 16 }
/** Times that a cell is quartered, at most: for an outline, and for the edge of a shadow. */
const levels = { outline: 3, light: 2, shadow: 6 }
/** Metres on the surface: small enough for a shadow's edge. */
const fine = 0.01
/** Stops between two corners that a cell may span. */
const step = 0.15
/** Places looked at in one picture; past these the rest stays as coarse as it is. */
const mostPlaces = 12_000

/** @param overCamera a figure in log2 lx s as stops over the camera's setting */
export const pictureField = (set: ComputedSet, overCamera: (figure: Figure) => Figure): PictureField => {
  const through = lazy(() => new Set(set.scene.subject.figures.map(({ name }) => name)))
  const place = (x: number, y: number): FieldPlace => new Place(set, overCamera, x, y, undefined)
  const cells = lazy(() => cellsOf(set, place))
  return {
    place,
    behind: (x, y) => new Place(set, overCamera, x, y, through()),
    get cells() {
      return cells()
    },
  }
}

/** A class, because a picture makes thousands and each is asked for little. */
class Place implements FieldPlace {
  constructor(
    private readonly set: ComputedSet,
    private readonly overCamera: (figure: Figure) => Figure,
    readonly x: number,
    readonly y: number,
    private readonly through: ReadonlySet<string> | undefined,
  ) {}

  private readonly knownHit = lazy(() => {
    const { scene } = this.set
    return firstHit(scene, scene.camera.eye, rayThrough(scene.camera, this.x, this.y), this.through)
  })
  get hit(): Hit | undefined {
    return this.knownHit()
  }
  get receptor(): Receptor | undefined {
    const { hit } = this
    return hit && { at: hit.at, normal: hit.normal, kind: 'flat', onSurface: true }
  }
  private readonly knownExposed = lazy(() => this.receptor && this.set.exposure(this.receptor, 'all'))
  get exposed(): Exposed | undefined {
    return this.knownExposed()
  }
  private readonly knownUnshaded = lazy(() => this.receptor && this.set.unshaded(this.receptor, 'all'))
  get unshaded(): Exposed | undefined {
    return this.knownUnshaded()
  }
  get shade(): number {
    const [all, is] = [this.unshaded?.luxSeconds ?? 0, this.exposed?.luxSeconds ?? 0]
    return all <= 0 ? 0 : is <= 0 ? Number.POSITIVE_INFINITY : Math.max(0, Math.log2(all / is))
  }
  get reflectance(): number | undefined {
    const { hit } = this
    return hit?.on === 'figure' ? this.set.plan.subject.reflectance : hit?.surface?.reflectance
  }
  get linear(): number {
    const { hit, reflectance } = this
    if (hit?.on === 'light') return this.shines(hit) ? Number.POSITIVE_INFINITY : 0
    const { exposed } = this
    return reflectance === undefined || exposed === undefined
      ? 0
      : recordedLinear(reflectance, this.overCamera(exposed.figure).stops)
  }
  private shines({ name, normal }: Hit): boolean {
    const front = this.set.scene.lights.get(name)?.front
    return front !== undefined && dot(front.normal, normal) > 0.99 && this.set.strength(name) !== undefined
  }
}

/** Level by level, so that where the work runs out all is equally coarse. */
const cellsOf = (
  { scene }: ComputedSet,
  place: (x: number, y: number) => FieldPlace,
): readonly FieldCell[] => {
  const lies = scene.camera.tanHalfWidth >= scene.camera.tanHalfHeight
  const columns = lies ? coarse.long : coarse.short
  const rows = lies ? coarse.short : coarse.long
  const whole = 2 ** levels.shadow
  const known = new Map<number, FieldPlace>()
  const at = (i: number, j: number): FieldPlace => {
    const key = i * (rows * whole + 1) + j
    const was = known.get(key)
    if (was !== undefined) return was
    const made = place((2 * i) / (columns * whole) - 1, (2 * j) / (rows * whole) - 1)
    known.set(key, made)
    return made
  }
  const cell = (i: number, j: number, size: number): FieldCell => {
    const corners = [at(i, j), at(i + size, j), at(i, j + size), at(i + size, j + size)] as const
    return { left: corners[0].x, right: corners[3].x, bottom: corners[0].y, top: corners[3].y, corners }
  }
  const done: FieldCell[] = []
  let open = Array.from({ length: columns * rows }, (_, n): readonly [number, number] => [
    (n % columns) * whole,
    Math.floor(n / columns) * whole,
  ])
  for (let level = 0; open.length > 0; level++) {
    const size = whole >> level
    const next: (readonly [number, number])[] = []
    for (const [i, j] of open) {
      const one = cell(i, j, size)
      if (known.size >= mostPlaces || !quartered(one, level)) done.push(one)
      else
        next.push(
          [i, j],
          [i + size / 2, j],
          [i, j + size / 2],
          [i + size / 2, j + size / 2],
        )
    }
    open = next
  }
  return done
}

const quartered = ({ corners }: FieldCell, level: number): boolean => {
  const names = corners.map(({ hit }) => hit?.name)
  if (names.some((name) => name !== names[0])) return level < levels.outline
  if (level >= levels.shadow || corners[0].hit === undefined) return false
  if (spread(corners.map(({ shade }) => shade)) > step)
    return (
      level < levels.outline || (level < levels.shadow && corners[0].hit.on !== 'figure' && wide(corners))
    )
  return (
    level < levels.light &&
    spread(corners.map(({ exposed }) => exposed?.figure.stops ?? Number.NEGATIVE_INFINITY)) > step
  )
}

const spread = (values: readonly number[]): number => {
  const [most, least] = [Math.max(...values), Math.min(...values)]
  return most === least ? 0 : most - least
}

const wide = ([a, , , d]: FieldCell['corners']): boolean => {
  const [p, q] = [a.hit!.at, d.hit!.at]
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) > fine
}
