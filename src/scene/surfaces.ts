/**
 * The matte rectangles that give light back. None lies over another: the floor under a sweep and the wall right behind
 * a backdrop are cut out, and what hangs outside the room is cut off.
 */
import type { Panel, Plan, Surface } from '../language/plan.js'
import type { Face, Scene, SceneRoom, SceneSurface } from './scene.js'
import type { Vec3 } from './vector.js'

/** A rectangle along two axes, from and to, in metres. */
interface Box {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
}

/** Nearer than this to a wall, a backdrop hangs on it. */
const onTheWall = 0.02
/** A strip narrower than this gives back nothing to speak of. */
const thinnest = 1e-3

const isThere = ({ from, to }: Box): boolean => to[0] - from[0] > thinnest && to[1] - from[1] > thinnest

/** What is left of a rectangle when another is taken off: up to four rectangles around it. */
const without = (whole: Box, hole: Box): readonly Box[] => {
  const a: [number, number] = [Math.max(whole.from[0], hole.from[0]), Math.max(whole.from[1], hole.from[1])]
  const b: [number, number] = [Math.min(whole.to[0], hole.to[0]), Math.min(whole.to[1], hole.to[1])]
  if (!isThere({ from: a, to: b })) return [whole]
  return [
    { from: whole.from, to: [a[0], whole.to[1]] as const },
    { from: [b[0], whole.from[1]] as const, to: whole.to },
    { from: [a[0], whole.from[1]] as const, to: [b[0], a[1]] as const },
    { from: [a[0], b[1]] as const, to: [b[0], whole.to[1]] as const },
  ].filter(isThere)
}

const within = (box: Box, bounds: Box): Box => ({
  from: [Math.max(box.from[0], bounds.from[0]), Math.max(box.from[1], bounds.from[1])],
  to: [Math.min(box.to[0], bounds.to[0]), Math.min(box.to[1], bounds.to[1])],
})

/** A side of the room or a thing parallel to one: which axis it is square to, where on it, and to which side it looks. */
interface Plane {
  readonly axis: 0 | 1 | 2
  readonly at: number
  readonly looks: 1 | -1
}

/** The other two axes, in the order x, y, z. */
const spanned = (axis: 0 | 1 | 2): readonly [0 | 1 | 2, 0 | 1 | 2] =>
  axis === 0 ? [1, 2] : axis === 1 ? [0, 2] : [0, 1]

const axes: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

const faceOf = ({ axis, at, looks }: Plane, box: Box): Face => {
  const [first, second] = spanned(axis)
  const centre: [number, number, number] = [0, 0, 0]
  centre[axis] = at
  centre[first] = (box.from[0] + box.to[0]) / 2
  centre[second] = (box.from[1] + box.to[1]) / 2
  const normal = axes[axis]!.map((one) => (one === 0 ? 0 : one * looks)) as unknown as Vec3
  // across × up is the normal, whichever way it looks.
  const straight = (axis === 1 ? -1 : 1) * looks === 1
  const [across, up] = straight ? [first, second] : [second, first]
  const size = (one: 0 | 1 | 2) => (one === first ? box.to[0] - box.from[0] : box.to[1] - box.from[1])
  return {
    outline: 'rectangle',
    centre,
    normal,
    across: axes[across]!,
    up: axes[up]!,
    width: size(across) as Face['width'],
    height: size(up) as Face['height'],
  }
}

const upright = (room: SceneRoom): Box => ({ from: [room.left, 0], to: [room.right, room.height] })

const roomSurfaces = (plan: Plan, scene: Pick<Scene, 'room' | 'backdrop'>): readonly SceneSurface[] => {
  const { room, backdrop } = scene
  const said = plan.room
  if (room === undefined || said === undefined) return []
  const one = (
    name: string,
    plane: Plane,
    boxes: readonly Box[],
    surface: Surface,
  ): readonly SceneSurface[] =>
    boxes.filter(isThere).map((box) => ({
      name,
      path: 'room',
      face: faceOf(plane, box),
      front: surface,
      back: undefined,
      transmits: 0,
      stated: stated(plan, name),
    }))
  const plan_: Box = { from: [room.left, room.front], to: [room.right, room.back] }
  const side: Box = { from: [room.front, 0], to: [room.back, room.height] }
  const sweep = backdrop && floorSweep(plan, backdrop)
  const hung =
    backdrop !== undefined && plan.backdrop?.sky === undefined && room.back - backdrop.y < onTheWall
      ? backdropBox(backdrop)
      : undefined
  return [
    ...one('floor', { axis: 2, at: 0, looks: 1 }, sweep ? without(plan_, sweep) : [plan_], said.floor),
    ...one('ceiling', { axis: 2, at: room.height, looks: -1 }, [plan_], said.ceiling),
    ...one('left-wall', { axis: 0, at: room.left, looks: 1 }, [side], said.walls.left),
    ...one('right-wall', { axis: 0, at: room.right, looks: -1 }, [side], said.walls.right),
    ...one('front-wall', { axis: 1, at: room.front, looks: 1 }, [upright(room)], said.walls.front),
    ...one(
      'back-wall',
      { axis: 1, at: room.back, looks: -1 },
      hung === undefined ? [upright(room)] : without(upright(room), hung),
      said.walls.back,
    ),
  ]
}

const wallKeys: Readonly<Record<string, string>> = {
  'left-wall': '/room/walls/left',
  'right-wall': '/room/walls/right',
  'front-wall': '/room/walls/front',
  'back-wall': '/room/walls/back',
  ceiling: '/room/ceiling',
  floor: '/room/floor',
}

const stated = ({ places }: Plan, name: string): boolean => {
  const at = wallKeys[name]
  return at === undefined || places.stated(at) || (name.endsWith('-wall') && places.stated('/room/walls'))
}

type Drawn = NonNullable<Scene['backdrop']>

const backdropBox = (backdrop: Drawn): Box => ({
  from: [backdrop.left, backdrop.bottom],
  to: [backdrop.right, backdrop.top],
})

/** A sweep that lies on the floor, in x and y. */
const floorSweep = (plan: Plan, backdrop: Drawn): Box | undefined =>
  backdrop.sweepFront === undefined || plan.subject.standsOn !== undefined
    ? undefined
    : { from: [backdrop.left, backdrop.sweepFront], to: [backdrop.right, backdrop.y] }

/** The backdrop and its sweep. A sky gives no light back that was not metered with it. */
const backdropSurfaces = (plan: Plan, scene: Pick<Scene, 'room' | 'backdrop'>): readonly SceneSurface[] => {
  const { backdrop, room } = scene
  const said = plan.backdrop
  if (backdrop === undefined || said === undefined || said.sky !== undefined) return []
  const made = (name: string, plane: Plane, box: Box, back: Surface | undefined): readonly SceneSurface[] =>
    isThere(box)
      ? [
          {
            name,
            path: 'backdrop',
            face: faceOf(plane, box),
            front: said.surface,
            back,
            transmits: 0,
            stated: true,
          },
        ]
      : []
  const box = room === undefined ? backdropBox(backdrop) : within(backdropBox(backdrop), upright(room))
  const hung = room !== undefined && room.back - backdrop.y < onTheWall
  const sweep: Box | undefined =
    backdrop.sweepFront === undefined
      ? undefined
      : { from: [backdrop.left, backdrop.sweepFront], to: [backdrop.right, backdrop.y] }
  const lies =
    sweep && room ? within(sweep, { from: [room.left, room.front], to: [room.right, room.back] }) : sweep
  return [
    ...made('backdrop', { axis: 1, at: backdrop.y, looks: -1 }, box, hung ? undefined : said.surface),
    ...(lies === undefined
      ? []
      : made(
          'sweep',
          { axis: 2, at: backdrop.bottom, looks: 1 },
          lies,
          backdrop.bottom > thinnest ? said.surface : undefined,
        )),
  ]
}

/** The table's top, but for what a sweep covers; seen from below it is the same. */
const tableSurfaces = (plan: Plan, scene: Pick<Scene, 'subject' | 'backdrop'>): readonly SceneSurface[] => {
  const { table } = scene.subject
  const said = plan.subject.standsOn
  if (table === undefined || said === undefined) return []
  const { backdrop } = scene
  const whole: Box = { from: [table.min[0], table.min[1]], to: [table.max[0], table.max[1]] }
  const covered: Box | undefined =
    backdrop?.sweepFront === undefined
      ? undefined
      : { from: [backdrop.left, backdrop.sweepFront], to: [backdrop.right, backdrop.y] }
  return (covered === undefined ? [whole] : without(whole, covered)).filter(isThere).map((box) => ({
    name: 'table',
    path: 'room',
    face: faceOf({ axis: 2, at: table.z, looks: 1 }, box),
    front: said.surface,
    back: said.surface,
    transmits: 0,
    stated: true,
  }))
}

const panelSurfaces = (panel: Panel, faces: readonly Face[]): readonly SceneSurface[] =>
  faces.map((one) => ({
    name: panel.name,
    path: 'panels',
    face: one,
    front: panel.surface,
    back: panel.outside,
    transmits: panel.transmits,
    stated: true,
  }))

export const sceneSurfaces = (
  plan: Plan,
  scene: Pick<Scene, 'room' | 'backdrop' | 'subject' | 'panels'>,
): readonly SceneSurface[] => [
  ...backdropSurfaces(plan, scene),
  ...roomSurfaces(plan, scene),
  ...tableSurfaces(plan, scene),
  ...[...scene.panels.values()].flatMap((one) => {
    const panel = plan.panels.get(one.name)
    return panel === undefined ? [] : panelSurfaces(panel, one.faces)
  }),
]
