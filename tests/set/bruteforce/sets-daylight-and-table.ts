/** Sets with continuous light, and one on a table. */
import { disc, rectangle } from './fronts.js'
import { cameraAt, type HandSet, seenOfBackdrop, standing } from './hand-set.js'
import { dome, front, metered, parallel, upperHalf } from './lamps.js'
import { beam, lambertian } from './patterns.js'
import { closeUp, fromEnergy, fromGuideNumber, luxSecondsFor } from './strengths.js'
import { byTape, byTapeUp, toward, type Vector } from './vectors.js'

export const windowKey = (): HandSet => {
  const face: Vector = [0, 0, 1.2]
  const eye: Vector = [0.3, -2.4, 1.3]
  const glass = front({
    middle: [-1.8, 0.2, 1.4],
    axis: [1, 0, 0],
    shape: rectangle(1.2, 1.5),
    pattern: lambertian,
    strength: 1,
  })
  // Metered at 1/64 s (marked 1/60), taken at 1/32 s (marked 1/30).
  const read = metered(glass, { at: face, faces: glass.from(face), kernel: dome }, luxSecondsFor(2 ** 1.5))
  const still = metered(upperHalf(1), { at: face, faces: toward(face, eye), kernel: dome }, luxSecondsFor(4))
  // The reading of all that is there with flashes off holds what the window gives.
  const rest = still.times(
    1 - read.gives({ at: face, faces: toward(face, eye), kernel: dome }) / luxSecondsFor(4),
  )
  return {
    name: 'a window as the key of a seated person, no flash; the camera aside',
    plan: `plan: 1
title: By the window
ambient: { reads: f/4, shutter: 1/60, iso: 100 }
camera: { lens: 50 mm, frame: vertical, at: { distance: 2.4 m, height: 1.3 m, aside: 30 cm right }, aim: level, focus: 2.4 m, aperture: f/2.8, shutter: 1/30, iso: 100 }
subject: { kind: person, pose: seated }
backdrop: { surface: grey paper, behind: 1.4 m, width: 2 m, height: 2.2 m }
lights:
  window:
    role: key
    unit: window
    size: 120 x 150 cm
    at: { left: 1.8 m, behind: 20 cm, height: 1.4 m }
    faces: right
    reads: f/2.8
    shutter: 1/60
    iso: 100
points: { lap: { front: 25 cm, height: 75 cm } }
`,
    eye,
    setting: { fNumber: 2 ** 1.5, iso: 100, losses: closeUp(0.05, 2.4) },
    points: {
      subject: { at: face },
      lap: { at: [0, -0.25, 0.75] },
      ...seenOfBackdrop(eye, 1.4, 50, [24, 36], { width: 2, height: 2.2 }),
    },
    lamps: { window: read.times(2), ambient: rest.times(2) },
    key: ['window'],
  }
}

export const sunBehind = (): HandSet => {
  const eye = cameraAt(3.5, standing[2])
  const inCamera = { at: standing, faces: toward(standing, eye), kernel: dome }
  const sun = parallel(-150, 8, luxSecondsFor(2 ** 2.5))
  // With the flash off, a meter at the face gets the sun and the sky together.
  const sky = metered(upperHalf(1), inCamera, luxSecondsFor(4) - sun.gives(inCamera))
  return {
    name: 'sun from behind, a flash held against it, the open sky',
    plan: `plan: 1
title: Flash against the sun
ambient: { reads: f/4, shutter: 1/1000, iso: 100 }
camera: { lens: 85 mm, at: { distance: 3.5 m }, aperture: f/8, shutter: 1/250, iso: 50, sync: 1/250, filter: 2 stops }
subject: { kind: person }
lights:
  key:
    unit: flashgun
    modifier: softbox 60 x 60 cm
    power: full
    at: { angle: 25 deg left, distance: 1.1 m, height: 1.9 m }
  sun:
    role: rim
    unit: sun
    at: { angle: 150 deg right, up: 8 deg }
    reads: f/5.6
    shutter: 1/1000
    iso: 100
points:
  shoulder: { right: 20 cm, behind: 5 cm, height: 1.45 m }
  ground: { right: 50 cm, front: 50 cm, height: 0 m }
`,
    eye,
    setting: { fNumber: 8, iso: 50, losses: 2 + closeUp(0.085, 3.5) },
    points: {
      subject: { at: standing },
      shoulder: { at: [0.2, 0.05, 1.45] },
      ground: { at: [0.5, -0.5, 0], out: [0, 0, 1] },
    },
    lamps: {
      key: front({
        middle: byTape(standing, 25, 1.1, 1.9),
        aim: standing,
        shape: rectangle(0.6, 0.6),
        pattern: lambertian,
        strength: fromGuideNumber(36) / 2 ** 2,
      }),
      // Read at 1/1024 s, four times shorter than 1/256 s.
      sun: sun.times(4),
      ambient: sky.times(4),
    },
    key: ['key'],
  }
}

export const ambientAndLamps = (): HandSet => {
  const eye = cameraAt(2.8, standing[2])
  return {
    name: 'room light from above, a lamp of known lumens, a flash',
    plan: `plan: 1
title: Lamp, flash and the room
ambient: { reads: f/2.8, shutter: 1/60, iso: 400, colour: 3000 K }
camera: { lens: 70 mm, at: { distance: 2.8 m }, aperture: f/4, shutter: 1/60, iso: 400 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1.5 m }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, power: 1/32, at: { angle: 40 deg right, distance: 1.5 m, height: 2 m } }
  fill:
    unit: { kind: continuous, lumens: 4000 lm, beam: 120 deg, size: 60 x 30 cm }
    at: { left: 1.2 m, front: 1 m, height: 1.5 m }
points:
  knee: { front: 30 cm, height: 50 cm }
  carpet: { left: 30 cm, front: 60 cm, height: 0 m }
`,
    eye,
    setting: { fNumber: 4, iso: 400, losses: closeUp(0.07, 2.8) },
    points: {
      subject: { at: standing },
      knee: { at: [0, -0.3, 0.5] },
      carpet: { at: [-0.3, -0.6, 0], out: [0, 0, 1] },
      ...seenOfBackdrop(eye, 1.5, 70, [24, 36]),
    },
    lamps: {
      key: front({
        middle: byTape(standing, -40, 1.5, 2),
        aim: standing,
        shape: disc(1),
        pattern: lambertian,
        strength: fromGuideNumber(36) / 2 ** 2.2 / 32,
      }),
      // A beam of 120° between half peaks is Lambertian: I = Φ/π, over 1/64 s.
      fill: front({
        middle: [-1.2, -1, 1.5],
        aim: standing,
        shape: rectangle(0.6, 0.3),
        pattern: lambertian,
        strength: 4000 / Math.PI / 64,
      }),
      ambient: metered(
        upperHalf(1),
        { at: standing, faces: toward(standing, eye), kernel: dome },
        luxSecondsFor(2 ** 1.5, 400),
      ),
    },
    key: ['key', 'fill'],
  }
}

export const onTheTable = (): HandSet => {
  const middle: Vector = [0, 0, 0.95]
  const eye = cameraAt(1.4, 1.02)
  return {
    name: 'an object on a table: a strip up over it, a box that stands partly under the table top',
    plan: `plan: 1
title: Jar on a table
camera: { lens: 105 mm, frame: vertical, at: { distance: 1.4 m, height: 1.02 m }, focus: 1.4 m, aperture: f/11, shutter: 1/125, iso: 100 }
subject:
  kind: object
  height: 30 cm
  width: 8 cm
  depth: 8 cm
  stands-on: { height: 80 cm, surface: white board, size: 1.2 x 1 m }
backdrop: { surface: grey paper, behind: 1.1 m, width: 1.35 m, height: 2 m }
lights:
  key:
    unit: head 200 Ws
    modifier: strip 30 x 120 cm
    lying: true
    power: 1/4
    at: { angle: 150 deg left, distance: 80 cm, up: 60 deg }
  fill:
    unit: head 200 Ws
    modifier: softbox 60 x 90 cm
    power: 1/8
    at: { right: 70 cm, front: 10 cm, height: 10 cm over table }
  paper:
    role: backdrop
    unit: head 200 Ws
    modifier: standard reflector
    power: 1/16
    at: { left: 40 cm, before-backdrop: 60 cm, height: 40 cm }
points:
  mark: { right: 10 cm, front: 15 cm, height: 0 cm over table }
  corner: { left: 45 cm, behind: 30 cm, height: 0 cm over table }
  lid: { height: 31 cm over table, behind: 0 cm }
`,
    eye,
    setting: { fNumber: 2 ** 3.5, iso: 100, losses: closeUp(0.105, 1.4) },
    points: {
      subject: { at: [0, -0.04, 0.95] },
      mark: { at: [0.1, -0.15, 0.8], out: [0, 0, 1] },
      corner: { at: [-0.45, 0.3, 0.8], out: [0, 0, 1] },
      lid: { at: [0, 0, 1.11] },
      // Past the far edge of the table, half a metre behind the jar and 22 cm under the lens.
      ...seenOfBackdrop(eye, 1.1, 105, [24, 36], { width: 1.35, height: 2 }, 1.02 - (0.22 * 2.5) / 1.9),
    },
    lamps: {
      key: front({
        middle: byTapeUp(middle, 150, 0.8, 60),
        aim: [0, -0.04, 0.95],
        shape: rectangle(1.2, 0.3, 4000),
        pattern: lambertian,
        strength: fromEnergy(200, 0.5, lambertian) / 4,
      }),
      fill: front({
        middle: [0.7, -0.1, 0.9],
        aim: [0, -0.04, 0.95],
        shape: rectangle(0.6, 0.9, 6000),
        pattern: lambertian,
        strength: fromEnergy(200, 0.5, lambertian) / 8,
      }),
      paper: front({
        middle: [-0.4, 0.5, 0.4],
        aim: [0, 1.1, 0.95],
        shape: disc(0.18),
        pattern: beam(60),
        strength: fromEnergy(200, 0.8, beam(60)) / 16,
      }),
    },
    key: ['key', 'fill'],
    numeric: ['paper'],
  }
}
