import { flashTime } from '../../light/flash-time.js'
import { keptShare, longer, stopsLost } from '../../light/pulse.js'
import { latestOf } from '../../light/trigger-delay.js'
import { type Band, readoutBand, readoutTime } from '../../picture/shutter.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Seconds } from '../../units/quantity.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { darkText, subjectInBand } from './band.js'
import { type Short, shortOf } from './edge-of-flash.js'
import { powerSet } from './power-set.js'
import { atShutter, costsOfSlower, markAtLeast } from './slower.js'
import { flashes } from './sync.js'

const silent = (shutter: string, more: string, frame = 'horizontal'): string => `plan: 1
title: Flash and a silent shutter
camera: { lens: 85 mm, frame: ${frame}, at: { distance: 2.5 m }, aperture: f/4, shutter: ${shutter}, iso: 100${more} }
subject: { kind: person }
lights:
  key: { unit: flashgun, meters: f/4, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
wanted: { framing: head and shoulders }
`

interface Missed {
  readonly stops: number
  readonly u: number
}

interface Electronic extends Evidence {
  readonly band: Band
  readonly short: Short
  /** Stops that the line which closes first misses. */
  readonly edge: Missed
  readonly crosses: boolean
  /** A shutter this slow is open all over while the flash burns. */
  readonly enough: Seconds
}

export const electronicShutter = rule<Electronic>({
  id: 'electronic-shutter',
  family: 'shutter',
  level: 'error',
  finds:
    'flash with a shutter that reads the sensor line by line: a dark band along one long edge of the frame',
  limits: {
    faster: {
      value: 0,
      unit: 'stop',
      says: 'faster than the time that reading the frame takes, and the flash',
    },
    short: {
      value: 1,
      unit: 'stop',
      says: 'of the flash missed: lines beside the dark band are told over this',
    },
    edge: { value: 1 / 3, unit: 'stop', says: 'of the flash that the first lines miss: note over this' },
  },
  why: 'A silent shutter opens and reads one line after the other, over a thirtieth of a second or so. The flash is over in a moment and reaches only the lines that are open just then; many cameras do not fire it at all.',
  formula:
    'share of the lines that the flash reaches: at least (t - delay of the trigger) / R, at most (t + t0.1) / R, with the readout R: stated, or 1/60 to 1/15; short of the flash: what closes before half of it is out',
  sources: [
    { kind: 'derived', says: 'line y of the frame is open from y·R for the time t' },
    { kind: 'memory', says: 'sensors are read in 1/60 to 1/15 where the camera does not say' },
  ],
  basis: 'lines that open one after the other; the marks of the dial as they are',
  fires: [
    { title: 'a silent shutter at a flash speed', plan: silent('1/200', ', shutter-kind: electronic') },
    {
      title: 'a quick sensor, still too slow',
      plan: silent('1/125', ', shutter-kind: electronic, readout: 1/60'),
    },
    {
      title: 'the band beside the subject',
      plan: silent('1/60', ', shutter-kind: electronic, readout: 1/55', 'vertical'),
    },
  ],
  passes: [
    { title: 'the mechanical shutter', plan: silent('1/125', '') },
    {
      title: 'open for longer than it is read',
      plan: silent('1/20', ', shutter-kind: electronic, readout: 1/30'),
    },
    {
      title: 'a sensor read all at once',
      plan: silent('1/200', ', shutter-kind: electronic, readout: 0 ms'),
    },
  ],

  needs: ({ plan }) =>
    plan.camera.shutterKind !== 'electronic' || flashes(plan).length === 0 ? 'silent' : undefined,

  detect: ({ set, plan, limits }) => {
    const { camera } = plan
    const flash = longestFlash(set)
    const latest = Math.max(...flashes(plan).map(latestOf)) as Seconds
    const band = readoutBand(camera, flash, latest)
    if (band === undefined) return []
    const run = readoutTime(camera)
    const { least, most } = run
    const edge = missedByFirst(set, most)
    const only = { stops: edge.stops - limits.edge!, u: edge.u }
    const short = shortOf(set, flashes(plan), run, limits.short!)
    const wide = Math.max(band.dark.most, short.share)
    const crosses = subjectInBand(set.scene, camera.frame, wide)
    const usual = Math.sqrt(least * most) + flash
    return [
      {
        pointer: '/camera/shutter-kind',
        also: [
          { pointer: '/camera/shutter', says: 'at this speed' },
          ...flashes(plan).map((light) => ({ pointer: lightPointer(light.name), says: 'this flash' })),
        ],
        beyond:
          wide === 0
            ? only
            : least === most
              ? 'certain'
              : { stops: Math.log2(usual / camera.shutterMarked), u: Math.log2(most / least) / 2 },
        level: wide === 0 ? 'note' : crosses ? 'error' : 'warning',
        measured: {
          'dark-share': { value: band.dark.most, unit: 'share' },
          'short-share': { value: short.share, unit: 'share' },
          readout: { value: most, unit: 's' },
        },
        cause: 'the sensor is read line by line',
        band,
        short,
        edge,
        crosses,
        enough: markAtLeast(most + latest + flash),
      },
    ]
  },

  tell: ({ band, short, edge, crosses }, words, { plan: { camera }, limits }) => ({
    message: `${band.dark.most === 0 && short.share === 0 ? `one edge of the frame comes out up to ${words.howMany(edge.stops)} darker` : darkText(band, short, words.howMany(limits.short!), crosses, camera)}: the electronic shutter opens line by line, and ${words.shutter(camera.shutterMarked)} is shorter than reading the frame ${band.dark.most === 0 ? 'and the flash take' : 'takes'}`,
    why:
      camera.readout === undefined
        ? 'the plan states no readout: 1/60 to 1/15 is usual'
        : `reading the frame takes ${words.shutter(camera.readout)}`,
  }),

  mend: (evidence, words, context) => [
    ...mechanical(words, context),
    ...slowEnough(evidence, words, context),
  ],
})

const mechanical = (words: Words, { plan: { camera }, set }: RuleContext): readonly Mend[] => {
  const slowEnough = camera.shutterMarked >= camera.sync * 0.999
  return [
    {
      title: `camera.shutter-kind → focal-plane${slowEnough ? '' : `, camera.shutter → ${words.shutter(camera.sync)}`}`,
      gives: 'the whole frame open at the flash',
      costs: ['it can be heard', ...(slowEnough ? [] : [costsOfSlower(set, camera.sync, words)])].join('; '),
    },
  ]
}

/** t0.1 of the flash that burns longest. */
const longestFlash = (set: ComputedSet): Seconds =>
  Math.max(
    ...flashes(set.plan).flatMap((light) =>
      light.unit.kind === 'flash' ? [flashTime(light.unit, powerSet(set, light).power).t01] : [],
    ),
  ) as Seconds

/** By the line that closes first, of the flash that comes and goes last. */
const missedByFirst = (set: ComputedSet, readout: Seconds): Missed =>
  flashes(set.plan)
    .flatMap((light): Missed[] => {
      if (light.unit.kind !== 'flash') return []
      const { pulse, u } = flashTime(light.unit, powerSet(set, light).power)
      const left = (set.plan.camera.shutterMarked - readout - latestOf(light)) as Seconds
      const at = (times: number): number => stopsLost(keptShare(longer(pulse, times), left))
      return [{ stops: at(1), u: (at(2 ** u) - at(2 ** -u)) / 2 }]
    })
    .reduce((most, one) => (one.stops > most.stops ? one : most))

const slowEnough = ({ enough }: Electronic, words: Words, { set }: RuleContext): readonly Mend[] => [
  {
    title: `camera.shutter → ${words.shutter(enough)}`,
    gives: 'every line open while the flash burns',
    costs: costsOfSlower(set, enough, words),
    after: atShutter(set, enough),
  },
]
