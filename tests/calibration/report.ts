/** The measured shares as Markdown. */
import {
  type FalseWarnings,
  type FaultShares,
  type Stage,
  stages,
  type Tally,
  type Within,
} from './measure.js'

const heads: Readonly<Record<Stage, string>> = {
  none: 'nothing',
  key: 'the key',
  'key and backdrop': 'key and backdrop lights',
  all: 'every light',
}

export const count = ({ atLevel, lowered, missed }: Tally): number => atLevel + lowered + missed

export const percent = (part: number, of: number): string =>
  of === 0 ? '–' : `${((100 * part) / of).toFixed(1)} %`

const faultRow = (label: string, table: ReadonlyMap<Stage, Tally>, stage: Stage): string => {
  const tally = table.get(stage)!
  const all = count(tally)
  return `| ${label} | ${all} | ${percent(tally.atLevel, all)} | ${percent(tally.lowered, all)} | ${percent(tally.missed, all)} |`
}

const columns = (first: string): readonly string[] => [
  `| ${first} | faults | at their level | one lower | missed |`,
  '|---|---|---|---|---|',
]

export const faultTable = (shares: FaultShares): string =>
  [
    ...columns('metered'),
    ...stages.map((stage) => faultRow(heads[stage], shares.all, stage)),
    '',
    ...columns('nothing metered, faults that'),
    faultRow('the plan shows on paper', shares.onPaper, 'none'),
    faultRow('only the gear made', shares.byGear, 'none'),
    '',
    '| rule | faults | at their level: nothing metered | every light |',
    '|---|---|---|---|',
    ...[...shares.byRule]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([rule, table]) => {
        const [none, all] = [table.get('none')!, table.get('all')!]
        return `| \`${rule}\` | ${count(all)} | ${percent(none.atLevel, count(none))} | ${percent(all.atLevel, count(all))} |`
      }),
  ].join('\n')

const ruleCounts = (counts: ReadonlyMap<string, number>): string =>
  counts.size === 0
    ? ''
    : ` (${[...counts]
        .sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1))
        .map(([rule, n]) => `\`${rule}\` ${n}`)
        .join(', ')})`

export const falseTable = (planned: FalseWarnings, rigged: FalseWarnings): string =>
  [
    `| metered | of ${planned.sets} sets right on paper too | of ${rigged.sets} sets rigged by meter |`,
    '|---|---|---|',
    ...stages.map((stage) => {
      const cells = [planned, rigged].map(
        (found) => `${found.byStage.get(stage)!}${ruleCounts(found.rules.get(stage)!)}`,
      )
      return `| ${heads[stage]} | ${cells.join(' | ')} |`
    }),
  ].join('\n')

export const intervalTable = (found: ReadonlyMap<Stage, Within>): string =>
  [
    '| metered | figures | truth within u | within 2u |',
    '|---|---|---|---|',
    ...stages.map((stage) => {
      const { figures, one, two } = found.get(stage)!
      return `| ${heads[stage]} | ${figures} | ${percent(one, figures)} | ${percent(two, figures)} |`
    }),
  ].join('\n')
