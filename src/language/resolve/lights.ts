/** The lights: units and modifiers looked up, powers as shares, roles and aims by default, mirrored ones turned. */
import { pointer } from '../../text/place.js'
import { as, iso, type Kelvin, type Mired, metres, powerShare, stops } from '../../units/quantity.js'
import { type GelRow, gelRow } from '../catalogue/gels.js'
import * as defaults from '../defaults.js'
import type { Light as LightFile } from '../generated/types.js'
import type { Gel, Light, LightUnit, MeteredLight, Role } from '../plan.js'
import {
  amountAt,
  apertureAt,
  type Desk,
  focalLengthAt,
  kelvinAt,
  lengthAt,
  maybe,
  miredAt,
  refuse,
  shutterAt,
  sizeAt,
  weightAt,
} from './desk.js'
import { gridAt, modifierAt } from './modifier.js'
import {
  aimAt,
  facingAt,
  type Ground,
  mirrorAim,
  mirrorFacing,
  mirrorPlacement,
  mirrorPoint,
  placementAt,
} from './placing.js'
import { powerOf } from './power.js'
import { unitAt } from './unit.js'

export interface LightsGround extends Ground {
  readonly panels: ReadonlySet<string>
  /** By light: keys whose value is the mirror image of what is written. */
  readonly mirrored: ReadonlyMap<string, ReadonlySet<string>>
  /** By light: the light that it is like. */
  readonly like: ReadonlyMap<string, string>
}

/** A light with what it is like filled in. */
export type WholeLightFile = LightFile & Required<Pick<LightFile, 'unit' | 'at'>>

type LightFiles = ReadonlyMap<string, WholeLightFile>

// ---------------------------------------------------------------- roles

const aimPoint = (file: LightFile): string | undefined =>
  typeof file.aim === 'object' ? file.aim.at : file.aim

const onSubject = (point: string): boolean => /^(subject|hair|row-)/.test(point)

/** Stated, or in the name, or that of the light that it is like. */
const namedRole = (name: string, files: LightFiles, like: LightsGround['like']): Role | undefined => {
  let one: string | undefined = name
  for (let steps = 0; one !== undefined && steps <= files.size; steps += 1) {
    const role = files.get(one)?.role ?? defaults.roleInName(one)
    if (role !== undefined) return role
    one = like.get(one)
  }
  return undefined
}

/** Every light's role. */
export const rolesOf = (files: LightFiles, like: LightsGround['like']): ReadonlyMap<string, Role> => {
  const named = new Map([...files.keys()].map((name) => [name, namedRole(name, files, like)]))
  const keyElsewhere = [...named.values()].includes('key')
  const [first] = files.keys()
  return new Map(
    [...files].map(([name, file]) => [
      name,
      named.get(name) ?? defaults.roleByPlace(name === first, keyElsewhere, aimPoint(file), onSubject),
    ]),
  )
}

// ---------------------------------------------------------------- parts

const gelOf = (desk: Desk, at: string, file: LightFile['gel']): Gel | undefined => {
  if (file === undefined) return undefined
  if (typeof file === 'string' || Array.isArray(file)) return sheetsOf([file].flat())
  return {
    shift: maybe(miredAt, desk, `${at}/shift`, file.shift),
    ...(file.duv === undefined ? {} : { duv: file.duv }),
    colour: file.colour as string | undefined,
    loss: amountAt(desk, `${at}/loss`, file.loss),
  }
}

/** One on another. */
const sheetsOf = (names: readonly string[]): Gel => {
  const rows = names.flatMap((name) => gelRow(name) ?? [])
  const sum = (of: (row: GelRow) => number): number => rows.reduce((all, row) => all + of(row), 0)
  const duv = sum((row) => row.duv)
  return {
    names,
    shift: rows.some(({ shift }) => shift !== 0) ? as<Mired>(sum(({ shift }) => shift)) : undefined,
    ...(rows.some((row) => row.duv !== 0) ? { duv } : {}),
    colour: undefined,
    loss: stops(sum(({ loss }) => loss)),
  }
}

const triggerOf = (file: LightFile['trigger']): Light['trigger'] =>
  file && {
    by: file.by,
    channel: file.channel,
    group: file.group === undefined ? undefined : String(file.group),
    early: file.early ?? false,
  }

const standOf = (desk: Desk, at: string, file: LightFile['stand']): Light['stand'] =>
  file && {
    kind: file.kind,
    arm: maybe(lengthAt, desk, `${at}/arm`, file.arm),
    counterweight: maybe(weightAt, desk, `${at}/counterweight`, file.counterweight),
    sandbag: maybe(weightAt, desk, `${at}/sandbag`, file.sandbag),
  }

const readsOf = (
  desk: Desk,
  at: string,
  file: LightFile,
  { colour, duv }: LightUnit,
): MeteredLight | undefined =>
  file.reads === undefined
    ? undefined
    : {
        reads: apertureAt(desk, `${at}/reads`, file.reads),
        shutter: shutterAt(desk, `${at}/shutter`, file.shutter ?? '1 s').exact,
        iso: iso(file.iso ?? 100),
        kind: 'incident',
        colour,
        ...(duv === undefined ? {} : { duv }),
      }

/** What does not fit the kind of light. */
const checkKind = (desk: Desk, at: string, file: LightFile, unit: LightUnit): void => {
  if (unit.kind === 'flash' && file.reads !== undefined)
    refuse(
      desk,
      `${at}/reads`,
      'reads is for the sun, windows and lamps',
      'for a flash write meters (what it is to meter), or a reading under readings (what a meter did read)',
    )
  if (unit.kind === 'window' && file.size === undefined)
    refuse(desk, at, 'the window has no size', 'add size: 120 x 150 cm')
  if ((unit.kind === 'sun' || unit.kind === 'window') && file.meters !== undefined)
    refuse(
      desk,
      `${at}/meters`,
      `the ${unit.kind} cannot be set to meter something`,
      'say what a meter reads of it: reads, shutter, iso',
    )
}

// ---------------------------------------------------------------- one light

/** What is said of the light's colour goes before what its unit says, and holds at the power that the light is set to. */
const coloured = (unit: LightUnit, colour: Kelvin | undefined, duv: number | undefined): LightUnit => {
  const green = duv === undefined ? unit : { ...unit, duv }
  if (colour === undefined) return green
  const { colourGuessed: _, ...stated } = green
  if (stated.kind !== 'flash') return { ...stated, colour }
  return { ...stated, colour, colours: [{ power: powerShare(1), colour }] }
}

const lightOf = (desk: Desk, ground: LightsGround, name: string, file: WholeLightFile, role: Role): Light => {
  const at = pointer('lights', name)
  const turned = (key: string): boolean => ground.mirrored.get(name)?.has(key) ?? false

  const colour = maybe(kelvinAt, desk, `${at}/colour`, file.colour)
  const plainUnit = unitAt(desk, `${at}/unit`, file.unit, name)
  const unit = coloured(plainUnit, colour, file.duv)
  checkKind(desk, at, file, unit)
  const modifier = file.modifier === undefined ? undefined : modifierAt(desk, `${at}/modifier`, file.modifier)

  const place =
    file.at === 'camera'
      ? ({ by: 'camera' } as const)
      : placementAt(desk, ground, `${at}/at`, file.at, unit.kind === 'sun')
  const aim =
    file.aim === undefined
      ? ({ at: 'point', point: defaults.aimOf[role], feather: undefined } as const)
      : aimAt(desk, `${at}/aim`, file.aim, ground.panels)
  const faces = file.faces === undefined ? undefined : facingAt(desk, `${at}/faces`, file.faces)
  const meters = typeof file.meters === 'string' ? { reads: file.meters } : file.meters
  const metersAt = meters?.at
  return {
    name,
    role,
    on: file.off !== true,
    unit,
    modifier,
    power: powerAt(desk, `${at}/power`, file, unit),
    meters: meters && {
      reads: apertureAt(
        desk,
        typeof file.meters === 'string' ? `${at}/meters` : `${at}/meters/reads`,
        meters.reads,
      ),
      at: metersAt !== undefined && turned('meters') ? mirrorPoint(metersAt) : metersAt,
    },
    zoom: zoomOf(desk, at, file, unit),
    grid: file.grid === undefined ? undefined : gridAt(desk, `${at}/grid`, file.grid, modifier?.kind),
    gel: gelOf(desk, `${at}/gel`, file.gel),
    at: turned('at') ? mirrorPlacement(place) : place,
    aim: file.aim !== undefined && turned('aim') ? mirrorAim(aim) : aim,
    faces: faces !== undefined && turned('faces') ? mirrorFacing(faces) : faces,
    lying: file.lying ?? false,
    mode: file.mode ?? 'manual',
    modelling: file.modelling === true || file.modelling === 'on',
    trigger: triggerOf(file.trigger),
    stand: standOf(desk, `${at}/stand`, file.stand),
    circuit: file.circuit,
    reads: readsOf(desk, at, file, unit),
    size: maybe(sizeAt, desk, `${at}/size`, file.size),
  }
}

/** What meters itself finds its own power, whatever is written. */
const powerAt = (desk: Desk, at: string, { power, mode }: LightFile, unit: LightUnit): Light['power'] => {
  const share = power === undefined ? undefined : powerOf(desk, at, power, unit)
  return unit.kind === 'flash' && mode === 'automatic' ? undefined : share
}

/** A zoom head that does not say stands at 35 mm, or as near to it as it goes. */
const zoomOf = (desk: Desk, at: string, file: LightFile, unit: LightUnit): Light['zoom'] => {
  if (file.zoom !== undefined) return focalLengthAt(desk, `${at}/zoom`, file.zoom)
  if (unit.kind !== 'flash' || unit.zoom === undefined) return undefined
  return metres(Math.min(Math.max(defaults.zoom, unit.zoom.from), unit.zoom.to))
}

export const resolveLights = (
  desk: Desk,
  ground: LightsGround,
  files: LightFiles,
): ReadonlyMap<string, Light> => {
  const roles = rolesOf(files, ground.like)
  return new Map(
    [...files].map(([name, file]) => [name, lightOf(desk, ground, name, file, roles.get(name)!)]),
  )
}
