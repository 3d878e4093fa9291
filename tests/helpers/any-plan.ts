/** Random valid plans (fast-check): every kind of subject, placement, aim, panel and room within the language's limits. */
import fc from 'fast-check'
import type { Aim, Facing, Light, Panel, Placement, Plan } from '../../src/language/plan.js'
import {
  flashgun,
  head,
  makeLight,
  makeModifier,
  makePanel,
  makePlan,
  offsets,
  softbox,
  sun,
  surface,
  tape,
  windowUnit,
} from './make-plan.js'

/** Ordinary lengths, and now and then nothing at all or the language's limit of a kilometre. */
const length = (from: number, to: number) =>
  fc.oneof(
    { weight: 20, arbitrary: fc.double({ min: from, max: to, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(0, 1e-9, 1000) },
  )
const degrees = (most: number) =>
  fc.oneof(fc.constantFrom(-most, -90, 0, 90, most), fc.double({ min: -most, max: most, noNaN: true }))

const points = [
  'subject',
  'subject-left',
  'subject-right',
  'subject-back',
  'hair',
  'backdrop',
  'backdrop-left',
  'backdrop-top',
  'floor',
  'camera',
  'row-1-left',
  'hands',
  'panel-1',
]

const placement: fc.Arbitrary<Placement> = fc.oneof(
  fc
    .record({
      angle: degrees(180),
      distance: length(0.3, 6),
      height: fc.option(length(0, 3), { nil: undefined }),
      up: fc.option(degrees(90), { nil: undefined }),
      table: fc.boolean(),
    })
    .map(({ angle, distance, height, up, table }) =>
      tape(angle, distance, {
        ...(height === undefined ? {} : table ? { overTable: height } : { height }),
        ...(up === undefined ? {} : { upDegrees: up }),
      }),
    ),
  fc
    .record({
      right: degrees(4),
      behind: degrees(4),
      beforeBackdrop: fc.option(length(0.2, 3), { nil: undefined }),
      height: fc.option(length(0, 3), { nil: undefined }),
    })
    .map(({ right, behind, beforeBackdrop, height }) =>
      offsets({
        right,
        behind,
        ...(beforeBackdrop === undefined ? {} : { beforeBackdrop }),
        ...(height === undefined ? {} : { height }),
      }),
    ),
)

const feather = fc.option(
  fc.record({
    by: fc.double({ min: 0, max: Math.PI, noNaN: true }),
    towards: fc.constantFrom('left', 'right', 'up', 'down', 'camera', 'backdrop'),
  }),
  { nil: undefined },
)
const wall = fc.constantFrom('left-wall', 'right-wall', 'front-wall', 'back-wall', 'ceiling', 'floor')

const aim: fc.Arbitrary<Aim> = fc.oneof(
  fc.constant({ at: 'level' }),
  fc.record({ at: fc.constant('point'), point: fc.constantFrom(...points), feather }),
  fc.record({ at: fc.constant('ceiling'), above: fc.constantFrom(...points), feather }),
  fc.record({ at: fc.constant('wall'), wall, feather }),
  fc.record({ at: fc.constant('panel'), panel: fc.constantFrom('panel-0', 'panel-1'), feather }),
) as fc.Arbitrary<Aim>

const faces: fc.Arbitrary<Facing> = fc.oneof(
  fc.record({
    kind: fc.constant('side'),
    side: fc.constantFrom('left', 'right', 'camera', 'backdrop', 'up', 'down'),
  }),
  fc.record({ kind: fc.constant('point'), point: fc.constantFrom(...points) }),
  fc.record({ kind: fc.constant('angle'), angleLeft: degrees(Math.PI) }),
) as fc.Arbitrary<Facing>

const light = fc
  .record({
    role: fc.constantFrom('key', 'fill', 'rim', 'hair', 'kicker', 'backdrop', 'effect'),
    unit: fc.constantFrom(flashgun, head(400), sun, windowUnit),
    modifier: fc.constantFrom(undefined, makeModifier(), softbox(0.6, 0.9)),
    at: fc.oneof(
      { weight: 6, arbitrary: placement },
      { weight: 1, arbitrary: fc.constant({ by: 'camera' }) },
    ),
    aim: fc.option(aim, { nil: undefined }),
    faces: fc.option(faces, { nil: undefined }),
    lying: fc.boolean(),
  })
  .map(
    (made) => (name: string) =>
      makeLight(name, {
        ...made,
        aim: made.aim ?? makeLight('', { role: made.role as Light['role'] }).aim,
      } as object),
  )

const panel = fc
  .record({
    kind: fc.constantFrom('flag', 'reflector', 'v-flat', 'scrim'),
    size: fc.record({ width: length(0.1, 2), height: length(0.1, 2.4) }),
    at: placement,
    faces,
    opening: fc.option(fc.double({ min: 0, max: Math.PI, noNaN: true }), { nil: undefined }),
  })
  .map((made) => (name: string) => makePanel(name, made as Partial<Panel>))

const row = fc.record({
  people: fc.integer({ min: 1, max: 5 }),
  spacing: length(0.3, 1),
  facesAt: length(0.3, 2),
  behind: length(0.2, 1),
})

const subject = fc.record({
  kind: fc.constantFrom('person', 'group', 'object'),
  pose: fc.constantFrom('standing', 'seated', 'lying'),
  height: length(0.05, 2),
  facesAt: length(0.02, 1.9),
  width: length(0.02, 0.6),
  depth: length(0.02, 0.4),
  turnedRight: degrees(Math.PI),
  rows: fc.array(row, { maxLength: 3 }),
  standsOn: fc.option(
    fc.record({
      height: length(0.2, 1),
      surface: fc.constant(surface('white paper', 0.9)),
      width: length(0.2, 2),
      depth: length(0.2, 2),
    }),
    { nil: undefined },
  ),
})

const backdrop = fc.option(
  fc.record({
    width: length(0.5, 4),
    height: length(0.5, 4),
    behind: length(0.1, 6),
    sweep: fc.option(fc.record({ front: length(0, 3) }), { nil: undefined }),
    sky: fc.option(
      fc.constant({ reads: 8, shutter: 0.001, iso: 100, kind: 'reflected' as const, colour: undefined }),
      { nil: undefined, freq: 5 },
    ),
  }),
  { nil: undefined },
)

const camera = fc.record({
  lens: fc.double({ min: 0.012, max: 0.4, noNaN: true }),
  frame: fc.constantFrom('vertical', 'horizontal'),
  at: fc.record({ distance: length(0.3, 9), height: length(0, 4), right: degrees(2) }),
  aim: fc.oneof(fc.constant({ at: 'level' }), aim),
  focus: fc.oneof(
    fc.constant({ on: 'subject' }),
    fc.record({ on: fc.constant('point'), point: fc.constantFrom(...points) }),
    fc.record({ on: fc.constant('row'), row: fc.integer({ min: 1, max: 4 }) }),
    fc.record({ on: fc.constant('distance'), distance: length(0.1, 9) }),
  ),
})

const room = fc.option(
  fc.record({
    width: length(2, 9),
    length: length(3, 12),
    height: length(2, 5),
    leftWall: length(0, 4),
    behindBackdrop: length(0, 3),
  }),
  { nil: undefined },
)

export const anyPlan: fc.Arbitrary<Plan> = fc
  .record({
    camera,
    subject,
    backdrop,
    room,
    lights: fc.array(light, { maxLength: 5 }),
    panels: fc.array(panel, { maxLength: 3 }),
    hands: placement,
    framing: fc.constantFrom(undefined, 'face', 'head and shoulders', 'three-quarter', 'full length'),
    stated: fc.boolean(),
  })
  .map((made) =>
    makePlan({
      camera: made.camera as object,
      subject: made.subject as object,
      backdrop: made.backdrop ?? 'none',
      ...(made.room === undefined ? {} : { room: made.room }),
      lights: made.lights.map((one, i) => one(`light-${i}`)),
      panels: made.panels.map((one, i) => one(`panel-${i}`)),
      points: new Map([['hands', made.hands as object]]) as never,
      wanted: { framing: made.framing as never },
      stated: made.stated ? 'all' : [],
    }),
  )
