/** Draws sets, hides the truth, has the plans checked, and counts what was found of it. */
import { checkPlan } from '../../src/index.js'
import { difference, type Figure } from '../../src/light/figure.js'
import type { Level } from '../../src/rules/rule.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import { type Draw, draws } from './draw.js'
import { offRatings } from './gear.js'
import { metersAlone, planText, type Read, rightOnPaper, type Settings, setOf, turned } from './plan.js'
import { type Sketch, sketches } from './sketches.js'
import { type Fault, faultName, faultsOf, isSound } from './truth.js'

/** What has been metered: nothing, the key, the backdrop's lights too, every light. */
export const stages = ['none', 'key', 'key and backdrop', 'all'] as const
export type Stage = (typeof stages)[number]

export interface Tally {
  atLevel: number
  lowered: number
  missed: number
}

/** One standard deviation of a meter reading, stops. */
const meterU = 0.15
const ambientU = 0.15

export interface DrawnSet {
  readonly sketch: Sketch
  readonly settings: Settings
  /** The same plan, every light read without error. */
  readonly truth: string
  readonly readings: readonly Read[]
}

/** @param by stops that the author's powers are off what is right on paper, given what each light is off its rating */
const drawSet = (
  sketch: Sketch,
  iso: number,
  draw: Draw,
  by: (off: readonly number[]) => readonly number[],
): DrawnSet => {
  const off = offRatings(sketch.lights, draw)
  const settings = turned(sketch, rightOnPaper(sketch, iso), by(off))
  const exact = metersAlone(sketch, settings).map((n, light) => ({
    light,
    reads: n * 2 ** (off[light]! / 2),
  }))
  const ambientOff = ambientU * draw.normal()
  const ambient = settings.ambient === undefined ? undefined : settings.ambient * 2 ** (ambientOff / 2)
  return {
    sketch,
    settings,
    truth: planText(sketch, { ...settings, ambient }, exact),
    readings: exact.map(({ light, reads }) => ({
      light,
      reads: reads * 2 ** ((meterU * draw.normal()) / 2),
    })),
  }
}

const untouched = (off: readonly number[]): readonly number[] => off.map(() => 0)

/** Half of the lights as they should be, the others two thirds to three stops off; every fourth ISO too low. */
export const disturbedSet = (sketch: Sketch, draw: Draw): DrawnSet => {
  const iso = draw.chance(0.25) ? sketch.iso / draw.of([4, 8]) : sketch.iso
  return drawSet(sketch, Math.max(25, iso), draw, (off) =>
    off.map(() => (draw.chance(0.5) ? 0 : draw.of([-1, 1]) * draw.between(2 / 3, 3))),
  )
}

/** Right on paper; true strengths as they fall. */
export const plannedSet = (sketch: Sketch, draw: Draw): DrawnSet =>
  drawSet(sketch, sketch.iso, draw, untouched)

/** Rigged by meter until it was right, then written down: whatever a light is off its rating, its power makes up for. */
export const riggedSet = (sketch: Sketch, draw: Draw): DrawnSet =>
  drawSet(sketch, sketch.iso, draw, (off) => off.map((stops) => -stops))

const upTo = ({ sketch, readings }: DrawnSet, stage: Stage): readonly Read[] => {
  if (stage === 'none') return []
  if (stage === 'all') return readings
  const roles: readonly string[] = stage === 'key' ? ['key'] : ['key', 'backdrop']
  return readings.filter(({ light }) => roles.includes(sketch.lights[light]!.role))
}

export const textAt = (set: DrawnSet, stage: Stage): string =>
  planText(set.sketch, set.settings, upTo(set, stage))

// ---------------------------------------------------------------- faults

const heights: Readonly<Record<Level, number>> = { note: 1, warning: 2, error: 3 }

/** The highest finding of each fault's name. */
const reportedAt = (text: string): ReadonlyMap<string, number> => {
  const found = new Map<string, number>()
  for (const { rule, place, level } of checkPlan(text).findings) {
    const name = faultName(rule, place.line)
    found.set(name, Math.max(found.get(name) ?? 0, heights[level]))
  }
  return found
}

const outcome = ({ name, level }: Fault, found: ReadonlyMap<string, number>): keyof Tally => {
  const height = found.get(name) ?? 0
  return height >= heights[level] ? 'atLevel' : height > 0 ? 'lowered' : 'missed'
}

export interface FaultShares {
  /** By stage. */
  readonly all: ReadonlyMap<Stage, Tally>
  /** Faults that the plan's own figures show, by over half a stop too; and those that only the gear made. */
  readonly onPaper: ReadonlyMap<Stage, Tally>
  readonly byGear: ReadonlyMap<Stage, Tally>
  readonly byRule: ReadonlyMap<string, ReadonlyMap<Stage, Tally>>
  readonly sets: number
  /** What was not at its level with every light read. */
  readonly misses: readonly { readonly fault: Fault; readonly how: keyof Tally; readonly set: DrawnSet }[]
}

const empty = (): Map<Stage, Tally> =>
  new Map(stages.map((stage) => [stage, { atLevel: 0, lowered: 0, missed: 0 }]))

/** @param each draws of every sketch */
export const measureFaults = (seed: number, each: number, of: readonly Sketch[] = sketches): FaultShares => {
  const [all, onPaper, byGear] = [empty(), empty(), empty()]
  const byRule = new Map<string, Map<Stage, Tally>>()
  const misses: { fault: Fault; how: keyof Tally; set: DrawnSet }[] = []
  of.forEach((sketch, number) => {
    for (let i = 0; i < each; i++) {
      const set = disturbedSet(sketch, draws(seed * 1_000_003 + number * 1009 + i))
      const faults = faultsOf(setOf(set.truth))
      const shown = new Set(faultsOf(setOf(textAt(set, 'none'))).map(({ name }) => name))
      for (const stage of stages) {
        const found = reportedAt(textAt(set, stage))
        for (const fault of faults) {
          const how = outcome(fault, found)
          const rule = byRule.get(fault.rule) ?? empty()
          byRule.set(fault.rule, rule)
          for (const table of [all, rule, shown.has(fault.name) ? onPaper : byGear]) table.get(stage)![how]++
          if (stage === 'all' && how !== 'atLevel') misses.push({ fault, how, set })
        }
      }
    }
  })
  return { all, onPaper, byGear, byRule, sets: of.length * each, misses }
}

// ---------------------------------------------------------------- sound sets

export interface FalseWarnings {
  readonly sets: number
  /** Draws that it took to find that many sound ones. */
  readonly drawn: number
  /** Sets with at least one false warning, by stage. */
  readonly byStage: ReadonlyMap<Stage, number>
  readonly rules: ReadonlyMap<Stage, ReadonlyMap<string, number>>
  readonly seen: readonly {
    readonly stage: Stage
    readonly rules: readonly string[]
    readonly set: DrawnSet
  }[]
}

const warned = (text: string): ReadonlySet<string> =>
  new Set(checkPlan(text).findings.flatMap(({ rule, level }) => (level === 'note' ? [] : [rule])))

/** Of one sketch, before it is the next one's turn. */
const mostTries = 60

/** A warning is false if the plan with every light read without error does not get it. */
export const measureFalse = (
  seed: number,
  wanted: number,
  drawOne: (sketch: Sketch, draw: Draw) => DrawnSet,
  of: readonly Sketch[] = sketches,
): FalseWarnings => {
  const byStage = new Map<Stage, number>(stages.map((stage) => [stage, 0]))
  const byRule = new Map(stages.map((stage) => [stage, new Map<string, number>()]))
  const seen: { stage: Stage; rules: readonly string[]; set: DrawnSet }[] = []
  let [sets, drawn, tried, turn] = [0, 0, 0, 0]
  while (sets < wanted && drawn < wanted * mostTries) {
    const set = drawOne(of[turn % of.length]!, draws(seed * 2_000_003 + drawn))
    drawn++
    tried++
    const sound = isSound(setOf(set.truth))
    if (sound || tried === mostTries) {
      turn++
      tried = 0
    }
    if (!sound) continue
    sets++
    const real = warned(set.truth)
    for (const stage of stages) {
      const wrong = [...warned(textAt(set, stage))].filter((rule) => !real.has(rule))
      if (wrong.length === 0) continue
      byStage.set(stage, byStage.get(stage)! + 1)
      const counts = byRule.get(stage)!
      for (const rule of wrong) counts.set(rule, (counts.get(rule) ?? 0) + 1)
      seen.push({ stage, rules: wrong, set })
    }
  }
  return { sets, drawn, byStage, rules: byRule, seen }
}

// ---------------------------------------------------------------- intervals

export interface Within {
  figures: number
  /** True figures within one and two standard uncertainties of what the plan gives. */
  one: number
  two: number
}

/** The key reading, and the middle of the backdrop against it: what the program says against the truth. */
export const measureIntervals = (
  seed: number,
  each: number,
  of: readonly Sketch[] = sketches,
): ReadonlyMap<Stage, Within> => {
  const found = new Map(stages.map((stage) => [stage, { figures: 0, one: 0, two: 0 }]))
  of.forEach((sketch, number) => {
    for (let i = 0; i < each; i++) {
      const set = plannedSet(sketch, draws(seed * 3_000_017 + number * 1013 + i))
      const truth = figuresOf(setOf(set.truth))
      for (const stage of stages) {
        const told = setOf(textAt(set, stage))
        const tally = found.get(stage)!
        figuresOf(told).forEach((figure, at) => {
          const off = Math.abs(figure.stops - truth[at]!.stops) / told.u(figure)
          tally.figures++
          if (off <= 1) tally.one++
          if (off <= 2) tally.two++
        })
      }
    }
  })
  return found
}

/** Without the camera's rendering, which is not drawn. */
const figuresOf = (set: ComputedSet): readonly Figure[] => {
  const key = { ...set.key!.overCamera, rendering: 0 }
  return [key, difference({ ...set.backdropView!.middle.overCamera, rendering: 0 }, key)]
}
