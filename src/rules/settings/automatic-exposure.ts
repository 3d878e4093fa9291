import type { Light, Plan } from '../../language/plan.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { ambientName } from '../../set/transport.js'
import { lightPointer } from '../place-pointer.js'
import { whom } from '../place-words.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { asMetered, frameOverGrey, leastMisled } from './metered-frame.js'

const set = (camera: string, light: string, wanted = 'grey', surface = 'grey paper'): string => `plan: 1
title: Who sets the exposure
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100${camera} }
subject: { kind: person }
backdrop: { surface: ${surface}, behind: 2 m }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, meters: f/5.6${light}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { framing: head and shoulders, backdrop: ${wanted}, shadow: any }
`
const onCamera = (tone: 'white' | 'grey'): string => `plan: 1
title: A flash on the camera before a wall
camera: { lens: 50 mm, at: { distance: 2 m }, aperture: f/5.6, shutter: 1/125, iso: 200 }
subject: { kind: person }
backdrop: { surface: ${tone} paint, width: 4 m, behind: 40 cm }
lights:
  key: { unit: flashgun, mode: automatic, at: camera }
wanted: { framing: waist, backdrop: ${tone}, shadow: any }
`
const window = (camera: string, more = '', wanted = ''): string => `plan: 1
title: By the window
camera: { lens: 50 mm, at: { distance: 2 m }, aperture: f/2.8, shutter: 1/60, iso: 200${camera} }
subject: { kind: person }
${more}lights:
  window: { role: key, unit: window, size: 120 x 150 cm, at: { left: 1.8 m, behind: 20 cm, height: 1.4 m }, faces: right, reads: f/2.8, shutter: 1/60, iso: 200 }
wanted: { framing: waist${wanted} }
`

type Found = Evidence &
  (
    | {
        readonly what: 'evened out'
        readonly byHand: readonly Light[]
        /** Stops of the room over what the camera is set to; undefined where the plan states no ambient. */
        readonly roomOver: number | undefined
      }
    | {
        readonly what: 'misled'
        readonly by: 'flash' | 'camera'
        readonly metered: readonly Light[]
        readonly tone: 'white' | 'black'
        /** Stops of the frame over middle grey. */
        readonly over: number | undefined
      }
  )

export const automaticExposure = rule<Found>({
  id: 'automatic-exposure',
  family: 'settings',
  level: 'error',
  finds:
    'a camera that sets the exposure by itself beside flashes set by hand; an automatic flash before a white or black backdrop',
  limits: {
    misled: {
      value: 1 / 2,
      unit: 'stop',
      says: 'of the mean of the frame over or under middle grey, where a camera meters it',
    },
  },
  why: 'What is set by itself evens out what is set by hand: a flash turned up comes out as bright as before, and one frame differs from the next. A metered flash takes the whole frame for grey: white paper comes out grey and the face dark, black velvet grey and the face burnt out.',
  formula:
    'log2(mean of what the frame records / 0.18), not clipped, with the key exposed as wanted; before an automatic flash of what its own light gives',
  sources: [
    { kind: 'common practice', says: 'with flashes set by hand the camera is set by hand too' },
    {
      kind: 'common practice',
      says: 'cameras take the mean of the frame for middle grey, 18 %; those that weigh the face or the focus more are off by a third of that and up',
    },
  ],
  basis: 'settings as the plan states them; the mean of the frame against an 18 % card',
  fires: [
    { title: 'automatic ISO with a flash set by hand', plan: set(', exposure: auto-iso', '') },
    { title: 'automatic exposure with a flash set by hand', plan: set(', exposure: automatic', '') },
    {
      title: 'an automatic flash on the camera before white',
      plan: onCamera('white'),
    },
    {
      title: 'automatic flash before black',
      plan: set('', ', mode: automatic', 'black', 'black velvet'),
    },
    {
      title: 'automatic exposure by the window before a white wall',
      plan: window(
        ', exposure: automatic',
        'room: { width: 4 m, length: 5 m, height: 2.6 m, walls: white paint, ceiling: white paint }\nbackdrop: { surface: white paint, width: 4 m, behind: 50 cm }\n',
        ', backdrop: white',
      ),
    },
  ],
  passes: [
    {
      title: 'the white is lit by flashes set by hand, which a pre-flash does not show',
      plan: set('', ', mode: automatic', 'white', 'white paper').replace(
        'wanted:',
        '  paper: { role: backdrop, unit: head 400 Ws, meters: f/8, at: { left: 1.5 m, before-backdrop: 1.5 m, height: 1.5 m } }\nwanted:',
      ),
    },
    { title: 'all set by hand', plan: set(', exposure: manual', '') },
    { title: 'an automatic flash on the camera before grey', plan: onCamera('grey') },
    { title: 'automatic flash before grey', plan: set('', ', mode: automatic') },
    {
      title: 'automatic ISO with an automatic flash',
      plan: set(', exposure: auto-iso', ', mode: automatic'),
    },
    { title: 'automatic exposure by the window', plan: window(', exposure: automatic') },
  ],

  needs: () => undefined,

  detect: (context) => [...evenedOut(context), ...misled(context)],

  tell: (found, words, { plan }) =>
    found.what === 'evened out' ? tellEvened(found, words, plan) : tellMisled(found, words, plan),

  mend: (found, words, context) =>
    found.what === 'evened out'
      ? [cameraByHand(context, settingsText(context.plan, words))]
      : [
          ...(found.by === 'camera'
            ? [cameraByHand(context, settingsText(context.plan, words))]
            : flashByHand(found.metered, context)),
          ...compensated(found, words),
        ],
})

const flashesOn = ({ lights }: Plan, set: 'metered' | 'by hand'): readonly Light[] =>
  [...lights.values()].filter(
    ({ on, unit, mode }) => on && unit.kind === 'flash' && (mode === 'automatic') === (set === 'metered'),
  )

const evenedOut = ({ plan, set }: RuleContext): readonly Found[] => {
  const byHand = flashesOn(plan, 'by hand')
  if (plan.camera.exposure === 'manual' || byHand.length === 0) return []
  const roomOver = roomAgainstCamera(set)
  return [
    {
      pointer: '/camera/exposure',
      also: byHand.map(({ name }) => ({ pointer: lightPointer(name), says: 'set by hand' })),
      beyond: 'certain',
      measured: roomOver === undefined ? {} : { 'room-over-camera': { value: roomOver, unit: 'stop' } },
      what: 'evened out',
      byHand,
      roomOver,
    },
  ]
}

const roomAgainstCamera = (set: ComputedSet): number | undefined =>
  set.plan.ambient === undefined
    ? undefined
    : set.reading({ at: 'subject', of: [ambientName], faces: 'camera' })?.overCamera.stops

const misled = ({ plan, set, limits }: RuleContext): readonly Found[] => {
  const tone = plan.wanted.backdrop?.tone
  if ((tone !== 'white' && tone !== 'black') || plan.backdrop === undefined) return []
  const metered = flashesOn(plan, 'metered')
  const flash = [...plan.lights.values()].some(({ on, unit }) => on && unit.kind === 'flash')
  if (metered.length === 0 && (flash || plan.camera.exposure === 'manual')) return []
  const by = metered.length > 0 ? 'flash' : 'camera'
  const over = frameOverGrey(metered.length > 0 ? asMetered(set, metered) : set)
  const off = over && (tone === 'white' ? over.stops : -over.stops)
  return [
    {
      pointer: by === 'camera' ? '/camera/exposure' : lightPointer(metered[0]!.name, 'mode'),
      also: [
        ...metered
          .slice(1)
          .map(({ name }) => ({ pointer: lightPointer(name, 'mode'), says: 'and this one' })),
        { pointer: '/wanted/backdrop', says: 'this is wanted' },
      ],
      level: 'warning',
      beyond: over === undefined ? 'certain' : { stops: off! - limits.misled!, u: over.u },
      measured:
        over === undefined
          ? {}
          : {
              'frame-over-grey': {
                value: over.stops,
                unit: 'stop',
                u: over.u,
                limit: tone === 'white' ? limits.misled! : -limits.misled!,
                side: tone === 'white' ? 'at-most' : 'at-least',
              },
            },
      cause: 'what the camera meters',
      what: 'misled',
      by,
      metered,
      tone,
      over: over?.stops,
    },
  ]
}

const names = (lights: readonly Light[], words: Words): string => words.list(lights.map(({ name }) => name))

const tellEvened = (
  { byHand, roomOver }: Extract<Found, { what: 'evened out' }>,
  words: Words,
  { camera }: Plan,
) => ({
  message: `turning ${names(byHand, words)} up or down is evened out again, and frames differ: the camera sets ${camera.exposure === 'auto-iso' ? 'its ISO' : 'the exposure'} by itself beside ${byHand.length > 1 ? 'flashes' : 'a flash'} set by hand`,
  why:
    roomOver === undefined
      ? 'a camera that does not know of the flash meters the room without it'
      : `the room alone is ${words.against(roomOver, 'what the camera is set to')}: metered without the flash, the picture comes out by as much ${roomOver < 0 ? 'too light' : 'too dark'}`,
})

const tellMisled = (
  { by, metered, tone, over }: Extract<Found, { what: 'misled' }>,
  words: Words,
  plan: Plan,
) => {
  const light = by === 'camera' ? 'the exposure' : names(metered, words)
  return {
    message: `the ${tone} comes out grey and ${whom(plan)} too ${tone === 'white' ? 'dark' : 'light'}: ${light} ${metered.length > 1 ? 'are' : 'is'} metered by the camera, which takes for grey a frame ${over === undefined ? `of mostly ${tone}` : `that is ${words.against(over, 'middle grey')} with ${whom(plan)} exposed as wanted`}`,
    why:
      over === undefined
        ? 'how far off, the plan tells too little to say'
        : `the mean of the frame as it is wanted: off by ${rangeText(over, words)}, by how much the camera weighs ${whom(plan)} and the focus`,
  }
}

/** `f/5.6, 1/125, ISO 100`. */
const settingsText = ({ camera }: Plan, words: Words): string =>
  `${words.f(camera.aperture)}, ${words.shutter(camera.shutterMarked)} and ISO ${camera.iso} hold from frame to frame`

const cameraByHand = ({ plan }: RuleContext, gives: string): Mend => ({
  title: 'camera.exposure → manual',
  gives,
  after: computeSet({ ...plan, camera: { ...plan.camera, exposure: 'manual' } }),
})

const flashByHand = (metered: readonly Light[], { plan }: RuleContext): readonly Mend[] => {
  const lights = new Map(plan.lights)
  for (const light of metered) lights.set(light.name, { ...light, mode: 'manual' })
  const written = ({ name }: Light) => plan.places.stated(lightPointer(name, 'power'))
  const open = metered.filter((light) => !written(light) && light.meters === undefined)
  return [
    {
      title: metered.map(({ name }) => `lights.${name}.mode → manual`).join(', '),
      gives: 'the same light in every frame, whatever is in it',
      costs: metered.some(written)
        ? 'the power that is written then holds, and is to be set by a meter or a test frame'
        : open.length === 0
          ? 'its power is set by a meter or a test frame, and anew when it is moved'
          : `a power or what it meters must be stated for ${open.map(({ name }) => name).join(' and ')}`,
      ...(metered.some(written) ? {} : { after: computeSet({ ...plan, lights }) }),
    },
  ]
}

/** Stops that most cameras let be dialled in. Common practice, no source. */
const mostDialled = 3

const toThird = (stops: number): number => Math.round(3 * stops) / 3

/** `1.3 to 3.9 stops`. */
const rangeText = (over: number, words: Words): string => {
  const [least, most] = [Math.abs(over) * leastMisled, Math.abs(over)]
  return `${words.howMany(least).replace(/ stops?$/, '')} to ${words.howMany(most)}`
}

/** From what a camera that weighs the face is off on, to what one that takes the mean is. */
const compensation = (over: number, words: Words): string => {
  const [least, most] = [
    toThird(over * leastMisled),
    toThird(Math.sign(over) * Math.min(Math.abs(over), mostDialled)),
  ]
  return least === most || least === 0
    ? words.stops(most)
    : `${words.stops(least).replace(/ stops?$/, '')} to ${words.stops(most)}`
}

const compensated = ({ by, over }: Extract<Found, { what: 'misled' }>, words: Words): readonly Mend[] =>
  over === undefined
    ? []
    : [
        {
          title: `${by === 'flash' ? 'flash' : 'exposure'} compensation: ${compensation(over, words)}`,
          gives: 'the wanted exposure with this frame',
          costs: `a test frame first${Math.abs(over) > mostDialled ? `, and most cameras go no further than ${words.stops(Math.sign(over) * mostDialled)}` : ''}; another framing or other clothes need another figure`,
        },
      ]
