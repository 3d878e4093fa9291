/**
 * A plan in metres. Right-handed; origin on the floor under the subject point; y square to the backdrop and positive
 * toward it, x to the right of someone looking along +y, z up. Nothing here depends on where the camera is, but the
 * camera itself and the points that are defined by what it sees.
 */
import type { Role, Surface } from '../language/plan.js'
import type { Metres, Radians } from '../units/quantity.js'
import type { Vec3 } from './vector.js'

export interface Scene {
  /** Built-in and named points, by name. */
  readonly points: ReadonlyMap<string, ScenePoint>
  readonly camera: SceneCamera
  readonly subject: SceneSubject
  readonly backdrop: SceneBackdrop | undefined
  /** All lights of the plan, those that are off too. The sun has no front: `front` undefined, `toward` says where it comes from. */
  readonly lights: ReadonlyMap<string, SceneLight>
  readonly panels: ReadonlyMap<string, ScenePanel>
  readonly room: SceneRoom | undefined
  /** The person behind the camera, where it is held by hand. */
  readonly operator: SceneFigure | undefined
  /** Everything in the set that light and sight cannot pass: figures, operator, table, backdrop, panels, modifiers. */
  readonly solids: readonly Solid[]
  /** What the lights stand on or hang from, as far as the plan tells. It hides nothing to speak of. */
  readonly stands: readonly SceneStand[]
  /** The matte surfaces that give light back: backdrop and sweep, room, table, panels; rectangles that do not overlap. */
  readonly surfaces: readonly SceneSurface[]
  /** What cannot be: a tape shorter than the height difference, a light inside the subject. */
  readonly faults: readonly SceneFault[]
}

export interface ScenePoint {
  readonly name: string
  readonly at: Vec3
  /** The outward normal where the point lies on a surface (backdrop, floor, table, the face); undefined in free air. */
  readonly normal: Vec3 | undefined
  /** What the point lies on: says which receptor is the default there. */
  readonly on: 'person' | 'object' | 'backdrop' | 'floor' | 'table' | 'air'
}

export interface SceneCamera {
  readonly eye: Vec3
  /** Unit vectors. */
  readonly forward: Vec3
  readonly right: Vec3
  readonly up: Vec3
  /** Tangents of half the angle of view, across and up. */
  readonly tanHalfWidth: number
  readonly tanHalfHeight: number
  /** Along `forward`, to the plane of best focus. */
  readonly focus: Metres
}

/** One person, or the object. Head and body are capsules in a space scaled to the elliptic section. */
export interface SceneFigure {
  /** `person`, `object`, or `row-1-2` (row 1, second from camera-left). */
  readonly name: string
  readonly row: number | undefined
  readonly face: Vec3
  /** Unit: where the face looks. */
  readonly looks: Vec3
  readonly head: Capsule | undefined
  readonly body: Capsule
  readonly top: Metres
}

/**
 * A segment with a round coat of elliptic section: all points within 1 of the segment once lengths are divided by
 * `across`, `along` and `cap` in the three directions. A person's head or body; an object.
 */
export interface Capsule {
  /** Ends of the segment; of a standing person's, `from` is the lower. */
  readonly from: Vec3
  readonly to: Vec3
  /** Semi-axis across the figure (shoulder direction) and along its depth. */
  readonly across: Metres
  readonly along: Metres
  /** How far the rounded ends reach beyond `from` and `to`. */
  readonly cap: Metres
  /** Unit vector of the across direction, horizontal, square to the segment. */
  readonly acrossDirection: Vec3
}

export interface SceneSubject {
  readonly figures: readonly SceneFigure[]
  /** Extent of what the wanted framing must hold (the whole of it where no framing is wanted). */
  readonly bounds: { readonly min: Vec3; readonly max: Vec3 }
  /** Where the tape to a light starts: a person's face, an object's middle; over a group's front row at the mean height of its faces. */
  readonly tapeFrom: Vec3
  /** The top of the table or platform, flat at height `z`. */
  readonly table: { readonly z: Metres; readonly min: Vec3; readonly max: Vec3 } | undefined
}

export interface SceneBackdrop {
  /** The plane y = `y`, its outward normal (0, -1, 0). */
  readonly y: Metres
  readonly left: Metres
  readonly right: Metres
  readonly bottom: Metres
  readonly top: Metres
  /** Where the sweep's front edge lies (y), on floor or table at height `bottom`; undefined without a sweep. */
  readonly sweepFront: Metres | undefined
}

export interface SceneLight {
  readonly name: string
  readonly role: Role
  /** Middle of the front; for the sun undefined. */
  readonly front: Face | undefined
  /** Unit vector: the direction the light's axis points to (from the light into the set). */
  readonly axis: Vec3
  /** Where it is aimed. */
  readonly aim: Vec3
  /** Front to the subject's face; undefined for the sun. */
  readonly distance: Metres | undefined
}

/** A flat outline in space: rectangle, disc, octagon or ring. */
export interface Face {
  readonly outline: 'rectangle' | 'disc' | 'octagon' | 'ring'
  readonly centre: Vec3
  /** Unit: out of the front. */
  readonly normal: Vec3
  /** Unit: across and up the front; across × up = normal, so seen from in front `across` runs to the right. */
  readonly across: Vec3
  readonly up: Vec3
  readonly width: Metres
  readonly height: Metres
}

export interface ScenePanel {
  readonly name: string
  readonly kind: 'flag' | 'reflector' | 'v-flat' | 'scrim'
  /** One face; a v-flat has two leaves. */
  readonly faces: readonly Face[]
}

/** What holds a light: a pole with its legs spread, right under it or, under the arm of a boom, aside. */
export interface SceneStand {
  readonly light: string
  /** `boom`: the pole stands aside by `arm`, to a side that the plan does not tell. */
  readonly kind: 'pole' | 'boom'
  /** The plan says what holds the light; else it is what one would expect. */
  readonly stated: boolean
  /** Where the light is held. */
  readonly mount: Vec3
  /** From the mount to the pole along the floor; 0 for a pole right under it. */
  readonly arm: Metres
  /** From the pole's foot to the tips of its legs. */
  readonly legs: Metres
}

/** A convex body in the set, or a flat one. */
export interface Solid {
  /** Of a figure its own name; of a light, panel or backdrop the name it has in the plan; `operator`, `table`. */
  readonly name: string
  readonly of: 'figure' | 'operator' | 'table' | 'backdrop' | 'panel' | 'light'
  /** What of the plan it is. */
  readonly pointer: string
  readonly body: SolidBody
}

export type SolidBody =
  | { readonly shape: 'capsule'; readonly capsule: Capsule }
  /** Corners in order around it; nothing of its own thickness. */
  | { readonly shape: 'plate'; readonly face: Face; readonly corners: readonly Vec3[] }
  /** The convex hull of these corners: a modifier from its front to its back. */
  | { readonly shape: 'hull'; readonly corners: readonly Vec3[] }

/** A matte rectangle. */
export interface SceneSurface {
  /** `backdrop`, `sweep`, `table`, a wall's name, `ceiling`, `floor`, a panel's name. Large ones may come in parts. */
  readonly name: string
  /** The way by which light from it is said to have come. */
  readonly path: 'room' | 'panels' | 'backdrop'
  readonly face: Face
  /** What the side in front gives back; the side behind, where light reaches that too. */
  readonly front: Surface
  readonly back: Surface | undefined
  /** Share that passes from either side to the other, diffusely. */
  readonly transmits: number
  /** True where the plan names the surface; false for a default. */
  readonly stated: boolean
}

export interface SceneRoom {
  readonly left: Metres
  readonly right: Metres
  /** Behind the camera (negative y). */
  readonly front: Metres
  readonly back: Metres
  readonly height: Metres
}

export interface SceneFault {
  readonly kind: 'tape-too-short' | 'inside-subject'
  readonly pointer: string
  /** Numbers for the words: metres. */
  readonly figures: { readonly tape?: Metres; readonly needs?: Metres; readonly light: string }
}

export type { Radians }
