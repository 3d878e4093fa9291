import { fasterThanSync, triggerMargin, underSync } from '../../picture/shutter.js'
import { exactShutter, nearestShutter } from '../../units/marks.js'
import type { Seconds } from '../../units/quantity.js'
import { lightPointer, settingPointer } from '../place-pointer.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import { steadyGains } from '../steady-gains.js'
import { reached } from '../tiers.js'
import type { Words } from '../words.js'
import { durationText, milliseconds } from './duration-text.js'
import { type Tail, tailsCut } from './edge-of-flash.js'
import { earlyFalls, earlyText, earlyWhy, type Fall, insteadOfEarly } from './fired-early.js'
import { atShutter, costsOfSlower, slowerMarks } from './slower.js'
import { earlyFlashes, singleFlashes, syncU } from './sync.js'

const fired = (
  by: string,
  shutter: string,
  more = 'unit: head 200 Ws, meters: f/5.6',
  curtain = '',
): string => `plan: 1
title: Flash by trigger
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: ${shutter}, iso: 100, sync: 1/200${curtain} }
subject: { kind: person }
lights:
  key: { ${more}, modifier: softbox 60 x 90 cm, trigger: { by: ${by} }, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { framing: head and shoulders }
`
const quick = (power: string): string =>
  `unit: { energy: 400 Ws, regulated: igbt, durations: [{ power: full, t0.1: 1/500 }, { power: 1/32, t0.1: 1/4000 }] }, power: ${power}`
const long =
  'unit: { energy: 1200 Ws, regulated: voltage, durations: [{ power: full, t0.1: 1/60 }] }, power: full'
const slow =
  'unit: { energy: 800 Ws, regulated: voltage, durations: [{ power: full, t0.1: 1/250 }] }, power: full'

type Trigger = keyof typeof triggerMargin

interface Near {
  readonly kind: 'near'
  readonly margin: number
  readonly needs: number
  readonly by: Trigger
  readonly lights: readonly string[]
}

interface Margin extends Evidence {
  readonly found: Near | ({ readonly kind: 'early' } & Fall) | ({ readonly kind: 'tail' } & Tail)
}

const limitNames = {
  cable: 'cable',
  radio: 'radio',
  'basic radio': 'basic-radio',
  optical: 'optical',
  'optical groups': 'optical-groups',
} as const satisfies Record<Trigger, string>

export const triggerMarginRule = rule<Margin>({
  id: 'trigger-margin',
  family: 'shutter',
  level: 'warning',
  finds:
    'a shutter too near the sync speed for how the flash is fired, or for how long it burns; a short flash that is fired early',
  limits: {
    cable: { value: triggerMargin.cable, unit: 'stop', says: 'under the sync speed, by cable' },
    radio: { value: triggerMargin.radio, unit: 'stop', says: 'under the sync speed, by radio' },
    'basic-radio': {
      value: triggerMargin['basic radio'],
      unit: 'stop',
      says: 'under the sync speed, by a basic radio',
    },
    optical: {
      value: triggerMargin.optical,
      unit: 'stop',
      says: 'under the sync speed, by a plain optical slave',
    },
    'optical-groups': {
      value: triggerMargin['optical groups'],
      unit: 'stop',
      says: 'under the sync speed, by optical groups',
    },
    ahead: {
      value: 1 / 4,
      unit: 'share',
      says: "of the curtain's run that is left when a flash is fired early, at the sync speed and slower; faster, all of it",
    },
    'early-note': { value: 1, unit: 'stop', says: 'over the frame of a flash fired early: note over this' },
    early: { value: 2, unit: 'stop', says: 'over the frame of a flash fired early: warning over this' },
    'tail-note': {
      value: 1 / 3,
      unit: 'stop',
      says: 'of a flash that its last strip misses: note over this',
    },
    tail: { value: 1, unit: 'stop', says: 'of a flash that its last strip misses: warning over this' },
  },
  why: 'A trigger takes its time after the contact closes, and a large flash burns for some. At the sync speed there is none to spare, and a strip along one edge stays dark, from one frame to the next more or less. A trigger that fires early, for a long flash to burn through the slit, leaves the other edge dark with a short one.',
  formula:
    'log2(shutter time / sync time) in the thirds of the dial, against what the trigger wants; the tail: the flash that is out by t - T; fired early: what the flash gives the strips of the frame while they are open, the lightest against the darkest',
  sources: [
    {
      kind: 'common practice',
      says: 'cable 0, radio a third, basic radio two thirds, optical groups one stop under sync',
    },
    { kind: 'derived', says: 'usable sync time = travel + delay + duration of the flash' },
    {
      kind: 'derived',
      says: 'strip y of the frame is open from y·T for the time t while the flash dies down',
    },
    {
      kind: 'common practice',
      says: 'a frame that falls off by a stop or two is what early firing is used with',
    },
  ],
  basis: 'the marks of the dial; margins are common practice',
  fires: [
    { title: 'basic radio at the sync speed', plan: fired('basic radio', '1/200') },
    { title: 'basic radio a third under it', plan: fired('basic radio', '1/160') },
    { title: 'fired early, and over too soon', plan: fired('radio, early: true', '1/160', quick('1/32')) },
    {
      title: 'a slit that outlasts the flash',
      plan: fired('radio, early: true', '1/1000', slow, ', curtain: 4 ms'),
    },
    { title: 'a long flash at the sync speed', plan: fired('cable', '1/200', slow, ', curtain: 4 ms') },
  ],
  passes: [
    { title: 'by cable', plan: fired('cable', '1/200') },
    { title: 'radio a third under it', plan: fired('radio', '1/160') },
    { title: 'basic radio two thirds under it', plan: fired('basic radio', '1/125') },
    { title: 'fired early, for a long flash', plan: fired('radio, early: true', '1/160', long) },
    {
      title: 'a flash that lasts as long as the slit runs',
      plan: fired('radio, early: true', '1/1000', long, ', curtain: 4 ms'),
    },
    { title: 'a long flash and time for it', plan: fired('cable', '1/80', slow, ', curtain: 4 ms') },
  ],

  needs: ({ plan, set }) => {
    if (plan.camera.shutterKind !== 'focal-plane') return 'silent'
    if (earlyFlashes(plan).length > 0) return undefined
    const flashes = singleFlashes(plan)
    if (fasterThanSync(plan.camera) || flashes.length === 0) return 'silent'
    return flashes.some((light) => light.trigger !== undefined) || tailsCut(set).length > 0
      ? undefined
      : {
          because: 'the plan does not say how the flashes are fired',
          enable: { pointer: lightPointer(flashes[0]!.name, 'trigger'), text: 'trigger: { by: radio }' },
        }
  },

  detect: (context) => [
    ...near(context),
    ...earlyFalls(context.set, context.limits.ahead!).map((found) => early(found, context)),
    ...tailsCut(context.set).map((found) => tail(found, context)),
  ],

  tell: ({ found }, words, { plan, limits }) => {
    const { camera } = plan
    switch (found.kind) {
      case 'near':
        return {
          message: `a strip along one edge can stay dark: ${words.shutter(camera.shutterMarked)} is ${found.margin === 0 ? 'at' : `only ${words.howMany(found.margin)} under`} the sync speed of ${words.shutter(camera.sync)}, and a flash fired by ${found.by} wants ${words.howMany(found.needs)}`,
          why: `${words.list(found.lights)} fired by ${found.by}; a test frame of a plain wall shows how much your trigger needs`,
        }
      case 'early':
        return {
          message: earlyText(found, words, camera),
          why: earlyWhy(found, words, camera, limits['early-note']!),
        }
      case 'tail':
        return {
          message: `a strip along one edge comes out ${words.howMany(found.lost)} darker: at ${words.shutter(camera.shutterMarked)} the second curtain starts while ${found.light.name} still burns`,
          why: `its flash lasts ${durationText(found.t01, words)} (t0.1), and ${milliseconds(camera.shutterMarked - camera.curtain!)} are left between the curtains`,
        }
    }
  },

  mend: ({ found }, words, context) =>
    found.kind === 'near'
      ? moreMargin(found, words, context)
      : found.kind === 'early'
        ? insteadOfEarly(found, words, context.set, {
            share: context.limits.ahead!,
            fall: context.limits['early-note']!,
          })
        : timeForAll(found, words, context),
})

const near = ({ plan, limits }: RuleContext): readonly Margin[] => {
  if (fasterThanSync(plan.camera)) return []
  const kinds = singleFlashes(plan).flatMap((light) =>
    light.trigger === undefined
      ? []
      : [{ light: light.name, by: light.trigger.by, needs: limits[limitNames[light.trigger.by]]! }],
  )
  const most = kinds.reduce<(typeof kinds)[number] | undefined>(
    (worst, one) => (worst === undefined || one.needs > worst.needs ? one : worst),
    undefined,
  )
  if (most === undefined) return []
  const margin = underSync(plan.camera)
  return [
    {
      pointer: '/camera/shutter',
      also: kinds
        .filter((one) => one.by === most.by)
        .map((one) => ({ pointer: lightPointer(one.light, 'trigger'), says: 'fired by this' })),
      beyond: { stops: most.needs - margin, u: syncU(plan) },
      measured: { 'under-sync': { value: margin, unit: 'stop', limit: most.needs, side: 'at-least' } },
      cause: 'the shutter is near the flash sync',
      found: {
        kind: 'near',
        margin,
        needs: most.needs,
        by: most.by,
        lights: kinds.filter((one) => one.by === most.by).map((one) => one.light),
      },
    },
  ]
}

const early = (found: Fall, { plan, limits }: RuleContext): Margin => {
  const { light, stops, u } = found
  const tier = reached((limit) => stops - limit, u, [
    { level: 'note', limit: limits['early-note']! },
    { level: 'warning', limit: limits.early! },
  ])
  return {
    pointer: lightPointer(light.name, 'trigger'),
    also: [
      { pointer: settingPointer(light), says: 'so long it burns at this setting' },
      ...(fasterThanSync(plan.camera) ? [{ pointer: '/camera/shutter', says: 'faster than sync' }] : []),
    ],
    beyond: tier.beyond,
    level: tier.level,
    measured: { fall: { value: stops, unit: 'stop', u, limit: tier.limit, side: 'at-most' } },
    found: { kind: 'early', ...found },
  }
}

const tail = (found: Tail, { limits }: RuleContext): Margin => {
  const { light, lost, u } = found
  const tier = reached((limit) => lost - limit, u, [
    { level: 'note', limit: limits['tail-note']! },
    { level: 'warning', limit: limits.tail! },
  ])
  return {
    pointer: '/camera/shutter',
    also: [{ pointer: settingPointer(light), says: 'this flash' }],
    beyond: tier.beyond,
    level: tier.level,
    measured: { missed: { value: lost, unit: 'stop', u, limit: tier.limit, side: 'at-most' } },
    cause: 'the shutter is near the flash sync',
    found: { kind: 'tail', ...found },
  }
}

const moreMargin = ({ needs, by }: Near, words: Words, { plan, set }: RuleContext): readonly Mend[] => {
  const slower = nearestShutter((plan.camera.sync * 2 ** needs) as Seconds)
  return [
    {
      title: `camera.shutter → ${words.shutter(slower)}`,
      gives: `${words.howMany(needs)} under the sync speed`,
      costs: steadyGains(set, Math.log2(slower / plan.camera.shutterMarked), words),
      after: set.with({ knob: { knob: 'shutter' }, to: exactShutter(slower) }),
    },
    ...(by === 'cable'
      ? []
      : [{ title: 'a cable to one flash, the others by its light', gives: 'no delay to allow for' }]),
  ]
}

/** Slower than this is no longer a matter of sync. */
const longest = 1 / 15

const timeForAll = ({ light }: Tail, words: Words, { plan, set, limits }: RuleContext): readonly Mend[] => {
  const enough = slowerMarks(plan.camera.shutterMarked, longest).find((mark) =>
    tailsCut(atShutter(set, mark)).every(
      (one) => one.light.name !== light.name || one.lost + one.u <= limits['tail-note']!,
    ),
  )
  return [
    ...(enough === undefined
      ? []
      : [
          {
            title: `camera.shutter → ${words.shutter(enough)}`,
            gives: 'time for the whole flash',
            costs: costsOfSlower(set, enough, words),
            after: atShutter(set, enough),
          },
        ]),
    { title: `a shorter flash for ${light.name}`, gives: 'the same shutter' },
  ]
}
