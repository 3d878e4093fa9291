/** Places, aims and facings as they are written, and their mirror images. */
import { type Metres, metres, radians } from '../../units/quantity.js'
import type { Aim as AimFile, Placement as PlacementFile } from '../generated/types.js'
import type { Aim, Facing, Feather, Height, Placement, WallName } from '../plan.js'
import { sides, wallNames } from '../schema/names.js'
import { type Desk, elevationAt, featherAt, heightAt, lengthAt, maybe, refuse, sidedAngleAt } from './desk.js'

/** What placing must know of the plan besides. */
export interface Ground {
  readonly backdrop: boolean
  readonly table: boolean
}

const signed = (angle: { readonly radians: number; readonly side?: 'left' | 'right' }) =>
  radians(angle.side === 'right' ? -angle.radians : angle.radians)

export const heightIn = (desk: Desk, ground: Ground, at: string, text: string): Height => {
  const height = heightAt(desk, at, text)
  if (height.over === 'table' && !ground.table)
    refuse(
      desk,
      at,
      'there is no table to measure from',
      'state subject.stands-on, or a height over the floor',
    )
  return height
}

/** @param sun needs no distance */
export const placementAt = (
  desk: Desk,
  ground: Ground,
  at: string,
  file: PlacementFile,
  sun = false,
): Placement => {
  const height = file.height === undefined ? undefined : heightIn(desk, ground, `${at}/height`, file.height)
  if (file.angle !== undefined) {
    if (file.distance === undefined && !sun)
      refuse(desk, at, 'the place has an angle but no distance', 'add distance: 1.4 m')
    return {
      by: 'tape',
      angleLeft: signed(sidedAngleAt(desk, `${at}/angle`, file.angle)),
      distance: maybe(lengthAt, desk, `${at}/distance`, file.distance),
      height,
      up: maybe(elevationAt, desk, `${at}/up`, file.up),
    }
  }
  if (sun)
    refuse(desk, at, 'the sun has a bearing, not a place', 'write at: { angle: 150 deg right, up: 20 deg }')
  const length = (key: 'left' | 'right' | 'front' | 'behind' | 'before-backdrop'): Metres | undefined =>
    maybe(lengthAt, desk, `${at}/${key}`, file[key])
  const left = length('left')
  const front = length('front')
  const beforeBackdrop = length('before-backdrop')
  if (beforeBackdrop !== undefined && !ground.backdrop)
    refuse(
      desk,
      `${at}/before-backdrop`,
      'there is no backdrop to measure from',
      'state backdrop, or measure from the subject with front or behind',
    )
  return {
    by: 'offsets',
    right: left === undefined ? (length('right') ?? metres(0)) : minus(left),
    behind: front === undefined ? (length('behind') ?? metres(0)) : minus(front),
    beforeBackdrop,
    height,
  }
}

/** Zero has no sign, so that a plan and its mirror image compare equal. */
const minus = (value: Metres): Metres => metres(value === 0 ? 0 : -value)

const isWall = (name: string): name is WallName => (wallNames as readonly string[]).includes(name)

const above = /^(?:the )?ceiling above (?:the )?(.+)$/

/** What a text names as something to aim at. */
export const targetOf = (
  text: string,
  panels: ReadonlySet<string>,
): { at: 'point' | 'panel' | 'ceiling' | 'wall'; name: string } => {
  const over = above.exec(text)?.[1]
  if (over !== undefined) return { at: 'ceiling', name: over }
  if (isWall(text) && text !== 'floor') return { at: 'wall', name: text }
  return { at: panels.has(text) ? 'panel' : 'point', name: text }
}

export const aimAt = (
  desk: Desk,
  at: string,
  file: AimFile,
  panels: ReadonlySet<string>,
): Exclude<Aim, { at: 'level' }> => {
  const text = typeof file === 'string' ? file : file.at
  const feather: Feather | undefined =
    typeof file === 'string' ? undefined : maybe(featherAt, desk, `${at}/feather`, file.feather)
  const target = targetOf(text, panels)
  switch (target.at) {
    case 'ceiling':
      return { at: 'ceiling', above: target.name, feather }
    case 'wall':
      return { at: 'wall', wall: target.name as WallName, feather }
    case 'panel':
      return { at: 'panel', panel: target.name, feather }
    default:
      return { at: 'point', point: target.name, feather }
  }
}

export const facingAt = (desk: Desk, at: string, text: string): Facing => {
  if ((sides as readonly string[]).includes(text))
    return { kind: 'side', side: text as (typeof sides)[number] }
  if (/^[0-9]/.test(text)) return { kind: 'angle', angleLeft: signed(sidedAngleAt(desk, at, text)) }
  return { kind: 'point', point: text }
}

// ---------------------------------------------------------------- the other side of the centre line

const swapped = (name: string): string =>
  name.replace(
    /^(subject|backdrop|row-[0-9]+)-(left|right)$/,
    (_, of: string, side: string) => `${of}-${side === 'left' ? 'right' : 'left'}`,
  )

const otherSide = <T extends string>(side: T): T =>
  (side === 'left' ? 'right' : side === 'right' ? 'left' : side) as T

/** Built-in points have a counterpart; a point or panel of the author's own is the same seen from either side. */
export const mirrorPoint = swapped

export const mirrorPlacement = (place: Placement): Placement => {
  switch (place.by) {
    case 'tape':
      return { ...place, angleLeft: radians(place.angleLeft === 0 ? 0 : -place.angleLeft) }
    case 'offsets':
      return { ...place, right: minus(place.right) }
    default:
      return place
  }
}

const mirrorFeather = (feather: Feather | undefined): Feather | undefined =>
  feather && { ...feather, towards: otherSide(feather.towards) }

export const mirrorAim = (aim: Aim): Aim => {
  switch (aim.at) {
    case 'point':
      return { ...aim, point: swapped(aim.point), feather: mirrorFeather(aim.feather) }
    case 'ceiling':
      return { ...aim, above: swapped(aim.above), feather: mirrorFeather(aim.feather) }
    case 'wall':
      return {
        ...aim,
        wall: aim.wall === 'left-wall' ? 'right-wall' : aim.wall === 'right-wall' ? 'left-wall' : aim.wall,
        feather: mirrorFeather(aim.feather),
      }
    case 'panel':
      return { ...aim, feather: mirrorFeather(aim.feather) }
    default:
      return aim
  }
}

export const mirrorFacing = (facing: Facing): Facing => {
  switch (facing.kind) {
    case 'side':
      return { ...facing, side: otherSide(facing.side) }
    case 'angle':
      return { ...facing, angleLeft: radians(facing.angleLeft === 0 ? 0 : -facing.angleLeft) }
    default:
      return { ...facing, point: swapped(facing.point) }
  }
}
