import { circleOfConfusion, type DepthOfField, depthOfField } from '../../picture/lens.js'
import type { FNumber, Metres } from '../../units/quantity.js'
import { cameraMisplaced } from '../known.js'
import { type Evidence, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { apertureFor, deeper } from './depth-mends.js'
import { faceDepth, type Span, wantedSpan, whatIsWanted } from './wanted-span.js'

const sharpAt = (lens: string, aperture: string, wanted: string, distance = '2.5 m'): string => `plan: 1
title: Headshot, how much is sharp
camera: { lens: ${lens}, at: { distance: ${distance} }, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: flashgun, modifier: white umbrella 1 m, meters: ${aperture}, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
wanted: { ${wanted} }
`

const rows = (aperture: string, behind: string): string => `plan: 1
title: Two rows
camera: { lens: 135 mm, frame: vertical, at: { distance: 9 m, height: 1.4 m }, focus: row 1, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject:
  kind: group
  rows:
    - { people: 2, spacing: 50 cm, faces-at: 1 m }
    - { people: 2, spacing: 60 cm, behind: ${behind}, faces-at: 1.6 m }
lights:
  key: { unit: head 400 Ws, modifier: white umbrella 1.5 m, meters: ${aperture}, at: { angle: 20 deg right, distance: 5 m, height: 2.6 m } }
wanted: { sharp: rows }
`

interface DepthShort extends Evidence {
  readonly needs: Span
  readonly sharp: DepthOfField
  readonly focus: number
  /** The f-number at which it is just enough with today's focus. */
  readonly aperture: FNumber
  readonly what: string
}

/** Metres: less is not told apart, nor focused by. */
const shows = 0.0005

export const depthShort = rule<DepthShort>({
  id: 'depth-short',
  family: 'exposure',
  level: 'warning',
  finds: 'less depth of field than what is wanted sharp',
  limits: {
    face: { value: faceDepth, unit: 'cm', says: 'depth of a face, from nose to ears' },
    short: { value: 0, unit: 'cm', says: 'by which the depth of field may fall short' },
  },
  why: 'Close up and wide open only a hand of depth is sharp: the ears or the second row go soft, and it shows only on the large screen.',
  formula:
    'near and far = s / (1 ± N·c·(s − f) / f²), with the circle of confusion c = sensor diagonal / 1500',
  sources: [
    { kind: 'derived', says: 'thin lens and geometric blur; 85 mm at 2.2 m and f/5.6: 208 mm' },
    { kind: 'memory', says: 'circle of confusion as the diagonal over 1500' },
    { kind: 'common practice', says: 'a face is sharp with 12 cm about the eyes' },
  ],
  basis: 'thin lens, circle of confusion diagonal/1500',
  fires: [
    { title: 'headshot wide open', plan: sharpAt('85 mm', 'f/1.8', 'sharp: face') },
    { title: 'nose or ears just out', plan: sharpAt('85 mm', 'f/2.2', 'sharp: face') },
    { title: 'focus on the front row', plan: rows('f/4', '61 cm') },
  ],
  passes: [
    { title: 'headshot stopped down', plan: sharpAt('85 mm', 'f/5.6', 'sharp: face') },
    { title: 'just enough', plan: sharpAt('85 mm', 'f/2.8', 'sharp: face') },
    { title: 'two rows, stopped down', plan: rows('f/8', '61 cm') },
  ],

  needs: ({ plan, set }) =>
    cameraMisplaced(set)
      ? 'silent'
      : plan.wanted.sharp === undefined
        ? {
            because: 'the plan does not say what must be sharp',
            enable: {
              pointer: '/wanted/sharp',
              text: plan.subject.kind === 'group' ? 'sharp: rows' : 'sharp: subject',
            },
          }
        : undefined,

  detect: (context) => {
    const { set, limits } = context
    const needs = wantedSpan(set, limits.face!)
    if (needs === undefined) return []
    const focus = set.scene.camera.focus
    const sharp = depthAt(context, focus)
    const enough = apertureFor(context, needs, focus)
    // Against the total where the focus may be set anywhere inside: then the depth is only cut or long enough.
    const missing = needs.free
      ? needs.far - needs.near - (sharp.far - sharp.near)
      : Math.max(sharp.near - needs.near, needs.far - sharp.far)
    if (!(missing - limits.short! / 100 > shows)) return []
    const focusWritten = context.plan.places.written('/camera/focus') !== undefined
    return [
      {
        pointer: '/camera/aperture',
        // Where the plan leaves the focus open whoever focuses may yet set it right.
        level: isDeepEnough({ needs, sharp }) && !focusWritten ? 'note' : 'warning',
        also: [
          { pointer: '/wanted/sharp', says: 'this is wanted sharp' },
          { pointer: '/camera/focus', says: 'focused here' },
        ],
        beyond: 'certain',
        measured: {
          'depth-of-field': {
            value: (sharp.far - sharp.near) * 100,
            unit: 'cm',
            limit: (needs.far - needs.near) * 100,
            side: 'at-least',
          },
          'sharp-from': { value: sharp.near, unit: 'm', limit: needs.near, side: 'at-most' },
          'sharp-to': { value: sharp.far, unit: 'm', limit: needs.far, side: 'at-least' },
          'needs-aperture': { value: enough, unit: 'f-number' },
        },
        needs,
        sharp,
        focus,
        aperture: enough,
        what: whatIsWanted(context.plan),
      },
    ]
  },

  tell: ({ needs, sharp, focus, what }, words, { plan }) => {
    const [front, back] = [needs.near < sharp.near, needs.far > sharp.far]
    const where =
      what === 'the face' && needs.free
        ? 'nose or ears go'
        : needs.free || front === back
          ? `both ends of ${what} go`
          : `the ${back ? 'back' : 'front'} of ${what} goes`
    const spans = spansText({ needs, sharp, focus }, words)
    const lengths = unlike(sharp.far - sharp.near, needs.far - needs.near, words)
    const missing = words.fine(Math.max(sharp.near - needs.near, needs.far - sharp.far))
    return {
      message: isDeepEnough({ needs, sharp })
        ? `${where} soft, the ${back ? 'last' : 'first'} ${missing} of it: at ${words.f(plan.camera.aperture)} and ${spans}`
        : `${where} soft: ${lengths[0]} is sharp at ${words.f(plan.camera.aperture)}, ${lengths[1]} is needed`,
      why: [
        isDeepEnough({ needs, sharp }) ? 'the depth is enough, the focus lies wrong' : spans,
        `circle of confusion ${Math.round(circleOfConfusion(plan.camera.sensor) * 1e6)} µm`,
      ].join('; '),
    }
  },

  mend: (evidence, words, context) => deeper(evidence, words, context),

  inShort: ({ sharp, what }, words) =>
    `${what} is sharp only from ${words.length(sharp.near)} to ${distance(sharp.far, words)}`,
})

/** Only the focus lies wrong. */
const isDeepEnough = ({ needs, sharp }: Pick<DepthShort, 'needs' | 'sharp'>): boolean =>
  !needs.free && sharp.far - sharp.near >= needs.far - needs.near

/** What is needed over less than this is told from the focus on, to the tenth: metres. */
const closeTo = 0.3

/** What is sharp and what is needed, as far as the two can be told apart. */
const spansText = (
  { needs, sharp, focus }: Pick<DepthShort, 'needs' | 'sharp' | 'focus'>,
  words: Words,
): string => {
  const focused = `focused at ${words.length(focus)}`
  if (needs.far - needs.near > closeTo || !Number.isFinite(sharp.far))
    return `${focused}, sharp from ${words.length(sharp.near)} to ${distance(sharp.far, words)}, needed from ${words.length(needs.near)} to ${words.length(needs.far)}`
  const from = (at: number): string =>
    Math.abs(at - focus) < shows
      ? 'there'
      : `${words.fine(Math.abs(at - focus))} ${at < focus ? 'before' : 'behind'} it`
  return `${focused}, sharp from ${from(sharp.near)} to ${from(sharp.far)}, needed from ${from(needs.near)} to ${from(needs.far)}`
}

/** A length, which may have no end. */
const distance = (metres: number, words: Words): string =>
  Number.isFinite(metres) ? words.length(metres) : 'infinity'

/** Two lengths that read alike are told apart. */
const unlike = (a: number, b: number, words: Words): readonly [string, string] => {
  if (!Number.isFinite(a)) return ['only the far end', words.small(b)]
  const [short, long] = [words.small(a), words.small(b)]
  return short === long && a < b ? [`just under ${short}`, long] : [short, long]
}

const depthAt = ({ plan }: RuleContext, focus: number, aperture = plan.camera.aperture): DepthOfField =>
  depthOfField(plan.camera.lens, aperture, focus as Metres, circleOfConfusion(plan.camera.sensor))
