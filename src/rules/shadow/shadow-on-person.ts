import type { Plan } from '../../language/plan.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import type { Knob } from '../../set/knobs.js'
import { pointer } from '../../text/place.js'
import { turn } from '../gear.js'
import { unknownLight } from '../known.js'
import { comesIn } from '../moved.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import { whose } from '../whose.js'
import type { Words } from '../words.js'
import { type FaceShade, faceShades, mostLost } from './face-shade.js'
import { firstWhere } from './out-of-sight.js'
import { lessText } from './seen.js'

const rows = (height: string, faces: string, angle = '0 deg left'): string => `plan: 1
title: Two rows
camera: { lens: 50 mm, at: { distance: 4.5 m, height: 1.5 m }, aperture: f/8, shutter: 1/125, iso: 200, held-by: stand }
subject:
  kind: group
  rows:
    - { people: 3, spacing: 55 cm, faces-at: 1.6 m }
    - { people: 3, spacing: 55 cm, behind: 60 cm, faces-at: ${faces} }
lights:
  key: { unit: head 600 Ws, modifier: white umbrella 1 m, power: 1/1, at: { angle: ${angle}, distance: 4 m, height: ${height} } }
`
const flagged = (left: string): string => `plan: 1
title: Flag before a fill
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 60 cm, power: 1/2, at: { angle: 40 deg left, distance: 2 m, height: 1.9 m } }
panels:
  black: { kind: flag, size: 60 x 90 cm, at: { left: ${left}, front: 70 cm, height: 1.7 m }, faces: subject }
`

interface OnPerson extends Evidence {
  readonly shade: FaceShade
  /** Faces that are shaded by more than the limit. */
  readonly faces: number
  readonly limit: number
  readonly u: number
}

export const shadowOnPerson = rule<OnPerson>({
  id: 'shadow-on-person',
  family: 'shadow',
  level: 'warning',
  finds: 'a face that lies in the shadow of another person, of a panel or of a light’s front',
  limits: {
    lost: { value: 1, unit: 'stop', says: 'less light on the face than without what shades it' },
  },
  why: 'A face in somebody’s shadow is lost among lit ones: brightening it afterwards shows the edge of the shadow across it.',
  formula:
    'log2(H without what is in the way / H with it) at each face, key and fill, dome toward the camera; what comes by way of room and panels still arrives; scrims, which pass light on, are left out',
  sources: [
    { kind: 'common practice', says: 'every face of a group should see the whole of the main light' },
  ],
  basis: 'covered parts of each front, exact; the limit is common practice',
  fires: [
    { title: 'the back row behind the front row’s heads', plan: rows('1.6 m', '1.6 m') },
    { title: 'a flag between light and face', plan: flagged('60 cm') },
  ],
  passes: [
    { title: 'the back row looks over, the light is high', plan: rows('3 m', '1.9 m') },
    { title: 'a flag beside the light’s way', plan: flagged('1.6 m') },
  ],

  needs: ({ set, plan }) => {
    if (plan.subject.kind === 'object') return 'silent'
    const unknown = set.unknown.find((light) => set.keyLights.includes(light))
    if (set.keyLights.length === 0) return 'silent'
    return unknown === undefined ? undefined : unknownLight(unknown, set)
  },

  detect: ({ set, plan, limits, u: uOf }) => {
    const shades = shadesOf(set)
    const shade = mostLost(shades)
    if (shade === undefined) return []
    const limit = limits.lost!
    const u = uOf(shade.lost)
    const value = shade.lost.stops
    const at = solidPointer(set, shade.by)
    return [
      {
        pointer: at,
        also: [
          { pointer: lightPointer(shade.light, 'at'), says: 'in the way of this light' },
          ...(at.startsWith('/subject') ? [] : [{ pointer: facesPointer(plan), says: 'from this face' }]),
        ],
        beyond: { stops: value - limit, u },
        measured: { lost: { value, unit: 'stop', u, limit, side: 'at-most' } },
        cause: `what stands before ${shade.light}`,
        scale: { value, u, needs: limit, against: 'less light on the face' },
        shade,
        faces: new Set(shades.filter((one) => one.lost.stops > limit).map((one) => one.figure)).size,
        limit,
        u,
      },
    ]
  },

  tell: ({ shade, faces, limit }, words, { set, plan }) => ({
    message: `the face of ${whose(shade.figure, plan)} lies in the shadow of ${byWhom(shade.by, set, plan)}: ${lessText(shade.lost.stops, words)} from ${shade.light}, ${words.howMany(limit)} is the limit`,
    why: faces > 1 ? `${faces} faces are shaded so` : `${shade.light} does not see the face past it`,
  }),

  mend: (evidence, words, context) =>
    inTurn(
      () => higher(evidence, words, context),
      () => other(evidence, context),
    ),

  inShort: ({ shade }, words, { set, plan }) =>
    `the face of ${whose(shade.figure, plan)} lies in the shadow of ${byWhom(shade.by, set, plan)}: ${lessText(shade.lost.stops, words)}`,
})

/** People, panels that pass no light, and fronts of lights. */
const shadesOf = (set: ComputedSet): readonly FaceShade[] => {
  const counted = new Set(
    set.scene.solids
      .filter(
        ({ of, name }) =>
          of === 'figure' ||
          of === 'light' ||
          (of === 'panel' && set.scene.panels.get(name)?.kind !== 'scrim'),
      )
      .map(({ name }) => name),
  )
  return faceShades(set, (solid) => counted.has(solid))
}

const byWhom = (solid: string, { scene }: ComputedSet, plan: Plan): string =>
  scene.subject.figures.some(({ name }) => name === solid) ? whose(solid, plan) : solid

const facesPointer = ({ subject }: Plan): string => (subject.kind === 'group' ? '/subject/rows' : '/subject')

const solidPointer = (set: ComputedSet, solid: string): string =>
  set.scene.panels.has(solid)
    ? pointer('panels', solid, 'at')
    : set.scene.lights.has(solid)
      ? lightPointer(solid, 'at')
      : facesPointer(set.plan)

/** Metres up, at most. */
const rise = 1.8

const higher = ({ shade, limit, u }: OnPerson, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const knob: Knob = { knob: 'light-height', light: shade.light }
  const today = knobToday(plan, knob)
  if (today === undefined || shade.by === shade.light) return []
  const at = (to: number) => set.with({ knob, to })
  const free = (after: ComputedSet) => (mostLost(shadesOf(after))?.lost.stops ?? 0) <= limit - inside(u)
  const to = firstWhere(today, today + rise, (height) => free(at(height)))
  const made = to === undefined ? undefined : turn(plan, knob, to)
  if (made === undefined || made.short > 0) return []
  const after = at(made.change.to)
  return free(after)
    ? [
        {
          title: made.title,
          gives: `${shade.light} sees every face`,
          costs: [
            `light from ${words.length(made.change.to - today)} higher`,
            ...comesIn(set, shade.light, made.change.to - today, words),
          ].join('; '),
          after,
        },
      ]
    : []
}

const other = ({ shade }: OnPerson, { set, plan }: RuleContext): readonly Mend[] => {
  if (set.scene.panels.has(shade.by))
    return [
      { title: `${shade.by} out of the line from ${shade.light} to the face`, gives: 'all of its light' },
    ]
  if (set.scene.lights.has(shade.by))
    return [{ title: `${shade.by} out of the way of ${shade.light}`, gives: 'all of its light' }]
  return plan.subject.kind === 'group'
    ? [
        {
          title: 'the back row into the gaps of the front row, or raised',
          gives: `every face sees ${shade.light}`,
        },
      ]
    : []
}
