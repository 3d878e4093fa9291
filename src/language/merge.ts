/**
 * Merging a file over its base, on trees, so that every value keeps its place. Maps merge key by key; a few keys replace
 * whole, because half of one and half of the other would mean something that nobody wrote; some pairs replace each other;
 * nothing (`name: null`) takes away.
 */
import type { TextEntry, TextMap } from '../text/tree.js'

/** Replace whole, wherever they are keys and not names. */
const whole: ReadonlySet<string> = new Set([
  'at',
  'aim',
  'faces',
  'unit',
  'modifier',
  'gel',
  'surface',
  'ratio',
  'ambient',
  'stands-on',
  'trigger',
  'stand',
])

const notInherited: ReadonlySet<string> = new Set(['base', 'title', 'notes', 'readings', 'accept', 'tags'])

/** Maps whose keys are names that an author chose, and what each name stands for. */
const holdsNames: Readonly<Record<string, Context>> = {
  lights: 'light',
  panels: 'other',
  points: 'place',
  circuits: 'other',
  units: 'unit',
  modifiers: 'other',
  stands: 'other',
  cameras: 'other',
  backdrops: 'other',
}

/** What the keys of a map are: names (and of what), or the keys of such a thing. */
type Context = 'plan' | 'backdrop' | 'light' | 'unit' | 'place' | 'other'
type Level = { readonly names: Context } | { readonly keys: Context }

/** Two ways to say one thing: writing one of them takes the others of the base away. */
const exclusive: Readonly<Partial<Record<Context, readonly (readonly string[])[]>>> = {
  light: [['power', 'meters']],
  backdrop: [
    ['surface', 'sky'],
    ['behind', 'behind-last-row'],
  ],
  unit: [
    ['guide-number', 'meters'],
    ['lux', 'lumens', 'photometric-file'],
  ],
}

/** The level of a key's value. */
const inside = (level: Level, key: string): Level => {
  if ('names' in level) return { keys: level.names }
  const names = Object.hasOwn(holdsNames, key) ? holdsNames[key] : undefined
  if (names !== undefined) return { names }
  return { keys: level.keys === 'plan' && key === 'backdrop' ? 'backdrop' : 'other' }
}

const replacesWhole = (level: Level, key: string): boolean =>
  'names' in level ? level.names === 'place' : whole.has(key)

const isNothing = (entry: TextEntry): boolean => entry.value.kind === 'scalar' && entry.value.value === null

const mergeMaps = (
  base: TextMap,
  over: TextMap,
  level: Level,
  nothingToTake: (entry: TextEntry, names: readonly string[]) => void,
): TextMap => {
  const entries = new Map(base.entries)
  const context = 'keys' in level ? level.keys : undefined
  for (const group of (context && exclusive[context]) ?? [])
    if (group.some((key) => over.entries.has(key))) for (const key of group) entries.delete(key)

  for (const [key, entry] of over.entries) {
    const below = entries.get(key)
    if (isNothing(entry)) {
      if (below === undefined && 'names' in level) nothingToTake(entry, [...base.entries.keys()])
      else if (below === undefined) entries.set(key, entry)
      else entries.delete(key)
      continue
    }
    const merged =
      below?.value.kind === 'map' && entry.value.kind === 'map' && !replacesWhole(level, key)
        ? mergeMaps(below.value, entry.value, inside(level, key), nothingToTake)
        : entry.value
    entries.set(key, { key: entry.key, value: merged })
  }
  return { ...over, entries }
}

/**
 * A plan (or base) over its base.
 *
 * @param nothingToTake told of a name that is set to nothing where the base has none of that name
 */
export const mergePlans = (
  base: TextMap,
  over: TextMap,
  nothingToTake: (entry: TextEntry, names: readonly string[]) => void,
): TextMap => {
  const inherited: TextMap = {
    ...base,
    entries: new Map([...base.entries].filter(([key]) => !notInherited.has(key))),
  }
  return mergeMaps(inherited, over, { keys: 'plan' }, nothingToTake)
}

/** Kits of a list: of two pieces of gear of one name the later kit's is taken whole; measurements are put together. */
export const mergeKits = (kits: readonly TextMap[]): TextMap | undefined =>
  kits.length === 0 ? undefined : kits.reduce(overKit)

const overKit = (earlier: TextMap, later: TextMap): TextMap => {
  const entries = new Map(earlier.entries)
  for (const [key, entry] of later.entries) {
    const below = entries.get(key)?.value
    const { value } = entry
    entries.set(key, {
      key: entry.key,
      value:
        below?.kind === 'map' && value.kind === 'map'
          ? { ...value, entries: new Map([...below.entries, ...value.entries]) }
          : below?.kind === 'list' && value.kind === 'list'
            ? { ...value, items: [...below.items, ...value.items] }
            : value,
    })
  }
  return { ...later, entries }
}
