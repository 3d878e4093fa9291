import type { Light } from '../../language/plan.js'
import type { ComputedSet, MeterAsk } from '../../set/computed-set.js'
import { rolePoint } from '../../set/role-point.js'
import { isDecided } from '../decided.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, type HeldFigure, type RuleContext, rule } from '../rule.js'

/** A flashgun in a box by its guide number: whether f/5.6 is right, nobody knows within a stop. */
const guessed = (aperture: string, reading = ''): string => `plan: 1
title: A box nobody has metered
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: ${aperture}, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: flashgun, modifier: softbox 60 x 90 cm, power: 1/2, at: { angle: 30 deg left, distance: 1.2 m, height: 2 m } }
  rim: { unit: flashgun, power: 1/16, at: { angle: 150 deg right, distance: 1.8 m, height: 2 m } }
${reading}
wanted: { framing: head and shoulders }
`

interface Candidate {
  readonly ask: MeterAsk & { readonly at: string; readonly of: readonly string[] }
  readonly pointer: string
  /** What it would decide. */
  readonly decides: readonly HeldFigure[]
}

interface Needed extends Evidence {
  readonly best: Candidate
  /** Figures that are undecided. */
  readonly of: number
}

export const readingNeeded = rule<Needed>({
  id: 'reading-needed',
  family: 'readings',
  level: 'note',
  about: 'findings',
  finds: 'the one reading that would decide most of what is only probable, possible or open',
  limits: {
    decides: { value: 1, unit: 'count', says: 'findings that the reading decides, at the least' },
  },
  why: 'Without readings half of what is found is a perhaps. One reading of the right light turns most of it into a yes or a no; which light that is, the figures themselves say.',
  formula:
    'for each light at the point of its role, and for all at the subject: the figures whose verdict becomes sure or clear once that reading is taken, whatever it shows',
  sources: [
    {
      kind: 'derived',
      says: "a reading's part in the covariance of the strengths depends on what is read, not on what it shows",
    },
    { kind: 'common practice', says: 'a meter reading is good to 0.15 stop, one standard deviation' },
  ],
  basis: 'the uncertainty of every figure, with and without the reading',
  fires: [
    { title: 'a key by its guide number', plan: guessed('f/5.0') },
    { title: 'the same, near enough to be right', plan: guessed('f/7.1') },
  ],
  passes: [
    {
      title: 'the key was read',
      plan: guessed(
        'f/5.6',
        'readings: [ { at: subject, of: [key], reads: f/5.6, faces: camera, taken: { key: { power: 1/2, distance: 1.2 m } } } ]',
      ),
    },
    { title: 'nothing is near its limit', plan: guessed('f/32') },
  ],

  needs: ({ set }) => (set.lit.length === 0 ? 'silent' : undefined),

  detect: (context) => {
    const { others, plan } = context
    if (others === undefined) return []
    const accepted = new Set(plan.accept.map((entry) => entry.rule))
    const open = others.figures.map((figure) => !accepted.has(figure.rule) && !isDecided(figure))
    const of = open.filter(Boolean).length
    if (of === 0) return []
    const best = candidates(context.set)
      .map((one) => ({ ...one, decides: decidedBy(one.ask, open, context) }))
      .reduce<Candidate | undefined>(
        (most, one) => (one.decides.length > (most?.decides.length ?? 0) ? one : most),
        undefined,
      )
    return best === undefined || best.decides.length < context.limits.decides!
      ? []
      : [
          {
            pointer: best.pointer,
            beyond: 'certain',
            measured: {
              decides: {
                value: best.decides.length,
                unit: 'count',
                limit: context.limits.decides!,
                side: 'at-least',
              },
              undecided: { value: of, unit: 'count' },
            },
            cause: 'what is not sure yet',
            best,
            of,
          },
        ]
  },

  tell: ({ best, of }, words, { set }) => ({
    message: `one reading would decide ${whatText(best.decides.length, of)} too near ${of === 1 ? 'its limit' : 'their limits'} to tell: ${whom(best, set, words.list)} at ${best.ask.at}`,
    why: `it decides ${words.list([...new Set(best.decides.map(({ rule: id }) => id))])}`,
  }),

  mend: ({ best }, words, { set }) => {
    const { ask } = best
    const expected = set.reading(ask)
    if (expected === undefined) return []
    const shows = words.f(expected.fNumber)
    const lights = isOfAll(ask, set) ? 'all' : ask.of.join('+')
    return [
      {
        title: `meter ${whom(best, set, words.list)} at ${ask.at}${ask.of.length === 1 ? ', alone' : ''}, and write it down: thirdstop meter PLAN --read '${lights}@${ask.at}=${shows}'`,
        gives: `with what it shows in place of ${shows}, which is expected to ± ${(2 * set.u(expected.figure)).toFixed(1)}`,
      },
    ]
  },
})

const whatText = (decides: number, of: number): string => {
  if (of === 1) return 'what lies'
  if (decides < of) return `${decides} of ${of} figures that lie`
  return of === 2 ? 'both figures that lie' : `all ${of} figures that lie`
}

const isOfAll = ({ of }: Candidate['ask'], { lit }: ComputedSet): boolean =>
  of.length > 1 && of.length === lit.length

const whom = ({ ask }: Candidate, set: ComputedSet, list: (names: readonly string[]) => string): string =>
  isOfAll(ask, set) ? 'all lights' : list(ask.of)

/** A light that is set until it meters what is wanted is known by that, and one that was read alone by its reading. */
const isRated = ({ name }: Light, set: ComputedSet): boolean => {
  const from = set.strength(name)?.from
  return from !== undefined && from !== 'meters' && from !== 'reading'
}

/** Of many lights so many are asked about, in the plan's order. */
const mostAsked = 12

/** Each rated light where it does its job, and all at the subject. */
const candidates = (set: ComputedSet): readonly Omit<Candidate, 'decides'>[] => {
  const alone = set.lit
    .filter((light) => isRated(light, set))
    .slice(0, mostAsked)
    .map((light) => ({
      ask: { at: light.meters?.at ?? rolePoint(light), of: [light.name] },
      pointer: lightPointer(light.name),
    }))
  return alone.length < 2
    ? alone
    : [
        ...alone,
        { ask: { at: 'subject', of: set.lit.map(({ name }) => name), faces: 'camera' }, pointer: '/lights' },
      ]
}

const decidedBy = (
  ask: MeterAsk,
  open: readonly boolean[],
  { set, others }: RuleContext,
): readonly HeldFigure[] =>
  others!.were((figure) => set.uIf(figure, ask)).filter((figure, i) => open[i] === true && isDecided(figure))
