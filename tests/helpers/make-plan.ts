/**
 * Plans for tests, without YAML: `makePlan()` is the least plan of the language (a headshot on white paper, key
 * through an umbrella, one bare flashgun on the paper), complete and valid; overrides go one level deep. Numbers are
 * plain here: metres, seconds, radians, exact f-numbers, as their keys say.
 */
import type {
  Backdrop,
  Camera,
  Light,
  LightUnit,
  Modifier,
  Panel,
  Placement,
  Places,
  Plan,
  Room,
  Subject,
  Surface,
  Wanted,
} from '../../src/language/plan.js'
import type { Quantity } from '../../src/units/quantity.js'

/** The same shape with the brands off. */
export type Plain<T> =
  T extends Quantity<string>
    ? number
    : T extends string | number | boolean | undefined
      ? T
      : T extends ReadonlyMap<infer K, infer V>
        ? ReadonlyMap<K, Plain<V>>
        : T extends (...args: never[]) => unknown
          ? T
          : { readonly [K in keyof T]: Plain<T[K]> }

type Some<T> = Partial<Plain<T>>

export interface PlanOverrides
  extends Some<Omit<Plan, 'camera' | 'subject' | 'backdrop' | 'wanted' | 'lights' | 'panels' | 'room'>> {
  readonly camera?: Some<Camera>
  readonly subject?: Some<Subject>
  /** `'none'`: no backdrop. */
  readonly backdrop?: Some<Backdrop> | 'none'
  readonly wanted?: Some<Wanted>
  /** In place of the key and the backdrop light. */
  readonly lights?: readonly Light[]
  readonly panels?: readonly Panel[]
  readonly room?: Some<Room>
  /** Pointers that count as written in the plan; everything else as a default. `'all'` by default. */
  readonly stated?: readonly string[] | 'all'
}

const branded = <T>(value: unknown): T => value as T

export const degreesOf = (degrees: number): number => (degrees * Math.PI) / 180

// ---------------------------------------------------------------- placing

/** `angle: 35 deg left, distance: 1.2 m, height: 2 m`; `right` as a negative angle. */
export const tape = (
  degreesLeft: number,
  distance: number,
  over: { readonly height?: number; readonly overTable?: number; readonly upDegrees?: number } = {},
): Placement =>
  branded({
    by: 'tape',
    angleLeft: degreesOf(degreesLeft),
    distance,
    height: height(over),
    up: over.upDegrees === undefined ? undefined : degreesOf(over.upDegrees),
  })

/** Offsets from the subject point: right and behind positive. */
export const offsets = (at: {
  readonly right?: number
  readonly behind?: number
  readonly beforeBackdrop?: number
  readonly height?: number
  readonly overTable?: number
}): Placement =>
  branded({
    by: 'offsets',
    right: at.right ?? 0,
    behind: at.behind ?? 0,
    beforeBackdrop: at.beforeBackdrop,
    height: height(at),
  })

const height = (of: { readonly height?: number; readonly overTable?: number }) =>
  of.height !== undefined
    ? { over: 'floor', metres: of.height }
    : of.overTable !== undefined
      ? { over: 'table', metres: of.overTable }
      : undefined

// ---------------------------------------------------------------- gear and surfaces

export const surface = (name: string, reflectance: number, u = 0.1): Surface =>
  branded({ name, reflectance, u, colour: undefined })

/** The built-in guess: GN 36 m at 35 mm, 1/1 to 1/128 in thirds, zoom 24 to 105 mm. */
export const flashgun: LightUnit = branded({
  kind: 'flash',
  name: 'flashgun',
  colour: 5500,
  draw: undefined,
  weight: 0.4,
  count: undefined,
  guessed: true,
  strength: {
    kind: 'guide-number',
    table: [{ metres: 36, zoom: 0.035 }],
    ratedAs: 'print',
    ratedWith: 'zoom',
  },
  power: { from: 1 / 128, to: 1, step: 1 / 3, dial: undefined },
  zoom: { from: 0.024, to: 0.105 },
  energy: undefined,
  regulated: 'igbt',
  durations: [],
  recycle: undefined,
  flashesPerCharge: undefined,
  spareCharges: undefined,
  highSpeedLoss: undefined,
  modelling: undefined,
  triggerVoltage: undefined,
  preFlash: false,
} satisfies Plain<LightUnit>)

/** A mains head with its standard 60° reflector. */
export const head = (wattSeconds: number): LightUnit =>
  branded({
    ...flashgun,
    name: `head ${wattSeconds} Ws`,
    strength: { kind: 'energy', energy: wattSeconds, reflector: degreesOf(60) },
    power: { from: 1 / 32, to: 1, step: 0.1, dial: undefined },
    zoom: undefined,
    energy: wattSeconds,
    regulated: 'voltage',
    modelling: 150,
  })

export const sun: LightUnit = branded({ ...unitFacts('sun'), kind: 'sun' })
export const windowUnit: LightUnit = branded({ ...unitFacts('window'), kind: 'window' })

function unitFacts(name: string) {
  return { name, colour: 5500, draw: undefined, weight: undefined, count: undefined, guessed: true }
}

export const makeModifier = (overrides: Some<Modifier> = {}): Modifier =>
  branded({
    name: 'shoot-through umbrella 1 m',
    kind: 'shoot-through umbrella',
    outline: 'disc',
    size: { width: 1, height: 1 },
    loss: 1.8,
    lossU: 0.6,
    emission: { cosine: 1, both: true },
    transmits: 0.5,
    grid: undefined,
    depth: 0.25,
    weight: undefined,
    count: undefined,
    guessed: true,
    ...overrides,
  })

export const softbox = (width: number, height_: number, overrides: Some<Modifier> = {}): Modifier =>
  makeModifier({
    name: `softbox ${width * 100} x ${height_ * 100} cm`,
    kind: 'softbox',
    outline: 'rectangle',
    size: { width, height: height_ },
    loss: 2,
    emission: { cosine: 1, both: false },
    transmits: 0.5,
    depth: 0.4,
    ...overrides,
  })

// ---------------------------------------------------------------- lights and panels

/** A flashgun 1.5 m in front of the face, on the centre line, a quarter power; role key, aim by the role. */
export const makeLight = (name: string, overrides: Some<Light> = {}): Light => {
  const role = overrides.role ?? 'key'
  const point =
    role === 'backdrop' ? 'backdrop' : role === 'rim' ? 'subject-back' : role === 'hair' ? 'hair' : 'subject'
  return branded({
    name,
    role,
    on: true,
    unit: flashgun,
    modifier: undefined,
    power: 1 / 4,
    meters: undefined,
    zoom: 0.035,
    grid: undefined,
    gel: undefined,
    at: tape(0, 1.5),
    aim: { at: 'point', point, feather: undefined },
    faces: undefined,
    lying: false,
    mode: 'manual',
    modelling: false,
    trigger: undefined,
    stand: undefined,
    circuit: undefined,
    reads: undefined,
    size: undefined,
    ...overrides,
  })
}

/** A black flag 60 × 200 cm at the left, facing right. */
export const makePanel = (name: string, overrides: Some<Panel> = {}): Panel =>
  branded({
    name,
    kind: 'flag',
    size: { width: 0.6, height: 2 },
    at: offsets({ right: -0.8, behind: 0.3, height: 1.2 }),
    faces: { kind: 'side', side: 'right' },
    surface: surface('black', 0.04),
    outside: surface('black', 0.04),
    opening: undefined,
    transmits: 0,
    ...overrides,
  })

export const makeRoom = (overrides: Some<Room> = {}): Room => {
  const wall = surface('wall', 0.5, 0.4)
  return branded({
    width: 4.2,
    length: 7,
    height: 2.6,
    leftWall: 2.1,
    behindBackdrop: 0.4,
    walls: { left: wall, right: wall, front: wall, back: wall },
    ceiling: surface('white ceiling', 0.8, 0.2),
    floor: surface('floor', 0.3, 0.5),
    mains: undefined,
    circuits: new Map(),
    ...overrides,
  })
}

// ---------------------------------------------------------------- the plan

/** A place for every pointer: line 1 of the file. */
const makePlaces = (file: string, stated: readonly string[] | 'all'): Places => ({
  of: (pointer) => ({ file, pointer, line: 1, column: 1, endLine: 1, endColumn: 2, start: 0, end: 1 }),
  stated: (pointer) => stated === 'all' || stated.includes(pointer),
  usedAt: () => undefined,
  written: () => undefined,
})

export const makePlan = (overrides: PlanOverrides = {}): Plan => {
  const { camera, subject, backdrop, wanted, lights, panels, room, stated, ...rest } = overrides
  const pose = subject?.pose ?? 'standing'
  const tall = subject?.height ?? 1.72
  const facesAt =
    subject?.facesAt ??
    meanFace(subject?.rows) ??
    (subject?.kind === 'object' ? tall / 2 : pose === 'seated' ? 1.2 : pose === 'lying' ? 0.3 : 0.94 * tall)
  const ground = subject?.standsOn?.height ?? 0
  const made: Plain<Plan> = {
    file: 'test.plan.yaml',
    title: 'Headshot on white',
    notes: undefined,
    tags: [],
    room: room === undefined ? undefined : makeRoom(room),
    ambient: undefined,
    camera: {
      sensor: { width: 0.036, height: 0.024 },
      lens: 0.085,
      frame: 'vertical',
      at: { distance: 2.5, height: ground + facesAt, right: 0 },
      aim: { at: 'level' },
      focus: { on: 'subject' },
      aperture: 2 ** (5 / 2),
      shutter: 2 ** (-22 / 3),
      shutterMarked: 1 / 160,
      iso: 100,
      filter: 0,
      sync: 1 / 160,
      curtain: undefined,
      shutterKind: 'focal-plane',
      readout: undefined,
      exposure: 'manual',
      headroom: 1 / 4,
      whiteBalance: undefined,
      heldBy: 'person',
      ...camera,
    },
    subject: {
      kind: 'person',
      height: 1.72,
      pose: 'standing',
      facesAt,
      turnedRight: 0,
      width: 0.45,
      depth: 0.28,
      rows: [],
      standsOn: undefined,
      reflectance: 0.35,
      finish: 'matte',
      shape: undefined,
      moves: undefined,
      area: undefined,
      glasses: false,
      hair: undefined,
      age: undefined,
      ...subject,
    },
    backdrop:
      backdrop === 'none'
        ? undefined
        : {
            surface: surface('white paper', 0.9),
            width: 2.72,
            height: 2.8,
            behind: 2,
            sweep: undefined,
            finish: 'matte',
            sky: undefined,
            ...backdrop,
          },
    lights: byName(
      lights ?? [
        makeLight('key', { modifier: makeModifier(), at: tape(35, 1.2, { height: 2 }) }),
        makeLight('paper', {
          role: 'backdrop',
          at: offsets({ right: -1.5, beforeBackdrop: 1.5, height: 1.5 }),
        }),
      ],
    ),
    panels: byName(panels ?? []),
    points: new Map(),
    wanted: {
      framing: 'head and shoulders',
      backdrop: { tone: 'white' },
      backdropOverKey: undefined,
      backdropEven: undefined,
      floor: undefined,
      exposure: 0,
      ratio: undefined,
      shadow: 'hidden',
      sharp: { what: 'face' },
      motion: undefined,
      ambient: 'none',
      shooting: undefined,
      ...wanted,
    },
    readings: [],
    accept: [],
    measured: [],
    kit: undefined,
    lengths: 'metric',
    places: makePlaces(rest.file ?? 'test.plan.yaml', stated ?? 'all'),
    ...rest,
  }
  return branded(made)
}

const byName = <T extends { readonly name: string }>(list: readonly T[]): ReadonlyMap<string, T> =>
  new Map(list.map((one) => [one.name, one]))

/** Of a group. */
const meanFace = (rows: readonly { readonly people: number; readonly facesAt: number }[] = []) => {
  const people = rows.reduce((sum, row) => sum + row.people, 0)
  return people === 0 ? undefined : rows.reduce((sum, row) => sum + row.people * row.facesAt, 0) / people
}
