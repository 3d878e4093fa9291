/** Sets that light a backdrop: a mirrored pair of reflectors, flashguns at three zooms, a group between two umbrellas. */
import { disc, rectangle } from './fronts.js'
import { cameraAt, type HandPoint, type HandSet, seenOfBackdrop, standing } from './hand-set.js'
import { dome, front, type Lamp, metered } from './lamps.js'
import { beam, cosine, lambertian } from './patterns.js'
import { closeUp, fromEnergy, fromGuideNumber, luxSecondsFor, zoomHead } from './strengths.js'
import { byTape, type Vector } from './vectors.js'

const head = [24, 36] as const

/** The mirrored pair; what the author may turn is a parameter. */
export const mirroredPair = ({
  stops = 0,
  keyTape = 1.6,
  behind = 2.2,
  fNumber = 2 ** 2.5,
  written = { power: '1/8', aperture: 'f/5.6' },
} = {}): HandSet => {
  const eye = cameraAt(3.2, standing[2])
  const key = front({
    middle: byTape(standing, 45, keyTape, 2.05),
    aim: standing,
    shape: rectangle(0.8, 1.2),
    pattern: lambertian,
    strength: 1,
  })
  const reflector = (x: number): Lamp =>
    front({
      middle: [x, behind - 1.2, 1.4],
      aim: [0, behind, standing[2]],
      shape: disc(0.18),
      pattern: beam(60),
      strength: (fromEnergy(400, 0.8, beam(60)) / 8) * 2 ** stops,
    })
  return {
    name: 'two reflectors on white, one written as the mirrored other; a metered box',
    plan: `plan: 1
title: White, a mirrored pair
camera: { lens: 85 mm, at: { distance: 3.2 m }, aperture: ${written.aperture}, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: ${behind} m }
lights:
  key:
    unit: head 400 Ws
    modifier: softbox 80 x 120 cm
    meters: f/5.6
    at: { angle: 45 deg left, distance: ${keyTape} m, height: 2.05 m }
  paper-left:
    role: backdrop
    unit: head 400 Ws
    power: ${written.power}
    at: { left: 1.3 m, before-backdrop: 1.2 m, height: 1.4 m }
  paper-right: { role: backdrop, like: paper-left, mirrored: true }
points: { side: { right: 60 cm, behind: 1 m, height: 1.5 m } }
`,
    eye,
    setting: { fNumber, iso: 100, losses: closeUp(0.085, 3.2) },
    points: {
      subject: { at: standing },
      side: { at: [0.6, 1, 1.5] },
      ...seenOfBackdrop(eye, behind, 85, head),
    },
    lamps: {
      key: metered(key, { at: standing, faces: key.from(standing), kernel: dome }, luxSecondsFor(2 ** 2.5)),
      'paper-left': reflector(-1.3),
      'paper-right': reflector(1.3),
    },
    key: ['key'],
    numeric: ['paper-left', 'paper-right'],
  }
}

export const zooms = ({ wide = 24 } = {}): HandSet => {
  const eye = cameraAt(3, 1.5)
  const gun = (middle: Vector, zoom: number, share: number): Lamp => {
    const { strength, pattern } = zoomHead(36, zoom)
    return front({
      middle,
      aim: [0, 1.8, standing[2]],
      shape: rectangle(0.075, 0.045, 24),
      pattern,
      strength: strength * share,
    })
  }
  return {
    name: 'bare flashguns at 24, 35, 50 and 105 mm',
    plan: `plan: 1
title: Four zooms
camera: { lens: 50 mm, frame: horizontal, at: { distance: 3 m, height: 1.5 m }, aperture: f/8, shutter: 1/160, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 1.8 m }
lights:
  key: { unit: head 200 Ws, modifier: standard reflector, power: 1/4, at: { angle: 30 deg left, distance: 2 m, height: 2.2 m } }
  wide: { role: backdrop, unit: flashgun, zoom: ${wide} mm, power: 1/4, at: { left: 1.4 m, before-backdrop: 1 m, height: 1.2 m } }
  rated: { role: backdrop, unit: flashgun, power: 1/4 + 0.3, at: { right: 1.4 m, before-backdrop: 1.5 m, height: 1.2 m } }
  middling: { role: backdrop, unit: flashgun, zoom: 50 mm, power: 1/2, at: { left: 1 m, before-backdrop: 2 m, height: 2 m } }
  long: { role: backdrop, unit: flashgun, zoom: 105 mm, power: 1/16, at: { right: 90 cm, before-backdrop: 2.5 m, height: 2.1 m } }
points: { low: { left: 40 cm, behind: 1.8 m, height: 90 cm } }
`,
    eye,
    setting: { fNumber: 8, iso: 100, losses: closeUp(0.05, 3) },
    points: {
      subject: { at: standing },
      low: { at: [-0.4, 1.8, 0.9], out: [0, -1, 0] },
      ...seenOfBackdrop(eye, 1.8, 50, [36, 24]),
    },
    lamps: {
      key: front({
        middle: byTape(standing, 30, 2, 2.2),
        aim: standing,
        shape: disc(0.18),
        pattern: beam(60),
        strength: fromEnergy(200, 0.8, beam(60)) / 4,
      }),
      wide: gun([-1.4, 0.8, 1.2], wide, 1 / 4),
      // On a unit that steps in thirds, + 0.3 is a third of a stop.
      rated: gun([1.4, 0.3, 1.2], 35, 2 ** (-2 + 1 / 3)),
      middling: gun([-1, -0.2, 2], 50, 1 / 2),
      long: gun([0.9, -0.7, 2.1], 105, 1 / 16),
    },
    key: ['key'],
    numeric: ['key', 'wide', 'rated', 'middling', 'long'],
  }
}

export const group = (): HandSet => {
  const eye = cameraAt(4.5, 1.2)
  const middle: Vector = [0, 0.2, 1]
  const face = (x: number, y: number, z: number): HandPoint => ({ at: [x, y, z] })
  return {
    name: 'two rows of a group between a white and a silver umbrella',
    plan: `plan: 1
title: Five people, two umbrellas
camera: { lens: 50 mm, at: { distance: 4.5 m, height: 1.2 m }, aperture: f/8, shutter: 1/125, iso: 200 }
subject:
  kind: group
  rows:
    - { people: 3, spacing: 50 cm, faces-at: 75 cm }
    - { people: 2, spacing: 70 cm, behind: 45 cm, faces-at: 1.2 m }
backdrop: { surface: grey paper, width: 4 m, height: 3 m, behind-last-row: 60 cm }
lights:
  key:
    unit: head 600 Ws
    modifier: white umbrella 1 m
    power: 1/2
    at: { left: 1.8 m, front: 3 m, height: 2.2 m }
    aim: middle
  fill:
    unit: flashgun
    modifier: silver umbrella 1.5 m
    power: full
    at: { right: 2.2 m, front: 2.4 m, height: 1.9 m }
    aim: middle
points: { middle: { behind: 20 cm, height: 1 m } }
`,
    eye,
    setting: { fNumber: 8, iso: 200, losses: closeUp(0.05, 4.5) },
    points: {
      middle: { at: middle },
      'row-1-left': face(-0.5, 0, 0.75),
      'row-1-right': face(0.5, 0, 0.75),
      'row-2-left': face(-0.35, 0.45, 1.2),
      'row-2-right': face(0.35, 0.45, 1.2),
      ...seenOfBackdrop(eye, 1.05, 50, [36, 24], { width: 4, height: 3 }),
    },
    lamps: {
      key: front({
        middle: [-1.8, -3, 2.2],
        aim: middle,
        shape: disc(1),
        pattern: lambertian,
        strength: fromEnergy(600, 0.5, lambertian) / 2,
      }),
      fill: front({
        middle: [2.2, -2.4, 1.9],
        aim: middle,
        shape: disc(1.5),
        pattern: cosine(2),
        strength: fromGuideNumber(36) / 2 ** 1.5,
      }),
    },
    key: ['key', 'fill'],
    numeric: ['fill'],
  }
}
