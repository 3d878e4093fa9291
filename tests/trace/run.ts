/** `npm run trace [-- set…]`: every set against the tracer, as a table. `--wrong` lists the places that are off; `--all` every place; `--grid` takes some 80 places of a grid a set; `--drawn` takes 26 sets drawn at random. */
import type { Plan } from '../../src/language/plan.js'
import { computeSet } from '../../src/set/compute-set.js'
import { bounds, type Compared, compareSet, judgeOf } from './compare.js'
import { drawnPlans } from './drawn.js'
import { bodiesOf } from './from-scene.js'
import { planOf, setNames } from './set.js'
import { type Effort, Tracer } from './trace.js'

const flags = process.argv.slice(2).filter((word) => word.startsWith('--'))
const named = process.argv.slice(2).filter((word) => !word.startsWith('--'))
const effort: Effort = { seed: 1, paths: 256, fewest: 16, most: 160, error: 0.006 }

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length / 2
  return sorted.length === 0 ? 0 : (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2
}
const worst = (values: readonly number[]): string =>
  values.length === 0 ? '-' : Math.max(...values).toFixed(3)

const row = (name: string, places: readonly Compared[]): string => {
  const judged = places.filter((one) => one.judged)
  const off = (penumbra: boolean) =>
    judged.filter((one) => one.place.penumbra === penumbra).map((one) => Math.abs(one.off))
  return `| ${[
    name,
    `${judged.length} of ${places.length}`,
    worst(off(false)),
    median(judged.map((one) => Math.abs(one.off))).toFixed(3),
    worst(off(true)),
    off(true).length,
    worst(judged.map((one) => one.error)),
    places.some((one) => one.wrong) ? 'no' : 'yes',
  ].join(' | ')} |`
}

const line = (one: Compared): string => {
  const split = one.byLight.map(({ light, tracer, program }) => {
    const [a, b, c, d] = [tracer.direct, program.direct, tracer.indirect, program.indirect]
    return `${light} direct ${a.toPrecision(4)} / ${b.toPrecision(4)}, indirect ${c.toPrecision(4)} / ${d.toPrecision(4)}`
  })
  const at = one.place.at.map((x) => x.toFixed(3)).join(', ')
  const faces = one.place.normal.map((x) => x.toFixed(2)).join(', ')
  return `- ${one.wrong ? 'OFF ' : ''}${one.place.name} [${at}] faces [${faces}] ${one.place.kind}${one.place.penumbra ? ', penumbra' : ''}: ${one.off.toFixed(3)} stop ± ${one.error.toFixed(3)}, ${one.overKey.toFixed(1)} over key; tracer / program: ${split.join('; ')}`
}

/** What the people's own reflectance adds at each place that is judged, stops. */
const ofSubject = (plan: Plan, places: readonly Compared[]): readonly (readonly [string, number])[] => {
  const set = computeSet(plan)
  const { tracer, weights } = judgeOf(plan, set, effort.seed)
  const lit = new Tracer(bodiesOf(set.scene, plan.subject.reflectance), tracer.lamps, effort.seed)
  return places
    .filter((one) => one.judged)
    .map(({ place, byLight }) => {
      const dark = byLight.reduce((sum, one) => sum + one.tracer.direct + one.tracer.indirect, 0)
      return [place.name, Math.log2(lit.at(place, weights, effort).total / dark)] as const
    })
}

const plans = flags.includes('--drawn')
  ? drawnPlans(26)
  : (named.length > 0 ? named : setNames).map((name) => [name, planOf(name)] as const)
const [lines, subject]: [string[], string[]] = [[], []]
console.log(`Seed ${effort.seed}. Program over tracer in stops; judged where the total lies within ${bounds.underKey} stops of the key and the
tracer's own standard error is no more than ${bounds.error} stop.

| set | places judged | worst at points | median | worst in penumbra | penumbra places | tracer's error | within ${bounds.point} and ${bounds.penumbra} |
|---|---|---|---|---|---|---|---|`)
for (const [name, plan] of plans) {
  const { places } = compareSet(plan, effort, undefined, flags.includes('--grid') ? 9 : undefined)
  console.log(row(name, places))
  lines.push(`\n${name}\n`, ...places.filter((one) => flags.includes('--all') || one.wrong).map(line))
  if (!flags.includes('--no-notes')) {
    const adds = ofSubject(plan, places)
    const most = adds.reduce((a, b) => (Math.abs(b[1]) > Math.abs(a[1]) ? b : a), ['', 0] as const)
    subject.push(
      `| ${name} | ${median(adds.map(([, x]) => x)).toFixed(3)} | ${most[1].toFixed(3)} (${most[0]}) | ${adds.find(([place]) => place === 'key')?.[1].toFixed(3)} |`,
    )
  }
}
if (subject.length > 0)
  console.log(`
What it is worth that the subject gives no light back: stops that its own reflectance would add.

| set | median | most | at the key |
|---|---|---|---|
${subject.join('\n')}`)
if (flags.includes('--all') || flags.includes('--wrong')) console.log(lines.join('\n'))
