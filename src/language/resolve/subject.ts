/** Who or what is photographed. */
import { type Metres, metres, radians } from '../../units/quantity.js'
import * as defaults from '../defaults.js'
import type { PlanFile } from '../generated/types.js'
import type { Row, Subject } from '../plan.js'
import {
  type Desk,
  extentAt,
  heightAt,
  lengthAt,
  maybe,
  refuse,
  sidedAngleAt,
  sizeAt,
  speedAt,
} from './desk.js'
import { builtInSurface, finished, surfaceAt } from './surface.js'

type File = PlanFile['subject']

/** Over the floor, or over what the subject stands on. */
const faceHeight = (desk: Desk, file: File, at: string, text: string): Metres => {
  const height = heightAt(desk, at, text)
  if (height.over === 'table' && file['stands-on'] === undefined)
    refuse(
      desk,
      at,
      'there is no table to measure from',
      'state subject.stands-on, or a height over the floor',
    )
  return height.metres
}

const rowsOf = (desk: Desk, file: File): readonly Row[] => {
  if (file.kind !== 'group') return []
  return (file.rows ?? []).map((row, i): Row => {
    const at = `/subject/rows/${i}`
    return {
      people: row.people,
      spacing: maybe(extentAt, desk, `${at}/spacing`, row.spacing) ?? metres(0),
      facesAt: faceHeight(desk, file, `${at}/faces-at`, row['faces-at']),
      behind: i === 0 ? metres(0) : (maybe(lengthAt, desk, `${at}/behind`, row.behind) ?? metres(0)),
    }
  })
}

/** The mean face of a group; a person's by the pose; an object's middle. */
const facesAtOf = (
  desk: Desk,
  file: File,
  height: Metres,
  pose: Subject['pose'],
  rows: readonly Row[],
): Metres => {
  if (file['faces-at'] !== undefined) return faceHeight(desk, file, '/subject/faces-at', file['faces-at'])
  if (file.kind === 'object') return metres(height / 2)
  const people = rows.reduce((sum, row) => sum + row.people, 0)
  if (people > 0) return metres(rows.reduce((sum, row) => sum + row.people * row.facesAt, 0) / people)
  const standing = metres(defaults.person.standing * height)
  if (pose === 'lying') return defaults.person.lying
  return pose === 'seated' ? metres(Math.min(defaults.person.seated, standing)) : standing
}

const standsOnOf = (desk: Desk, file: File['stands-on']): Subject['standsOn'] => {
  if (file === undefined) return undefined
  const size = maybe(sizeAt, desk, '/subject/stands-on/size', file.size)
  return {
    height: lengthAt(desk, '/subject/stands-on/height', file.height),
    surface: finished(
      file.surface === undefined
        ? builtInSurface(defaults.table.surface)
        : surfaceAt(desk, '/subject/stands-on/surface', file.surface),
      file.finish,
    ),
    width: size?.width ?? defaults.table.width,
    depth: size?.height ?? defaults.table.depth,
  }
}

export const resolveSubject = (desk: Desk, file: File): Subject => {
  const isObject = file.kind === 'object'
  const length = (key: 'height' | 'width' | 'depth'): Metres | undefined =>
    maybe(extentAt, desk, `/subject/${key}`, file[key])
  const pose = file.pose ?? 'standing'
  const height = length('height') ?? (isObject ? defaults.object.height : defaults.person.height)
  const width = length('width') ?? (isObject ? height : defaults.person.width)
  const rows = rowsOf(desk, file)
  const turned = maybe(sidedAngleAt, desk, '/subject/turned', file.turned)
  const area = maybe(sizeAt, desk, '/subject/area', file.area)
  return {
    kind: file.kind,
    height,
    pose,
    facesAt: facesAtOf(desk, file, height, pose, rows),
    turnedRight: radians(
      turned === undefined ? 0 : turned.side === 'left' ? -turned.radians : turned.radians,
    ),
    width,
    depth: length('depth') ?? (isObject ? width : defaults.person.depth),
    rows,
    standsOn: standsOnOf(desk, file['stands-on']),
    reflectance: file.reflectance ?? defaults.person.reflectance,
    finish: file.finish ?? 'matte',
    shape: isObject ? (file.shape ?? defaults.shapeOf(height, width)) : undefined,
    moves: maybe(speedAt, desk, '/subject/moves', file.moves),
    area: area && { width: area.width, depth: area.height },
    glasses: file.glasses ?? false,
    hair: file.hair,
    age: file.age,
  }
}
