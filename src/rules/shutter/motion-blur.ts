import type { Plan } from '../../language/plan.js'
import { firstMissing, keyMissing } from '../known.js'
import { settingPointer } from '../place-pointer.js'
import { type Evidence, inTurn, rule } from '../rule.js'
import type { Words } from '../words.js'
import { type Blur, blursOf } from './blur.js'
import { durationText } from './duration-text.js'
import { fasterShutter, lessPower, morePower, shorterFlash } from './less-blur.js'

const jump = (unit: string, moves = '4 m/s', more = '', shutter = '1/200'): string => `plan: 1
title: A jump
camera: { lens: 70 mm, frame: vertical, at: { distance: 4 m, height: 1.1 m }, aperture: f/8, shutter: ${shutter}, iso: 100, sync: 1/250 }
subject: { kind: person, moves: ${moves} }
kit:
  units:
    slow head: { energy: 600 Ws, regulated: voltage, durations: [ { power: full, t0.1: 1/500 } ] }
    quick head: { energy: 600 Ws, regulated: igbt, durations: [ { power: full, t0.1: 1/500 }, { power: 1/16, t0.1: 1/6000 } ] }
lights:
  key: { unit: ${unit}, modifier: octa 90 cm, at: { angle: 30 deg left, distance: 2 m, height: 2 m } }
wanted: { framing: full length, shadow: any${more} }
`

interface MotionBlur extends Evidence {
  readonly blur: Blur
}

export const motionBlurRule = rule<MotionBlur>({
  id: 'motion-blur',
  family: 'shutter',
  level: 'warning',
  finds: 'movement that the flash, or the shutter, is too slow to freeze',
  limits: {
    over: { value: 0, unit: 'stop', says: 'doublings of the blur over the circle of confusion' },
    share: {
      value: 1 / 4,
      unit: 'share',
      says: 'of the exposure at the subject that a light has to give for its blur to show',
    },
  },
  why: 'With flash it is the flash that freezes, not the shutter. A large head burns for a three-hundredth or a five-hundredth down to a tenth of its peak, three times as long as the figure for half of it that is printed; a jump travels a centimetre meanwhile.',
  formula:
    'blur on the sensor = speed × duration × magnification, with t0.1 of a flash and the shutter time of what burns on; against diagonal / 1500',
  sources: [
    { kind: 'standard', says: 't0.1 is the time over a tenth of the peak: ISO 2827' },
    { kind: 'derived', says: 't0.1 is 3.32 times t0.5 of an exponential decay' },
    { kind: 'common practice', says: 'each stop less power halves the flash of units that cut it (IGBT)' },
    { kind: 'memory', says: 'durations of flashes whose kit does not state them, within a factor of two' },
  ],
  basis: 'flash durations, ISO 2827; circle of confusion, diagonal / 1500',
  fires: [
    { title: 'a large head that charges less', plan: jump('slow head, meters: f/8') },
    { title: 'a head that cuts, at full power', plan: jump('quick head, power: full') },
    {
      title: 'window light at a walking pace',
      plan: jump(
        'window, size: 120 x 150 cm, reads: f/5.6, shutter: 1/60, iso: 100',
        '1.5 m/s',
        '',
        '1/60',
      ).replace('modifier: octa 90 cm, ', ''),
    },
  ],
  passes: [
    { title: 'a head that cuts, at a sixteenth', plan: jump('quick head, power: 1/16') },
    { title: 'a slow movement', plan: jump('slow head, power: full', '0.5 m/s') },
    {
      title: 'window light and a fast shutter',
      plan: jump(
        'window, size: 120 x 150 cm, reads: f/5.6, shutter: 1/60, iso: 100',
        '1.5 m/s',
        '',
        '1/1000',
      ).replace('modifier: octa 90 cm, ', ''),
    },
  ],

  needs: (context) => {
    const { subject, wanted } = context.plan
    if (subject.moves === undefined)
      return wanted.motion === 'frozen'
        ? {
            because: 'the plan does not say how fast the movement is that must be frozen',
            enable: { pointer: '/subject/moves', text: 'moves: 2 m/s' },
          }
        : 'silent'
    return firstMissing(() => keyMissing(context))
  },

  detect: ({ set, plan, limits }) => {
    const blur = worst(blursOf(set, limits.share!))
    if (blur === undefined) return []
    const { light, over, u, smear, lasts, flashes } = blur
    return [
      {
        pointer: flashes && light !== undefined ? settingPointer(light) : '/camera/shutter',
        also: [
          { pointer: '/subject/moves', says: 'this fast' },
          ...(plan.wanted.motion === undefined
            ? []
            : [{ pointer: '/wanted/motion', says: 'movement must be frozen' }]),
        ],
        beyond: { stops: over - limits.over!, u },
        measured: {
          blur: { value: smear * 100, unit: 'cm' },
          duration: { value: lasts, unit: 's' },
          'over-circle': { value: 2 ** over, unit: 'count', limit: 2 ** limits.over!, side: 'at-most' },
        },
        blur,
      },
    ]
  },

  tell: ({ blur: { light, lasts, flashes, smear, over, power, guessed } }, words, { plan }) => ({
    message: `what moves at ${speedText(plan)} is drawn out over ${smallText(smear, words)}, ${times(over)} what still looks sharp: ${
      flashes
        ? `the flash of ${light!.name} lasts ${durationText(lasts, words)}${power === undefined ? '' : ` at ${words.power(power)}`}`
        : `${light === undefined ? 'the light of the place' : light.name} burns on for the whole ${words.shutter(lasts)}`
    }`,
    why: flashes
      ? [
          'counted down to a tenth of its peak (t0.1)',
          ...(guessed ? ['guessed: the durations of the unit in the kit make it sure'] : []),
        ].join('; ')
      : 'the shutter is what freezes it',
  }),

  inShort: ({ blur: { over } }) => `movement is drawn out ${times(over)} what still looks sharp`,

  mend: ({ blur }, words, context) =>
    inTurn(
      () => lessPower(blur, words, context),
      () => morePower(blur, words, context),
      () => fasterShutter(blur, words, context),
      () => shorterFlash(blur, words, context),
    ),
})

const worst = (blurs: readonly Blur[]): Blur | undefined =>
  blurs.reduce<Blur | undefined>(
    (most, one) => (most === undefined || one.over > most.over ? one : most),
    undefined,
  )

/** As the author wrote it. */
const speedText = ({ places, subject }: Plan): string =>
  places.written('/subject/moves') ?? `${Math.round(subject.moves! * 10) / 10} m/s`

const times = (over: number): string => {
  const many = 2 ** over
  return many < 1.05 ? 'just' : `${many < 10 ? Math.round(many * 10) / 10 : Math.round(many)} times`
}

const smallText = (metres: number, words: Words): string =>
  metres < 0.001 ? 'less than a millimetre' : words.small(metres)
