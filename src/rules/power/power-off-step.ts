import type { Light } from '../../language/plan.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, rule } from '../rule.js'
import { rangeOf } from './full-power.js'

const head = (power: string): string => `plan: 1
title: A head that steps in thirds
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/4.5, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, power: ${power}, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { framing: head and shoulders }
`

interface OffStep extends Evidence {
  readonly light: Light
  readonly step: number
  /** Stops under full power of what is written, and of the settings round it. */
  readonly under: number
  readonly lower: number
  readonly upper: number
}

export const powerOffStep = rule<OffStep>({
  id: 'power-off-step',
  family: 'power',
  level: 'note',
  finds: 'a power between two steps of the unit',
  limits: {
    off: { value: 0.05, unit: 'stop', says: 'from the nearest step' },
  },
  why: 'The plan names a power that the dial does not have. On the set somebody then picks one of two, and nobody knows which.',
  formula: 'log2(power / full) in the steps of the unit',
  sources: [{ kind: 'derived', says: 'power is linear in energy; steps are stops of it' }],
  basis: "the unit's own steps",
  fires: [
    { title: 'a half stop on a unit with thirds', plan: head('1/4 - 0.5') },
    { title: 'between the marks', plan: head('30 %') },
  ],
  passes: [
    { title: 'a third as the display shows it', plan: head('1/4 - 0.3') },
    { title: 'a full stop', plan: head('25 %') },
  ],

  needs: () => undefined,

  detect: ({ plan, limits }) =>
    [...plan.lights.values()].flatMap((light) => {
      const range = rangeOf(light)
      if (!light.on || range === undefined || light.power === undefined || !(range.step > 0)) return []
      const under = Math.log2(light.power / range.to)
      const steps = under / range.step
      const off = Math.abs(steps - Math.round(steps)) * range.step
      // Outside its range the power is not between two steps; that is told on its own.
      if (off - limits.off! <= 1e-6 || under > 1e-6 || light.power < range.from * (1 - 1e-6)) return []
      return [
        {
          pointer: lightPointer(light.name, 'power'),
          beyond: 'certain' as const,
          measured: {
            off: { value: off, unit: 'stop' as const, limit: limits.off!, side: 'at-most' as const },
          },
          cause: `the power of ${light.name}`,
          light,
          step: range.step,
          under,
          lower: Math.floor(steps) * range.step,
          upper: Math.ceil(steps) * range.step,
        },
      ]
    }),

  tell: ({ light, step, under, lower, upper }, words) => ({
    message: `${light.name} lies between two steps: ${words.howMany(Math.abs(under))} under full power, its unit goes in steps of ${words.howMany(step)}`,
    why: `${words.power(2 ** lower, step)} or ${words.power(2 ** upper, step)} can be set`,
  }),

  mend: ({ light, under, lower, upper, step }, words, { set }) => {
    const to = [lower, upper]
      .map((steps) => ({ steps, off: steps - under }))
      .sort((a, b) => Math.abs(a.off) - Math.abs(b.off))
    return to.map(({ steps, off }) => ({
      title: `lights.${light.name}.power → ${words.power(2 ** steps, step)}`,
      gives: `${words.stops(off)} against what is written`,
      after: set.with({ knob: { knob: 'strength', light: light.name }, to: off }),
    }))
  },
})
