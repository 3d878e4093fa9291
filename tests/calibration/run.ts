/** `npm run calibration [seed]`: how many real faults are found, and how many warnings are false. Nothing depends on the machine. */
import { measureFalse, measureFaults, measureIntervals, plannedSet, riggedSet } from './measure.js'
import { falseTable, faultTable, intervalTable } from './report.js'

const seed = Number(process.argv[2] ?? 1)
const each = 15
const sound = 100

const faults = measureFaults(seed, each)
const planned = measureFalse(seed, sound, plannedSet)
const rigged = measureFalse(seed, sound, riggedSet)

console.log(`Seed ${seed}; twenty plans, ${each} disturbed sets of each.

${faultTable(faults)}

Sets with a false warning:

${falseTable(planned, rigged)}

The key reading, and the middle of the backdrop against it:

${intervalTable(measureIntervals(seed, each))}`)

if (process.argv.includes('--misses')) {
  for (const { fault, how, set } of faults.misses)
    console.log(`${how} ${fault.level} ${fault.name}: ${set.sketch.title}`)
  for (const { stage, rules, set } of [...planned.seen, ...rigged.seen])
    console.log(`false ${rules.join(', ')} with ${stage} metered: ${set.sketch.title}`)
}
