import { fasterThanSync, triggerMargin, underSync } from '../../picture/shutter.js'
import { exactShutter, nearestShutter } from '../../units/marks.js'
import type { Seconds } from '../../units/quantity.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, rule } from '../rule.js'
import { singleFlashes, syncU } from './sync.js'

const fired = (by: string, shutter: string): string => `plan: 1
title: Flash by trigger
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: ${shutter}, iso: 100, sync: 1/200 }
subject: { kind: person }
lights:
  key: { unit: head 200 Ws, modifier: softbox 60 x 90 cm, meters: f/5.6, trigger: { by: ${by} }, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { framing: head and shoulders }
`

type Trigger = keyof typeof triggerMargin

interface Margin extends Evidence {
  readonly margin: number
  readonly needs: number
  readonly by: Trigger
  readonly lights: readonly string[]
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
  finds: 'a shutter too near the sync speed for how the flash is fired',
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
  },
  why: 'A trigger takes its time after the contact closes. At the sync speed there is none to spare, and a strip along one edge stays dark, from one frame to the next more or less.',
  formula: 'log2(shutter time / sync time) in the thirds of the dial, against what the trigger wants',
  sources: [
    {
      kind: 'common practice',
      says: 'cable 0, radio a third, basic radio two thirds, optical groups one stop under sync',
    },
  ],
  basis: 'the marks of the dial; margins are common practice',
  fires: [
    { title: 'basic radio at the sync speed', plan: fired('basic radio', '1/200') },
    { title: 'basic radio a third under it', plan: fired('basic radio', '1/160') },
  ],
  passes: [
    { title: 'by cable', plan: fired('cable', '1/200') },
    { title: 'radio a third under it', plan: fired('radio', '1/160') },
    { title: 'basic radio two thirds under it', plan: fired('basic radio', '1/125') },
  ],

  needs: ({ plan }) => {
    if (plan.camera.shutterKind !== 'focal-plane' || fasterThanSync(plan.camera)) return 'silent'
    const flashes = singleFlashes(plan)
    if (flashes.length === 0) return 'silent'
    return flashes.some((light) => light.trigger !== undefined)
      ? undefined
      : {
          because: 'the plan does not say how the flashes are fired',
          enable: { pointer: lightPointer(flashes[0]!.name, 'trigger'), text: 'trigger: { by: radio }' },
        }
  },

  detect: ({ plan, limits }) => {
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
        margin,
        needs: most.needs,
        by: most.by,
        lights: kinds.filter((one) => one.by === most.by).map((one) => one.light),
      },
    ]
  },

  tell: ({ margin, needs, by, lights }, words, { plan }) => ({
    message: `a strip along one edge can stay dark: ${words.shutter(plan.camera.shutterMarked)} is ${margin === 0 ? 'at' : `only ${words.howMany(margin)} under`} the sync speed of ${words.shutter(plan.camera.sync)}, and a flash fired by ${by} wants ${words.howMany(needs)}`,
    why: `${words.list(lights)} fired by ${by}; a test frame of a plain wall shows how much your trigger needs`,
  }),

  mend: ({ needs, by }, words, { plan, set }) => {
    const slower = nearestShutter((plan.camera.sync * 2 ** needs) as Seconds)
    return [
      {
        title: `camera.shutter → ${words.shutter(slower)}`,
        gives: `${words.howMany(needs)} under the sync speed`,
        costs: `the room counts ${words.howMany(Math.log2(slower / plan.camera.shutterMarked))} more`,
        after: set.with({ knob: { knob: 'shutter' }, to: exactShutter(slower) }),
      },
      ...(by === 'cable'
        ? []
        : [{ title: 'a cable to one flash, the others by its light', gives: 'no delay to allow for' }]),
    ]
  },
})
