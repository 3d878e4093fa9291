import { airyDisc, circleOfConfusion, magnification } from '../../picture/lens.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { exactShutter, nearestShutter } from '../../units/marks.js'
import type { FNumber, Seconds } from '../../units/quantity.js'
import { markedAperture } from '../gear.js'
import { cameraMisplaced } from '../known.js'
import { openAndDown } from '../power/less-power.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { apertureFor } from './depth-mends.js'
import { faceDepth, wantedSpan, whatIsWanted } from './wanted-span.js'

const stopped = (aperture: string, camera = 'lens: 85 mm', distance = '2.5 m', more = ''): string => `plan: 1
title: How far to stop down
camera: { ${camera}, at: { distance: ${distance} }, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 600 Ws, modifier: octa 90 cm, meters: ${aperture}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
${more}`
const macro = (aperture: string): string => `plan: 1
title: A ring, close up
camera: { lens: 100 mm, at: { distance: 30 cm, height: 1.1 m }, aperture: ${aperture}, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 2 cm, width: 2 cm, depth: 2 cm, stands-on: { height: 1.09 m } }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 60 cm, meters: ${aperture}, at: { angle: 60 deg left, distance: 70 cm, height: 1.5 m } }
wanted: { sharp: 1 cm }
`

interface Soft extends Evidence {
  /** Metres on the sensor. */
  readonly disc: number
  readonly circle: number
  readonly magnified: number
  /** The f-number at which the disc just fills its limit. */
  readonly atMost: FNumber
}

export const diffraction = rule<Soft>({
  id: 'diffraction',
  family: 'exposure',
  level: 'note',
  finds: 'an aperture so small that diffraction takes the edge off the whole picture',
  limits: {
    'airy-disc': {
      value: 1,
      unit: 'share',
      says: 'of the circle of confusion that the Airy disc may fill; half of it for catalogue work',
    },
  },
  why: 'Stopped down further, more depth is sharp and nothing is quite sharp any more, what is in focus included. It costs light besides, and no better lens helps.',
  formula:
    '2.44·λ·N·(1 + m) with λ = 0.55 µm, m the magnification, against the circle of confusion: sensor diagonal / 1500',
  sources: [
    { kind: 'published', says: 'first dark ring of the Airy disc at 1.22·λ·N' },
    { kind: 'memory', says: 'circle of confusion as the diagonal over 1500, over 3000 for catalogue work' },
    { kind: 'common practice', says: 'full frame softens from f/22, a crop sensor from f/16' },
  ],
  basis: 'Airy disc in green light, circle of confusion diagonal/1500',
  fires: [
    { title: 'full frame at f/22', plan: stopped('f/22') },
    { title: 'crop sensor at f/16', plan: stopped('f/16', 'sensor: aps-c, lens: 50 mm') },
    { title: 'close up, f/16 works as a smaller aperture', plan: macro('f/16') },
  ],
  passes: [
    { title: 'full frame at f/16', plan: stopped('f/16') },
    { title: 'crop sensor at f/11', plan: stopped('f/11', 'sensor: aps-c, lens: 50 mm') },
    { title: 'close up at f/11', plan: macro('f/11') },
  ],

  needs: ({ set }) => (cameraMisplaced(set) ? 'silent' : undefined),

  detect: ({ set, plan, limits }) => {
    const { aperture, sensor, lens } = plan.camera
    const magnified = magnification(lens, set.scene.camera.focus)
    if (!Number.isFinite(magnified)) return []
    const disc = airyDisc(aperture, magnified)
    const circle = circleOfConfusion(sensor)
    const limit = limits['airy-disc']!
    return [
      {
        pointer: '/camera/aperture',
        also: [{ pointer: '/camera/sensor', says: 'on this sensor' }],
        beyond: { stops: 2 * Math.log2(disc / (circle * limit)), u: markU },
        measured: {
          'airy-disc': { value: disc / circle, unit: 'share', limit, side: 'at-most' },
          'f-number': { value: aperture * (1 + magnified), unit: 'f-number' },
        },
        disc,
        circle,
        magnified,
        atMost: (aperture * ((circle * limit) / disc)) as FNumber,
      },
    ]
  },

  tell: ({ disc, circle, magnified }, words, { plan, limits }) => ({
    message: `the whole picture goes ${disc > 1.4 * circle ? 'soft' : 'slightly soft'} when seen at full size: at ${words.f(plan.camera.aperture)} the light of a point spreads over ${micrometres(disc)}, ${micrometres(circle * limits['airy-disc']!)} is what still looks sharp on this sensor`,
    why: [
      'diffraction: it is the same for every lens',
      ...(magnified > 0.05
        ? [
            `so close up ${words.f(plan.camera.aperture)} works as ${words.f(plan.camera.aperture * (1 + magnified))}`,
          ]
        : []),
      'seen smaller than at full size it does not show',
    ].join('; '),
  }),

  mend: (evidence, words, context) => opened(evidence, words, context),

  inShort: (_, words, { plan }) =>
    `diffraction softens the whole picture at ${words.f(plan.camera.aperture)}`,
})

/** An aperture's mark is good to a tenth of a stop. Common practice, no source. */
const markU = 0.1

const micrometres = (metres: number): string => `${Math.round(metres * 1e6)} µm`

const opened = (evidence: Soft, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const { camera } = plan
  const enough = markedAperture(evidence.atMost, 'under')
  const span = wantedSpan(set, faceDepth)
  const forDepth =
    span === undefined
      ? undefined
      : markedAperture(apertureFor(context, span, set.scene.camera.focus), 'over')
  const what = whatIsWanted(plan)
  if (forDepth !== undefined && forDepth > camera.aperture / onMark)
    return [
      {
        title: `several frames with the focus moved through ${what}, put together, at ${words.f(enough)}`,
        gives: `all of ${what} sharp without diffraction`,
        costs: 'nothing may move meanwhile',
      },
    ]
  const to = forDepth !== undefined && forDepth > enough * onMark ? forDepth : enough
  const deep =
    forDepth === undefined ? '' : `, and ${what} is sharp from front to back from ${words.f(forDepth)} on`
  const stops = 2 * Math.log2(camera.aperture / to)
  const gives = (): string =>
    `points spread over ${micrometres((evidence.disc * to) / camera.aperture)}${deep}`
  const mends = byFlash(set)
    ? openAndDown(set, stops, gives, words)
    : openAndFaster(set, to, stops, gives(), words)
  return to === enough
    ? mends
    : mends.map((mend) => ({ ...mend, gives: `less of it: ${mend.gives}`, partial: true as const }))
}

/** Marks stand a third of a stop apart. */
const onMark = 1 + 1e-6

const byFlash = ({ lit }: ComputedSet): boolean => lit.some(({ unit }) => unit.kind === 'flash')

const openAndFaster = (
  set: ComputedSet,
  aperture: FNumber,
  stops: number,
  gives: string,
  words: Words,
): readonly Mend[] => {
  const { camera } = set.plan
  const shutter = nearestShutter((camera.shutter * 2 ** -stops) as Seconds)
  return [
    {
      title: `camera.aperture → ${words.f(aperture)}, camera.shutter → ${words.shutter(shutter)}`,
      gives,
      costs: 'less depth of field',
      after: set.with(
        { knob: { knob: 'aperture' }, to: aperture },
        { knob: { knob: 'shutter' }, to: exactShutter(shutter) },
      ),
    },
  ]
}
