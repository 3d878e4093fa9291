/** `meter --format json`, format 1: a public contract, described by `schemas/meter.schema.json`. */
import { farthestWhite } from '../light/colour/white.js'
import type { CardEntry, MeterCard } from '../tasks/meter.js'
import type { MeterStep } from '../tasks/meter-order.js'
import type { CardReading } from '../tasks/meter-readings.js'
import { pointer } from '../text/place.js'
import { writeFNumber } from '../units/marks.js'
import { json } from './notation.js'
import { version } from './version.js'

export const meterJson = (card: MeterCard): string =>
  json({
    kind: 'meter',
    format: 1,
    thirdstop: version,
    file: card.file,
    camera: { fNumber: card.camera.fNumber, seconds: card.camera.seconds, iso: card.camera.iso },
    caveats: card.caveats,
    keyReading:
      card.key === undefined
        ? null
        : {
            fNumber: card.key.figure.fNumber,
            reads: writeFNumber(card.key.figure.fNumber),
            u: card.key.u,
          },
    shadowSide:
      card.shadow === undefined
        ? null
        : { ...entryData(card.shadow.entry), shaded: card.shadow.shaded, ratio: card.shadow.ratio },
    points: card.entries.map(entryData),
    tones: card.tones,
    order: card.order.map(stepData),
    readings: card.readings.map(readingData),
    unknown: card.unknown,
  })

const entryData = ({ figure, overCamera, overKey, u, colour }: CardEntry) => ({
  point: figure.point,
  of: figure.of,
  kind: 'incident',
  dome: figure.dome,
  faces: figure.faces,
  fNumber: figure.fNumber,
  reads: writeFNumber(figure.fNumber),
  overCamera,
  overKey: overKey?.stops ?? null,
  overKeyU: overKey?.u ?? null,
  u,
  luxSeconds: figure.luxSeconds,
  paths: shares(figure),
  ...(colour === undefined
    ? {}
    : { kelvin: Math.abs(colour.duv) > farthestWhite ? null : colour.kelvin, duv: colour.duv }),
})

/** Of the light there, what came straight, and what was thrown there last by the room, by panels, by the backdrop. */
const shares = ({ luxSeconds, byPath }: CardEntry['figure']) => ({
  direct: byPath.direct / luxSeconds,
  room: byPath.room / luxSeconds,
  panels: byPath.panels / luxSeconds,
  backdrop: byPath.backdrop / luxSeconds,
})

const stepData = ({ fires, without, figure, u, sets }: MeterStep) => ({
  fires: fires ?? null,
  without,
  point: figure.point,
  of: figure.of,
  dome: figure.dome,
  faces: figure.faces,
  fNumber: figure.fNumber,
  reads: writeFNumber(figure.fNumber),
  u,
  setsCamera: sets === 'camera',
})

const readingData = ({ index, point, of, dome, faces, reads, carried, held, unused }: CardReading) => ({
  pointer: pointer('readings', index),
  point,
  of,
  dome,
  faces,
  reads,
  carried,
  predicted: held?.predicted ?? null,
  difference: held?.difference ?? null,
  u: held?.u ?? null,
  odd: held?.odd ?? false,
  unused: unused ?? null,
})
