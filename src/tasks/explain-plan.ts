/** What was understood of a plan: every value that the light is computed from, whether it was written or is a default. */
import type { Light, Panel, Plan } from '../language/plan.js'
import type { FilePort } from '../language/port.js'
import { readPlan } from '../language/read-plan.js'
import { flashTime } from '../light/flash-time.js'
import { photometryOf } from '../light/photometric.js'
import { printedOptimism } from '../light/strength.js'
import { makeWords } from '../rules/make-words.js'
import { durationText } from '../rules/shutter/duration-text.js'
import type { Words } from '../rules/words.js'
import type { Scene } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'
import { computeSet } from '../set/compute-set.js'
import type { ComputedSet } from '../set/computed-set.js'
import { ambientName } from '../set/transport.js'
import { pointer } from '../text/place.js'
import { nearestShutter } from '../units/marks.js'
import { inDegrees } from '../units/quantity.js'
import { chargeRows } from './explain-charge.js'
import { colourEntry, colourText, gelText } from './explain-colour.js'
import { anglesText, openingText } from './explain-photometric.js'

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

/** A row's pointer below its section, its value (undefined leaves it out), and where it is written if not there. */
type Entry = readonly [below: string, value: string | number | boolean | undefined, at?: string]

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
  const set = computeSet(plan)
  const { scene } = set
  const section = (title: string, at: string, entries: readonly Entry[]): ExplainedSection => ({
    title,
    rows: entries.flatMap(([below, value, elsewhere]): ExplainedRow[] =>
      value === undefined
        ? []
        : [
            {
              name: below.replace(/^\//, '').replaceAll('/', ' '),
              value: String(value),
              from: origin(plan, elsewhere ?? at + below),
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
            ['/shutter', words.shutter(nearestShutter(plan.ambient.shutter))],
            ['/iso', plan.ambient.iso],
            ['/flicker', plan.ambient.flicker],
            ['/colour', plan.ambient.colour === undefined ? 'not known' : colourText(set, ambientName)],
          ]),
        ]),
    ...[...plan.lights.values()].map((light) =>
      section(`light ${light.name}`, pointer('lights', light.name), lightEntries(light, set, words)),
    ),
    ...[...plan.panels.values()].map((panel) =>
      section(`panel ${panel.name}`, pointer('panels', panel.name), panelEntries(panel, scene, words)),
    ),
    section('wanted', '/wanted', wantedEntries(plan, words)),
    section(
      'points, from the subject point on the floor',
      '/points',
      [...scene.points.values()].map(({ name, at }): Entry => [`/${name}`, placeText(at, words)]),
    ),
  ]
}

const origin = (plan: Plan, at: string): string => {
  // One word may stand for a whole map: `walls: white`.
  const short = at.slice(0, at.lastIndexOf('/'))
  if (!plan.places.stated(at) && plan.places.written(short) === undefined) return 'default'
  const { file, line } = plan.places.of(at)
  return file === plan.file ? `line ${line}` : `${file}:${line}`
}

const placeText = ([right, behind, up]: Vec3, words: Words): string => {
  const aside = (metres: number, more: string, less: string): string[] =>
    Math.abs(metres) < 0.005 ? [] : [`${words.length(Math.abs(metres))} ${metres > 0 ? more : less}`]
  return [
    ...aside(right, 'right', 'left'),
    ...aside(behind, 'behind', 'in front'),
    ...(Math.abs(up) < 0.005 ? ['on the floor'] : aside(up, 'high', 'below the floor')),
  ].join(', ')
}

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
  [
    '/readout',
    camera.readout === undefined ? undefined : `${Number((camera.readout * 1000).toPrecision(3))} ms`,
  ],
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
  ['/stands-on/finish', subject.standsOn && (subject.standsOn.surface.finish ?? 'matte')],
  ['/reflectance', share(subject.reflectance)],
  ['/finish', subject.finish],
  ['/shape', mirrors(subject) ? subject.shape : undefined],
  ['/glasses', subject.glasses ? true : undefined],
]

/** What a subject is like says only what it mirrors. */
const mirrors = ({ finish }: Plan['subject']): boolean => finish === 'glossy' || finish === 'clear'

const backdropEntries = (backdrop: NonNullable<Plan['backdrop']>, words: Words): Entry[] => [
  ['/surface', `${backdrop.surface.name}, reflectance ${share(backdrop.surface.reflectance)}`],
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
    (side): Entry => [`/walls/${side}`, `reflectance ${share(room.walls[side].reflectance)}`],
  ),
  ['/ceiling', `reflectance ${share(room.ceiling.reflectance)}`],
  ['/floor', `reflectance ${share(room.floor.reflectance)}`],
  ['/mains', room.mains === undefined ? undefined : `${room.mains} Hz`],
]

const lightEntries = (light: Light, set: ComputedSet, words: Words): Entry[] => {
  const placed = set.scene.lights.get(light.name)
  return [
    ['/off', light.on ? undefined : true],
    ['/role', light.role],
    ['/unit', light.unit.guessed ? `${light.unit.name}, built in` : light.unit.name],
    ['/unit/size', openingText(light, words)],
    ['/unit/angles', anglesText(light), `${pointer('lights', light.name)}/unit`],
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
    strengthEntry(light, set, words),
    ['/zoom', light.zoom === undefined ? undefined : millimetres(light.zoom)],
    ['/grid', light.grid === undefined ? undefined : gridText(light.grid)],
    ['/gel', light.gel === undefined ? undefined : gelText(light.gel, words)],
    colourEntry(light, set),
    [
      '/at',
      placed?.front === undefined
        ? undefined
        : `${placeText(placed.front.centre, words)}${placed.distance === undefined ? '' : `; ${words.length(placed.distance)} from the ${set.plan.subject.kind === 'object' ? 'subject' : 'face'}`}`,
    ],
    ['/aim', placed === undefined ? undefined : `${aimText(light.aim)} (${placeText(placed.aim, words)})`],
    [
      '/reads',
      light.reads === undefined
        ? undefined
        : `${words.f(light.reads.reads)} at ${words.shutter(nearestShutter(light.reads.shutter))}, ISO ${light.reads.iso}`,
    ],
    ['/mode', light.mode],
    flashEntry(light, words),
    ['/trigger', light.trigger && `${light.trigger.by}${light.trigger.early ? ', fired early' : ''}`],
    ...chargeRows(light),
  ]
}

/** How long the flash lasts at its power. */
const flashEntry = ({ name, unit, power }: Light, words: Words): Entry => {
  const at = `${pointer('lights', name)}/unit`
  if (unit.kind !== 'flash' || power === undefined) return ['/lasts', undefined, at]
  const { t01, known } = flashTime(unit, power)
  return ['/lasts', `${durationText(t01, words)} (t0.1)${known === 'guessed' ? ', by a guess' : ''}`, at]
}

/** What tells how strong the light is, and two standard deviations of that. */
const strengthEntry = (light: Light, set: ComputedSet, words: Words): Entry => {
  const strength = set.strength(light.name)
  const at = pointer('lights', light.name)
  if (strength === undefined) return ['/strength', light.on ? 'not known' : undefined]
  const sure = `, ± ${(2 * strength.u).toFixed(1)} stop`
  const { readings } = set.plan
  switch (strength.from) {
    case 'reading': {
      const index = readings.findIndex(({ of }) => of === 'all' || of.includes(light.name))
      return ['/strength', `by the readings${sure}`, `/readings/${index}`]
    }
    case 'meters':
      return ['/strength', `by what it meters${sure}`, `${at}/meters`]
    case 'measured':
      return ['/strength', `by the kit's own measurement${sure}`, '/kit/measured']
    default:
      return ['/strength', `${ratingText(light, words, set.plan.lengths === 'feet')}${sure}`, `${at}/unit`]
  }
}

const ratingText = ({ unit }: Light, words: Words, feet: boolean): string => {
  if (unit.kind === 'continuous')
    return unit.strength.kind === 'photometric file'
      ? `by its photometric file, ${candela(photometryOf(unit.strength.table).reference)} at full power`
      : 'by its stated output'
  if (unit.kind !== 'flash') return 'by its reading'
  const { strength } = unit
  switch (strength.kind) {
    case 'guide-number': {
      const [first] = strength.table
      const rated =
        strength.table.length === 1 && first !== undefined
          ? `GN ${guideNumber(first.metres, feet)}${first.zoom === undefined ? '' : ` at ${millimetres(first.zoom)}`}`
          : 'GN by its table'
      return strength.ratedAs === 'print'
        ? `${rated}, ${words.howMany(printedOptimism)} off as printed`
        : `${rated}, as measured`
    }
    case 'meters':
      return `metered ${words.f(strength.reads)} at ${words.length(strength.distance)}`
    case 'energy':
      return `by its energy, ${Number(strength.energy.toPrecision(4))} Ws`
  }
}

/** To three digits. */
const candela = (value: number): string => `${Number(value.toPrecision(3))} cd`

/** To the third digit: what is computed in binary shows its tail otherwise. */
const share = (reflectance: number): number => Math.round(reflectance * 1000) / 1000

/** Guide numbers are stated in whole feet or in tenths of a metre. */
const guideNumber = (metres: number, feet: boolean): string =>
  feet ? `${Math.round(metres / 0.3048)} ft` : `${Math.round(metres * 10) / 10} m`

const panelEntries = (panel: Panel, scene: Scene, words: Words): Entry[] => [
  ['/kind', panel.kind],
  ['/size', `${words.length(panel.size.width)} x ${words.length(panel.size.height)}`],
  ['/surface', `${panel.surface.name}, reflectance ${share(panel.surface.reflectance)}`],
  ['/transmits', panel.kind === 'scrim' ? `${Math.round(panel.transmits * 100)} %` : undefined],
  [
    '/at',
    scene.panels
      .get(panel.name)
      ?.faces.map((face) => placeText(face.centre, words))
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
