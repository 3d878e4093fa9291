import type { MeterReading } from '../../language/plan.js'
import { type Evidence, rule } from '../rule.js'
import { conflicts, leftText, mayBeLeft, type Otherwise, otherwise, otherwiseText } from './conflicts.js'
import { readingPointer, readingText } from './of-reading.js'

/** White paper lit by a head that the kit has metered: a quarter gives f/8 at 2 m. */
const paper = (reading: string): string => `plan: 1
title: How was this metered
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2.5 m }
kit: { units: { mono: { energy: 400 Ws, reflector: 60 deg } }, measured: [ { unit: mono, power: 1/4, distance: 2 m, reads: f/8, iso: 100 } ] }
lights:
  key: { unit: mono, power: 1/4, at: { angle: 60 deg left, distance: 2 m, height: 1.62 m } }
  paper: { role: backdrop, unit: mono, power: 1/4, at: { left: 50 cm, before-backdrop: 2 m, height: 1.6 m } }
readings:
  - ${reading}
wanted: { framing: head and shoulders, backdrop: any }
`

interface Kind extends Evidence {
  readonly reading: MeterReading
  readonly index: number
  readonly difference: number
  readonly fits: Otherwise
  readonly tried: readonly Otherwise[]
}

export const readingKind = rule<Kind>({
  id: 'reading-kind',
  family: 'readings',
  level: 'note',
  finds: 'a reading that fits only if it was taken otherwise than it is written',
  limits: {
    difference: {
      value: 1 / 3,
      unit: 'stop',
      says: 'of a reading to all that is known without it, as it is written',
    },
    left: {
      value: mayBeLeft,
      unit: 'stop',
      says: 'that may be left of the difference where it was taken otherwise',
    },
  },
  why: 'Read off the paper instead of before it, with the dome to the lens instead of the light, with the ISO of yesterday: the same light gives f-numbers up to three stops apart. Which it was, the size of the error tells.',
  formula:
    'reflected against incident: log2(π·K/(C·ρ)); dome and direction: the light that each would receive there; ISO: whole stops',
  sources: [
    {
      kind: 'standard',
      says: 'incident N² = H·S/C, C = 250, and reflected N² = L·t·S/K, K = 12.5: ISO 2720',
    },
    {
      kind: 'derived',
      says: 'a matte surface gives back ρ·H/π: white paper of 0.9 reads 2.5 stops over the light on it',
    },
    { kind: 'common practice', says: 'dome to the light or to the lens are two schools, up to a stop apart' },
  ],
  basis: 'incident and reflected metering, ISO 2720',
  fires: [
    {
      title: 'read off the white paper',
      plan: paper('{ at: backdrop, of: [paper], reads: f/18, taken: { paper: { power: 1/4 } } }'),
    },
    {
      title: 'the dome to the camera',
      plan: paper(
        '{ at: subject, of: [key], reads: f/6.3 + 0.1, taken: { key: { power: 1/4, distance: 2 m } } }',
      ),
    },
    {
      title: 'the meter at ISO 400',
      plan: paper('{ at: subject, of: [key], reads: f/16, taken: { key: { power: 1/4, distance: 2 m } } }'),
    },
  ],
  passes: [
    {
      title: 'as it is written',
      plan: paper('{ at: subject, of: [key], reads: f/8, taken: { key: { power: 1/4, distance: 2 m } } }'),
    },
    {
      title: 'said to be reflected',
      plan: paper(
        '{ at: backdrop, of: [paper], reads: f/18, kind: reflected, taken: { paper: { power: 1/4 } } }',
      ),
    },
    {
      title: 'off by what nothing explains',
      plan: paper(
        '{ at: subject, of: [key], reads: f/13 + 0.1, taken: { key: { power: 1/4, distance: 2 m } } }',
      ),
    },
  ],

  needs: ({ plan }) => (plan.readings.length === 0 ? 'silent' : undefined),

  detect: ({ set, plan, limits }) =>
    conflicts(set, limits.difference!, limits.left!).flatMap(({ doubted, fits }): readonly Kind[] =>
      fits === undefined
        ? []
        : [
            {
              pointer: readingPointer(doubted.index),
              beyond: 'certain',
              measured: {
                difference: { value: doubted.difference, unit: 'stop', u: doubted.u },
                left: { value: fits.left, unit: 'stop', limit: limits.left!, side: 'at-most' },
              },
              cause: 'readings that cannot all be right',
              reading: plan.readings[doubted.index]!,
              index: doubted.index,
              difference: doubted.difference,
              fits,
              tried: otherwise(set, doubted).filter(
                (one) => one.what !== fits.what || one.value !== fits.value,
              ),
            },
          ],
    ),

  tell: ({ reading, difference, fits, tried }, words) => ({
    message: `${readingText(reading, words)} fits ${otherwiseText(fits, reading, words)}: off by ${words.howMany(difference)} as it is written, by ${leftText(fits.left, words)} then`,
    why:
      tried.length === 0
        ? 'nothing else that was tried fits'
        : `tried as well: ${tried.map((one) => `${otherwiseText(one, reading, words)} ${leftText(one.left, words)} is left`).join('; ')}`,
  }),

  mend: ({ index, fits }) => [
    {
      title: `readings.${index}.${fits.what} → ${fits.value}`,
      gives: 'the reading agrees with the rest, if that is how it was taken',
    },
  ],
})
