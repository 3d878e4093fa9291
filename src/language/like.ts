/**
 * Lights that are like another light: the other's keys, with those that are written here in their place. A key that came
 * over keeps its place at the other light and says where it is used; one that came over to the other side of the centre
 * line is marked, for its meaning is turned when it is read.
 */
import { pointer } from '../text/place.js'
import type { TextEntry, TextMap, TextNode, TextScalar } from '../text/tree.js'

export interface Likes {
  /** The lights with their keys filled in; lights of a circle, or like one that does not exist, are left as written. */
  readonly lights: TextMap
  /** By light: keys whose value is the mirror image of what is written. */
  readonly mirrored: ReadonlyMap<string, ReadonlySet<string>>
  /** Pointer of a value that came over to the pointer where it is written. */
  readonly origins: ReadonlyMap<string, string>
  /** By light that names no role: the lights that it is like, nearest first. */
  readonly like: ReadonlyMap<string, string>
  readonly faults: readonly LikeFault[]
}

export interface LikeFault {
  readonly kind: 'unknown' | 'circle'
  readonly node: TextScalar
  readonly light: string
  readonly names: readonly string[]
}

/** Not part of what makes a light the same as another. */
const own: ReadonlySet<string> = new Set(['like', 'mirrored'])

const scalarOf = (map: TextMap, key: string): TextScalar | undefined => {
  const node = map.entries.get(key)?.value
  return node?.kind === 'scalar' ? node : undefined
}

const usedBy = (node: TextNode, like: TextScalar): TextNode => ({
  ...node,
  usedAt: { file: like.file, start: like.start, end: like.end },
})

export const resolveLikes = (lights: TextMap): Likes => {
  const done = new Map<string, TextMap>()
  const mirrored = new Map<string, Set<string>>()
  const origins = new Map<string, string>()
  const like = new Map<string, string>()
  const faults: LikeFault[] = []
  const open: string[] = []

  const resolve = (name: string, light: TextMap): TextMap => {
    const known = done.get(name)
    if (known !== undefined) return known
    const named = scalarOf(light, 'like')
    if (typeof named?.value !== 'string') {
      done.set(name, light)
      return light
    }
    const other = lights.entries.get(named.value)?.value
    if (other?.kind !== 'map') {
      if (other === undefined)
        faults.push({ kind: 'unknown', node: named, light: name, names: [...lights.entries.keys()] })
      done.set(name, light)
      return light
    }
    open.push(name)
    if (open.includes(named.value)) {
      faults.push({ kind: 'circle', node: named, light: name, names: [...open, named.value] })
      open.pop()
      done.set(name, light)
      return light
    }
    const source = resolve(named.value, other)
    open.pop()
    // Resolving the other may have closed a circle through this one.
    const filled = fill(name, light, named, source)
    done.set(name, filled)
    return filled
  }

  const fill = (name: string, light: TextMap, named: TextScalar, source: TextMap): TextMap => {
    const from = named.value as string
    like.set(name, from)
    const turned = scalarOf(light, 'mirrored')?.value === true
    const entries = new Map(light.entries)
    const mine = new Set<string>()
    for (const [key, entry] of source.entries) {
      const replaced = key === 'power' || key === 'meters' ? ['power', 'meters'] : [key]
      if (own.has(key) || replaced.some((one) => light.entries.has(one))) continue
      entries.set(key, { key: entry.key, value: usedBy(entry.value, named) } satisfies TextEntry)
      const at = pointer('lights', from, key)
      origins.set(pointer('lights', name, key), origins.get(at) ?? at)
      if ((mirrored.get(from)?.has(key) ?? false) !== turned) mine.add(key)
    }
    mirrored.set(name, mine)
    return { ...light, entries }
  }

  const entries = new Map<string, TextEntry>()
  for (const [name, entry] of lights.entries)
    entries.set(
      name,
      entry.value.kind === 'map' ? { key: entry.key, value: resolve(name, entry.value) } : entry,
    )
  return { lights: { ...lights, entries }, mirrored, origins, like, faults }
}
