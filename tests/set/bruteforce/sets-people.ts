/** Sets with one person: boxes near and far, an octa turned off, a gridded strip, a round grid, umbrellas, a dish. */
import { disc, octagon, rectangle, ring } from './fronts.js'
import { cameraAt, type HandSet, seenOfBackdrop, standing } from './hand-set.js'
import { dome, front, metered } from './lamps.js'
import { beam, bothWays, cosine, eggCrate, honeycomb, lambertian } from './patterns.js'
import { capped, closeUp, fromEnergy, fromGuideNumber, luxSecondsFor } from './strengths.js'
import { byTape, byTapeUp, feathered, toward, type Vector } from './vectors.js'

const upright = [24, 36] as const

export const boxes = ({ fillTape = 6 } = {}): HandSet => {
  const eye = cameraAt(2.5, standing[2])
  return {
    name: 'a box at 0.4 m, a lying one at 6 m',
    plan: `plan: 1
title: Box near, box far
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 1.5 m }
lights:
  key:
    unit: flashgun
    modifier: softbox 60 x 90 cm
    power: 1/16
    at: { angle: 40 deg left, distance: 40 cm, height: 1.75 m }
  fill:
    unit: head 400 Ws
    modifier: softbox 90 x 120 cm
    lying: true
    power: 1/4
    at: { angle: 20 deg right, distance: ${fillTape} m, height: 2.4 m }
points: { hands: { front: 25 cm, left: 10 cm, height: 1.1 m }, shoulder: { right: 22 cm, height: 1.4 m } }
`,
    eye,
    setting: { fNumber: 8, iso: 100, losses: closeUp(0.085, 2.5) },
    points: {
      subject: { at: standing },
      hands: { at: [-0.1, -0.25, 1.1] },
      shoulder: { at: [0.22, 0, 1.4] },
      ...seenOfBackdrop(eye, 1.5, 85, upright),
    },
    lamps: {
      key: front({
        middle: byTape(standing, 40, 0.4, 1.75),
        aim: standing,
        shape: rectangle(0.6, 0.9, 6000),
        pattern: lambertian,
        // Two stops lost to cloth and box.
        strength: fromGuideNumber(36) / 2 ** 2 / 16,
      }),
      fill: front({
        middle: byTape(standing, -20, fillTape, 2.4),
        aim: standing,
        shape: rectangle(1.2, 0.9),
        pattern: lambertian,
        strength: fromEnergy(400, 0.5, lambertian) / 4,
      }),
    },
    key: ['key', 'fill'],
  }
}

export const octaAndStrip = (): HandSet => {
  const eye = cameraAt(3, standing[2])
  const nape: Vector = [0, 0.2, 1.55]
  const octaAt = byTape(standing, -35, 0.9, 2.1)
  const octa = front({
    middle: octaAt,
    axis: feathered(toward(octaAt, standing), 15, [0, -1, 0]),
    shape: octagon(0.9),
    pattern: lambertian,
    strength: 1,
  })
  return {
    name: 'an octa turned toward the camera, metered; a strip through an egg crate',
    plan: `plan: 1
title: Octa and gridded strip
camera: { lens: 105 mm, at: { distance: 3 m }, aperture: f/8, shutter: 1/125, iso: 200, filter: 1 stop }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1.2 m }
lights:
  key:
    unit: head 400 Ws
    modifier: octa 90 cm
    meters: f/8
    at: { angle: 35 deg right, distance: 90 cm, height: 2.1 m }
    aim: { at: subject, feather: 15 deg towards camera }
  rim:
    unit: head 200 Ws
    modifier: strip 30 x 120 cm
    grid: 40 deg
    power: 1/2
    at: { angle: 140 deg left, distance: 1.3 m, height: 1.9 m }
    aim: nape
points: { nape: { behind: 20 cm, height: 1.55 m }, elbow: { left: 25 cm, behind: 5 cm, height: 1.2 m } }
`,
    eye,
    setting: { fNumber: 8, iso: 200, losses: 1 + closeUp(0.105, 3) },
    points: {
      subject: { at: standing },
      nape: { at: nape },
      elbow: { at: [-0.25, 0.05, 1.2] },
      ...seenOfBackdrop(eye, 1.2, 105, upright),
    },
    lamps: {
      // On a meter set to the speed of the camera, that knows nothing of its filter.
      key: metered(octa, { at: standing, faces: octa.from(standing), kernel: dome }, luxSecondsFor(8, 200)),
      rim: front({
        middle: byTape(standing, 140, 1.3, 1.9),
        aim: nape,
        shape: rectangle(0.3, 1.2, 6000),
        pattern: eggCrate(lambertian, 40),
        // The crate's own loss comes from its cells alone.
        strength: fromEnergy(200, 0.5, lambertian) / 2,
      }),
    },
    key: ['key'],
    numeric: ['rim'],
  }
}

export const shotThrough = (): HandSet => {
  const eye = cameraAt(3, standing[2])
  const crown: Vector = [0, 0.1, 1.72]
  const reflector = beam(60)
  return {
    name: 'an umbrella shot through, also metered behind it; a 20° honeycomb on the hair',
    plan: `plan: 1
title: Shoot-through and hair light
camera: { lens: 85 mm, at: { distance: 3 m }, aperture: f/5.6, shutter: 1/160, iso: 200 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 2 m }
lights:
  key:
    unit: flashgun
    modifier: shoot-through umbrella 1 m
    power: 1/2
    at: { angle: 50 deg left, distance: 1.1 m, height: 2 m }
  hair:
    unit: head 200 Ws
    modifier: honeycomb 20 deg
    power: 1/8
    at: { angle: 170 deg right, distance: 1.6 m, up: 35 deg }
    aim: crown
points:
  crown: { behind: 10 cm, height: 1.72 m }
  ear: { right: 10 cm, behind: 8 cm, height: 1.6 m }
  past-the-umbrella: { left: 1.5 m, front: 1.6 m, height: 1.8 m }
`,
    eye,
    setting: { fNumber: 2 ** 2.5, iso: 200, losses: closeUp(0.085, 3) },
    points: {
      subject: { at: standing },
      crown: { at: crown },
      ear: { at: [0.1, 0.08, 1.6] },
      'past-the-umbrella': { at: [-1.5, -1.6, 1.8] },
      ...seenOfBackdrop(eye, 2, 85, upright),
    },
    lamps: {
      key: front({
        middle: byTape(standing, 50, 1.1, 2),
        aim: standing,
        shape: disc(1),
        pattern: bothWays,
        // Both halves together come near what 75 Ws can give at all.
        strength: capped(fromGuideNumber(36) / 2 ** 1.8, 75, bothWays) / 2,
      }),
      hair: front({
        middle: byTapeUp(standing, -170, 1.6, 35),
        aim: crown,
        shape: disc(0.18),
        pattern: honeycomb(reflector, 20),
        strength: fromEnergy(200, 0.6, reflector) / 8,
      }),
    },
    key: ['key'],
    numeric: ['hair'],
  }
}

export const dishCloseUp = (): HandSet => {
  const face: Vector = [0, 0, 1.2]
  const eye = cameraAt(0.6, 1.2)
  return {
    name: 'a dish over a seated face, taken close through a grey filter; a small box hot in its middle',
    plan: `plan: 1
title: Dish, close
camera: { lens: 100 mm, at: { distance: 60 cm }, aperture: f/8, shutter: 1/125, iso: 200, filter: 3 stops }
subject: { kind: person, pose: seated }
backdrop: { surface: grey paper, behind: 1 m }
lights:
  key:
    unit: head 400 Ws
    modifier: beauty dish 55 cm
    power: 1/2
    at: { angle: 10 deg left, distance: 70 cm, height: 1.7 m }
  kicker:
    unit: flashgun
    modifier: softbox 40 x 40 cm
    power: 1/4
    at: { right: 60 cm, behind: 70 cm, height: 1.5 m }
    aim: subject
points: { chin: { front: 1 cm, height: 1.09 m }, chest: { front: 5 cm, height: 80 cm } }
`,
    eye,
    setting: { fNumber: 8, iso: 200, losses: 3 + closeUp(0.1, 0.6) },
    points: {
      subject: { at: face },
      chin: { at: [0, -0.01, 1.09] },
      chest: { at: [0, -0.05, 0.8] },
      ...seenOfBackdrop(eye, 1, 100, upright),
    },
    lamps: {
      key: front({
        middle: byTape(face, 10, 0.7, 1.7),
        aim: face,
        shape: ring(0.55, 0.3 * 0.55),
        pattern: beam(80),
        strength: fromEnergy(400, 0.6, beam(80)) / 2,
      }),
      kicker: front({
        middle: [0.6, 0.7, 1.5],
        aim: face,
        shape: rectangle(0.4, 0.4),
        pattern: cosine(2),
        strength: fromGuideNumber(36) / 2 ** 1.5 / 4,
      }),
    },
    key: ['key'],
    numeric: ['key', 'kicker'],
  }
}
