/** Sets whose lights are known in other ways: a kit's figures, readings, a test frame. */
import { disc, octagon, rectangle } from './fronts.js'
import { cameraAt, type HandSet, onTheBackdrop, seenOfBackdrop, standing } from './hand-set.js'
import { dome, flat, front, type Lamp, metered } from './lamps.js'
import { beam, bisect, flux, lambertian, type Pattern, zoomed } from './patterns.js'
import { closeUp, fromEnergy, fromGuideNumber, luxSecondsFor } from './strengths.js'
import { byTape, toward, type Vector } from './vectors.js'

const head = [24, 36] as const

/** A table over the zoom, measured: no 2/3 stop off, and the beam let out what the head has at 35 mm, less half a stop. */
const byTable = (): { strength: number; pattern: Pattern } => {
  const strength = fromGuideNumber(58, 0)
  const out = (fromGuideNumber(36, 0) * flux(zoomed(35))) / Math.SQRT2
  const widened = bisect((wide) => strength * flux(zoomed(105, wide)) - out, 0.5, 3)
  return { strength, pattern: zoomed(105, widened) }
}

export const kitFigures = (): HandSet => {
  const eye = cameraAt(3, standing[2])
  const at = (angle: number, tape: number, height: number) => byTape(standing, angle, tape, height)
  const umbrella = (strength: number, middle: Vector): Lamp =>
    front({ middle, aim: standing, shape: disc(1.05), pattern: lambertian, strength })
  // Calibrated straight ahead at 1.2 m and a quarter of its power.
  const calibrated =
    luxSecondsFor(2 ** 2.5) /
    umbrella(1, [0, -1.2, standing[2]]).gives({ at: standing, faces: [0, -1, 0], kernel: dome })
  return {
    name: 'six units of a kit, each known by another figure; dials, shares, watt-seconds, a gel',
    plan: `plan: 1
title: A kit of all sorts
kit:
  title: All sorts
  units:
    metered: { meters: f/8 at 2 m, power: { from: 1/32, to: full, step: 0.1 stop, dial: 10 } }
    tabled: { guide-number: { 35 mm: 36 m, 105 mm: 58 m }, rated-as: measured, zoom: 24..105 mm }
    rated: { guide-number: 60 m, rated-with: standard reflector, energy: 400 Ws }
    counted: { energy: 300 Ws, reflector: 55 deg }
    calibrated: { guide-number: 40 m at 35 mm, zoom: 24..105 mm }
  modifiers:
    eight: { kind: octa, size: 120 cm, loss: 1.7 stops }
    brolly: { kind: white umbrella, size: 105 cm }
  measured:
    - { unit: calibrated, modifier: brolly, zoom: 24 mm, power: 1/4, distance: 1.2 m, reads: f/5.6, iso: 100 }
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2 m }
lights:
  key: { unit: metered, modifier: eight, power: dial 7.3, at: { angle: 30 deg left, distance: 1.5 m, height: 2.1 m } }
  fill: { unit: calibrated, modifier: brolly, power: 1/16, zoom: 24 mm, at: { angle: 15 deg right, distance: 2.2 m, height: 1.8 m } }
  kicker: { unit: rated, power: 50 %, at: { angle: 140 deg right, distance: 2 m, height: 1.9 m } }
  boxed: { role: effect, unit: rated, modifier: softbox 60 x 60 cm, power: 100 Ws, at: { left: 1 m, behind: 30 cm, height: 1.2 m }, aim: subject }
  blue: { role: backdrop, unit: counted, power: 1/8, gel: { colour: blue, loss: 2 stops }, at: { right: 1 m, before-backdrop: 90 cm, height: 1 m } }
  spot: { role: backdrop, unit: tabled, zoom: 105 mm, power: 1/32, at: { left: 1.1 m, before-backdrop: 1.5 m, height: 2.2 m } }
points: { hip: { right: 15 cm, front: 10 cm, height: 1 m } }
`,
    eye,
    setting: { fNumber: 8, iso: 100, losses: closeUp(0.085, 3) },
    points: {
      subject: { at: standing },
      hip: { at: [0.15, -0.1, 1] },
      ...seenOfBackdrop(eye, 2, 85, head),
    },
    lamps: {
      key: front({
        middle: at(30, 1.5, 2.1),
        aim: standing,
        shape: octagon(1.2),
        pattern: lambertian,
        // f/8 at 2 m on the axis, less the octa's loss; a whole number of the dial is a stop.
        strength: (luxSecondsFor(8) * 2 ** 2) / 2 ** 1.7 / 2 ** (10 - 7.3),
      }),
      fill: umbrella(calibrated / 4, at(-15, 2.2, 1.8)),
      kicker: front({
        middle: at(-140, 2, 1.9),
        aim: standing,
        shape: disc(0.18),
        pattern: beam(60),
        strength: fromGuideNumber(60) / 2,
      }),
      boxed: front({
        middle: [-1, 0.3, 1.2],
        aim: standing,
        shape: rectangle(0.6, 0.6),
        pattern: lambertian,
        strength: fromGuideNumber(60) / 2 ** 2 / 4,
      }),
      blue: front({
        middle: [1, 1.1, 1],
        aim: [0, 2, standing[2]],
        shape: disc(0.18),
        pattern: beam(55),
        strength: fromEnergy(300, 0.8, beam(55)) / 8 / 2 ** 2,
      }),
      spot: front({
        middle: [-1.1, 0.5, 2.2],
        aim: [0, 2, standing[2]],
        shape: rectangle(0.075, 0.045, 24),
        ...byTable(),
      }).times(1 / 32),
    },
    key: ['key', 'fill'],
    numeric: ['kicker', 'blue', 'spot'],
  }
}

export const readings = (): HandSet => {
  const eye = cameraAt(2.8, standing[2])
  const umbrella = (tape: number): Lamp =>
    front({
      middle: byTape(standing, 40, tape, 2),
      aim: standing,
      shape: disc(1),
      pattern: lambertian,
      strength: 1,
    })
  const asRead = umbrella(1.4)
  const found =
    luxSecondsFor(2 ** 2.5) / asRead.gives({ at: standing, faces: asRead.from(standing), kernel: dome })
  const box = front({
    middle: byTape(standing, -30, 2, 1.8),
    aim: standing,
    shape: rectangle(0.6, 0.9),
    pattern: lambertian,
    strength: 1,
  })
  const paper = front({
    middle: [-1.2, 0.8, 1.5],
    aim: [0, 2, standing[2]],
    shape: disc(0.18),
    pattern: beam(60),
    strength: 1,
  })
  const turned: Vector = [Math.sin(Math.PI / 6), -Math.cos(Math.PI / 6), 0]
  const seen = seenOfBackdrop(eye, 2, 85, head)
  return {
    name: 'a turned person; lights known by readings that were taken at other settings',
    plan: `plan: 1
title: Read before
camera: { lens: 85 mm, at: { distance: 2.8 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person, turned: 30 deg right }
backdrop: { surface: { reflectance: 0.5 }, behind: 2 m }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, power: 1/2, at: { angle: 40 deg left, distance: 2 m, height: 2 m } }
  fill: { unit: flashgun, modifier: softbox 60 x 90 cm, power: 1/8, at: { angle: 30 deg right, distance: 2 m, height: 1.8 m } }
  paper: { role: backdrop, unit: head 200 Ws, power: 1/4, at: { left: 1.2 m, before-backdrop: 1.2 m, height: 1.5 m } }
points: { shoulder: { left: 20 cm, height: 1.4 m } }
readings:
  - { at: subject, of: [key], reads: f/5.6, taken: { key: { power: 1/4, distance: 1.4 m } } }
  - { at: subject, of: [fill], reads: f/4, dome: flat, faces: camera, iso: 200, taken: { fill: { power: 1/8 } } }
  - { at: backdrop, of: [paper], reads: f/8, taken: { paper: { power: 1/16 } } }
`,
    eye,
    setting: { fNumber: 2 ** 2.5, iso: 100, losses: closeUp(0.085, 2.8) },
    points: {
      subject: { at: standing, looks: turned },
      shoulder: { at: [-0.2, 0, 1.4] },
      ...seen,
    },
    lamps: {
      key: umbrella(2).times(found * 2),
      fill: metered(box, { at: standing, faces: toward(standing, eye), kernel: flat }, luxSecondsFor(4, 200)),
      paper: metered(
        paper,
        { at: seen.backdrop!.at, faces: onTheBackdrop, kernel: flat },
        luxSecondsFor(8),
      ).times(4),
    },
    key: ['key', 'fill'],
    numeric: ['paper'],
  }
}

export const highSpeed = (): HandSet => {
  const eye = cameraAt(3, standing[2])
  const paper = { width: 2.72, height: 2.8 }
  const seen = seenOfBackdrop(eye, 1.2, 85, head, paper)
  const lamp = front({
    middle: byTape(standing, 20, 51 * 0.0254, 78 * 0.0254),
    aim: standing,
    shape: disc(0.18),
    pattern: beam(60),
    strength: 1,
  })
  return {
    name: 'high-speed sync, in feet and inches',
    plan: `plan: 1
title: Faster than sync
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/4, shutter: 1/1000, iso: 100, sync: 1/250 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1.2 m }
lights:
  key: { unit: head 600 Ws, mode: high-speed, power: full, at: { angle: 20 deg left, distance: 4 ft 3 in, height: 6'6" } }
`,
    eye,
    setting: { fNumber: 4, iso: 100, losses: closeUp(0.085, 3) },
    points: { subject: { at: standing }, ...seen },
    // Two stops on entry, two more for a quarter of the sync time.
    lamps: { key: lamp.times(fromEnergy(600, 0.8, beam(60)) / 2 ** 4) },
    key: ['key'],
    numeric: ['key'],
  }
}
