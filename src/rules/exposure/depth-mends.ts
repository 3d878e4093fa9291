/** Mends of a depth of field that is too short: the focus, the aperture, the distance. */
import { apertureForDepth, circleOfConfusion, depthOfField } from '../../picture/lens.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { FNumber, Metres } from '../../units/quantity.js'
import { markedAperture, turn, turnLight } from '../gear.js'
import { inTurn, type Mend, type RuleContext } from '../rule.js'
import { solveFor } from '../solving.js'
import type { Words } from '../words.js'
import type { Span } from './wanted-span.js'

/** What of the finding its mends go by. */
interface DepthShort {
  readonly needs: Span
  readonly focus: number
  /** The f-number at which it is just enough with today's focus. */
  readonly aperture: FNumber
}

export const deeper = (evidence: DepthShort, words: Words, context: RuleContext): Iterable<Mend> =>
  inTurn(
    () => focusBetween(evidence, words, context),
    () => stopDown(evidence, words, context),
    () => stepBack(evidence, context),
    () => stacked(evidence, words, context),
  )

/** Few lenses close further, those for small things included. Common practice, no source. */
const smallest = 32

const isMarked = (aperture: number): boolean => aperture <= smallest * 1.03

/** The f-number at which the span is sharp; where the focus is free, at which the depth of field is as long. */
export const apertureFor = ({ plan }: Pick<RuleContext, 'plan'>, needs: Span, focus: number): FNumber => {
  const { lens, sensor } = plan.camera
  const circle = circleOfConfusion(sensor)
  if (!needs.free)
    return apertureForDepth(lens, focus as Metres, needs.near as Metres, needs.far as Metres, circle)
  const length = needs.far - needs.near
  const solved = solveFor(
    0.7,
    128,
    (n) => {
      const { near, far } = depthOfField(lens, n as FNumber, focus as Metres, circle)
      return Math.min(far - near, 1e3)
    },
    length,
    1e-5,
  )
  return (solved ?? Number.POSITIVE_INFINITY) as FNumber
}

const stopDown = ({ aperture }: DepthShort, words: Words, { set, plan }: RuleContext): readonly Mend[] => {
  const marked = markedAperture(aperture, 'over')
  const stops = 2 * Math.log2(marked / plan.camera.aperture)
  if (!isMarked(marked))
    return plan.subject.kind === 'object'
      ? []
      : [{ title: 'further off, or a shorter lens: no aperture is enough from here' }]
  const flashes = set.lit.filter((light) => light.unit.kind === 'flash')
  const short = flashes.flatMap((light) => {
    const turned = light.power === undefined ? undefined : turnLight(plan, light.name, stops)
    return turned !== undefined && turned.short > 0.05
      ? [`${light.name} is ${words.howMany(turned.short)} short of it`]
      : []
  })
  return [
    {
      title: `camera.aperture → ${words.f(marked)}`,
      gives: 'all of it sharp with the focus where it is',
      costs: [`${words.howMany(stops)} more power on every light, or that much more ISO`, ...short].join(
        '; ',
      ),
      after: withLight(set, marked, stops),
    },
  ]
}

/** The aperture closed, and every light up by as much as that takes. */
const withLight = (set: ComputedSet, aperture: FNumber, stops: number): ComputedSet =>
  set.with(
    { knob: { knob: 'aperture' }, to: aperture },
    ...[...set.lit].flatMap(({ name, power, meters }) =>
      power === undefined && meters === undefined
        ? []
        : [{ knob: { knob: 'strength', light: name } as const, to: stops }],
    ),
  )

/** Both ends of a depth blur alike when focused at 2·near·far/(near + far). */
const focusBetween = ({ needs, focus }: DepthShort, words: Words, context: RuleContext): readonly Mend[] => {
  if (needs.free) return []
  const best = (2 * needs.near * needs.far) / (needs.near + needs.far)
  if (Math.abs(best - focus) < 0.01) return []
  const now = apertureFor(context, needs, best)
  const { plan } = context
  const enough = now <= plan.camera.aperture * 1.0001
  const marked = markedAperture(now, 'over')
  if (!enough && !isMarked(marked)) return []
  const focused = { ...plan.camera, focus: { on: 'distance', distance: best as Metres } } as const
  return [
    {
      title: `focus ${words.small(Math.abs(best - focus))} ${best > focus ? 'deeper' : 'nearer'}: at ${words.length(best)} from the camera, ${words.small(best - needs.near)} behind the nearest of it`,
      ...(enough
        ? {
            gives: 'all of it sharp at the same aperture',
            after: computeSet({ ...plan, camera: focused }),
          }
        : {
            gives: `all of it sharp from ${words.f(marked)}`,
            costs: `${words.howMany(2 * Math.log2(marked / plan.camera.aperture))} more power as well`,
          }),
    },
  ]
}

/** Where no aperture does it, of what keeps still. */
const stacked = ({ aperture }: DepthShort, words: Words, { plan }: RuleContext): readonly Mend[] =>
  plan.subject.kind !== 'object' || isMarked(markedAperture(aperture, 'over'))
    ? []
    : [
        {
          title: 'several frames with the focus moved through the subject, put together',
          gives: `all of it sharp at ${words.f(plan.camera.aperture)} and wider, where no lens closes far enough`,
          costs: 'nothing may move meanwhile',
        },
      ]

const stepBack = (evidence: DepthShort, context: RuleContext): readonly Mend[] => {
  const { plan } = context
  const { distance } = plan.camera.at
  const { needs, focus } = evidence
  const missing = (by: number): number => {
    const moved = { near: needs.near + by, far: needs.far + by, free: needs.free }
    return Math.log2(apertureFor(context, moved, focus + by) / plan.camera.aperture)
  }
  const by = solveFor(0, 20, missing, 0)
  const turned = by === undefined ? undefined : turn(plan, { knob: 'camera-distance' }, distance + by)
  return turned === undefined || turned.short > 0
    ? []
    : [
        {
          title: turned.title,
          gives: 'all of it sharp with the same lens and aperture',
          costs: `a smaller magnification: the subject ${Math.round((1 - distance / turned.change.to) * 100)} % smaller in the frame`,
          after: context.set.with(turned.change),
        },
      ]
}
