/** From a merged, valid tree to the plan as it is meant. */
import { pointer } from '../../text/place.js'
import { plain } from '../../text/plain.js'
import type { TextMap, TextNode } from '../../text/tree.js'
import { lengthStyle } from '../../units/length.js'
import type { Gathered } from '../gather.js'
import type { KitMap, Panel as PanelFile, Placement as PlacementFile, PlanFile } from '../generated/types.js'
import type { Likes } from '../like.js'
import type { MistakeList } from '../mistakes.js'
import { makePlaces, type Written } from '../places.js'
import type { Places, Plan } from '../plan.js'
import type { FilePort } from '../port.js'
import { resolveCamera } from './camera.js'
import type { Desk } from './desk.js'
import { resolveLights, type WholeLightFile } from './lights.js'
import { resolvePanels } from './panels.js'
import { placementAt } from './placing.js'
import { resolveKit, resolveMeasured, resolveReadings } from './readings.js'
import { resolveAmbient, resolveBackdrop, resolveRoom } from './set.js'
import { resolveSubject } from './subject.js'
import { resolveWanted } from './wanted.js'

const mapOf = <T>(named: { readonly [name: string]: T | null } | undefined): ReadonlyMap<string, T> =>
  new Map(Object.entries(named ?? {}).flatMap(([name, one]) => (one === null ? [] : [[name, one] as const])))

const mapAt = (node: TextNode | undefined, key: string): TextMap | undefined => {
  const value = node?.kind === 'map' ? node.entries.get(key)?.value : undefined
  return value?.kind === 'map' ? value : undefined
}

const wordAt = (node: TextNode | undefined, key: string): TextNode | undefined => {
  const value = node?.kind === 'map' ? node.entries.get(key)?.value : undefined
  return value?.kind === 'scalar' && typeof value.value === 'string' ? value : undefined
}

/** Where facts go on that a plan only names: gear in the kit. */
const redirectsOf = (root: TextMap): Written['redirects'] => {
  const kit = mapAt(root, 'kit')
  const redirects = new Map<string, { to: string; used: TextNode }>()
  const link = (from: string, word: TextNode | undefined, section: string): void => {
    if (word?.kind === 'scalar' && mapAt(kit, section)?.entries.has(String(word.value)) === true)
      redirects.set(from, { to: pointer('kit', section, String(word.value)), used: word })
  }
  link('/camera', wordAt(mapAt(root, 'camera'), 'body'), 'cameras')
  const surface = wordAt(mapAt(root, 'backdrop'), 'surface')
  link('/backdrop', surface, 'backdrops')
  for (const [name, entry] of mapAt(root, 'lights')?.entries ?? []) {
    const light = entry.value
    link(pointer('lights', name, 'unit'), wordAt(light, 'unit'), 'units')
    link(pointer('lights', name, 'modifier'), wordAt(light, 'modifier'), 'modifiers')
    link(pointer('lights', name, 'stand'), wordAt(mapAt(light, 'stand'), 'kind'), 'stands')
  }
  return redirects
}

export interface Whole {
  readonly file: string
  readonly gathered: Gathered
  readonly likes: Likes | undefined
  readonly texts: Map<string, string>
  readonly port: FilePort
  readonly asks: Written['asks']
  readonly mistakes: MistakeList
}

/** The tree with every light filled in from the one that it is like, and where its values are written. */
const put = (whole: Whole): { readonly root: TextMap; readonly places: Places } => {
  const { gathered, likes } = whole
  const entries = new Map(gathered.root.entries)
  const lights = entries.get('lights')
  if (lights !== undefined && likes !== undefined)
    entries.set('lights', { key: lights.key, value: likes.lights })
  const root = { ...gathered.root, entries }
  const places = makePlaces({
    file: whole.file,
    root,
    texts: whole.texts,
    prefixes: gathered.prefixes,
    asks: whole.asks,
    origins: likes?.origins ?? new Map(),
    redirects: redirectsOf(root),
  })
  return { root, places }
}

const without = (root: TextMap, key: string): TextMap => {
  const entries = new Map(root.entries)
  entries.delete(key)
  return { ...root, entries }
}

const kitFiles = new WeakMap<TextMap, KitMap>()

/** Plans that stand on one kit get one and the same object. */
const kitFile = (kit: TextMap): KitMap => {
  const known = kitFiles.get(kit) ?? (plain(kit) as KitMap)
  kitFiles.set(kit, known)
  return known
}

/** Mistakes that turn up make the plan worthless; they are in the list. */
export const resolvePlan = (whole: Whole): Plan => {
  const { root, places } = put(whole)
  const kit = mapAt(root, 'kit')
  // Valid by the schema that these types are made from.
  const file = plain(without(root, 'kit')) as PlanFile
  const desk: Desk = {
    places,
    mistakes: whole.mistakes,
    kit: kit === undefined ? {} : kitFile(kit),
    files: { port: whole.port, texts: whole.texts },
  }

  const panelFiles = mapOf<PanelFile>(file.panels)
  const panelNames = new Set(panelFiles.keys())
  const subject = resolveSubject(desk, file.subject)
  const ground = { backdrop: file.backdrop !== undefined, table: subject.standsOn !== undefined }
  const backdrop = resolveBackdrop(desk, file.backdrop, subject)
  const camera = resolveCamera(desk, ground, file.camera, subject, panelNames)
  const lights = resolveLights(
    desk,
    {
      ...ground,
      panels: panelNames,
      mirrored: whole.likes?.mirrored ?? new Map(),
      like: whole.likes?.like ?? new Map(),
    },
    mapOf(file.lights) as ReadonlyMap<string, WholeLightFile>,
  )
  const style = lengthStyle(file.camera.at.distance)
  return {
    file: whole.file,
    title: file.title,
    notes: file.notes,
    tags: file.tags ?? [],
    room: resolveRoom(desk, typeof file.room === 'string' ? undefined : file.room, backdrop),
    ambient: resolveAmbient(desk, file.ambient),
    camera,
    subject,
    backdrop,
    lights,
    panels: resolvePanels(desk, ground, panelFiles),
    points: new Map(
      [...mapOf<PlacementFile>(file.points)].map(([name, place]) => [
        name,
        placementAt(desk, ground, pointer('points', name), place),
      ]),
    ),
    wanted: resolveWanted(desk, file.wanted ?? {}, subject, lights),
    readings: resolveReadings(desk, file.readings ?? [], lights, camera.iso),
    accept: (file.accept ?? []).map(({ rule, because, until }) => ({ rule, because, until })),
    measured: resolveMeasured(desk),
    kit: kit === undefined ? undefined : resolveKit(desk),
    lengths: style === 'feet' || style === 'primes' || style === 'in' ? 'feet' : 'metric',
    places,
  }
}
