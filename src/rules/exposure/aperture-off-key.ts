import type { Light } from '../../language/plan.js'
import { circleOfConfusion, depthOfField } from '../../picture/lens.js'
import { extension } from '../../scene/camera.js'
import { dot, subtract, unit } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { pointer } from '../../text/place.js'
import type { FNumber } from '../../units/quantity.js'
import { markedAperture, markedSpeedOver, markedSpeedUnder, turn, turnLight } from '../gear.js'
import { evenedOut, keyMissing } from '../known.js'
import { lightPointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'

const keyAt = (
  meters: string,
  aperture: string,
  wanted = 'framing: head and shoulders',
  angle = '30 deg left',
): string => `plan: 1
title: Key against the aperture
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 200 Ws, modifier: octa 90 cm, power: 1/4, at: { angle: ${angle}, distance: 1.4 m, height: 2 m } }
readings:
  - { at: subject, of: [key], reads: ${meters}, faces: camera, taken: { key: { power: 1/4, distance: 1.4 m } } }
wanted: { ${wanted} }
`

interface OffKey extends Evidence {
  /** Stops that the subject comes out over what is wanted; negative is under. */
  readonly off: number
  readonly reads: FNumber
  /** The f-number that places the subject as wanted. */
  readonly exact: FNumber
}

export const apertureOffKey = rule<OffKey>({
  id: 'aperture-off-key',
  family: 'exposure',
  level: 'warning',
  finds: 'an aperture that is not what the key reads at the face',
  limits: {
    note: {
      value: 1 / 3,
      unit: 'stop',
      says: 'off the key reading, counting what is wanted over or under: note over this',
    },
    warning: { value: 1 / 2, unit: 'stop', says: 'off the key reading: warning over this' },
    'key-angle': {
      value: 80,
      unit: 'deg',
      says: 'between key and camera; a key from further round is a rim',
    },
  },
  why: 'Key and fill together set the exposure. A third is visible beside the right frame, half a stop costs skin tones that no slider brings back.',
  formula:
    '2·log2(N of the key reading / N of the camera), less neutral density, close-up and the placing that is wanted',
  sources: [
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
    { kind: 'standard', says: 'marked and exact f-numbers: ISO 517' },
    { kind: 'common practice', says: 'a third of a stop is the tolerance that the trade works to' },
  ],
  basis: 'incident metering, ISO 2720; f-numbers, ISO 517',
  fires: [
    { title: 'key and fill metered apart, set to the key alone', plan: keyAt('f/8', 'f/5.6') },
    { title: 'half a stop and a little more under', plan: keyAt('f/5.6', 'f/7.1') },
    { title: 'a third under and the tenth that the close-up costs', plan: keyAt('f/7.1', 'f/8') },
  ],
  passes: [
    { title: 'set to the reading', plan: keyAt('f/8', 'f/8') },
    { title: 'a third over, less the tenth that the close-up costs', plan: keyAt('f/8', 'f/7.1') },
    { title: 'over on purpose', plan: keyAt('f/8', 'f/6.3', 'framing: face, exposure: +2/3 stop') },
  ],

  needs: (context) => {
    const key = [...context.plan.lights.values()].find((light) => light.on && light.role === 'key')
    if (key !== undefined && angleToCamera(context, key) > context.limits['key-angle']!) return 'silent'
    return evenedOut(context.plan) ?? keyMissing(context)
  },

  detect: (context) => {
    const { set, plan, limits } = context
    const { key } = set
    if (key === undefined) return []
    const off = key.overCamera.stops - plan.wanted.exposure
    const u = context.u({ ...key.overCamera, rendering: 0 })
    const tier = reached((limit) => Math.abs(off) - limit, u, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    return [
      {
        pointer: '/camera/aperture',
        also: set.keyLights.map((light) => ({
          pointer: lightPointer(light.name),
          says: 'counts in the key reading',
        })),
        beyond: tier.beyond,
        level: tier.level,
        measured: {
          'key-over-camera': {
            value: key.overCamera.stops,
            unit: 'stop',
            u,
            limit: tier.limit,
            side: 'at-most',
          },
          'key-reads': { value: key.fNumber, unit: 'f-number' },
        },
        cause: 'the camera is not set to the key',
        scale: { value: off, u, needs: 0, against: 'over the camera' },
        off,
        reads: key.fNumber,
        exact: (plan.camera.aperture * 2 ** (off / 2)) as FNumber,
      },
    ]
  },

  tell: ({ off, reads }, words, { plan, set }) => {
    const { exposure, ambient } = plan.wanted
    const placed = exposure === 0 ? '' : `, ${words.stops(exposure)} wanted`
    return {
      message: `${whom(plan)} comes out ${words.howMany(off)} too ${off > 0 ? 'light' : 'dark'}: camera at ${words.f(plan.camera.aperture)}, the key reads ${words.f(reads)} there${placed}`,
      why: [
        `the key reading is of ${words.list(set.keyLights.map((light) => light.name))}, dome toward the camera`,
        ...(plan.camera.filter > 0
          ? [`${words.howMany(plan.camera.filter)} of neutral density on the lens`]
          : []),
        ...closeFocus(off, words, set),
        ...(ambient === 'any' ? ['ambient light is not counted'] : []),
      ].join('; '),
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => aperture(evidence, words, context),
      () => shutter(evidence, words, context),
      () => powers(evidence, words, context),
      () => speed(evidence, words, context),
    ),

  inShort: ({ off }, words, { plan }) =>
    `${whom(plan)} is ${words.howMany(off)} too ${off > 0 ? 'light' : 'dark'}`,
})

/** A lens that moves out to focus near by loses light that no meter at the face sees. */
const closeFocus = (off: number, words: Words, { plan, scene }: ComputedSet): readonly string[] => {
  const lost = 2 * Math.log2(extension(plan.camera.lens, scene.camera.focus))
  if (lost < 0.05) return []
  return [
    off < 0
      ? `${words.howMany(lost)} of it is lost to close focus`
      : `${words.howMany(lost)} that close focus takes are counted`,
  ]
}

const angleToCamera = ({ set }: RuleContext, light: Light): number => {
  const { camera, lights, points, subject } = set.scene
  const face = points.get('subject')?.at ?? subject.tapeFrom
  const scene = lights.get(light.name)
  if (scene === undefined) return 0
  const toward =
    scene.front === undefined
      ? ([-scene.axis[0], -scene.axis[1], -scene.axis[2]] as const)
      : unit(subtract(scene.front.centre, face))
  const cosine = dot(toward, unit(subtract(camera.eye, face)))
  return (Math.acos(Math.min(1, Math.max(-1, cosine))) * 180) / Math.PI
}

/** Wider lenses than f/1.2, and smaller openings than f/32, nobody has on the camera. Common practice, no source. */
const openings = { widest: 1.2, smallest: 33 }

const aperture = ({ exact }: OffKey, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const marked = markedAperture(exact)
  if (marked < openings.widest || marked > openings.smallest) return []
  const after = set.with({ knob: { knob: 'aperture' }, to: marked })
  const circle = circleOfConfusion(plan.camera.sensor)
  const depth = (n: FNumber): number => {
    const { near, far } = depthOfField(plan.camera.lens, n, set.scene.camera.focus, circle)
    return far - near
  }
  const [was, is] = [depth(plan.camera.aperture), depth(marked)]
  const shallow = Number.isFinite(is) && words.small(is) !== words.small(was) && is < was
  return [
    {
      title: `camera.aperture → ${words.f(marked)}${words.f(exact) === words.f(marked) ? '' : `, exactly ${words.f(exact)}`}`,
      gives: outcome(after, words),
      costs: [
        ...(shallow ? [`depth of field ${span(is, words)} in place of ${span(was, words)}`] : []),
        ...backdropToo(set, after, words),
      ].join('; '),
      after,
    },
  ]
}

/** A depth, in metres where it is one. */
const span = (metres: number, words: Words): string =>
  !Number.isFinite(metres) ? 'all' : metres < 1 ? words.small(metres) : words.length(metres)

const outcome = (after: ComputedSet, words: Words): string => {
  const left = (after.key?.overCamera.stops ?? 0) - after.plan.wanted.exposure
  return `${whom(after.plan)} ${Math.abs(left) < 0.05 ? 'as wanted' : `${words.stops(left)} from what is wanted`}`
}

/** How much more the middle of the backdrop gets, in the picture; undefined where none is seen. */
const backdropBy = (set: ComputedSet, after: ComputedSet): number | undefined => {
  const [was, is] = [set.backdropView, after.backdropView]
  return was === undefined || is === undefined
    ? undefined
    : is.middle.overCamera.stops - was.middle.overCamera.stops
}

const lighter = (by: number): string => (by > 0 ? 'lighter' : 'darker')

/** Where the plan wants something of the backdrop's tone. */
const backdropToo = (set: ComputedSet, after: ComputedSet, words: Words): readonly string[] => {
  const { backdrop } = set.plan.wanted
  const by = backdropBy(set, after)
  return backdrop === undefined || backdrop.tone === 'any' || by === undefined || Math.abs(by) < 0.1
    ? []
    : [`the backdrop comes out ${words.howMany(by)} ${lighter(by)} as well`]
}

/** Light that burns on goes by the shutter, and keeps the depth of field. */
const shutter = ({ off }: OffKey, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  if (set.keyLights.some((light) => light.unit.kind === 'flash')) return []
  const turned = turn(plan, { knob: 'shutter' }, plan.camera.shutter * 2 ** -off, 'nearest')
  if (turned === undefined || turned.short > 0) return []
  const after = set.with(turned.change)
  return [
    {
      title: turned.title,
      gives: outcome(after, words),
      costs: [
        ...(turned.change.to > 1 / 50 ? ['a tripod, and whoever moves blurs'] : []),
        ...backdropToo(set, after, words),
      ].join('; '),
      after,
    },
  ]
}

const powers = ({ off }: OffKey, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const turned = set.keyLights.map((light) => turnLight(plan, light.name, -off, 'nearest'))
  if (turned.some((one) => one === undefined || one.short > 0) || turned.length === 0) return []
  const after = set.with(...turned.map((one) => one!.change))
  const by = backdropBy(set, after)
  const face = (after.key?.overCamera.stops ?? 0) - (set.key?.overCamera.stops ?? 0)
  const against = (by ?? face) - face
  return [
    {
      title: turned.map((one) => one!.title).join(', '),
      gives: `${outcome(after, words)}${by === undefined || Math.abs(against) >= 0.1 ? '' : `, the backdrop ${words.howMany(by)} ${lighter(by)} with it`}`,
      costs:
        Math.abs(against) < 0.1
          ? ''
          : `the backdrop, lit by other lights as well, comes out ${words.howMany(against)} ${lighter(against)} against ${whom(plan)}`,
      after,
    },
  ]
}

/** No help where the lights are known by what they are to meter: they are then set to meter that again. */
const speed = ({ off }: OffKey, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const wanted = plan.camera.iso * 2 ** -off
  const iso = off < 0 ? markedSpeedOver(wanted) : markedSpeedUnder(wanted)
  if (iso === undefined || iso === plan.camera.iso) return []
  const after = set.with({ knob: { knob: 'iso' }, to: iso })
  const left = (after.key?.overCamera.stops ?? 0) - plan.wanted.exposure
  if (Math.abs(left) > Math.abs(off) - 0.1) return []
  const unstated = plan.readings.some((_, i) => !plan.places.stated(pointer('readings', i, 'iso')))
  return [
    {
      title: `camera.iso → ${iso}`,
      gives: `${outcome(after, words)}, every light alike`,
      costs: [
        ...(unstated
          ? [`iso: ${Math.round(plan.camera.iso)} is then to be written beside the readings`]
          : []),
        ...backdropToo(set, after, words),
      ].join('; '),
      after,
    },
  ]
}
