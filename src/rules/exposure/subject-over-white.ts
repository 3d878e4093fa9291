import type { Light, Plan } from '../../language/plan.js'
import type { FNumber } from '../../units/quantity.js'
import { inDegrees } from '../../units/quantity.js'
import { markedAperture } from '../gear.js'
import { faceOf, strongestOf } from '../key-lights.js'
import { evenedOut, keyMissing, toneUnjudged } from '../known.js'
import { degreesAside, towardLight } from '../light-direction.js'
import { placePointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Advice, type Evidence, type RuleContext, rule } from '../rule.js'
import { inside, solveFor } from '../solving.js'
import type { Words } from '../words.js'
import { brightestOf, brightestTurned } from './brightest-surface.js'

const dressed = (reflectance: number, angle: string, aperture = 'f/5.6'): string => `plan: 1
title: White dress, box from the side
camera: { lens: 85 mm, at: { distance: 3 m, height: 1.4 m }, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject: { kind: person, reflectance: ${reflectance} }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, power: 1/4, at: { angle: ${angle}, distance: 1 m, height: 1.8 m } }
wanted: { framing: waist }
readings:
  - { at: subject, of: [key], reads: f/5.6, faces: camera, taken: { key: { power: 1/4 } } }
`

interface OverWhite extends Evidence {
  /** Stops over white for certain. */
  readonly over: number
  readonly u: number
  readonly where: string
  /** The surface there over the key reading, stops. */
  readonly overKey: number
  readonly reflectance: number
  readonly light: Light
}

export const subjectOverWhite = rule<OverWhite>({
  id: 'subject-over-white',
  family: 'exposure',
  level: 'warning',
  finds: 'skin, shirt or dress toward the light that burns out to white',
  limits: {
    over: {
      value: 0,
      unit: 'stop',
      says: 'over what is white for certain, on the side of the subject that the camera sees',
    },
  },
  why: 'A meter at the face, its dome toward the camera, reads the face as the camera sees it. A cheek, a shoulder or a sleeve that faces the light from the side gets more, and white cloth has only half a stop to spare: its folds are gone for good.',
  formula:
    'log2(ρ·2^x / 2^headroom), x = log2(H·S / (C·N²)) on head and body toward the lights, flat; key and fill',
  sources: [
    { kind: 'standard', says: 'incident metering: ISO 2720; headroom over a 100 % reflector: ISO 12232' },
    {
      kind: 'derived',
      says: 'cloth of 0.85 is white for certain 0.48 stop over the camera, skin of 0.35 from 1.76; a surface that faces a light 60 degrees aside gets 0.42 stop more than the dome shows, 75 degrees 0.67',
    },
    {
      kind: 'memory',
      says: 'where the plan does not state it, skin and clothes give back 0.35, within half a stop; fair skin at most 0.5',
    },
  ],
  basis: 'incident metering, ISO 2720; headroom over a 100 % reflector, ISO 12232',
  fires: [
    { title: 'white dress, the key far round', plan: dressed(0.88, '75 deg left') },
    { title: 'a little too far round', plan: dressed(0.85, '66 deg left') },
    { title: 'skin, two stops over', plan: dressed(0.35, '40 deg right', 'f/2.8') },
  ],
  passes: [
    { title: 'the same dress, the key nearer the camera', plan: dressed(0.88, '35 deg left') },
    { title: 'just not too far round', plan: dressed(0.85, '58 deg left') },
    {
      title: 'patent leather: its tone is not judged',
      plan: dressed(0.88, '75 deg left').replace('reflectance', 'finish: glossy, reflectance'),
    },
    { title: 'skin and grey cloth have stops to spare', plan: dressed(0.35, '75 deg left') },
  ],

  needs: (context) => toneUnjudged(context.plan) ?? evenedOut(context.plan) ?? keyMissing(context),

  detect: (context) => {
    const { set, plan, limits } = context
    const brightest = brightestOf(set)
    const light = strongestOf(set)
    if (brightest === undefined || light === undefined || set.key === undefined) return []
    const { over, overCamera, where, reflectance } = brightest
    const u = Math.hypot(context.u(overCamera), reflectanceU(plan))
    return [
      {
        pointer: placePointer(light),
        also: [{ pointer: '/subject/reflectance', says: 'this surface' }],
        beyond: { stops: over - limits.over!, u },
        measured: {
          'over-white': { value: over, unit: 'stop', u, limit: limits.over!, side: 'at-most' },
          'over-camera': { value: overCamera.stops, unit: 'stop' },
        },
        over,
        u,
        where,
        overKey: overCamera.stops - set.key.overCamera.stops,
        reflectance,
        light,
      },
    ]
  },

  tell: ({ over, where, overKey, reflectance, light }, words) => ({
    message: `${where} burns out to white: ${words.howMany(over)} over what holds detail, lit by ${light.name}`,
    why: [
      `a surface of ${reflectance.toFixed(2)} toward the light, ${words.against(overKey, 'the key reading')}`,
      'people in the way are not counted',
    ].join('; '),
  }),

  mend: (evidence, words, context) => [
    ...nearerTheCamera(evidence, words, context),
    ...closed(evidence, words, context),
    {
      title: `feather ${evidence.light.name} away from ${evidence.where}, or a flag before it there`,
      gives: `less on what is turned to it most, the same on ${whom(context.plan)}`,
    },
  ],
})

/** Of skin and clothes that the plan does not describe; half a stop is the spread of both. */
const reflectanceU = (plan: Plan): number => (plan.places.stated('/subject/reflectance') ? 0.1 : 0.5)

/** Degrees in which a bearing is set. */
const step = 5

/** Round toward the line to the camera, where dome and surface come to read alike. */
const nearerTheCamera = (
  { light, u }: OverWhite,
  words: Words,
  { set, plan, limits }: RuleContext,
): readonly Advice[] => {
  const face = faceOf(set)
  const toward = towardLight(set.scene, light.name, face)
  const aside = toward && degreesAside(set.scene, face, toward)
  if (light.at.by !== 'tape' || light.unit.kind === 'sun' || aside === undefined) return []
  const at = (degrees: number) => brightestTurned(set, light.name, ((degrees - aside) * Math.PI) / 180)
  const target = limits.over! - inside(u)
  const solved = solveFor(aside, 0, at, target) ?? solveFor(aside, 0, at, limits.over! - 0.05)
  if (solved === undefined || Math.abs(aside - solved) < 1) return []
  // Bearings are written from the centre line, to the nearer mark on the safe side.
  const right = -inDegrees(light.at.angleLeft) + solved - aside
  const set5 = step * (solved < aside ? Math.floor(right / step) : Math.ceil(right / step))
  const after = at(aside + set5 + inDegrees(light.at.angleLeft))
  return after === undefined
    ? []
    : [
        {
          title: `lights.${light.name}.at.angle → ${Math.abs(set5)} deg${set5 === 0 ? '' : set5 < 0 ? ' left' : ' right'}`,
          gives: `the brightest of it ${words.against(after, 'white for certain')}, ${whom(plan)} as it is`,
          costs: 'flatter light, and its power to be set anew by the meter',
        },
      ]
}

const closed = (
  { over, u }: OverWhite,
  words: Words,
  { set, plan, limits }: RuleContext,
): readonly Advice[] => {
  const by = over - limits.over! + inside(u)
  const marked = markedAperture((plan.camera.aperture * 2 ** (by / 2)) as FNumber, 'over')
  const after = set.with({ knob: { knob: 'aperture' }, to: marked })
  const face = (after.key?.overCamera.stops ?? 0) - plan.wanted.exposure
  const left = brightestOf(after)?.over
  return left === undefined
    ? []
    : [
        {
          title: `camera.aperture → ${words.f(marked)}`,
          gives: `the brightest of it ${words.against(left, 'white for certain')}`,
          costs: `${whom(plan)} ${words.against(face, 'what is wanted')}`,
        },
      ]
}
