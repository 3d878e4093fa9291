/** A studio's settings, `thirdstop.yaml`: levels and limits of its own, which files are plans, and what fails a check. */
import { nearest } from '../language/nearest.js'
import { validate } from '../language/validate.js'
import { rules } from '../rules/index.js'
import type { Level, Limit } from '../rules/rule.js'
import { lineAndColumn, lineIndex } from '../text/lines.js'
import { readText } from '../text/read.js'
import type { TextMap, TextNode } from '../text/tree.js'
import { readAngle } from '../units/angle.js'
import { readMired } from '../units/colour.js'
import { readLength } from '../units/length.js'
import { type Parsed, parsed, refused } from '../units/parsed.js'
import { inDegrees } from '../units/quantity.js'
import { readShare } from '../units/share.js'
import { readStops } from '../units/stops.js'
import type { Problem } from './problem.js'

export interface Settings {
  readonly failOn: Level | undefined
  readonly levels: Readonly<Record<string, Level | 'off'>>
  /** By rule and limit, in the limit's own unit. */
  readonly limits: Readonly<Record<string, Readonly<Record<string, number>>>>
  /** Patterns of paths, relative to the settings' folder; undefined: `*.plan.yaml` anywhere. */
  readonly plans: readonly string[] | undefined
  readonly ignore: readonly string[]
}

export const noSettings: Settings = {
  failOn: undefined,
  levels: {},
  limits: {},
  plans: undefined,
  ignore: [],
}

export interface ReadSettings {
  readonly settings: Settings
  /** Each with its line and column in `file`. What could be read holds all the same. */
  readonly problems: readonly Problem[]
}

/** Reads the text of a settings file. */
export const readSettings = (file: string, text: string): ReadSettings => {
  const index = lineIndex(text)
  const problems: Problem[] = []
  const wrong = (start: number, says: string): void => {
    const { line, column } = lineAndColumn(index, start)
    problems.push({ file: `${file}:${line}:${column}`, says })
  }
  const { root, faults } = readText(file, text)
  for (const { start, says } of faults) wrong(start, says)
  if (root === undefined) return { settings: noSettings, problems }
  const mistakes = validate('settings', root)
  for (const { at, message, why } of mistakes) {
    wrong(at.start, why === undefined || why === '' ? message : `${message}; ${why}`)
  }
  // A map of which a part has the wrong shape is no map to read from.
  if (mistakes.length > 0 || root.kind !== 'map') return { settings: noSettings, problems }

  const levels: Record<string, Level | 'off'> = {}
  for (const [name, node] of entries(root, 'levels')) {
    if (ruleNamed(name, node.start, wrong) !== undefined) levels[name] = scalar(node) as Level | 'off'
  }
  const limits: Record<string, Record<string, number>> = {}
  for (const [name, node] of entries(root, 'limits')) {
    const rule = ruleNamed(name, node.start, wrong)
    if (rule === undefined || node.kind !== 'map') continue
    const own: Record<string, number> = {}
    for (const [limitName, { value }] of node.entries) {
      const limit = Object.hasOwn(rule.limits, limitName) ? rule.limits[limitName] : undefined
      if (limit === undefined) {
        wrong(value.start, unknown(`limit of ${name}`, limitName, Object.keys(rule.limits)))
        continue
      }
      const read = readLimit(limit, scalar(value))
      if (read.ok) own[limitName] = read.value
      else wrong(value.start, read.says)
    }
    limits[name] = own
  }
  const failOn = root.entries.get('fail-on')
  return {
    settings: {
      failOn: failOn === undefined ? undefined : (scalar(failOn.value) as Level),
      levels,
      limits,
      plans: strings(root, 'plans'),
      ignore: strings(root, 'ignore') ?? [],
    },
    problems,
  }
}

const entries = (root: TextMap, key: string): [string, TextNode][] => {
  const node = root.entries.get(key)?.value
  return node?.kind === 'map' ? [...node.entries].map(([name, { value }]) => [name, value]) : []
}

const strings = (root: TextMap, key: string): string[] | undefined => {
  const node = root.entries.get(key)?.value
  return node?.kind === 'list' ? node.items.map((item) => String(scalar(item))) : undefined
}

const scalar = (node: TextNode): unknown => (node.kind === 'scalar' ? node.value : undefined)

const ruleNamed = (name: string, start: number, wrong: (start: number, says: string) => void) => {
  const rule = rules.find(({ id }) => id === name)
  if (rule === undefined)
    wrong(
      start,
      unknown(
        'rule',
        name,
        rules.map(({ id }) => id),
      ),
    )
  return rule
}

const unknown = (what: string, name: string, known: readonly string[]): string => {
  const meant = nearest(name, known)
  return meant === undefined
    ? `there is no ${what} ${name}; thirdstop rules and thirdstop explain show what there is`
    : `there is no ${what} ${name}; did you mean ${meant}?`
}

/** A limit in its own unit; with a unit where it has one, so that nobody has to know which. */
const readLimit = ({ unit }: Limit, value: unknown): Parsed<number> => {
  if (unit === 'count' || unit === 'sRGB' || (unit === 'share' && typeof value === 'number')) {
    return typeof value === 'number' && value >= 0 && Number.isFinite(value)
      ? parsed(value)
      : refused(`this limit is a plain number${unit === 'sRGB' ? ' from 0 to 255' : ''}`)
  }
  const text = String(value)
  const scaled = (read: Parsed<number>, by: number): Parsed<number> =>
    read.ok ? parsed(read.value * by) : read
  switch (unit) {
    case 'stop':
      return readStops(text)
    case 'cm':
      return scaled(readLength(text), 100)
    case 'm':
      return readLength(text)
    case 'deg':
      return scaled(readAngle(text), inDegrees(1))
    case 'mired':
      return readMired(text)
    default:
      return readShare(text)
  }
}
