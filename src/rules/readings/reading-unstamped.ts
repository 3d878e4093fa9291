import type { MeterReading } from '../../language/plan.js'
import { settingsToday, stampToday } from '../../set/stamp.js'
import { type Evidence, rule } from '../rule.js'
import { readingPointer, readingText, readLights } from './of-reading.js'

const read = (reading: string): string => `plan: 1
title: Readings and what the lights were set to
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: flashgun, modifier: softbox 60 x 90 cm, power: 1/4, at: { angle: 35 deg left, distance: 1.2 m, height: 2 m } }
  fill: { unit: flashgun, modifier: white umbrella 1 m, power: 1/16, at: { angle: 30 deg right, distance: 1.8 m, height: 1.7 m } }
readings:
  - ${reading}
wanted: { framing: head and shoulders }
`

interface Unstamped extends Evidence {
  readonly index: number
  readonly reading: MeterReading
  /** The lights of which it does not say what they were set to. */
  readonly lights: readonly string[]
  /** The exact text to write, and where. */
  readonly at: readonly string[]
  readonly text: string
}

export const readingUnstamped = rule<Unstamped>({
  id: 'reading-unstamped',
  family: 'readings',
  level: 'note',
  finds: 'a reading that does not say what the lights were set to when it was taken',
  limits: {},
  why: 'A reading holds for the power and the distance at which it was taken. Without them it counts for whatever the plan says later, and after the next turn of a dial every figure is wrong by that turn.',
  formula: 'a light that was read, whose power or distance the plan states, and that `taken` does not name',
  sources: [
    {
      kind: 'derived',
      says: 'a reading is carried to other settings by the ratio of powers and by geometry',
    },
  ],
  basis: 'what the reading itself says',
  fires: [
    { title: 'no stamp at all', plan: read('{ at: subject, of: [key], reads: f/5.6 }') },
    {
      title: 'one of two lights',
      plan: read(
        '{ at: subject, of: [key, fill], reads: f/6.3, taken: { key: { power: 1/4, distance: 1.2 m } } }',
      ),
    },
  ],
  passes: [
    {
      title: 'stamped',
      plan: read('{ at: subject, of: [key], reads: f/5.6, taken: { key: { power: 1/4, distance: 1.2 m } } }'),
    },
    { title: 'the ambient light is not set', plan: read('{ at: subject, of: ambient, reads: f/1.4 }') },
  ],

  needs: ({ plan }) => (plan.readings.length === 0 ? 'silent' : undefined),

  detect: ({ plan, set }) =>
    plan.readings.flatMap((reading, index): readonly Unstamped[] => {
      const lights = readLights(plan, reading).filter(
        (light) =>
          reading.taken?.has(light.name) !== true && settingsToday(light, plan, set.scene) !== undefined,
      )
      const [first] = lights
      if (first === undefined) return []
      // A stamp that lacks some lights is completed by the first of them; the others follow in their turn.
      const partly = reading.taken !== undefined && reading.taken.size > 0
      const stamp = partly
        ? { at: ['taken', first.name], text: settingsToday(first, plan, set.scene)! }
        : { at: ['taken'], text: stampToday(lights, plan, set.scene)! }
      return [
        {
          pointer: readingPointer(index),
          beyond: 'certain',
          measured: {},
          cause: 'how the readings were written down',
          index,
          reading,
          lights: lights.map(({ name }) => name),
          ...stamp,
        },
      ]
    }),

  tell: ({ reading, lights }, words) => ({
    message: `${readingText(reading, words)} does not say what ${words.list(lights)} ${lights.length === 1 ? 'was' : 'were'} set to: after the next turn of a dial it counts as if it had been taken there`,
    why: 'power and distance at the time of the reading let it be carried to other settings',
  }),

  mend: ({ index, at, text }) => [
    {
      title: `readings.${index}.${at.join('.')} → ${text}`,
      gives: "today's settings, which are right if nothing was turned since",
    },
  ],
})
