import type { Plan } from '../../language/plan.js'
import { highSpeedLoss } from '../../light/strength.js'
import { latestOf } from '../../light/trigger-delay.js'
import { type Band, curtainTravel, darkBand, fasterThanSync } from '../../picture/shutter.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Change } from '../../set/knobs.js'
import { exactShutter } from '../../units/marks.js'
import type { Seconds } from '../../units/quantity.js'
import { turnLight } from '../gear.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import { byStops } from '../solving.js'
import { steadyGains } from '../steady-gains.js'
import type { Words } from '../words.js'
import { darkText, percent, subjectInBand } from './band.js'
import { type Short, shortOf } from './edge-of-flash.js'
import { singleFlashes, syncU } from './sync.js'

const at = (shutter: string, more = '', light = '', frame = 'horizontal'): string => `plan: 1
title: Flash and a fast shutter
camera: { lens: 85 mm, frame: ${frame}, at: { distance: 2.5 m }, aperture: f/4, shutter: ${shutter}, iso: 100, sync: 1/200${more} }
subject: { kind: person }
lights:
  key: { unit: flashgun, meters: f/4, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m }${light} }
wanted: { framing: head and shoulders }
`

interface BeyondSync extends Evidence {
  readonly band: Band
  readonly short: Short
  readonly crosses: boolean
  /** Stops from the sync speed to the shutter. */
  readonly faster: number
}

export const shutterBeyondSync = rule<BeyondSync>({
  id: 'shutter-beyond-sync',
  family: 'shutter',
  level: 'error',
  finds: 'a focal-plane shutter faster than flash sync: a dark band along one long edge of the frame',
  limits: {
    faster: { value: 0, unit: 'stop', says: 'faster than the sync speed' },
    short: {
      value: 1,
      unit: 'stop',
      says: 'of the flash missed: a strip beside the dark band is told over this',
    },
  },
  why: 'Faster than sync the shutter is a travelling slit. The flash is over in a moment and lights only the part that is open just then; a large one burns on while the slit closes, and the dark band is wider for it.',
  formula:
    'share of the frame that is open = (t - delay of the trigger) / T, with the travel T of the curtain: stated, or 0.7 to 1.0 of the sync time; short of the flash: what closes before half of it is out',
  sources: [
    { kind: 'published', says: 'geometry of the focal-plane shutter: open share min(1, t/T)' },
    { kind: 'common practice', says: 'the curtain travels in 0.7 to 1.0 of the sync time' },
    { kind: 'memory', says: 'a radio adds up to half a millisecond, a basic one up to one and a half' },
    {
      kind: 'common practice',
      says: 'high-speed sync loses about two stops on entry, then one for each halving',
    },
  ],
  basis: 'focal-plane geometry; the marks of the dial as they are',
  fires: [
    { title: 'a stop faster than sync', plan: at('1/400') },
    { title: 'the next mark after sync', plan: at('1/250') },
    { title: 'the band beside the subject', plan: at('1/250', ', curtain: 4.1 ms', '', 'vertical') },
  ],
  passes: [
    { title: 'at the sync speed', plan: at('1/200') },
    { title: 'high-speed sync', plan: at('1/1000', '', ', mode: high-speed') },
    { title: 'a leaf shutter', plan: at('1/500', ', shutter-kind: leaf') },
  ],

  needs: ({ plan }) =>
    plan.camera.shutterKind !== 'focal-plane' || singleFlashes(plan).length === 0 ? 'silent' : undefined,

  detect: ({ set, plan, limits }) => {
    if (!fasterThanSync(plan.camera)) return []
    const band = darkBand(plan.camera, latestTrigger(plan))
    if (band === undefined) return []
    const faster = Math.log2(plan.camera.sync / plan.camera.shutterMarked)
    const short = shortOf(set, singleFlashes(plan), curtainTravel(plan.camera), limits.short!)
    const crosses = subjectInBand(set.scene, plan.camera.frame, Math.max(band.dark.most, short.share))
    const u = syncU(plan)
    return [
      {
        pointer: '/camera/shutter',
        also: [
          { pointer: '/camera/sync', says: u === 0 ? 'the sync speed' : 'the plan states no sync speed' },
          ...singleFlashes(plan).map((light) => ({ pointer: lightPointer(light.name), says: 'this flash' })),
        ],
        beyond: u === 0 ? 'certain' : { stops: faster, u },
        level: crosses ? 'error' : 'warning',
        measured: {
          'faster-than-sync': { value: faster, unit: 'stop', limit: 0, side: 'at-most' },
          'dark-share': { value: band.dark.most, unit: 'share' },
          'short-share': { value: short.share, unit: 'share' },
        },
        cause: 'the shutter is faster than the flash sync',
        band,
        short,
        crosses,
        faster,
      },
    ]
  },

  tell: ({ band, short, crosses }, words, { plan, limits }) => ({
    message: `${darkText(band, short, words.howMany(limits.short!), crosses, plan.camera)}: ${words.shutter(plan.camera.shutterMarked)} is faster than the sync speed of ${words.shutter(plan.camera.sync)}`,
    why: `the flash finds only ${percent(band.open.least)}${band.open.most - band.open.least < 0.005 ? '' : ` to ${percent(band.open.most)}`} of the frame open`,
  }),

  mend: (evidence, words, context) => [
    ...atSync(evidence, words, context),
    ...neutralDensity(evidence, words, context),
    ...highSpeed(evidence, words, context),
  ],
})

/** Of the flash that comes last. */
const latestTrigger = (plan: Plan): Seconds => Math.max(...singleFlashes(plan).map(latestOf)) as Seconds

/** The ambient light then comes up, by a known amount where it is stated. */
const atSync = ({ faster }: BeyondSync, words: Words, { plan, set }: RuleContext): readonly Mend[] => {
  const ambient =
    plan.ambient && set.reading({ at: 'subject', of: ['ambient'], dome: 'raised', faces: 'camera' })
  const under = ambient && set.key && Math.log2(set.key.luxSeconds / ambient.luxSeconds) - faster
  return [
    {
      title: `camera.shutter → ${words.shutter(plan.camera.sync)}`,
      gives: 'the whole frame open at the flash',
      costs:
        under === undefined
          ? steadyGains(set, faster, words)
          : `the ambient light comes up to ${words.howMany(under)} ${under < 0 ? 'over' : 'under'} the key`,
      after: atSpeed(set),
    },
  ]
}

/** The set at its sync speed. */
const atSpeed = (set: ComputedSet, ...more: readonly Change[]): ComputedSet =>
  set.with({ knob: { knob: 'shutter' }, to: exactShutter(set.plan.camera.sync) }, ...more)

/** The same dim surround at sync speed: the lens loses what the shutter took, the flash makes it up. */
const neutralDensity = (
  { faster }: BeyondSync,
  words: Words,
  { plan, set }: RuleContext,
): readonly Mend[] => {
  const stops = Math.ceil(faster - 0.05)
  const short = singleFlashes(plan).flatMap((light) => {
    const turned = light.power === undefined ? undefined : turnLight(plan, light.name, stops)
    return set.strength(light.name) !== undefined && turned !== undefined && turned.short > 0.05
      ? [`${light.name} is ${words.howMany(turned.short)} short of it`]
      : []
  })
  return [
    {
      title: `camera.shutter → ${words.shutter(plan.camera.sync)}, camera.filter → ${words.howMany(plan.camera.filter + stops)}`,
      gives: 'by neutral density the same aperture, and the ambient light as dark as now',
      costs: [`${words.howMany(stops)} more power on every flash`, ...short].join('; '),
      after: atSpeed(
        set,
        { knob: { knob: 'filter' }, to: plan.camera.filter + stops },
        ...byStops(
          singleFlashes(plan)
            .filter(({ power, meters }) => power !== undefined || meters !== undefined)
            .map(({ name }) => name),
          stops,
        ),
      ),
    },
  ]
}

const highSpeed = (_: BeyondSync, words: Words, { plan }: RuleContext): readonly Mend[] => {
  const flashes = singleFlashes(plan)
  const losses = flashes.map((light) => highSpeedLoss({ ...light, mode: 'high-speed' }, plan)?.stops ?? 0)
  const loss = Math.max(...losses)
  const short = flashes.flatMap((light, i) => {
    const turned = light.power === undefined ? undefined : turnLight(plan, light.name, losses[i]!)
    return turned !== undefined && turned.short > 0.05
      ? [`${light.name} is ${words.howMany(turned.short)} short of it`]
      : []
  })
  return [
    {
      title: `${flashes.map((light) => `lights.${light.name}.mode → high-speed`).join(', ')}, if the units can`,
      gives: `all of the frame at ${words.shutter(plan.camera.shutterMarked)}`,
      costs: [`about ${words.howMany(loss)} of the flash's light`, ...short].join('; '),
    },
  ]
}
