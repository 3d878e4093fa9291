/**
 * Where a set is metered, the same way in every set: the key point, cheeks, edges, the air before the subject, backdrop
 * and floor in the light, in penumbra and in shadow, behind and before panels. Shadows are found by the tracer itself.
 */
import type { Plan } from '../../src/language/plan.js'
import type { Capsule, Face, Scene } from '../../src/scene/scene.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../src/scene/vector.js'
import type { Bodies } from './bodies.js'
import type { Place, Tracer } from './trace.js'

export interface NamedPlace extends Place {
  readonly name: string
  readonly penumbra: boolean
  /** It lies flat on backdrop, floor or table. */
  readonly onSurface?: true
}

const down: Vec3 = [0, 0, -1]

/** Outermost of a capsule's sides at a height, square to its axis and level. */
const side = (capsule: Capsule, near: Vec3, way: 1 | -1): { readonly at: Vec3; readonly normal: Vec3 } => {
  const span = subtract(capsule.to, capsule.from)
  const t = Math.min(
    1,
    Math.max(0, dot(subtract(near, capsule.from), span) / Math.max(1e-12, dot(span, span))),
  )
  const normal = scale(capsule.acrossDirection, way)
  return { at: add(add(capsule.from, scale(span, t)), scale(normal, capsule.across)), normal }
}

const onFigures = (scene: Scene, bodies: Bodies): readonly NamedPlace[] => {
  const point = scene.points.get('subject')!
  const { figures } = scene.subject
  // A group is asked of its middle and of its ends.
  const asked = figures.length < 4 ? figures : [figures[0]!, figures.at(-1)!]
  const toCamera = unit(subtract(scene.camera.eye, point.at))
  const key: NamedPlace = {
    name: 'key',
    at: point.at,
    normal: toCamera,
    kind: 'dome',
    penumbra: false,
    ...(point.normal === undefined ? {} : { against: point.normal }),
    ...onCapsule(bodies, point.at),
  }
  const cheeks = asked.flatMap((figure) =>
    ([-1, 1] as const).flatMap((way) => {
      const { at, normal } = side(figure.head ?? figure.body, figure.face, way)
      const toBack = unit(subtract(normal, figure.looks))
      const base = { at, against: normal, kind: 'flat', penumbra: false, ...onCapsule(bodies, at) } as const
      // As seen from the camera's end.
      const name = `${figures.length > 1 ? `${figure.name} ` : ''}cheek ${normal[0] < 0 ? 'left' : 'right'}`
      const edge = { ...base, name: name.replace('cheek', 'edge, turned back,'), normal: toBack }
      return figures.length > 1 ? [{ ...base, name, normal }] : [{ ...base, name, normal }, edge]
    }),
  )
  const faces =
    figures.length < 4
      ? []
      : asked.map((figure): NamedPlace => {
          const normal = unit(subtract(scene.camera.eye, figure.face))
          const on = onCapsule(bodies, figure.face)
          return {
            name: `${figure.name} face`,
            at: figure.face,
            normal,
            kind: 'dome',
            against: figure.looks,
            penumbra: false,
            ...on,
          }
        })
  const [only] = figures
  const shares = figures.length > 1 || only!.head === undefined ? [] : [0.75, 0.2]
  const body = shares.map((share): NamedPlace => {
    const { from, to, along } = only!.body
    const at = add(add(from, scale(subtract(to, from), share)), scale(only!.looks, along))
    const name = share > 0.5 ? 'chest' : 'shins'
    const normal = only!.looks
    return { name, at, normal, kind: 'flat', against: normal, penumbra: false, ...onCapsule(bodies, at) }
  })
  const overGround = point.at[2] - (scene.surfaces.find(({ name }) => name === 'table')?.face.centre[2] ?? 0)
  const hands: NamedPlace = {
    name: 'air before the subject',
    at: add(point.at, add(scale(toCamera, 0.35), scale(down, Math.min(0.3, overGround / 4)))),
    normal: toCamera,
    kind: 'dome',
    penumbra: false,
  }
  return [key, ...faces, ...cheeks, ...body, hands]
}

/** The capsule whose coat a place lies on. */
const onCapsule = (bodies: Bodies, at: Vec3): { readonly on?: number } => {
  const found = bodies.list.findIndex(({ shape }) => {
    if (shape.shape !== 'capsule') return false
    const { capsule } = shape
    const span = subtract(capsule.to, capsule.from)
    const axis = unit(span, [0, 0, 1])
    const along = cross(axis, capsule.acrossDirection)
    const t = Math.min(
      1,
      Math.max(0, dot(subtract(at, capsule.from), span) / Math.max(1e-12, dot(span, span))),
    )
    const d = subtract(at, add(capsule.from, scale(span, t)))
    const away = Math.hypot(
      dot(d, capsule.acrossDirection) / capsule.across,
      dot(d, along) / capsule.along,
      dot(d, axis) / capsule.cap,
    )
    return Math.abs(away - 1) < 1e-6
  })
  return found < 0 ? {} : { on: found }
}

interface Screen {
  readonly name: string
  readonly face: Pick<Face, 'centre' | 'normal' | 'across' | 'up' | 'width' | 'height'>
}

/** The part of the backdrop that is up to a metre from its middle, and of the floor about the subject. */
const screens = (plan: Plan, scene: Scene): readonly Screen[] => {
  const { backdrop, room } = scene
  const wall = backdrop?.y ?? room?.back
  const [left, right] = [
    Math.max(-1.5, backdrop?.left ?? -1.5, room?.left ?? -1.5) + 0.1,
    Math.min(1.5, backdrop?.right ?? 1.5, room?.right ?? 1.5) - 0.1,
  ]
  const face = (centre: Vec3, normal: Vec3, up: Vec3, width: number, height: number): Screen['face'] =>
    ({ centre, normal, up, across: cross(up, normal), width, height }) as Screen['face']
  const found: Screen[] = []
  const x = (left + right) / 2
  if (wall !== undefined) {
    const bottom = (backdrop?.bottom ?? 0) + 0.15
    const top = Math.min(bottom + 2.1, (backdrop?.top ?? 9) - 0.1, (room?.height ?? 9) - 0.1)
    found.push({
      name: 'backdrop',
      face: face([x, wall, (bottom + top) / 2], [0, -1, 0], [0, 0, 1], right - left, top - bottom),
    })
  }
  const ground = scene.surfaces.find(({ name }) => name === 'sweep' || name === 'table' || name === 'floor')
  if (ground !== undefined) {
    const z = ground.face.centre[2]
    const own = scene.surfaces.find(({ name }) => name === 'sweep' || name === 'table')?.face
    const near = Math.max(
      own === undefined ? -1.5 : own.centre[1] - spread(own, 1),
      (room?.front ?? -9) + 0.1,
    )
    const far = Math.min((wall ?? 1.5) - 0.1, own === undefined ? 1.5 : own.centre[1] + spread(own, 1) - 0.05)
    const [a, b] =
      own === undefined
        ? [left, right]
        : [own.centre[0] - spread(own, 0) + 0.05, own.centre[0] + spread(own, 0) - 0.05]
    found.push({
      name: plan.subject.standsOn === undefined ? 'floor' : 'table',
      face: face([(a! + b!) / 2, (near + far) / 2, z], [0, 0, 1], [0, 1, 0], b! - a!, far - near - 0.1),
    })
  }
  return found
}

/** Half of its extent along an axis. */
const spread = (face: Screen['face'], axis: 0 | 1): number =>
  (Math.abs(face.across[axis]) * face.width + Math.abs(face.up[axis]) * face.height) / 2

interface Spot extends Place {
  /** Of the light that would matter most here among those that are part hidden; 0 where none is. */
  readonly hidden: number
  readonly light: number
  readonly penumbra: boolean
  /** Straight from all lights: lx·s. */
  readonly gets: number
}

const cells = [22, 16] as const

/** A screen tried in a grid: how much of which light is hidden. Places inside a body, or on the floor under one, are left out. */
const tried = (screen: Screen, tracer: Tracer, weights: readonly number[]): readonly Spot[] =>
  Array.from({ length: cells[0] * cells[1] }, (_, i): Spot => {
    const { centre, across, up, normal, width, height } = screen.face
    const u = ((i % cells[0]) + 0.5) / cells[0] - 0.5
    const v = (Math.floor(i / cells[0]) + 0.5) / cells[1] - 0.5
    const at = add(centre, add(scale(across, u * width), scale(up, v * height)))
    const place = { at, normal, kind: 'flat' } as const
    const { direct, open } = tracer.directAt(place, 64)
    const all = open.reduce((sum, one, k) => sum + one * weights[k]!, 0)
    let [hidden, light, gives] = [0, 0, 0]
    let penumbra = false
    open.forEach((one, k) => {
      if (one <= 0 || (one * weights[k]!) / all < 0.2) return
      const share = 1 - direct[k]! / one
      const inPenumbra = share > 0.15 && share < 0.85
      if ((inPenumbra && !penumbra) || (inPenumbra === penumbra && one * weights[k]! > gives)) {
        ;[hidden, light, gives, penumbra] = [share, k, one * weights[k]!, inPenumbra]
      }
    })
    const gets = direct.reduce((sum, one, k) => sum + one * weights[k]!, 0)
    return { ...place, hidden, light, penumbra, gets }
  })

/** So many of a list, evenly from end to end. */
const some = <T>(list: readonly T[], count: number): readonly T[] =>
  list.length <= count
    ? list
    : Array.from({ length: count }, (_, i) => list[Math.floor(((i + 0.5) * list.length) / count)]!)

const onScreens = (
  plan: Plan,
  scene: Scene,
  tracer: Tracer,
  weights: readonly number[],
): readonly NamedPlace[] =>
  screens(plan, scene).flatMap((screen) => {
    const spots = tried(screen, tracer, weights).filter(({ at }) => !isUnderFigure(scene, at))
    const name = (what: string, spot: Spot): string =>
      `${screen.name} ${what} ${spot.at.map((x) => x.toFixed(2)).join(' ')}`
    const brightest = spots.reduce((a, b) => (b.gets > a.gets ? b : a))
    const dark = spots.filter(({ hidden, penumbra }) => !penumbra && hidden > 0.97)
    const [lit, unlit] = [true, false].map((faced) =>
      spots.filter(({ hidden, gets }) => hidden < 0.02 && gets > 0 === faced),
    )
    return [
      ...(brightest.gets > 0 ? [{ ...brightest, name: name('at its brightest', brightest) }] : []),
      ...some(lit!, 2).map((one) => ({ ...one, name: name('in the light', one) })),
      ...some(unlit!, 1).map((one) => ({ ...one, name: name('that no light faces', one) })),
      ...some(
        spots.filter(({ penumbra }) => penumbra),
        3,
      ).map((one) => ({ ...one, name: name('in penumbra', one) })),
      ...some(dark, 1).map((one) => ({ ...one, name: name('in shadow', one) })),
    ].map(({ at, normal, kind, penumbra, name }) => ({ at, normal, kind, penumbra, name, onSurface: true }))
  })

const isUnderFigure = (scene: Scene, at: Vec3): boolean =>
  [...scene.subject.figures, ...(scene.operator === undefined ? [] : [scene.operator])].some(({ body }) =>
    [body.from, body.to].some(
      (end) => Math.hypot(end[0] - at[0], end[1] - at[1], (end[2] - at[2]) / 2) < body.across + 0.05,
    ),
  )

/** Before and behind each panel, facing it. */
const aboutPanels = (scene: Scene): readonly NamedPlace[] =>
  [...scene.panels.values()].flatMap(({ name, faces }) => {
    const { centre, normal } = faces[0]!
    return ([1, -1] as const).map(
      (way): NamedPlace => ({
        name: `${way === 1 ? 'before' : 'behind'} ${name}`,
        at: add(centre, scale(normal, 0.3 * way)),
        normal: scale(normal, -way),
        kind: 'flat',
        penumbra: false,
      }),
    )
  })

/** Every so many places of the grid on backdrop and floor: 9 gives some 80 a set. */
export const gridOf = (
  plan: Plan,
  scene: Scene,
  tracer: Tracer,
  weights: readonly number[],
  every: number,
): readonly NamedPlace[] =>
  screens(plan, scene).flatMap((screen) =>
    tried(screen, tracer, weights)
      .filter(({ at }, i) => i % every === 0 && !isUnderFigure(scene, at))
      .map(({ at, normal, kind, penumbra }) => {
        const name = `${screen.name} ${at.map((x) => x.toFixed(2)).join(' ')}`
        return { at, normal, kind, penumbra, name, onSurface: true }
      }),
  )

export const placesOf = (
  plan: Plan,
  scene: Scene,
  tracer: Tracer,
  weights: readonly number[],
): readonly NamedPlace[] => [
  ...onFigures(scene, tracer.bodies),
  ...onScreens(plan, scene, tracer, weights),
  ...aboutPanels(scene).slice(0, 4),
]
