/**
 * Flash and a focal-plane shutter. All times here are as marked: sync and margin are judged by the dial, and a mark is
 * within the tolerance of the shutter itself (ISO 516).
 */
import type { Camera } from '../language/plan.js'
import type { TriggerKind } from '../light/trigger-delay.js'
import type { Seconds, Stops } from '../units/quantity.js'

/**
 * Travel of the curtain against the sync time where the camera's own is not known: makers set the sync speed at the
 * travel and some slack for the flash and the trigger. Common practice, no source.
 */
const travelOfSync = { least: 0.7, most: 1 } as const

export interface Band {
  /** Share of the frame that is open when the flash fires, at most and at least. 1: all of it. */
  readonly open: { readonly least: number; readonly most: number }
  /** The dark share, worded "up to" `most`. */
  readonly dark: { readonly least: number; readonly most: number }
}

export interface TimeRange {
  readonly least: Seconds
  readonly most: Seconds
}

/** Travel of the first curtain over the frame: known, or a range. */
export const curtainTravel = (camera: Camera): TimeRange =>
  camera.curtain === undefined
    ? {
        least: (camera.sync * travelOfSync.least) as Seconds,
        most: (camera.sync * travelOfSync.most) as Seconds,
      }
    : { least: camera.curtain, most: camera.curtain }

/**
 * The band that a flash leaves dark: between the first curtain's arrival and the second one's start only t/T of the
 * frame is open. `latest` is what the trigger adds at most after the contact closes. Undefined where the whole
 * frame is open: no faster than sync, or no focal-plane shutter.
 */
export const darkBand = (camera: Camera, latest: Seconds = 0 as Seconds): Band | undefined => {
  if (camera.shutterKind !== 'focal-plane' || !fasterThanSync(camera)) return undefined
  const travel = curtainTravel(camera)
  const least = Math.min(1, Math.max(0, camera.shutterMarked - latest) / travel.most)
  const most = Math.min(1, camera.shutterMarked / travel.least)
  return { open: { least, most }, dark: { least: 1 - most, most: 1 - least } }
}

/** Reading a frame takes this long where the camera does not say. From memory. */
const unstatedReadout = { least: (1 / 60) as Seconds, most: (1 / 15) as Seconds } as const

/** Time that an electronic shutter takes to read the frame, line by line: known, or a range. 0 reads all at once. */
export const readoutTime = ({ readout }: Camera): TimeRange =>
  readout === undefined ? unstatedReadout : { least: readout, most: readout }

/**
 * The band that a flash leaves dark where the sensor is read line by line: each line is open for t, from a moment that runs
 * over the frame in the readout R. Fired as the last line opens, the flash finds t/R of the lines open, fewer if its trigger
 * takes time; fired meanwhile it reaches those too that open while it burns, (t + flash)/R. Undefined where every line is open
 * for all of it, or for another shutter.
 */
export const readoutBand = (
  camera: Camera,
  flash: Seconds,
  latest: Seconds = 0 as Seconds,
): Band | undefined => {
  if (camera.shutterKind !== 'electronic') return undefined
  const { least: quick, most: long } = readoutTime(camera)
  const { shutterMarked: time } = camera
  if (long === 0 || time >= (long + latest + flash) * (1 - sameMark)) return undefined
  const least = Math.min(1, Math.max(0, time - latest) / long)
  const most = Math.min(1, (time + flash) / quick)
  return { open: { least, most }, dark: { least: 1 - most, most: 1 - least } }
}

/**
 * Share of the frame, at most, that has closed before the flash has burnt for `until`, dark or merely short of it.
 *
 * @param run of the curtain, or of the readout, over the frame
 */
export const closedBefore = (
  { shutterMarked }: Camera,
  run: TimeRange,
  latest: Seconds,
  until: Seconds,
): number => 1 - Math.min(1, Math.max(0, shutterMarked - latest - until) / run.most)

/** Marks are decimal fractions read from text: a millionth apart is the same mark. */
const sameMark = 1e-6

/** True where the shutter is set faster than the fastest that is open all at once. */
export const fasterThanSync = (camera: Camera): boolean => camera.shutterMarked < camera.sync * (1 - sameMark)

/**
 * Stops under the sync speed, in the thirds that the dial has: 1/160 against 1/200 is one third although the marks'
 * ratio is 0.32. Negative where faster than sync.
 */
export const underSync = (camera: Camera): Stops =>
  (Math.round(3 * Math.log2(camera.shutterMarked / camera.sync)) / 3 + 0) as Stops

/** Stops under sync that a trigger wants for its delay. Common practice, no source. */
export const triggerMargin: Readonly<Record<TriggerKind, Stops>> = {
  cable: 0 as Stops,
  radio: (1 / 3) as Stops,
  'basic radio': (2 / 3) as Stops,
  optical: 0 as Stops,
  'optical groups': 1 as Stops,
}
