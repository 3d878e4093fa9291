import type { Light } from '../../language/plan.js'
import { highSpeedLoss } from '../../light/strength.js'
import { fasterThanSync } from '../../picture/shutter.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { exactShutter } from '../../units/marks.js'
import type { FNumber } from '../../units/quantity.js'
import { type Turned, turnLight } from '../gear.js'
import { keyMissing, unknownLight } from '../known.js'
import { lightPointer } from '../place-pointer.js'
import { pointText } from '../place-words.js'
import { meteredAt } from '../power/full-power.js'
import { solveDistance } from '../power/hold-by-distance.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { inside } from '../solving.js'
import type { Words } from '../words.js'
import { highSpeedFlashes, type Shortage, shortages, shortIn, toFull } from './high-speed.js'
import { atShutter, slowerMarks } from './slower.js'

const outdoors = (key: string, aperture = 'f/4', shutter = '1/1000', distance = '1.6 m'): string => `plan: 1
title: Flash against the sun
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: ${aperture}, shutter: ${shutter}, iso: 100, sync: 1/200 }
subject: { kind: person }
lights:
  key: { unit: flashgun, mode: high-speed, ${key}, at: { angle: 30 deg left, distance: ${distance}, height: 1.9 m } }
wanted: { ambient: any, framing: head and shoulders }
`

interface HighSpeedShort extends Evidence {
  readonly light: Light
  readonly short: number
  readonly u: number
  /** Stops that the mode takes at this shutter. */
  readonly lost: number
  /** At full power, where it is metered. */
  readonly gives: FNumber
}

export const highSpeedShort = rule<HighSpeedShort>({
  id: 'high-speed-short',
  family: 'shutter',
  level: 'warning',
  finds: 'a flash in high-speed mode that cannot give enough even at full power',
  limits: {
    short: { value: 0, unit: 'stop', says: 'short of what it is to meter, or of what the camera is set to' },
    'key-angle': {
      value: 80,
      unit: 'deg',
      says: 'between light and camera; from further round it does not light the face for the camera',
    },
  },
  why: 'In high-speed mode the flash pulses for as long as the slit of the shutter takes to run over the frame, and most of that light falls on closed curtains. Two stops go at once, one more with every halving of the time.',
  formula:
    'light at full power less 2 stops on entry (or what the kit says) and log2(sync / t), against what is to be metered or what the camera is set to',
  sources: [
    {
      kind: 'common practice',
      says: 'two to two and a half stops go on entering high-speed mode, one more for each halving',
    },
    {
      kind: 'derived',
      says: 'at best t / (t + T) of an even burst passes a slit that takes T over the frame',
    },
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
  ],
  basis: 'incident metering, ISO 2720; losses of high-speed mode are common practice',
  fires: [
    { title: 'to meter f/8 at 1/2000', plan: outdoors('meters: f/8', 'f/8', '1/2000') },
    { title: 'full power, and the camera wants more', plan: outdoors('power: full', 'f/5.6', '1/2000') },
    { title: 'through a box', plan: outdoors('modifier: softbox 60 x 60 cm, meters: f/5.6', 'f/5.6') },
  ],
  passes: [
    { title: 'wide open and close', plan: outdoors('meters: f/2', 'f/2', '1/1000', '1.2 m') },
    { title: 'full power for f/2', plan: outdoors('power: full', 'f/2', '1/500', '1.2 m') },
    { title: 'at the sync speed nothing is lost', plan: outdoors('meters: f/4', 'f/4', '1/200') },
  ],

  needs: (context) => {
    const { plan, set } = context
    const flashes = highSpeedFlashes(plan)
    if (flashes.length === 0) return 'silent'
    const unknown = set.unknown.find((light) => flashes.includes(light))
    if (unknown !== undefined) return unknownLight(unknown, set)
    return flashes.some(({ meters }) => meters !== undefined) ? undefined : keyMissing(context)
  },

  detect: (context) => {
    const { plan, limits } = context
    if (!fasterThanSync(plan.camera)) return []
    return shortages(context.set, context).map(({ light, short, u, gives, at }) => {
      const lost = highSpeedLoss(light, plan)?.stops ?? 0
      return {
        pointer: lightPointer(light.name, 'mode'),
        also: [
          { pointer: '/camera/shutter', says: 'at this speed' },
          { pointer: at, says: 'what it is to give' },
        ],
        beyond: { stops: short - limits.short!, u },
        measured: {
          short: { value: short, unit: 'stop' as const, u, limit: limits.short!, side: 'at-most' as const },
          lost: { value: lost, unit: 'stop' as const },
        },
        cause: light.meters === undefined ? 'the camera is not set to the key' : `the power of ${light.name}`,
        scale: { value: -short, u, needs: -limits.short!, against: `against what ${light.name} is to give` },
        light,
        short,
        u,
        lost,
        gives,
      }
    })
  },

  tell: ({ light, short, lost, gives }, words, { plan }) => ({
    message: `${pointText(plan, meteredAt(light))} stays ${words.howMany(short)} too dark: in high-speed mode at ${words.shutter(plan.camera.shutterMarked)} ${light.name} gives ${words.f(gives)} there at full power, ${words.f((gives * 2 ** (short / 2)) as FNumber)} is wanted`,
    why: `the mode takes ${words.howMany(lost)} of what the flash gives at ${words.shutter(plan.camera.sync)} and slower`,
  }),

  mend: (evidence, words, context) =>
    inTurn(
      () => neutralDensity(evidence, words, context),
      () => slower(evidence, words, context),
      () => closer(evidence, words, context),
      () => [{ title: 'another unit beside it, in the same mode', gives: words.stops(1) }],
    ),
})

/** With the mode off the flash fires at once: at the sync speed it gives all that it has. */
const neutralDensity = (
  { light, short }: HighSpeedShort,
  words: Words,
  context: RuleContext,
): readonly Mend[] => {
  const { set, plan } = context
  const { camera } = plan
  const stops = Math.ceil(Math.log2(camera.sync / camera.shutterMarked) - 0.05)
  const flashes = highSpeedFlashes(plan)
  // What is to meter something has to meter more before a darker lens; what stands at a power goes up to full.
  const up = flashes.flatMap(({ name, meters, power }) =>
    meters === undefined || power !== undefined ? [] : [turnLight(plan, name, stops)],
  )
  const after = set.with(
    { knob: { knob: 'shutter' }, to: exactShutter(camera.sync) },
    { knob: { knob: 'filter' }, to: camera.filter + stops },
    ...up.flatMap((turned) => turned?.change ?? []),
    ...flashes.flatMap(toFull),
  )
  const found = shortIn(after, light, context)
  if (found === undefined) return []
  // What it is to meter stays written where a power is set as well.
  const metersMore = light.meters !== undefined && light.power !== undefined ? stops : 0
  const left = { ...found, short: found.short + metersMore }
  if (left.short > short - 0.3 || (metersMore > 0 && left.short > slack)) return []
  const title = [
    `camera.shutter → ${words.shutter(camera.sync)}`,
    `camera.filter → ${words.howMany(camera.filter + stops)}`,
    ...up.flatMap((turned) => turned?.title ?? []),
    ...flashes.map(({ name }) => `lights.${name}.mode → manual`),
  ].join(', ')
  const costs = 'a dark finder, and whatever moves in the light of the place is blurred more'
  const gives = `the light of the place as dark as now, and ${words.howMany(short - left.short)} more of the flash`
  if (left.short <= slack) return [{ title, gives, costs, after }]
  const distance = distanceFor(after, left, context)
  return [
    {
      title,
      gives: `${gives}: ${words.howMany(left.short)} still to find`,
      costs,
      after,
      partial: true,
    },
    ...(distance === undefined
      ? []
      : [
          {
            title: `${title}, ${distance.title}`,
            gives: 'full power is enough, the light of the place as dark as now',
            costs: `${costs}; keep it out of the frame`,
            after: after.with(distance.change),
          },
        ]),
  ]
}

/** Stops that nobody sees. */
const slack = 0.1

/** How near the light has to stand for full power to be enough. */
const distanceFor = (set: ComputedSet, { light, short, u }: Shortage, context: RuleContext) => {
  const aim = (margin: number) =>
    solveDistance(
      set,
      light,
      (today) => Math.max(nearest, today * 2 ** (-short / 2 - 1)),
      (moved) => {
        const then = shortIn(moved, light, context)
        return then === undefined ? undefined : then.short + margin
      },
    )
  return aim(inside(u)) ?? aim(0)
}

/** Nearer nobody puts a light to a face, metres. Common practice, no source. */
const nearest = 0.4

/** The slowest that is needed: less of the light falls on closed curtains; at the sync speed none. */
const slower = ({ light, u }: HighSpeedShort, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const { camera } = plan
  const tried = slowerMarks(camera.shutterMarked, camera.sync).map((mark) => ({
    mark,
    after: atShutter(set, mark),
  }))
  const reaches = (margin: number) =>
    tried.find(({ after }) => (shortIn(after, light, context)?.short ?? 1) <= -margin)
  const enough = reaches(inside(u)) ?? reaches(0)
  if (enough === undefined) return []
  const turned = downToWanted(enough.after, light, context)
  return [
    {
      title: [`camera.shutter → ${words.shutter(enough.mark)}`, ...turned.map(({ title }) => title)].join(
        ', ',
      ),
      gives: turned.length === 0 ? 'full power is enough' : 'more than enough light',
      costs: `the light of the place counts ${words.howMany(Math.log2(enough.mark / camera.shutterMarked))} more`,
      after: enough.after.with(...turned.map(({ change }) => change)),
    },
  ]
}

/** A light that stands at a power goes down to what is wanted; one that is to meter something does so by itself. */
const downToWanted = (set: ComputedSet, light: Light, context: RuleContext): readonly Turned[] => {
  const { unit, power } = light
  const short = shortIn(set, light, context)?.short
  if (unit.kind !== 'flash' || power === undefined || light.meters !== undefined || short === undefined)
    return []
  const turned = turnLight(set.plan, light.name, Math.log2(unit.power.to / power) + short, 'nearest')
  return turned === undefined || turned.short > 0 || Math.abs(turned.change.to) < slack ? [] : [turned]
}

const closer = (evidence: HighSpeedShort, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const { light } = evidence
  const turned = distanceFor(set, { ...evidence, at: '' }, context)
  return turned === undefined
    ? []
    : [
        {
          title: turned.title,
          gives: `${words.f(light.meters?.reads ?? plan.camera.aperture)} at full power`,
          costs: 'the light falls off faster behind; keep it out of the frame',
          after: set.with(turned.change, ...toFull(light)),
        },
      ]
}
