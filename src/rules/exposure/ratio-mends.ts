/** Mends of a ratio: the fill turned or moved, a panel moved or set up on the shadow side, a fill where there is none. */

import type { Panel } from '../../language/plan.js'
import { builtInSurface } from '../../language/resolve/surface.js'
import { fNumberFor } from '../../light/exposure.js'
import { computeSet } from '../../set/compute-set.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import { shadowSide, shadowWay } from '../../set/shadow-side.js'
import type { LuxSeconds, Metres } from '../../units/quantity.js'
import { roundRatio } from '../../units/ratio.js'
import { isOut } from '../frame/gear-in-picture.js'
import { markedAperture, turn, turnLight } from '../gear.js'
import { keyLightsOf } from '../key-lights.js'
import { whom } from '../place-words.js'
import { solveDistance } from '../power/hold-by-distance.js'
import { inTurn, type Mend, type RuleContext } from '../rule.js'
import { allHeld, byStops, solveFor } from '../solving.js'
import type { Words } from '../words.js'
import { offIn, ratioOf } from './ratio.js'

/** Stops that the ratio lies over what is wanted: the shadows are too dark; negative is too light. */
interface Off {
  readonly off: number
}

export const ratioMends = (evidence: Off, words: Words, context: RuleContext): Iterable<Mend> =>
  inTurn(
    () => fillTurned(evidence, words, context),
    () => fillMoved(evidence, words, context),
    () => {
      const panels = byPanels(evidence, words, context)
      return panels.length > 0 ? panels : roomDimmed(evidence, context)
    },
    () => fillAdded(evidence, words, context),
  )

/** What settles it first. */
const byPanels = (evidence: Off, words: Words, context: RuleContext): readonly Mend[] => {
  const found = [...panelMoved(evidence, words, context), ...panelSwapped(evidence, words, context)]
  const isPartial = ({ partial }: Mend): boolean => partial === true
  return found.length > 0
    ? [...found.filter((one) => !isPartial(one)), ...found.filter(isPartial)]
    : panelAdded(evidence, words, context)
}

/** What the mend gives, and what it costs the key reading; undefined where it is no gain. */
const after = (changed: ComputedSet, { off }: Off, words: Words, { set, limits }: RuleContext) => {
  const [left, figure] = [offIn(changed), ratioOf(changed)]
  if (left === undefined || figure === undefined || Math.abs(left) > Math.abs(off) - 0.05) return undefined
  const shift = (changed.key?.figure.stops ?? 0) - (set.key?.figure.stops ?? 0)
  const short = Math.abs(left) > limits.note!
  const costs = [
    ...(Math.abs(shift) < 0.1 || changed.key === undefined
      ? []
      : [`the key reading goes to ${words.f(changed.key.fNumber)}`]),
    ...(short ? [`still ${words.howMany(left)} off`] : []),
  ].join('; ')
  return {
    gives: roundRatio(2 ** figure.stops),
    ...(costs === '' ? {} : { costs }),
    after: changed,
    ...(short ? { partial: true as const } : {}),
  }
}

const fillTurned = (evidence: Off, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const names = keyLightsOf(set, 'fill').map((light) => light.name)
  if (names.length === 0) return []
  const by = solveFor(0, evidence.off > 0 ? 8 : -8, (stops) => offIn(set.with(...byStops(names, stops))), 0)
  const turned = by === undefined ? [] : names.flatMap((name) => turnLight(plan, name, by, 'nearest') ?? [])
  const given =
    turned.length === 0
      ? undefined
      : after(set.with(...turned.map((one) => one.change)), evidence, words, context)
  return given === undefined ? [] : [{ title: turned.map((one) => one.title).join(', '), ...given }]
}

/** Of one fill whose strength is known by itself: what is to meter a figure goes on metering it. */
const fillMoved = (evidence: Off, words: Words, context: RuleContext): readonly Mend[] => {
  const { set } = context
  const fills = keyLightsOf(set, 'fill')
  const [fill] = fills
  if (fill === undefined || fills.length > 1 || fill.at.by === 'camera' || fill.unit.kind === 'window')
    return []
  const farthest = 2 ** (Math.abs(evidence.off) / 2 + 1)
  const turned = solveDistance(
    set,
    fill,
    (today) => (evidence.off > 0 ? Math.max(0.4, today / farthest) : today * farthest),
    offIn,
  )
  const given = turned && after(set.with(turned.change), evidence, words, context)
  return turned === undefined || given === undefined ? [] : [{ title: turned.title, ...given }]
}

// ---------------------------------------------------------------- panels

/** Metres that a panel is moved by from one try to the next, and at most. */
const steps = { by: 0.1, most: 1 }

/** A panel that throws light back, nearer or further aside: the one that comes nearest to what is wanted. */
const panelMoved = (evidence: Off, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const panel = [...plan.panels.values()].find(({ kind }) => kind === 'reflector')
  if (panel === undefined || evidenceIsKeyToFill(context)) return []
  const knob = { knob: 'panel-right', panel: panel.name } as const
  const today = knobToday(plan, knob)
  if (today === undefined) return []
  const outward = Math.sign(today) * (evidence.off > 0 ? -1 : 1)
  let best: { readonly title: string; readonly after: ComputedSet; readonly left: number } | undefined
  for (let by = steps.by; by <= steps.most + 1e-9; by += steps.by) {
    const turned = turn(plan, knob, today + outward * by)
    if (turned === undefined || turned.short > 0) break
    const changed = set.with(turned.change)
    if (!isOut(changed, { of: 'panel', name: panel.name })) {
      if (evidence.off > 0) break
      continue
    }
    const left = offIn(changed)
    if (left === undefined || (best !== undefined && Math.abs(left) >= Math.abs(best.left))) break
    best = { title: turned.title, after: changed, left }
  }
  const given = best && after(best.after, evidence, words, context)
  return best === undefined || given === undefined ? [] : [{ title: best.title, ...given }]
}

const evidenceIsKeyToFill = ({ plan }: RuleContext): boolean => plan.wanted.ratio?.kind === 'key-to-fill'

/** A white panel that fills too much, taken away or turned black. */
const panelSwapped = (evidence: Off, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const panel = [...plan.panels.values()].find(({ kind }) => kind === 'reflector')
  if (panel === undefined || evidence.off > 0 || evidenceIsKeyToFill(context)) return []
  const black = builtInSurface('black')
  const without = new Map([...plan.panels].filter(([name]) => name !== panel.name))
  const turned = new Map(plan.panels).set(panel.name, { ...panel, surface: black, outside: black })
  const tried = [
    { title: `without ${panel.name}`, panels: without },
    { title: `${panel.name} turned black`, panels: turned },
  ].map(({ title, panels }) => {
    const changed = withPanels(set, panels)
    return { title, changed, left: Math.abs(offIn(changed) ?? Number.POSITIVE_INFINITY) }
  })
  const best = tried.reduce((least, one) => (one.left < least.left - 0.05 ? one : least))
  const given = after(best.changed, evidence, words, context)
  return given === undefined ? [] : [{ title: best.title, ...given }]
}

/** The key lights go on metering at the subject what they did. */
const withPanels = (set: ComputedSet, panels: ReadonlyMap<string, Panel>): ComputedSet =>
  allHeld(
    set,
    computeSet({ ...set.plan, panels }),
    set.keyLights.map(({ name }) => name),
  )

/** Metres beside whoever stands furthest out on the shadow side. */
const beside = [0.3, 0.5, 0.7, 1]

/** A panel that leaves more than this share of what is off is not worth its stand. */
const worthwhile = 2 / 3

/** Black or white on the shadow side, just outside the frame; by a key on the axis no side is in shadow. */
const panelAdded = (evidence: Off, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const way = shadowWay(set)
  if (way === undefined || evidenceIsKeyToFill(context)) return []
  const toward = way.side === 'camera-right' ? 1 : -1
  const { min, max } = set.scene.subject.bounds
  const edge = toward > 0 ? max[0] : -min[0]
  let best: { readonly at: number; readonly after: ComputedSet; readonly left: number } | undefined
  for (const off of beside) {
    const at = Math.round((edge + off) * 20) / 20
    const panels = new Map(plan.panels).set(added, panelAt(toward * at, evidence.off > 0))
    const changed = withPanels(set, panels)
    if (!isOut(changed, { of: 'panel', name: added })) continue
    const left = offIn(changed)
    if (left === undefined || (best !== undefined && Math.abs(left) >= Math.abs(best.left))) continue
    best = { at, after: changed, left }
  }
  if (best === undefined || Math.abs(best.left) > worthwhile * Math.abs(evidence.off)) return []
  const given = after(best.after, evidence, words, context)
  if (given === undefined) return []
  const { costs, ...rest } = given
  return [
    {
      title: `a ${evidence.off > 0 ? 'white' : 'black'} panel of 1 x 2 m on the shadow side, ${words.length(best.at)} ${way.side} of the middle`,
      ...rest,
      ...(costs === undefined ? {} : { costs }),
    },
  ]
}

const added = 'the panel'

const panelAt = (right: number, white: boolean): Panel => {
  const surface = builtInSurface(white ? 'white board' : 'black')
  return {
    name: added,
    kind: white ? 'reflector' : 'flag',
    size: { width: 1 as Metres, height: 2 as Metres },
    at: {
      by: 'offsets',
      right: right as Metres,
      behind: 0 as Metres,
      beforeBackdrop: undefined,
      height: { metres: 1 as Metres, over: 'floor' },
    },
    faces: { kind: 'side', side: right > 0 ? 'left' : 'right' },
    surface,
    outside: surface,
    opening: undefined,
    transmits: 0,
  }
}

// ---------------------------------------------------------------- a fill

/** Where no light is the fill: what one by the lens has to meter. */
const fillAdded = ({ off }: Off, words: Words, context: RuleContext): readonly Mend[] => {
  const { set, plan } = context
  const sides = shadowSide(set)
  if (off < 0 || sides === undefined || evidenceIsKeyToFill(context)) return []
  if (keyLightsOf(set, 'fill').length > 0) return []
  const straight = sides.lit.luxSeconds - sides.shadow.luxSeconds
  const missing = straight / (plan.wanted.ratio!.ratio - 1) - sides.shadow.luxSeconds
  if (!(missing > 0)) return []
  const whole = Math.log2((sides.lit.luxSeconds + missing) / sides.lit.luxSeconds)
  const meters = markedAperture(fNumberFor(missing as LuxSeconds, plan.camera.iso))
  return [
    {
      title: `a fill by the lens that meters ${words.f(meters)} at ${whom(plan)}`,
      gives: roundRatio(plan.wanted.ratio!.ratio),
      ...(whole < 0.1 ? {} : { costs: `the key reading rises by ${words.howMany(whole)}` }),
    },
  ]
}

/** What no panel does: the walls fill from all sides. */
const roomDimmed = ({ off }: Off, context: RuleContext): readonly Mend[] =>
  off > 0 || context.plan.room === undefined || evidenceIsKeyToFill(context)
    ? []
    : [
        {
          title: keyLightsOf(context.set, 'key').some(({ unit }) => unit.kind === 'window')
            ? `${whom(context.plan)} nearer the window, or black cloth before the walls`
            : `the key nearer ${whom(context.plan)} and turned away from the walls, or black cloth before them`,
          gives: 'less of its light comes back from the room',
        },
      ]
