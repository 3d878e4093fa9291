/**
 * A plan with left and right swapped everywhere, and a plan with all its lengths multiplied. What a set gives must not
 * change under the first (but for the names of sides), and under the second must follow the law of the scale.
 */
import type {
  Aim,
  Facing,
  Feather,
  Light,
  MeterReading,
  Panel,
  Placement,
  Plan,
  WallName,
} from '../../src/language/plan.js'

// ---------------------------------------------------------------- mirror

/** `subject-left` ↔ `subject-right`, `backdrop-left`, `row-2-left` …; own points keep their names. */
export const mirrorName = (name: string): string =>
  name.replace(/^(subject|backdrop|row-\d+)-(left|right)$/, (_, of, side) => `${of}-${otherSide(side)}`)

const otherSide = (side: string): string => (side === 'left' ? 'right' : side === 'right' ? 'left' : side)

const mirrorPlacement = (at: Placement): Placement =>
  at.by === 'tape'
    ? { ...at, angleLeft: -at.angleLeft as typeof at.angleLeft }
    : at.by === 'offsets'
      ? { ...at, right: -at.right as typeof at.right }
      : at

const mirrorFeather = (feather: Feather | undefined): Feather | undefined =>
  feather && { ...feather, towards: otherSide(feather.towards) as Feather['towards'] }

const mirrorAim = (aim: Aim): Aim => {
  switch (aim.at) {
    case 'level':
      return aim
    case 'point':
      return { ...aim, point: mirrorName(aim.point), feather: mirrorFeather(aim.feather) }
    case 'panel':
      return { ...aim, feather: mirrorFeather(aim.feather) }
    case 'ceiling':
      return { ...aim, above: mirrorName(aim.above), feather: mirrorFeather(aim.feather) }
    case 'wall': {
      const wall = (
        aim.wall === 'left-wall' ? 'right-wall' : aim.wall === 'right-wall' ? 'left-wall' : aim.wall
      ) as WallName
      return { ...aim, wall, feather: mirrorFeather(aim.feather) }
    }
  }
}

const mirrorFacing = (faces: Facing): Facing =>
  faces.kind === 'side'
    ? { kind: 'side', side: otherSide(faces.side) as typeof faces.side }
    : faces.kind === 'point'
      ? { kind: 'point', point: mirrorName(faces.point) }
      : { kind: 'angle', angleLeft: -faces.angleLeft as typeof faces.angleLeft }

const mirrorLight = (light: Light): Light => ({
  ...light,
  at: mirrorPlacement(light.at),
  aim: mirrorAim(light.aim),
  faces: light.faces && mirrorFacing(light.faces),
  meters: light.meters && {
    ...light.meters,
    at: light.meters.at === undefined ? undefined : mirrorName(light.meters.at),
  },
})

const mirrorPanel = (panel: Panel): Panel => ({
  ...panel,
  at: mirrorPlacement(panel.at),
  faces: mirrorFacing(panel.faces),
})

const mirrorReading = (reading: MeterReading): MeterReading => ({
  ...reading,
  at: mirrorName(reading.at),
  faces: typeof reading.faces === 'object' ? { point: mirrorName(reading.faces.point) } : reading.faces,
})

const mapValues = <V>(map: ReadonlyMap<string, V>, change: (value: V) => V): ReadonlyMap<string, V> =>
  new Map([...map].map(([name, value]) => [name, change(value)]))

export const mirrorPlan = (plan: Plan): Plan => {
  const { camera, room } = plan
  type Length = typeof camera.at.right
  return {
    ...plan,
    camera: {
      ...camera,
      at: { ...camera.at, right: -camera.at.right as Length },
      aim: mirrorAim(camera.aim),
      focus:
        camera.focus.on === 'point' ? { on: 'point', point: mirrorName(camera.focus.point) } : camera.focus,
    },
    subject: {
      ...plan.subject,
      turnedRight: -plan.subject.turnedRight as typeof plan.subject.turnedRight,
    },
    room: room && {
      ...room,
      leftWall: (room.width - room.leftWall) as Length,
      walls: { ...room.walls, left: room.walls.right, right: room.walls.left },
    },
    lights: mapValues(plan.lights, mirrorLight),
    panels: mapValues(plan.panels, mirrorPanel),
    points: mapValues(plan.points, mirrorPlacement),
    readings: plan.readings.map(mirrorReading),
  }
}

// ---------------------------------------------------------------- scale

/**
 * All lengths of the set times `k`: places, sizes of subject, backdrop, room, panels and modifiers, depths and areas
 * wanted. The gear keeps its own: sensor, lens, zoom, guide numbers and metered distances of units, the kit's
 * measurements; and so do power and readings. What has a size of its own in the program does not follow: a bare
 * flashgun's head, a bare reflector, a flash in the camera's shoe.
 */
export const scalePlan = (plan: Plan, k: number): Plan => {
  const by = <L extends number | undefined>(length: L): L =>
    (length === undefined ? undefined : length * k) as L
  const bySize = <S extends { readonly width: number; readonly height: number }>(size: S): S => ({
    ...size,
    width: by(size.width),
    height: by(size.height),
  })
  const byPlacement = (at: Placement): Placement => {
    if (at.by === 'camera') return at
    const height = at.height && { ...at.height, metres: by(at.height.metres) }
    return at.by === 'tape'
      ? { ...at, distance: by(at.distance), height }
      : { ...at, right: by(at.right), behind: by(at.behind), beforeBackdrop: by(at.beforeBackdrop), height }
  }
  const byLight = (light: Light): Light => ({
    ...light,
    at: byPlacement(light.at),
    modifier: light.modifier && {
      ...light.modifier,
      size: bySize(light.modifier.size),
      depth: by(light.modifier.depth),
    },
    size: light.size && bySize(light.size),
    stand: light.stand && { ...light.stand, arm: by(light.stand.arm) },
    unit:
      light.unit.kind === 'continuous'
        ? { ...light.unit, size: light.unit.size && bySize(light.unit.size) }
        : light.unit,
  })
  const byTaken = (taken: MeterReading['taken']): MeterReading['taken'] =>
    taken && mapValues(taken, (one) => ({ ...one, distance: by(one.distance) }))

  const { camera, subject, backdrop, room, wanted } = plan
  return {
    ...plan,
    camera: {
      ...camera,
      at: { distance: by(camera.at.distance), height: by(camera.at.height), right: by(camera.at.right) },
      focus:
        camera.focus.on === 'distance'
          ? { on: 'distance', distance: by(camera.focus.distance) }
          : camera.focus,
    },
    subject: {
      ...subject,
      height: by(subject.height),
      facesAt: by(subject.facesAt),
      width: by(subject.width),
      depth: by(subject.depth),
      rows: subject.rows.map((row) => ({
        ...row,
        spacing: by(row.spacing),
        facesAt: by(row.facesAt),
        behind: by(row.behind),
      })),
      standsOn: subject.standsOn && {
        ...subject.standsOn,
        ...bySize(subject.standsOn),
        depth: by(subject.standsOn.depth),
      },
      area: subject.area && { width: by(subject.area.width), depth: by(subject.area.depth) },
    },
    backdrop: backdrop && {
      ...backdrop,
      ...bySize(backdrop),
      behind: by(backdrop.behind),
      sweep: backdrop.sweep && { front: by(backdrop.sweep.front) },
    },
    room: room && {
      ...room,
      ...bySize(room),
      length: by(room.length),
      leftWall: by(room.leftWall),
      behindBackdrop: by(room.behindBackdrop),
    },
    lights: mapValues(plan.lights, byLight),
    panels: mapValues(plan.panels, (panel) => ({
      ...panel,
      size: bySize(panel.size),
      at: byPlacement(panel.at),
    })),
    points: mapValues(plan.points, byPlacement),
    wanted: {
      ...wanted,
      sharp: wanted.sharp?.what === 'depth' ? { what: 'depth', depth: by(wanted.sharp.depth) } : wanted.sharp,
    },
    readings: plan.readings.map((reading) => ({ ...reading, taken: byTaken(reading.taken) })),
  }
}
