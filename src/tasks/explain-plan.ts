/** What was understood of a plan: every value that the light is computed from, whether it was written or is a default. */
import type { Light, Panel, Plan } from '../language/plan.js'
import type { FilePort } from '../language/port.js'
import { readPlan } from '../language/read-plan.js'
import { makeWords } from '../rules/make-words.js'
import type { Words } from '../rules/words.js'
import { buildScene } from '../scene/build-scene.js'
import type { Scene } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'
import { pointer } from '../text/place.js'
import { inDegrees } from '../units/quantity.js'

export interface ExplainedSection {
  readonly title: string
  readonly rows: readonly ExplainedRow[]
}

export interface ExplainedRow {
  readonly name: string
  readonly value: string
  /** `line 4`, `kits/corner.kit.yaml:12`, or `default`. */
  readonly from: string
}

/** A row's pointer below its section, and its value; undefined leaves it out. */
type Entry = readonly [below: string, value: string | number | boolean | undefined]

/** Undefined where the plan cannot be understood: its mistakes say why. */
export const explainText = (
  file: string,
  text: string,
  port: FilePort,
): readonly ExplainedSection[] | undefined => {
  const { plan } = readPlan(file, text, port)
  return plan && explainPlan(plan)
}

export const explainPlan = (plan: Plan): readonly ExplainedSection[] => {
  const words = makeWords(plan)
  const scene = buildScene(plan)
  const section = (title: string, at: string, entries: readonly Entry[]): ExplainedSection => ({
    title,
    rows: entries.flatMap(([below, value]): ExplainedRow[] =>
      value === undefined
        ? []
        : [
            {
              name: below.replace(/^\//, '').replaceAll('/', ' '),
              value: String(value),
              from: origin(plan, at + below),
            },
          ],
    ),
  })
  const { backdrop, room } = plan
  return [
    section('camera', '/camera', cameraEntries(plan, scene, words)),
    section('subject', '/subject', subjectEntries(plan, words)),
    ...(backdrop === undefined ? [] : [section('backdrop', '/backdrop', backdropEntries(backdrop, words))]),
    ...(room === undefined ? [] : [section('room', '/room', roomEntries(room, words))]),
    ...(plan.ambient === undefined
      ? []
      : [
          section('ambient', '/ambient', [
            ['/reads', words.f(plan.ambient.reads)],
            ['/shutter', words.shutter(plan.ambient.shutter)],
            ['/iso', plan.ambient.iso],
          ]),
        ]),
    ...[...plan.lights.values()].map((light) =>
      section(`light ${light.name}`, pointer('lights', light.name), lightEntries(light, scene, words)),
    ),
    ...[...plan.panels.values()].map((panel) =>
      section(`panel ${panel.name}`, pointer('panels', panel.name), panelEntries(panel, scene, words)),
    ),
    section('wanted', '/wanted', wantedEntries(plan, words)),
    section(
      'points, in metres: right of the subject point, toward the backdrop, up',
      '/points',
      [...scene.points.values()].map(({ name, at }): Entry => [`/${name}`, metresOf(at)]),
    ),
  ]
}

const origin = (plan: Plan, at: string): string => {
  if (!plan.places.stated(at)) return 'default'
  const { file, line } = plan.places.of(at)
  return file === plan.file ? `line ${line}` : `${file}:${line}`
}

const metresOf = (at: Vec3): string =>
  at.map((one) => (Math.round(one * 100) / 100 + 0).toFixed(2)).join(', ')

const cameraEntries = ({ camera }: Plan, scene: Scene, words: Words): Entry[] => [
  ['/sensor', `${millimetres(camera.sensor.width)} x ${millimetres(camera.sensor.height)}`],
  ['/lens', millimetres(camera.lens)],
  ['/frame', camera.frame],
  ['/at/distance', words.length(camera.at.distance)],
  ['/at/height', words.length(camera.at.height)],
  ['/at/aside', camera.at.right === 0 ? undefined : words.length(camera.at.right)],
  ['/aim', aimText(camera.aim)],
  ['/focus', `${words.length(scene.camera.focus)} before the lens`],
  ['/aperture', words.f(camera.aperture)],
  ['/shutter', words.shutter(camera.shutterMarked)],
  ['/iso', camera.iso],
  ['/filter', words.stops(camera.filter)],
  ['/sync', words.shutter(camera.sync)],
  ['/curtain', camera.curtain === undefined ? undefined : `${camera.curtain * 1000} ms`],
  ['/shutter-kind', camera.shutterKind],
  ['/exposure', camera.exposure],
  ['/headroom', `${Number(camera.headroom.toFixed(2))} stop`],
  ['/white-balance', camera.whiteBalance === undefined ? undefined : `${camera.whiteBalance} K`],
  ['/held-by', camera.heldBy],
]

const subjectEntries = ({ subject }: Plan, words: Words): Entry[] => [
  ['/kind', subject.kind],
  ['/height', words.length(subject.height)],
  ['/pose', subject.kind === 'object' ? undefined : subject.pose],
  ['/faces-at', words.length(subject.facesAt)],
  ['/turned', subject.turnedRight === 0 ? undefined : sided(subject.turnedRight)],
  ['/width', words.length(subject.width)],
  ['/depth', words.length(subject.depth)],
  ...subject.rows.flatMap((row, index): Entry[] => [
    [`/rows/${index}/people`, row.people],
    [`/rows/${index}/spacing`, words.length(row.spacing)],
    [`/rows/${index}/faces-at`, words.length(row.facesAt)],
    [`/rows/${index}/behind`, index === 0 ? undefined : words.length(row.behind)],
  ]),
  [
    '/stands-on',
    subject.standsOn === undefined ? undefined : `${words.length(subject.standsOn.height)} high`,
  ],
  ['/reflectance', subject.reflectance],
  ['/finish', subject.finish],
]

const backdropEntries = (backdrop: NonNullable<Plan['backdrop']>, words: Words): Entry[] => [
  ['/surface', `${backdrop.surface.name}, reflectance ${backdrop.surface.reflectance}`],
  ['/width', words.length(backdrop.width)],
  ['/height', words.length(backdrop.height)],
  ['/behind', words.length(backdrop.behind)],
  ['/sweep', backdrop.sweep === undefined ? undefined : `${words.length(backdrop.sweep.front)} in front`],
  ['/finish', backdrop.finish],
]

const roomEntries = (room: NonNullable<Plan['room']>, words: Words): Entry[] => [
  ['/width', words.length(room.width)],
  ['/length', words.length(room.length)],
  ['/height', words.length(room.height)],
  ['/left-wall', words.length(room.leftWall)],
  ['/behind-backdrop', words.length(room.behindBackdrop)],
  ...(['left', 'right', 'front', 'back'] as const).map(
    (side): Entry => [`/walls/${side}`, `reflectance ${room.walls[side].reflectance}`],
  ),
  ['/ceiling', `reflectance ${room.ceiling.reflectance}`],
  ['/floor', `reflectance ${room.floor.reflectance}`],
]

const lightEntries = (light: Light, scene: Scene, words: Words): Entry[] => {
  const placed = scene.lights.get(light.name)
  return [
    ['/off', light.on ? undefined : true],
    ['/role', light.role],
    ['/unit', light.unit.guessed ? `${light.unit.name}, built in` : light.unit.name],
    [
      '/modifier',
      light.modifier === undefined
        ? undefined
        : `${light.modifier.name}, ${words.howMany(light.modifier.loss)} of loss`,
    ],
    ['/power', light.power === undefined ? undefined : words.power(light.power)],
    [
      '/meters',
      light.meters === undefined
        ? undefined
        : `${words.f(light.meters.reads)}${light.meters.at === undefined ? '' : ` at ${light.meters.at}`}`,
    ],
    ['/zoom', light.zoom === undefined ? undefined : millimetres(light.zoom)],
    ['/grid', light.grid === undefined ? undefined : gridText(light.grid)],
    ['/gel', light.gel === undefined ? undefined : `${words.howMany(light.gel.loss)} of loss`],
    [
      '/at',
      placed?.front === undefined
        ? undefined
        : `${metresOf(placed.front.centre)}${placed.distance === undefined ? '' : `; ${words.length(placed.distance)} from the face`}`,
    ],
    ['/aim', placed === undefined ? undefined : `${aimText(light.aim)} (${metresOf(placed.aim)})`],
    [
      '/reads',
      light.reads === undefined
        ? undefined
        : `${words.f(light.reads.reads)} at ${words.shutter(light.reads.shutter)}, ISO ${light.reads.iso}`,
    ],
    ['/mode', light.mode],
  ]
}

const panelEntries = (panel: Panel, scene: Scene, words: Words): Entry[] => [
  ['/kind', panel.kind],
  ['/size', `${words.length(panel.size.width)} x ${words.length(panel.size.height)}`],
  ['/surface', `${panel.surface.name}, reflectance ${panel.surface.reflectance}`],
  ['/transmits', panel.kind === 'scrim' ? `${Math.round(panel.transmits * 100)} %` : undefined],
  [
    '/at',
    scene.panels
      .get(panel.name)
      ?.faces.map((face) => metresOf(face.centre))
      .join('; '),
  ],
]

const wantedEntries = ({ wanted }: Plan, words: Words): Entry[] => [
  ['/framing', wanted.framing],
  ['/backdrop', wanted.backdrop === undefined ? undefined : toneText(wanted.backdrop)],
  [
    '/backdrop-over-key',
    wanted.backdropOverKey &&
      `${words.stops(wanted.backdropOverKey.from)} to ${words.stops(wanted.backdropOverKey.to)}`,
  ],
  ['/backdrop-even', wanted.backdropEven && words.howMany(wanted.backdropEven)],
  ['/floor', wanted.floor],
  ['/exposure', words.stops(wanted.exposure)],
  ['/ratio', wanted.ratio && `${wanted.ratio.kind} ${wanted.ratio.ratio}:1`],
  ['/shadow', wanted.shadow],
  [
    '/sharp',
    wanted.sharp && (wanted.sharp.what === 'depth' ? words.length(wanted.sharp.depth) : wanted.sharp.what),
  ],
  ['/motion', wanted.motion],
  [
    '/ambient',
    typeof wanted.ambient === 'string'
      ? wanted.ambient
      : `${words.howMany(wanted.ambient.underKey)} under the key`,
  ],
]

const toneText = (backdrop: NonNullable<Plan['wanted']['backdrop']>): string =>
  backdrop.tone === 'range'
    ? `${backdrop.name}: sRGB ${backdrop.from} to ${backdrop.to}`
    : backdrop.tone === 'colour'
      ? backdrop.colour
      : backdrop.tone

const gridText = (grid: NonNullable<Light['grid']>): string =>
  grid.kind === 'egg-crate'
    ? `egg crate, cuts off at ${Math.round(inDegrees(grid.cutOff))} deg`
    : `honeycomb, half its peak at ${Math.round(inDegrees(grid.halfPeak))} deg`

const aimText = (aim: Light['aim']): string => {
  if (aim.at === 'level') return 'level'
  const at =
    aim.at === 'point'
      ? aim.point
      : aim.at === 'panel'
        ? aim.panel
        : aim.at === 'ceiling'
          ? `ceiling above ${aim.above}`
          : aim.wall
  return aim.feather === undefined
    ? at
    : `${at}, feathered ${Math.round(inDegrees(aim.feather.by))} deg towards ${aim.feather.towards}`
}

const millimetres = (metres: number): string => `${Math.round(metres * 10000) / 10} mm`
const sided = (right: number): string =>
  `${Math.round(Math.abs(inDegrees(right)))} deg ${right > 0 ? 'right' : 'left'}`
