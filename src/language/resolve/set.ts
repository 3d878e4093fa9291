/** What is around the subject: backdrop, room, the light of the place. */
import { pointer } from '../../text/place.js'
import { iso, type Metres, metres } from '../../units/quantity.js'
import * as defaults from '../defaults.js'
import type { PlanFile, Surface as SurfaceFile } from '../generated/types.js'
import type { Ambient, Backdrop, MeteredLight, Room, Subject, Surface } from '../plan.js'
import {
  amperesAt,
  apertureAt,
  type Desk,
  extentAt,
  kelvinAt,
  lengthAt,
  mainsAt,
  mainsFrequencyAt,
  maybe,
  refuse,
  shutterAt,
} from './desk.js'
import { builtInSurface, finished, surfaceAt, unstatedSurface } from './surface.js'

export const meteredLight = (
  desk: Desk,
  at: string,
  file: {
    readonly reads: string
    readonly shutter: string
    readonly iso: number
    readonly kind?: 'incident' | 'reflected'
    readonly colour?: string
    readonly duv?: number
  },
  kind: MeteredLight['kind'],
): MeteredLight => ({
  reads: apertureAt(desk, `${at}/reads`, file.reads),
  shutter: shutterAt(desk, `${at}/shutter`, file.shutter).exact,
  iso: iso(file.iso),
  kind: file.kind ?? kind,
  colour: maybe(kelvinAt, desk, `${at}/colour`, file.colour),
  ...(file.duv === undefined ? {} : { duv: file.duv }),
})

export const resolveAmbient = (desk: Desk, file: PlanFile['ambient']): Ambient | undefined =>
  file && {
    ...meteredLight(desk, '/ambient', file, 'incident'),
    ...(file.flicker === undefined ? {} : { flicker: file.flicker }),
  }

// ---------------------------------------------------------------- backdrop

/** Subject point to backdrop; the last row of a group is the sum of the rows' distances behind it. */
const behindOf = (
  desk: Desk,
  file: NonNullable<PlanFile['backdrop']>,
  subject: Subject,
  sky: boolean,
): Metres => {
  const last = maybe(extentAt, desk, '/backdrop/behind-last-row', file['behind-last-row'])
  if (last !== undefined) return metres(subject.rows.reduce((sum, row) => sum + row.behind, 0) + last)
  return maybe(extentAt, desk, '/backdrop/behind', file.behind) ?? (sky ? defaults.backdrop.sky : metres(1))
}

/** A backdrop of the kit brings its size and finish along. */
const kitBackdrop = (desk: Desk, surface: SurfaceFile | undefined) => {
  const backdrops = desk.kit.backdrops ?? {}
  return typeof surface === 'string' && Object.hasOwn(backdrops, surface) ? backdrops[surface]! : {}
}

export const resolveBackdrop = (
  desk: Desk,
  written: PlanFile['backdrop'],
  subject: Subject,
): Backdrop | undefined => {
  if (written === undefined) return undefined
  const { surface: _, ...brought } = { surface: undefined, ...kitBackdrop(desk, written.surface) }
  const file = { ...brought, ...written }
  const sky = file.sky === undefined ? undefined : meteredLight(desk, '/backdrop/sky', file.sky, 'reflected')
  const sweep = maybe(lengthAt, desk, '/backdrop/sweep/front', file.sweep?.front)
  const surface =
    file.surface === undefined
      ? unstatedSurface('sky', 0.5)
      : surfaceAt(desk, '/backdrop/surface', file.surface)
  return {
    surface: finished(surface, file.finish),
    width: maybe(extentAt, desk, '/backdrop/width', file.width) ?? defaults.backdrop.width,
    height: maybe(extentAt, desk, '/backdrop/height', file.height) ?? defaults.backdrop.height,
    behind: behindOf(desk, file, subject, sky !== undefined),
    sweep: sweep === undefined ? undefined : { front: sweep },
    finish: file.finish ?? surface.finish ?? 'matte',
    sky,
  }
}

// ---------------------------------------------------------------- room

type RoomFile = Exclude<NonNullable<PlanFile['room']>, string>
type WallsFile = RoomFile['walls']

const isSides = (
  walls: WallsFile,
): walls is { left?: SurfaceFile; right?: SurfaceFile; front?: SurfaceFile; back?: SurfaceFile } =>
  typeof walls === 'object' && !('reflectance' in walls) && !('colour' in walls) && !('name' in walls)

const wallsOf = (desk: Desk, file: WallsFile): Room['walls'] => {
  const unstated = unstatedSurface('wall', defaults.room.walls)
  if (!isSides(file)) {
    const all = file === undefined ? unstated : surfaceAt(desk, '/room/walls', file)
    return { left: all, right: all, front: all, back: all }
  }
  const wall = (side: 'left' | 'right' | 'front' | 'back'): Surface =>
    file[side] === undefined ? unstated : surfaceAt(desk, `/room/walls/${side}`, file[side])
  return { left: wall('left'), right: wall('right'), front: wall('front'), back: wall('back') }
}

export const resolveRoom = (
  desk: Desk,
  file: RoomFile | undefined,
  backdrop: Backdrop | undefined,
): Room | undefined => {
  if (file === undefined) return undefined
  const size = (key: 'width' | 'length' | 'height') =>
    maybe(extentAt, desk, `/room/${key}`, file[key]) ?? metres(1)
  const width = size('width')
  const length = size('length')
  const leftWall = maybe(lengthAt, desk, '/room/left-wall', file['left-wall']) ?? metres(width / 2)
  if (leftWall > width)
    refuse(
      desk,
      '/room/left-wall',
      'the camera-left wall is further off than the room is wide',
      'it is measured from the set’s centre line',
    )
  // Without a backdrop the set stands in the middle of the room.
  const behindBackdrop =
    maybe(lengthAt, desk, '/room/behind-backdrop', file['behind-backdrop']) ??
    (backdrop === undefined ? metres(length / 2) : defaults.room.behindBackdrop)
  const circuits = new Map(
    Object.entries(file.circuits ?? {}).map(([name, circuit]) => {
      const at = pointer('room', 'circuits', name)
      return [
        name,
        {
          voltage: mainsAt(desk, `${at}/voltage`, circuit.voltage),
          breaker: amperesAt(desk, `${at}/breaker`, circuit.breaker),
        },
      ] as const
    }),
  )
  return {
    width,
    length,
    height: size('height'),
    leftWall,
    behindBackdrop,
    walls: wallsOf(desk, file.walls),
    ceiling:
      file.ceiling === undefined
        ? { ...builtInSurface(defaults.room.ceiling), u: unstatedSurface('', 0).u }
        : surfaceAt(desk, '/room/ceiling', file.ceiling),
    floor:
      file.floor === undefined
        ? unstatedSurface('floor', defaults.room.floor)
        : surfaceAt(desk, '/room/floor', file.floor),
    mains: maybe(mainsFrequencyAt, desk, '/room/mains', file.mains),
    circuits,
  }
}
