import type { Light } from '../../language/plan.js'
import { circleOfConfusion, depthOfField } from '../../picture/lens.js'
import { dot, subtract, unit } from '../../scene/vector.js'
import { pointer } from '../../text/place.js'
import type { FNumber } from '../../units/quantity.js'
import { markedAperture, markedSpeedOver, markedSpeedUnder, turnLight } from '../gear.js'
import { keyMissing } from '../known.js'
import { lightPointer } from '../place-pointer.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
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
    return keyMissing(context)
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
        ...(ambient === 'any' ? ['ambient light is not counted'] : []),
      ].join('; '),
    }
  },

  mend: (evidence, words, context) => [
    aperture(evidence, words, context),
    ...powers(evidence, words, context),
    ...speed(evidence, words, context),
  ],
})

/** Whom the exposure is for. */
const whom = (plan: RuleContext['plan']): string =>
  plan.subject.kind === 'person' ? 'the face' : plan.subject.kind === 'group' ? 'the group' : 'the subject'

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

const aperture = ({ exact }: OffKey, words: Words, { set, plan }: RuleContext): Advice => {
  const marked = markedAperture(exact)
  const after = set.with({ knob: { knob: 'aperture' }, to: marked })
  const left = (after.key?.overCamera.stops ?? 0) - plan.wanted.exposure
  const circle = circleOfConfusion(plan.camera.sensor)
  const depth = (n: FNumber): number => {
    const { near, far } = depthOfField(plan.camera.lens, n, set.scene.camera.focus, circle)
    return far - near
  }
  const [was, is] = [depth(plan.camera.aperture), depth(marked)]
  return {
    title: `camera.aperture → ${words.f(marked)}${words.f(exact) === words.f(marked) ? '' : `, exactly ${words.f(exact)}`}`,
    gives: `${whom(plan)} ${Math.abs(left) < 0.05 ? 'as wanted' : `${words.stops(left)} from what is wanted`}`,
    ...(Number.isFinite(is) && Number.isFinite(was) && words.small(is) !== words.small(was)
      ? { costs: `depth of field ${words.small(is)} in place of ${words.small(was)}` }
      : {}),
  }
}

const powers = ({ off }: OffKey, words: Words, { set, plan }: RuleContext): readonly Advice[] => {
  const turned = set.keyLights.map((light) => turnLight(plan, light.name, -off, 'nearest'))
  if (turned.some((one) => one === undefined || one.short > 0) || turned.length === 0) return []
  const after = set.with(...turned.map((one) => one!.change))
  const left = (after.key?.overCamera.stops ?? 0) - plan.wanted.exposure
  return [
    {
      title: turned.map((one) => one!.title).join(', '),
      gives: `${whom(plan)} ${Math.abs(left) < 0.05 ? 'as wanted' : `${words.stops(left)} from what is wanted`}`,
      costs: 'the backdrop keeps its light: it moves against the face',
    },
  ]
}

/** No help where the lights are known by what they are to meter: they are then set to meter that again. */
const speed = ({ off }: OffKey, words: Words, { set, plan }: RuleContext): readonly Advice[] => {
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
      gives: `${whom(plan)} ${Math.abs(left) < 0.05 ? 'as wanted' : `${words.stops(left)} from what is wanted`}, every light alike`,
      ...(unstated
        ? { costs: `iso: ${Math.round(plan.camera.iso)} is then to be written beside the readings` }
        : {}),
    },
  ]
}
