/**
 * Points by name: those built in, and the plan's own. `subject-left`, `subject-right`, the points of the backdrop and
 * `camera` are where the camera sees them; all others stay where they are wherever the camera goes.
 */
import type { Plan } from '../language/plan.js'
import { pointer } from '../text/place.js'
import { backdropInFrame, backdropMiddle, span } from './backdrop.js'
import { edgePoints, endPoint, nearestOnSegment, reach, type SurfacePoint, surfaceToward } from './capsule.js'
import { sides } from './facing.js'
import { type Ground, place, tapeFault } from './placing.js'
import type {
  Capsule,
  SceneBackdrop,
  SceneCamera,
  SceneFault,
  SceneFigure,
  ScenePoint,
  SceneSubject,
} from './scene.js'
import { add, dot, scale, subtract, unit, type Vec3 } from './vector.js'

type Points = Map<string, ScenePoint>
type On = ScenePoint['on']

/** Points on the backdrop keep this share of what is seen away from its edges. */
const inside = 0.03

/** The part of a figure that its points lie on. */
const part = (figure: SceneFigure): Capsule => figure.head ?? figure.body

/** Where on that part's axis the face looks from. */
const middleOf = (figure: SceneFigure): Vec3 => nearestOnSegment(part(figure), figure.face)

/** The one or two figures of a row nearest to its middle. */
const central = (row: readonly SceneFigure[]): readonly SceneFigure[] =>
  row.length % 2 === 1 ? [row[(row.length - 1) / 2]!] : row.slice(row.length / 2 - 1, row.length / 2 + 1)

const mean = (points: readonly SurfacePoint[]): SurfacePoint => ({
  at: scale(
    points.reduce<Vec3>((sum, one) => add(sum, one.at), [0, 0, 0]),
    1 / points.length,
  ),
  normal: unit(points.reduce<Vec3>((sum, one) => add(sum, one.normal), [0, 0, 0])),
})

const rowsOf = (figures: readonly SceneFigure[]): readonly (readonly SceneFigure[])[] => {
  const rows: SceneFigure[][] = []
  for (const figure of figures) {
    const row = (figure.row ?? 1) - 1
    while (rows.length <= row) rows.push([])
    rows[row]!.push(figure)
  }
  return rows.filter((row) => row.length > 0)
}

/** Left and right edge of one figure as the camera sees it, at the height of its face (an object's middle). */
export const edges = (figure: SceneFigure, camera: SceneCamera): readonly [SurfacePoint, SurfacePoint] => {
  const middle = middleOf(figure)
  const seen = edgePoints(part(figure), middle, camera.eye, camera.up)
  // From straight above there is no such edge: the sides stand in for it.
  const [a, b] = seen ?? [
    surfaceToward(part(figure), middle, scale(camera.right, -1)),
    surfaceToward(part(figure), middle, camera.right),
  ]
  return bearingFrom(camera, a.at) <= bearingFrom(camera, b.at) ? [a, b] : [b, a]
}

/** How far to the right of its axis the camera sees a place, in radians. */
const bearingFrom = (camera: SceneCamera, at: Vec3): number => {
  const d = subtract(at, camera.eye)
  return Math.atan2(dot(d, camera.right), dot(d, camera.forward))
}

const outermost = (points: readonly SurfacePoint[], camera: SceneCamera, side: 1 | -1): SurfacePoint =>
  points.reduce((best, one) =>
    side * bearingFrom(camera, one.at) > side * bearingFrom(camera, best.at) ? one : best,
  )

const subjectPoints = (plan: Plan, subject: SceneSubject, camera: SceneCamera): ScenePoint[] => {
  const on: On = plan.subject.kind === 'object' ? 'object' : 'person'
  const point = (name: string, at: SurfacePoint): ScenePoint => ({ name, on, ...at })
  const rows = rowsOf(subject.figures)
  const grouped = subject.figures[0]?.row !== undefined
  const back = central(rows[rows.length - 1]!)
  const seen = subject.figures.map((figure) => edges(figure, camera))
  return [
    // A group's is no one's face, but where a meter is held for all: over the front row, at their mean height.
    point('subject', {
      at: grouped ? subject.tapeFrom : subject.figures[0]!.face,
      normal: subject.figures[0]!.looks,
    }),
    point(
      'subject-left',
      outermost(
        seen.map((side) => side[0]),
        camera,
        -1,
      ),
    ),
    point(
      'subject-right',
      outermost(
        seen.map((side) => side[1]),
        camera,
        1,
      ),
    ),
    point(
      'subject-back',
      mean(back.map((figure) => surfaceToward(part(figure), middleOf(figure), [0, 1, 0]))),
    ),
    point('hair', mean(back.map(crown))),
    ...(grouped ? rows : []).flatMap((row) => {
      const [first, last] = [row[0]!, row[row.length - 1]!]
      return [
        point(`row-${first.row}-left`, { at: first.face, normal: first.looks }),
        point(`row-${last.row}-right`, { at: last.face, normal: last.looks }),
      ]
    }),
  ]
}

/** The end of the head away from the body; an object's top. */
const crown = (figure: SceneFigure): SurfacePoint => {
  const at = endPoint(part(figure), 1)
  return { at, normal: unit(subtract(at, part(figure).to), [0, 0, 1]) }
}

/**
 * The edges of what the camera sees of the backdrop, at the middle of each side, and their middle. Where nothing of it
 * is in frame, the same of the whole backdrop, its middle at the height of the face.
 */
const backdropPoints = (
  backdrop: SceneBackdrop,
  camera: SceneCamera,
  { tapeFrom, table }: SceneSubject,
): ScenePoint[] => {
  const point = (name: string, x: number, z: number): ScenePoint => ({
    name,
    at: [x, backdrop.y, z],
    normal: [0, -1, 0],
    on: 'backdrop',
  })
  const seen = backdropInFrame(camera, backdrop, table)
  const middle = backdropMiddle(backdrop, tapeFrom[2])
  const x = seen === undefined ? 0 : (seen.left + seen.right) / 2
  const z = seen === undefined ? middle[2] : (seen.bottom + seen.top) / 2
  const across = (seen && span(seen.polygon, 'across', z)) ?? [backdrop.left, backdrop.right]
  const up = (seen && span(seen.polygon, 'up', x)) ?? [backdrop.bottom, backdrop.top]
  const within = ([from, to]: readonly [number, number]) =>
    [from + inside * (to - from), to - inside * (to - from)] as const
  const [left, right] = within(across)
  const [bottom, top] = within(up)
  return [
    point('backdrop', x, z),
    point('backdrop-left', left, z),
    point('backdrop-right', right, z),
    point('backdrop-top', x, top),
    point('backdrop-bottom', x, bottom),
  ]
}

/** On what the subject stands on, floor or table, just in front of it. */
const floorPoint = (plan: Plan, subject: SceneSubject): ScenePoint => {
  const { table } = subject
  const front = Math.max(
    ...subject.figures.map((figure) =>
      Math.max(
        reach(figure.body, sides.camera),
        figure.head === undefined ? -Infinity : reach(figure.head, sides.camera),
      ),
    ),
  )
  const clear = -front - plan.subject.depth / 10
  const y = table === undefined ? clear : Math.max(clear, table.min[1])
  return {
    name: 'floor',
    at: [0, y, table?.z ?? 0],
    normal: [0, 0, 1],
    on: table === undefined ? 'floor' : 'table',
  }
}

/** A free point that lies on a surface belongs to it: closer than a millimetre. */
const touching = 1e-3

const ownPoint = (
  name: string,
  at: Vec3,
  subject: SceneSubject,
  backdrop: SceneBackdrop | undefined,
): ScenePoint => {
  const { table } = subject
  if (
    backdrop !== undefined &&
    Math.abs(at[1] - backdrop.y) < touching &&
    at[0] >= backdrop.left &&
    at[0] <= backdrop.right &&
    at[2] >= backdrop.bottom &&
    at[2] <= backdrop.top
  )
    return { name, at, normal: [0, -1, 0], on: 'backdrop' }
  if (
    table !== undefined &&
    Math.abs(at[2] - table.z) < touching &&
    at[0] >= table.min[0] &&
    at[0] <= table.max[0] &&
    at[1] >= table.min[1] &&
    at[1] <= table.max[1]
  )
    return { name, at, normal: [0, 0, 1], on: 'table' }
  if (Math.abs(at[2]) < touching) return { name, at, normal: [0, 0, 1], on: 'floor' }
  return { name, at, normal: undefined, on: 'air' }
}

/** Every point by name, as this camera sees those that depend on it. */
export const scenePoints = (
  plan: Plan,
  subject: SceneSubject,
  backdrop: SceneBackdrop | undefined,
  on: Ground,
): Points => {
  const { camera, tapeFrom } = on
  const own = [...plan.points].map(([name, at]) =>
    ownPoint(name, place(at, on, tapeFrom[2]).at, subject, backdrop),
  )
  const all = [
    ...subjectPoints(plan, subject, camera),
    ...(backdrop === undefined ? [] : backdropPoints(backdrop, camera, subject)),
    floorPoint(plan, subject),
    { name: 'camera', at: camera.eye, normal: undefined, on: 'air' as const },
    ...own,
  ]
  return new Map(all.map((point) => [point.name, point]))
}

/** Tapes of the plan's own points that are too short for their height. */
export const pointFaults = (plan: Plan, on: Ground): readonly SceneFault[] =>
  [...plan.points].flatMap(([name, at]) =>
    tapeFault(name, pointer('points', name, 'distance'), place(at, on, on.tapeFrom[2])),
  )
