/** The camera as it is meant: facts of its body from the kit, defaults, settings. */
import { iso, metres } from '../../units/quantity.js'
import * as defaults from '../defaults.js'
import type { PlanFile } from '../generated/types.js'
import type { Camera, Focus, Subject } from '../plan.js'
import {
  amountAt,
  apertureAt,
  asideAt,
  type Desk,
  extentAt,
  focalLengthAt,
  kelvinAt,
  maybe,
  readoutAt,
  shutterAt,
  sizeAt,
  timeAt,
} from './desk.js'
import { aimAt, type Ground, heightIn } from './placing.js'

const sensorAt = (desk: Desk, text: string | undefined): Camera['sensor'] => {
  if (text === undefined) return defaults.camera.sensor
  return Object.hasOwn(defaults.sensors, text)
    ? defaults.sensors[text as keyof typeof defaults.sensors]
    : sizeAt(desk, '/camera/sensor', text)
}

const focusOf = (desk: Desk, text: string | undefined): Focus => {
  if (text === undefined || text === 'subject') return { on: 'subject' }
  const row = /^row ([0-9]{1,2})$/.exec(text)?.[1]
  if (row !== undefined) return { on: 'row', row: Number(row) }
  return /^[0-9]/.test(text)
    ? { on: 'distance', distance: extentAt(desk, '/camera/focus', text) }
    : { on: 'point', point: text }
}

/** The body's facts, as if they were written in the plan; what is written there goes before them. */
const bodyOf = (desk: Desk, body: string | undefined): Partial<PlanFile['camera']> => {
  const cameras = desk.kit.cameras ?? {}
  return body !== undefined && Object.hasOwn(cameras, body) ? cameras[body]! : {}
}

export const resolveCamera = (
  desk: Desk,
  ground: Ground,
  written: PlanFile['camera'],
  subject: Subject,
  panels: ReadonlySet<string>,
): Camera => {
  const file = { ...bodyOf(desk, written.body), ...written }
  const { at } = file
  const shutter = shutterAt(desk, '/camera/shutter', file.shutter)
  const distance = extentAt(desk, '/camera/at/distance', at.distance)
  const table = subject.standsOn?.height ?? 0
  const height = at.height === undefined ? undefined : heightIn(desk, ground, '/camera/at/height', at.height)
  const handHeld = shutter.marked <= defaults.camera.slowestByHand * 1.001
  return {
    sensor: sensorAt(desk, file.sensor),
    lens: focalLengthAt(desk, '/camera/lens', file.lens),
    frame: file.frame ?? (subject.kind === 'person' ? 'vertical' : 'horizontal'),
    at: {
      distance,
      height: metres(
        height === undefined
          ? table + subject.facesAt
          : height.metres + (height.over === 'table' ? table : 0),
      ),
      right: maybe(asideAt, desk, '/camera/at/aside', at.aside) ?? metres(0),
    },
    aim:
      file.aim === undefined || file.aim === 'level'
        ? { at: 'level' }
        : aimAt(desk, '/camera/aim', file.aim, panels),
    focus: focusOf(desk, file.focus),
    aperture: apertureAt(desk, '/camera/aperture', file.aperture),
    shutter: shutter.exact,
    shutterMarked: shutter.marked,
    iso: iso(file.iso),
    filter: maybe(amountAt, desk, '/camera/filter', file.filter) ?? defaults.camera.filter,
    sync: maybe(shutterAt, desk, '/camera/sync', file.sync)?.marked ?? defaults.camera.sync,
    curtain: maybe(timeAt, desk, '/camera/curtain', file.curtain),
    shutterKind: file['shutter-kind'] ?? defaults.camera.shutterKind,
    readout: maybe(readoutAt, desk, '/camera/readout', file.readout),
    exposure: file.exposure ?? defaults.camera.exposure,
    headroom: maybe(amountAt, desk, '/camera/headroom', file.headroom) ?? defaults.camera.headroom,
    whiteBalance: maybe(kelvinAt, desk, '/camera/white-balance', file['white-balance']),
    heldBy: file['held-by'] ?? (handHeld ? 'person' : 'stand'),
  }
}
