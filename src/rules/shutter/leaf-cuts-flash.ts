import type { Light } from '../../language/plan.js'
import { type FlashTime, flashTime, regulationOf } from '../../light/flash-time.js'
import { type LeafLoss, leafLoss, opensAtOnce } from '../../light/shutter-loss.js'
import { latestOf } from '../../light/trigger-delay.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { markedSpeedOver } from '../gear.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { byStops, inside } from '../solving.js'
import { steadyGains } from '../steady-gains.js'
import type { Words } from '../words.js'
import { durationText, milliseconds } from './duration-text.js'
import { powerSet } from './power-set.js'
import { atShutter, costsOfSlower, slowerMarks } from './slower.js'
import { firedOnce } from './sync.js'

const leaf = (shutter: string, key: string): string => `plan: 1
title: Flash and a leaf shutter
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: ${shutter}, iso: 100, shutter-kind: leaf }
subject: { kind: person }
kit:
  units:
    slow head: { energy: 800 Ws, regulated: voltage, durations: [ { power: full, t0.5: 1/500 } ] }
    quick head: { energy: 400 Ws, regulated: igbt, durations: [ { power: full, t0.5: 1/800 }, { power: 1/8, t0.1: 1/3000 } ] }
lights:
  key: { ${key}, modifier: octa 90 cm, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { framing: head and shoulders }
`

interface LeafCuts extends Evidence {
  readonly light: Light
  readonly loss: LeafLoss
  readonly limit: number
  readonly time: FlashTime
}

export const leafCutsFlash = rule<LeafCuts>({
  id: 'leaf-cuts-flash',
  family: 'shutter',
  level: 'warning',
  finds:
    'a leaf shutter that closes before a flash is over, or has come: the picture gets less of it than the flash gives',
  limits: {
    lost: { value: 1 / 3, unit: 'stop', says: 'of a flash that the shutter may cut off' },
  },
  why: 'A leaf shutter syncs at every speed, but at its fastest it is open for less time than a large flash burns. A trigger that takes its time lets the flash come when the shutter is about to close. What it cuts off is paid for by the battery and never reaches the picture, and no meter says so that is set to a slower time or waits for the flash.',
  formula:
    'stops lost = -log2(1 - 2^(-(t - delay)/t0.5)) of a flash that falls as an exponential from its peak on; a pulse that is cut, and dies out, by its own integral; delays from none to the most that the trigger may take',
  sources: [
    { kind: 'standard', says: 't0.5 and t0.1 are times over half and over a tenth of the peak: ISO 2827' },
    {
      kind: 'derived',
      says: 'light of an exponential decay that is out by the time t; t0.1 is 3.32 times t0.5',
    },
    { kind: 'common practice', says: 'a third of a stop is where a difference starts to show' },
    {
      kind: 'memory',
      says: 'a radio adds up to half a millisecond, a basic one up to one and a half, optical groups up to three',
    },
    { kind: 'memory', says: 'durations of flashes whose kit does not state them, within a factor of two' },
  ],
  basis: 'flash durations, ISO 2827; decay of a discharge',
  fires: [
    { title: 'a large head at full power and 1/800', plan: leaf('1/800', 'unit: slow head, power: full') },
    { title: 'a quick head at full power and 1/800', plan: leaf('1/800', 'unit: quick head, power: full') },
    {
      title: 'a sensor read all at once',
      plan: leaf('1/800', 'unit: slow head, power: 1/2').replace('leaf }', 'electronic, readout: 0 ms }'),
    },
    {
      title: 'a quick flash that its trigger fires late',
      plan: leaf('1/500', 'unit: quick head, power: 1/8, trigger: { by: optical groups }'),
    },
  ],
  passes: [
    { title: 'slow enough for all of it', plan: leaf('1/125', 'unit: slow head, power: full') },
    {
      title: 'the same by cable',
      plan: leaf('1/500', 'unit: quick head, power: 1/8, trigger: { by: cable }'),
    },
    { title: 'a flash that is short at an eighth', plan: leaf('1/800', 'unit: quick head, power: 1/8') },
    {
      title: 'a focal-plane shutter',
      plan: leaf('1/200', 'unit: slow head, power: full').replace(', shutter-kind: leaf', ''),
    },
  ],

  needs: ({ plan }) => (!opensAtOnce(plan.camera) || firedOnce(plan).length === 0 ? 'silent' : undefined),

  detect: ({ set, plan, limits }) =>
    firedOnce(plan).flatMap((light) => {
      const { unit } = light
      const loss = lossIn(set, light)
      const { stops: lost, u, uLess } = loss
      if (lost === 0 || unit.kind !== 'flash') return []
      const limit = limits.lost!
      return [
        {
          pointer: '/camera/shutter',
          also: [{ pointer: lightPointer(light.name), says: 'this flash' }],
          beyond: { stops: lost - limit, u: uLess },
          measured: { lost: { value: lost, unit: 'stop', u, limit, side: 'at-most' } },
          cause: 'the shutter closes before the flash is over',
          scale: { value: -lost, u, needs: -limit, against: `against all that ${light.name} gives` },
          light,
          loss,
          limit,
          time: flashTime(unit, powerSet(set, light).power),
        },
      ]
    }),

  tell: ({ light, loss, time }, words, { plan: { camera } }) => ({
    message: `${light.name} reaches the picture ${weakerText(loss, words)}: at ${words.shutter(camera.shutterMarked)} the shutter closes before its flash ${loss.most < black ? 'is over' : 'has come, where its trigger is late'}`,
    why: [
      `its flash lasts ${durationText(time.t05, words)} over half of its peak${time.known === 'guessed' ? ', by a guess' : ''}`,
      ...(latestOf(light) === 0
        ? ['a flash meter set to the same time shows it; at a slower one it does not']
        : [
            `fired by ${light.trigger!.by} it comes up to ${milliseconds(latestOf(light))} late`,
            'a flash meter set to the same time and fired by the same trigger shows it; one that waits for the flash does not',
          ]),
    ].join('; '),
  }),

  inShort: ({ light, loss }, words) =>
    `the shutter cuts ${words.howMany(loss.stops)} off the flash of ${light.name}`,

  mend: (evidence, words, context) =>
    inTurn(
      () => slower(evidence, words, context),
      () => byCable(evidence, words, context),
      () => lessPower(evidence, words, context),
      () => [{ title: `a unit with a shorter flash for ${evidence.light.name}`, gives: 'all of its light' }],
    ),
})

/** So little is left that the light counts as missing. */
const black = 5

/** `0.5 to 2.1 stops weaker than it burns`, by how late it is fired. */
const weakerText = ({ stops, least, most }: LeafLoss, words: Words): string => {
  if (most - least < 0.1) return `${words.howMany(stops)} weaker than it burns`
  if (most < black)
    return `${least < 0.05 ? 'up to' : `${figure(least)} to`} ${words.howMany(most)} weaker than it burns`
  return least < 0.05
    ? 'weaker than it burns, or not at all'
    : `at least ${words.howMany(least)} weaker than it burns, or not at all`
}

const figure = (stops: number): string => String(Math.round(stops * 10) / 10)

/** Slower than this, hands and people blur. */
const longest = 1 / 30

const slower = ({ light, limit }: LeafCuts, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const enough = slowerMarks(plan.camera.shutterMarked, longest).find((mark) =>
    keeps(atShutter(set, mark), light, limit),
  )
  return enough === undefined
    ? []
    : [
        {
          title: `camera.shutter → ${words.shutter(enough)}`,
          gives: cutText(lostIn(atShutter(set, enough), light), words),
          costs: costsOfSlower(set, enough, words),
          after: atShutter(set, enough),
        },
      ]
}

const cutText = (lost: number, words: Words): string =>
  lost < 0.05 ? 'all of its light in the picture' : `${words.howMany(lost)} is cut off`

/** Where all of the loss that is too much is the trigger's. */
const byCable = ({ light, limit }: LeafCuts, words: Words, { set }: RuleContext): readonly Mend[] => {
  if (latestOf(light) === 0) return []
  const { stops, u } = lossIn(set, light, { ...light.trigger!, by: 'cable' })
  return stops !== 0 && stops + inside(u) > limit
    ? []
    : [{ title: `${light.name} fired by cable`, gives: cutText(stops, words) }]
}

/** At the power that it is set to, or that what it is to meter takes. */
const lossIn = (set: ComputedSet, { name }: Light, trigger?: Light['trigger']): LeafLoss => {
  const light = set.plan.lights.get(name)!
  const { power, u } = powerSet(set, light)
  const at = (share: number): LeafLoss =>
    leafLoss({ ...light, trigger: trigger ?? light.trigger, power: share as typeof power }, set.plan)
  const loss = at(power)
  const byPower = at(Math.min(1, power * 2 ** u)).stops - loss.stops
  return { ...loss, u: Math.hypot(loss.u, byPower), uLess: Math.hypot(loss.uLess, byPower) }
}
const lostIn = (set: ComputedSet, light: Light): number => lossIn(set, light).stops

const keeps = (set: ComputedSet, light: Light, limit: number): boolean => {
  const { stops, u } = lossIn(set, light)
  return stops === 0 || stops + inside(u) <= limit
}

/** A flash that is cut short at less power is over sooner; speed makes up for it. */
const lessPower = ({ light, limit }: LeafCuts, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  if (light.unit.kind !== 'flash' || light.power === undefined || regulationOf(light.unit) !== 'igbt')
    return []
  const turned = firedOnce(plan)
    .filter(({ power }) => power !== undefined)
    .map(({ name }) => name)
  const room = Math.floor(Math.log2(light.power / light.unit.power.from) * 3 + 1e-6)
  for (let thirds = 1; thirds <= room; thirds++) {
    const iso = markedSpeedOver(plan.camera.iso * 2 ** (thirds / 3))
    if (iso === undefined) return []
    const after = set.with(...byStops(turned, -thirds / 3), { knob: { knob: 'iso' }, to: iso })
    if (!keeps(after, light, limit)) continue
    return [
      {
        title: `camera.iso → ${iso}, ${turned.map((name) => `lights.${name}.power → ${words.power(after.plan.lights.get(name)!.power!)}`).join(', ')}`,
        gives: cutText(lostIn(after, light), words),
        costs: steadyGains(set, thirds / 3, words),
        after,
      },
    ]
  }
  return []
}
