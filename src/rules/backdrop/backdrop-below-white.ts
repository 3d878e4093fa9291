import { fNumberFor } from '../../light/exposure.js'
import { stopsToSurelyWhite } from '../../picture/tone.js'
import { backdropMissing } from '../known.js'
import { onBackdrop } from '../on-surface.js'
import { settingPointer } from '../place-pointer.js'
import { inTurn, rule } from '../rule.js'
import type { Words } from '../words.js'
import { backdropLights, causeOnBackdrop, surfaceText, toneU } from './on-the-backdrop.js'
import { crossing, limitsText, twoLimits, uncrossed } from './two-limits.js'
import { type BelowWhite, brighter } from './whiter.js'

const paperAt = (power: string): string => `plan: 1
title: Headshot on white paper
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/160, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2 m }
lights:
  key: { unit: flashgun, modifier: shoot-through umbrella 1 m, meters: f/5.6, at: { angle: 35 deg left, distance: 1.2 m, height: 2 m } }
  paper-left: { role: backdrop, unit: head 200 Ws, modifier: white umbrella 1 m, power: ${power}, at: { left: 1.5 m, before-backdrop: 1.6 m, height: 1.6 m } }
  paper-right: { like: paper-left, mirrored: true }
readings:
  - { at: backdrop, of: [paper-left], reads: f/5.6, taken: { paper-left: { power: 1/8 } } }
  - { at: backdrop, of: [paper-right], reads: f/5.6, taken: { paper-right: { power: 1/8 } } }
wanted: { backdrop: white, framing: head and shoulders }
`

const oneLight = (distance: string, behind: string, aperture: string): string => `plan: 1
title: White wall, one umbrella
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: ${aperture}, shutter: 1/160, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: ${behind} }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, meters: f/5.6, at: { angle: 20 deg right, distance: ${distance}, height: 2 m } }
wanted: { backdrop: white, shadow: any }
`

export const backdropBelowWhite = rule<BelowWhite>({
  id: 'backdrop-below-white',
  family: 'backdrop',
  level: 'warning',
  finds: 'a backdrop wanted white whose darkest point in the frame is short of white for certain',
  limits: {
    margin: { value: 0, unit: 'stop', says: 'over the level that is white for certain' },
  },
  why: 'Paper that is a little short of white comes out as a dirty grey, mostly in the corners, and each frame has to be cleaned by hand. The darkest point in the frame decides, not the middle.',
  formula:
    'x = log2(H·S / (C·N²)) at the darkest point, flat and facing out; it records ρ·2^x, and is white for certain from 2^headroom',
  sources: [
    { kind: 'standard', says: 'incident metering N² = H·S/C, C = 250: ISO 2720' },
    { kind: 'standard', says: 'sRGB: IEC 61966-2-1' },
    { kind: 'standard', says: 'headroom over a 100 % reflector, half a stop allowed: ISO 12232' },
    {
      kind: 'derived',
      says: 'paper of 0.9 level with the key records sRGB 243, and is white for certain from +0.4',
    },
  ],
  basis: 'incident metering, ISO 2720; sRGB, IEC 61966-2-1',
  fires: [
    { title: 'backdrop lights two stops low', plan: paperAt('1/32') },
    { title: 'just short in the corner', plan: paperAt('1/16 + 0.3') },
    { title: 'one light for face and wall', plan: oneLight('1.2 m', '1.5 m', 'f/5.6') },
  ],
  passes: [
    { title: 'white to the corners', plan: paperAt('1/16 + 0.9') },
    { title: 'just white in the corner', plan: paperAt('1/16 + 0.8') },
  ],

  needs: (context) =>
    context.plan.wanted.backdrop?.tone === 'white' ? backdropMissing(context, 'whole') : 'silent',

  detect: (context) => {
    const { set, plan, limits } = context
    const view = set.backdropView
    if (view === undefined || plan.backdrop === undefined) return []
    const { darkest } = view
    const needs = stopsToSurelyWhite(plan.backdrop.surface.reflectance, plan.camera.headroom) + limits.margin!
    const u = toneU(context, darkest.overCamera)
    const short = needs - darkest.overCamera.stops
    const own = backdropLights(set)
    const lit = set.unshadowed(onBackdrop(darkest.at), 'all')
    const keyOff = (set.key?.overCamera.stops ?? 0) - plan.wanted.exposure
    return [
      {
        pointer: own[0] === undefined ? '/backdrop/behind' : settingPointer(own[0]),
        also: [
          { pointer: '/wanted/backdrop', says: 'white is wanted here' },
          ...own.slice(1).map((light) => ({ pointer: settingPointer(light), says: 'and this light' })),
        ],
        beyond: { stops: short, u },
        measured: {
          'darkest-over-camera': {
            value: darkest.overCamera.stops,
            unit: 'stop',
            u,
            limit: needs,
            side: 'at-least',
          },
          darkest: { value: darkest.srgb, unit: 'sRGB' },
        },
        cause:
          keyOff < 0 && short + keyOff <= 0
            ? 'the camera is not set to the key'
            : causeOnBackdrop(set, darkest),
        scale: { value: darkest.overCamera.stops, u, needs, against: 'over the camera' },
        where: darkest.where,
        srgb: darkest.srgb,
        short,
        needs,
        u,
        backdropReads: lit && fNumberFor(lit.luxSeconds, plan.camera.iso),
        limits: short > -u ? twoLimits(context) : undefined,
      },
    ]
  },

  tell: ({ where, srgb, short, backdropReads, limits }, words, { plan }) => {
    const { surface } = plan.backdrop!
    return {
      message: `the backdrop records ${words.tone(srgb)} at its ${where}, ${Math.round(srgb) === 255 ? 'but ' : ''}${shortText(short, words)} short of white for certain`,
      why: [
        `camera ${words.f(plan.camera.aperture)}${backdropReads === undefined ? '' : `, backdrop ${words.f(backdropReads)} at its ${where}`}`,
        surfaceText(surface),
        `${words.howMany(plan.camera.headroom)} of headroom`,
        ...(limits === undefined ? [] : [limitsText(limits, words)]),
      ].join('; '),
    }
  },

  mend: (evidence, words, context) => {
    const { limits } = evidence
    const more = () => brighter(evidence, words, context)
    // Where the limits cross, more power only trades one fault for the other. A lone light wants its second one first.
    return limits !== undefined && crossing(limits) === 'full' && backdropLights(context.set).length > 1
      ? inTurn(() => uncrossed(limits, words, context), more)
      : inTurn(more, () => (limits === undefined ? [] : uncrossed(limits, words, context)))
  },

  inShort: ({ short, where }, words) =>
    `the backdrop is ${shortText(short, words)} short of white at its ${where}`,
})

const shortText = (short: number, words: Words): string => (short < 0.05 ? 'just' : words.howMany(short))
