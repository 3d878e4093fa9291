import type { Light } from '../../language/plan.js'
import { difference } from '../../light/figure.js'
import type { SceneFigure } from '../../scene/scene.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { keyMissing } from '../known.js'
import { placePointer } from '../place-pointer.js'
import { type Evidence, rule } from '../rule.js'
import { reached } from '../tiers.js'
import { evened } from './even-group.js'
import { type Face, metered } from './group-faces.js'

const family = (angle: string, distance: string, height: string): string => `plan: 1
title: Family in two rows
camera: { lens: 35 mm, at: { distance: 4 m, height: 1.2 m }, aperture: f/5.6, shutter: 1/125, iso: 200 }
subject:
  kind: group
  rows:
    - { people: 3, spacing: 50 cm, faces-at: 1.1 m }
    - { people: 4, spacing: 50 cm, behind: 50 cm, faces-at: 1.6 m }
lights:
  key: { unit: head 600 Ws, modifier: white umbrella 1.5 m, meters: f/5.6, at: { angle: ${angle}, distance: ${distance}, height: ${height} } }
wanted: { framing: all, sharp: rows }
`

interface GroupUneven extends Evidence {
  readonly spread: number
  readonly limit: number
  readonly u: number
  readonly brightest: string
  readonly darkest: string
  readonly from: string
}

export const groupUneven = rule<GroupUneven>({
  id: 'group-uneven',
  family: 'exposure',
  level: 'warning',
  finds: 'a group in which one face gets visibly more light than another',
  limits: {
    note: { value: 1 / 3, unit: 'stop', says: 'between the brightest and the darkest face: note over this' },
    warning: {
      value: 2 / 3,
      unit: 'stop',
      says: 'between the brightest and the darkest face: warning over this',
    },
  },
  why: 'Light from close by falls off across a group: the near end burns while the far end and the back row go dark, and one exposure cannot serve both.',
  formula: 'log2(H at the brightest face / H at the darkest), key and fill, dome toward the camera',
  sources: [
    {
      kind: 'derived',
      says: 'a small light loses 2·log2((d + depth)/d): a third over one metre takes 8.2 m',
    },
    { kind: 'common practice', says: 'a third over a group goes unseen, two thirds does not' },
  ],
  basis: 'incident metering, ISO 2720; the limits are common practice',
  fires: [
    { title: 'umbrella close at one side', plan: family('60 deg left', '1.8 m', '2.2 m') },
    { title: 'a little too close', plan: family('35 deg right', '3 m', '2.4 m') },
  ],
  passes: [
    { title: 'well back and near the camera', plan: family('10 deg left', '6 m', '2.6 m') },
    { title: 'just far enough', plan: family('15 deg right', '5.5 m', '2.6 m') },
  ],

  needs: (context) => (context.plan.subject.kind === 'group' ? keyMissing(context) : 'silent'),

  detect: (context) => {
    const { set, limits, u } = context
    const faces = metered(set)
    if (faces.length < 2) return []
    const brightest = faces.reduce((best, face) => (face.over.stops > best.over.stops ? face : best))
    const darkest = faces.reduce((best, face) => (face.over.stops < best.over.stops ? face : best))
    const figure = difference(brightest.over, darkest.over)
    const uSpread = u({ ...figure, rendering: 0 })
    const tier = reached((limit) => figure.stops - limit, uSpread, [
      { level: 'note', limit: limits.note! },
      { level: 'warning', limit: limits.warning! },
    ])
    const light = strongest(set)
    return [
      {
        pointer: light === undefined ? '/subject/rows' : placePointer(light),
        also: [{ pointer: '/subject/rows', says: 'over these rows' }],
        beyond: tier.beyond,
        level: tier.level,
        measured: {
          spread: { value: figure.stops, unit: 'stop', u: uSpread, limit: tier.limit, side: 'at-most' },
        },
        ...(light === undefined ? {} : { cause: `where ${light.name} stands` }),
        spread: figure.stops,
        limit: tier.limit,
        u: uSpread,
        brightest: nameOf(brightest, faces, set),
        darkest: nameOf(darkest, faces, set),
        from: light?.name ?? 'the light',
      },
    ]
  },

  tell: ({ spread, limit, brightest, darkest, from }, words, { set }) => {
    const distance = set.scene.lights.get(from)?.distance
    return {
      message: `${darkest} ${/either|both/.test(darkest) ? 'come' : 'comes'} out ${words.howMany(spread)} darker than ${brightest}, as ${from} stands${distance === undefined ? '' : ` ${words.length(distance)} from the front row`}`,
      why: `${words.howMany(limit)} between faces is the limit; people in the way of the light are not counted`,
    }
  },

  mend: (evidence, words, context) => {
    const light = strongest(context.set)
    return light === undefined ? [] : evened(evidence, light, words, context)
  },
})

/** Of the lights that count, the one that gives the subject most. */
const strongest = (set: ComputedSet): Light | undefined => {
  const by = set.key?.byLight
  return [...set.keyLights].sort((a, b) => (by?.get(b.name) ?? 0) - (by?.get(a.name) ?? 0))[0]
}

const ordinals = ['', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth']

/** Counted from the nearer end, so that a mirrored set has the mirrored names; two alike are named together. */
const nameOf = ({ figure, over }: Face, faces: readonly Face[], set: ComputedSet): string => {
  const { rows } = set.plan.subject
  const row = figure.row ?? 1
  const number = numberOf(figure)
  const people = rows[row - 1]?.people ?? 1
  const fromRight = people - number + 1
  const inRow =
    rows.length === 1
      ? 'the row'
      : row === 1
        ? 'the front row'
        : row === rows.length
          ? 'the back row'
          : `row ${row}`
  if (number === fromRight) return people === 1 ? `the one in ${inRow}` : `the middle of ${inRow}`
  const twin = faces.find((face) => face.figure.row === figure.row && numberOf(face.figure) === fromRight)
  const alike = twin !== undefined && Math.abs(twin.over.stops - over.stops) < 1e-3
  const place = ordinals[Math.min(number, fromRight) - 1] ?? `number ${Math.min(number, fromRight)}`
  const side = number < fromRight ? 'camera-left' : 'camera-right'
  if (place === '') return alike ? `both ends of ${inRow}` : `the ${side} end of ${inRow}`
  return `the ${place} from ${alike ? 'either' : `the ${side}`} end of ${inRow}`
}

/** From camera-left, counted from 1. */
const numberOf = (figure: SceneFigure): number => Number(figure.name.split('-')[2] ?? 1)
