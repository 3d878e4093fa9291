/** What a meter did read: on the set, and once and for all in the kit. */
import { pointer } from '../../text/place.js'
import { type Iso, iso } from '../../units/quantity.js'
import type { Measurement, PlanFile } from '../generated/types.js'
import type { Kit, KitMeasurement, Light, MeterReading } from '../plan.js'
import {
  apertureAt,
  type Desk,
  extentAt,
  focalLengthAt,
  lengthAt,
  maybe,
  onceOfKit,
  weightAt,
} from './desk.js'
import { powerOf } from './power.js'
import { unitNamed } from './unit.js'

type File = NonNullable<PlanFile['readings']>[number]

/** Points that lie on a surface, where a meter lies flat. */
const onSurface = (point: string): boolean => /^(backdrop|floor)(-|$)/.test(point)

const takenOf = (
  desk: Desk,
  at: string,
  file: File['taken'],
  lights: ReadonlyMap<string, Light>,
): MeterReading['taken'] => {
  if (file === undefined) return undefined
  return new Map(
    Object.entries(file).map(([name, one]) => {
      const here = at + pointer(name)
      const light = lights.get(name)
      return [
        name,
        {
          power:
            one.power === undefined || light === undefined
              ? undefined
              : powerOf(desk, `${here}/power`, one.power, light.unit),
          distance: maybe(extentAt, desk, `${here}/distance`, one.distance),
        },
      ] as const
    }),
  )
}

const ofWhom = (file: File['of']): MeterReading['of'] => {
  if (typeof file !== 'string') return file
  return file === 'all' || file === 'ambient' ? file : [file]
}

/** A meter on a surface looks out of it; in the air it looks at the one light that is read, else at the camera. */
const facesOf = (file: File, of: MeterReading['of']): MeterReading['faces'] => {
  const { faces } = file
  if (faces === undefined)
    return onSurface(file.at) ? 'out' : typeof of !== 'string' && of.length === 1 ? 'light' : 'camera'
  return faces === 'light' || faces === 'camera' || faces === 'backdrop' ? faces : { point: faces }
}

export const resolveReadings = (
  desk: Desk,
  files: readonly File[],
  lights: ReadonlyMap<string, Light>,
  cameraIso: Iso,
): readonly MeterReading[] =>
  files.map((file, i) => {
    const at = `/readings/${i}`
    const of = ofWhom(file.of)
    return {
      at: file.at,
      of,
      read:
        file.reads === undefined
          ? { records: file.records ?? 0 }
          : { reads: apertureAt(desk, `${at}/reads`, file.reads) },
      taken: takenOf(desk, `${at}/taken`, file.taken, lights),
      kind: file.kind ?? 'incident',
      dome: file.dome ?? (onSurface(file.at) ? 'flat' : 'raised'),
      faces: facesOf(file, of),
      iso: file.iso === undefined ? cameraIso : iso(file.iso),
    }
  })

export const resolveMeasured = (desk: Desk): readonly KitMeasurement[] =>
  onceOfKit(desk, '/kit/measured', () =>
    (desk.kit.measured ?? []).map((file, i) => measurementOf(desk, i, file)),
  )

const measurementOf = (desk: Desk, i: number, file: Measurement): KitMeasurement => {
  const at = `/kit/measured/${i}`
  return {
    unit: file.unit,
    modifier: file.modifier,
    zoom: maybe(focalLengthAt, desk, `${at}/zoom`, file.zoom),
    power: powerOf(desk, `${at}/power`, file.power, unitNamed(desk, file.unit)),
    distance: extentAt(desk, `${at}/distance`, file.distance),
    reads: apertureAt(desk, `${at}/reads`, file.reads),
    iso: iso(file.iso),
  }
}

export const resolveKit = (desk: Desk): Kit => onceOfKit(desk, '/kit', () => kitOf(desk))

const kitOf = (desk: Desk): Kit => ({
  stands: new Map(
    Object.entries(desk.kit.stands ?? {}).map(([name, file]) => {
      const at = pointer('kit', 'stands', name)
      return [
        name,
        {
          highest: maybe(lengthAt, desk, `${at}/highest`, file.highest),
          base: maybe(lengthAt, desk, `${at}/base`, file.base),
          weight: maybe(weightAt, desk, `${at}/weight`, file.weight),
          load: maybe(weightAt, desk, `${at}/load`, file.load),
          count: file.count,
        },
      ] as const
    }),
  ),
})
