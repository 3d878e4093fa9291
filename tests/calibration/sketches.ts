/** Twenty varied sets without powers: headshots on white, grey and black, groups, products; one to four lights. */
import { type Gear, gear, kit } from './gear.js'

export type Role = 'key' | 'fill' | 'rim' | 'backdrop'

export interface LightSketch {
  readonly name: string
  readonly role: Role
  readonly gear: Gear
  readonly at: string
  /** The plan says too what it is to meter. */
  readonly meters: boolean
}

export interface Sketch {
  readonly title: string
  readonly subject: string
  readonly backdrop: string
  readonly lens: number
  readonly distance: number
  readonly aperture: string
  readonly iso: number
  /** Lit side over shadow side, where there is a fill. */
  readonly ratio: number
  /** Where the middle of the backdrop is meant to be, stops over the camera; undefined without lights of its own. */
  readonly backdropLevel: number | undefined
  /** Stops that the ambient is meant to lie under the key; undefined: dark. */
  readonly ambientUnder: number | undefined
  readonly wanted: string
  /** In the order in which they are metered. */
  readonly lights: readonly LightSketch[]
  readonly kit: string | undefined
}

type Where = readonly [angle: string, distance: number, height: number]

const tape = ([angle, distance, height]: Where): string =>
  `{ angle: ${angle}, distance: ${distance} m, height: ${height} m }`

const key = (of: Gear, where: Where, meters = false): LightSketch => ({
  name: 'key',
  role: 'key',
  gear: of,
  at: tape(where),
  meters,
})
const fill = (of: Gear, where: Where): LightSketch => ({
  name: 'fill',
  role: 'fill',
  gear: of,
  at: tape(where),
  meters: false,
})
const rim = (of: Gear, where: Where): LightSketch => ({
  name: 'rim',
  role: 'rim',
  gear: of,
  at: tape(where),
  meters: false,
})
const paper = (of: Gear, side: 'left' | 'right', meters = false): LightSketch => ({
  name: `paper-${side}`,
  role: 'backdrop',
  gear: of,
  at: `{ ${side}: 1.7 m, before-backdrop: 2.2 m, height: 1.5 m }`,
  meters,
})
const papers = (of: Gear, meters = false): readonly LightSketch[] => [
  paper(of, 'left', meters),
  paper(of, 'right', meters),
]

const white = { backdrop: '{ surface: white paper, width: 2.72 m, behind: 2.6 m }', backdropLevel: 0.85 }
/** The house lets it go higher: room on both sides. */
const roomy = { ...white, backdropLevel: 1.2, wanted: '{ backdrop: white, backdrop-over-key: 0..2 stops }' }
const grey = {
  backdrop: '{ surface: grey paper, width: 2.72 m, behind: 2.2 m }',
  wanted: '{ backdrop: grey, backdrop-even: 2 stops }',
}
const black = {
  backdrop: '{ surface: black paper, width: 2.72 m, behind: 3 m }',
  backdropLevel: undefined,
  wanted: '{ backdrop: black }',
}

const person = {
  subject: '{ kind: person, reflectance: 0.35 }',
  lens: 85,
  distance: 2.6,
  aperture: 'f/8',
  iso: 100,
  ratio: 3,
  backdropLevel: undefined,
  ambientUnder: undefined,
  wanted: '{ backdrop: white }',
  kit: undefined,
}
const group = {
  ...person,
  subject: '{ kind: group, rows: [{ people: 3, spacing: 50 cm, faces-at: 1.2 m }] }',
  lens: 50,
  distance: 4.5,
  aperture: 'f/5.6',
  iso: 200,
}
/** A wall: the picture of a group is wider than a roll. */
const wall = (surface: string) => ({
  backdrop: `{ surface: ${surface}, width: 6 m, height: 3.2 m, behind: 1.8 m }`,
})

const product = {
  ...person,
  subject:
    '{ kind: object, height: 30 cm, width: 12 cm, depth: 12 cm, stands-on: { height: 80 cm, surface: grey paper, size: 1 x 1 m } }',
  lens: 105,
  distance: 2,
  aperture: 'f/8',
}

const gunThrough = gear('flashgun', 'shoot-through umbrella 1 m')
const headBox = gear('head 400 Ws', 'softbox 60 x 90 cm')
const headOcta = gear('head 600 Ws', 'octa 90 cm')
const headUmbrella = gear('head 200 Ws', 'white umbrella 1 m')
const bareHead = gear('head 200 Ws')
const dish = gear('head 400 Ws', 'beauty dish 55 cm')
const strip = gear('head 200 Ws', 'strip 30 x 120 cm')
const ownBox = gear('own-head', 'own-box')
const ownBare = gear('own-head')
const ownUmbrella = gear('own-gun', 'own-umbrella')

const evenHead = gear('head 400 Ws', 'white umbrella 1 m')
const ownEven = gear('own-head', 'own-umbrella')

export const sketches: readonly Sketch[] = [
  {
    ...person,
    ...white,
    title: 'White, flashguns',
    wanted: '{ backdrop: white, backdrop-over-key: 0..1.5 stops }',
    backdropLevel: 1.1,
    iso: 400,
    lights: [key(gunThrough, ['30 deg left', 1.3, 2]), ...papers(gunThrough)],
  },
  {
    ...person,
    ...roomy,
    title: 'White, heads',
    iso: 160,
    lights: [key(headBox, ['25 deg right', 1.4, 2], true), ...papers(evenHead, true)],
  },
  {
    ...person,
    ...roomy,
    title: 'White, one paper light',
    wanted: '{ backdrop: white, backdrop-over-key: 0..2.5 stops }',
    backdropLevel: 1.8,
    iso: 250,
    lights: [
      key(headOcta, ['20 deg left', 1.5, 2]),
      paper(gear('head 600 Ws', 'white umbrella 1 m'), 'right'),
    ],
  },
  {
    ...person,
    ...white,
    title: 'White, own gear',
    iso: 320,
    backdropLevel: 1.1,
    wanted: '{ backdrop: white, backdrop-over-key: 0..1.5 stops }',
    kit,
    lights: [key(ownBox, ['30 deg left', 1.3, 2], true), ...papers(ownEven, true)],
  },
  {
    ...person,
    ...roomy,
    title: 'White with a fill',
    iso: 160,
    wanted: '{ backdrop: white, backdrop-over-key: 0..2 stops, ratio: { lit-to-shadow: "3:1" } }',
    lights: [
      key(headBox, ['40 deg left', 1.4, 2]),
      ...papers(evenHead),
      fill(headOcta, ['10 deg right', 2, 1.6]),
    ],
  },
  {
    ...person,
    ...grey,
    backdropLevel: 0,
    title: 'Grey, one light on it',
    ambientUnder: 6,
    lights: [key(headOcta, ['30 deg left', 1.4, 2]), paper(headUmbrella, 'left')],
  },
  {
    ...person,
    ...grey,
    title: 'Grey, key alone',
    backdrop: '{ surface: grey paper, width: 2.72 m, behind: 1.5 m }',
    lights: [key(dish, ['15 deg left', 1.4, 2.1])],
  },
  {
    ...person,
    ...grey,
    backdropLevel: -0.5,
    title: 'Clamshell on grey',
    kit,
    wanted: '{ backdrop: grey, backdrop-even: 2 stops, ratio: { lit-to-shadow: "2:1" } }',
    ratio: 2,
    lights: [
      key(ownBox, ['0 deg left', 1.2, 2.2]),
      paper(ownBare, 'right'),
      fill(ownBox, ['0 deg left', 1.2, 0.9]),
    ],
  },
  {
    ...person,
    ...grey,
    backdropLevel: 0,
    title: 'Grey, four lights',
    wanted: '{ backdrop: grey, backdrop-even: 2 stops, ratio: { lit-to-shadow: "4:1" } }',
    ratio: 4,
    ambientUnder: 5.5,
    lights: [
      key(headBox, ['35 deg right', 1.3, 2]),
      paper(bareHead, 'left'),
      fill(headUmbrella, ['10 deg left', 2.2, 1.7]),
      rim(strip, ['140 deg left', 1.6, 1.9]),
    ],
  },
  {
    ...person,
    ...black,
    title: 'Black, dish',
    ambientUnder: 6,
    lights: [key(dish, ['30 deg left', 1.1, 2])],
  },
  {
    ...person,
    ...black,
    title: 'Black, flashgun and rim',
    iso: 400,
    lights: [
      key(gunThrough, ['40 deg right', 1.1, 1.9], true),
      rim(gear('flashgun'), ['150 deg left', 1.8, 2]),
    ],
  },
  {
    ...person,
    ...black,
    title: 'Black, key and fill',
    wanted: '{ backdrop: black, ratio: { lit-to-shadow: "4:1" } }',
    ratio: 4,
    lights: [key(headBox, ['50 deg left', 1, 1.9]), fill(headOcta, ['10 deg right', 1.6, 1.6])],
  },
  {
    ...group,
    ...white,
    backdropLevel: 1.95,
    wanted: '{ backdrop: white, backdrop-over-key: 0..2.5 stops }',
    ...wall('white paint'),
    title: 'Three on white',
    lights: [key(headOcta, ['15 deg left', 3.5, 2.3]), ...papers(headUmbrella)],
  },
  {
    ...group,
    ...grey,
    ...wall('grey paper'),
    title: 'Three on grey, key alone',
    iso: 800,
    ambientUnder: 5.5,
    lights: [key(gunThrough, ['10 deg right', 3.2, 2.2], true)],
  },
  {
    ...group,
    ...grey,
    backdropLevel: -0.5,
    ...wall('grey paper'),
    title: 'Three on grey, key and fill',
    kit,
    wanted: '{ backdrop: grey, backdrop-even: 2 stops, ratio: { lit-to-shadow: "2:1" } }',
    ratio: 2,
    lights: [
      key(ownUmbrella, ['30 deg left', 3, 2.2]),
      paper(ownBare, 'right'),
      fill(ownUmbrella, ['10 deg right', 3.5, 1.9]),
    ],
  },
  {
    ...group,
    ...grey,
    backdropLevel: 0,
    ...wall('grey paper'),
    title: 'Three on grey, close umbrella',
    lights: [key(headUmbrella, ['35 deg left', 3.2, 2.1]), paper(bareHead, 'right')],
  },
  {
    ...product,
    ...roomy,
    title: 'Product on white',
    backdrop: '{ surface: white paper, width: 2.72 m, behind: 1.8 m }',
    lights: [key(headBox, ['50 deg left', 1, 1.3]), ...papers(evenHead)],
  },
  {
    ...product,
    ...grey,
    title: 'Product on grey',
    backdropLevel: 0,
    ambientUnder: 6,
    lights: [
      key(strip, ['70 deg left', 0.9, 1.2], true),
      paper(bareHead, 'right', true),
      fill(headOcta, ['30 deg right', 1.4, 1.3]),
    ],
  },
  {
    ...product,
    ...black,
    title: 'Product on black',
    kit,
    lights: [key(ownBox, ['60 deg right', 0.9, 1.3], true), rim(ownBare, ['140 deg left', 1.2, 1.4])],
  },
  {
    ...product,
    ...grey,
    title: 'Product, one flashgun',
    backdrop: '{ surface: grey paper, width: 2.72 m, behind: 1.2 m }',
    iso: 400,
    lights: [key(ownUmbrella, ['40 deg left', 1.1, 1.4])],
    kit,
  },
]
