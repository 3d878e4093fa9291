/**
 * Names that mean something elsewhere in the plan: points, panels, lights, gear, circuits, surfaces. Asked of the tree, so
 * that a plan with a wrong value somewhere still gets all of its wrong names told.
 */
import type { TextList, TextMap, TextNode, TextScalar } from '../text/tree.js'
import { modifierExamples } from './catalogue/modifiers.js'
import { unitNames } from './catalogue/units.js'
import type { Gathered } from './gather.js'
import type { MistakeList } from './mistakes.js'
import { readModifier } from './resolve/modifier.js'
import { targetOf } from './resolve/placing.js'
import { knownSurfaces } from './resolve/surface.js'
import { builtInPoints, sides, wallNames } from './schema/names.js'

/** A longer list is refused; its names need not be known. */
const mostRows = 40

/** Words for what holds a light that is no stand of the kit. */
const commonStands: readonly string[] = [
  'light stand',
  'boom',
  'floor stand',
  'clamp',
  'ceiling rail',
  'hand',
]

// ---------------------------------------------------------------- walking what may be anything

const mapAt = (node: TextNode | undefined, key: string): TextMap | undefined => {
  const value = nodeAt(node, key)
  return value?.kind === 'map' ? value : undefined
}

const nodeAt = (node: TextNode | undefined, key: string): TextNode | undefined =>
  node?.kind === 'map' ? node.entries.get(key)?.value : undefined

type Word = TextScalar & { readonly value: string }

const isWord = (node: TextNode | undefined): node is Word =>
  node?.kind === 'scalar' && typeof node.value === 'string'

const wordAt = (node: TextNode | undefined, key: string): Word | undefined => {
  const value = nodeAt(node, key)
  return isWord(value) ? value : undefined
}

const listAt = (node: TextNode | undefined, key: string): TextList | undefined => {
  const value = nodeAt(node, key)
  return value?.kind === 'list' ? value : undefined
}

const keysOf = (node: TextMap | undefined): readonly string[] => [...(node?.entries.keys() ?? [])]

const valuesOf = (node: TextMap | undefined): readonly (readonly [string, TextNode])[] =>
  [...(node?.entries ?? [])].map(([name, entry]) => [name, entry.value] as const)

// ---------------------------------------------------------------- what there is

interface Known {
  readonly mistakes: MistakeList
  readonly root: TextMap
  readonly gathered: Gathered
  readonly lights: ReadonlySet<string>
  readonly panels: ReadonlySet<string>
  readonly points: ReadonlySet<string>
  /** Points that would be there if the plan had a backdrop. */
  readonly backdrop: boolean
  readonly rows: number
}

const rowsIn = (root: TextMap): number => {
  const subject = mapAt(root, 'subject')
  return Math.min(listAt(subject, 'rows')?.items.length ?? 0, mostRows)
}

const known = (gathered: Gathered, mistakes: MistakeList): Known => {
  const { root } = gathered
  const rows = rowsIn(root)
  const backdrop = root.entries.has('backdrop')
  const points = new Set<string>(builtInPoints.filter((point) => backdrop || !point.startsWith('backdrop')))
  for (let row = 1; row <= rows; row += 1) points.add(`row-${row}-left`).add(`row-${row}-right`)
  for (const name of keysOf(mapAt(root, 'points'))) points.add(name)
  return {
    mistakes,
    root,
    gathered,
    lights: new Set(keysOf(mapAt(root, 'lights'))),
    panels: new Set(keysOf(mapAt(root, 'panels'))),
    points,
    backdrop,
    rows,
  }
}

const unknown = (of: Known, at: TextScalar, what: string, names: readonly string[], why?: string): void =>
  of.mistakes.unknownName({
    at,
    what,
    name: String(at.value),
    names,
    ...(why === undefined ? {} : { why }),
  })

const onBackdrop = (name: string): boolean => /^backdrop(-|$)/.test(name)

const checkPoint = (of: Known, at: TextScalar | undefined, name = String(at?.value)): void => {
  if (at === undefined || of.points.has(name)) return
  if (of.backdrop || !onBackdrop(name))
    of.mistakes.unknownName({ at, what: 'point', name, names: [...of.points] })
  else
    of.mistakes.add({
      rule: 'unknown-name',
      at,
      message: `${name} is named, but the plan has no backdrop`,
      why: 'state backdrop: { surface: white paper, behind: 2 m }',
    })
}

/** Something to aim at: `ceiling above subject`, a wall, a panel, a point. */
const checkTarget = (of: Known, at: TextScalar | undefined): void => {
  if (!isWord(at)) return
  const target = targetOf(at.value, of.panels)
  if (target.at === 'panel' || target.at === 'wall') return
  if (target.at === 'ceiling' || of.points.has(target.name) || onBackdrop(target.name))
    checkPoint(of, at, target.name)
  else unknown(of, at, 'point, panel or wall', [...of.points, ...of.panels, ...wallNames])
}

const checkAim = (of: Known, aim: TextNode | undefined): void =>
  checkTarget(of, isWord(aim) ? aim : wordAt(aim, 'at'))

const checkFacing = (of: Known, at: TextScalar | undefined): void => {
  if (!isWord(at) || (sides as readonly string[]).includes(at.value) || /^[0-9]/.test(at.value)) return
  if (of.points.has(at.value) || onBackdrop(at.value)) checkPoint(of, at)
  else unknown(of, at, 'side or point', [...sides, ...of.points])
}

// ---------------------------------------------------------------- gear and surfaces

interface Gear {
  readonly units: ReadonlySet<string>
  readonly modifiers: ReadonlySet<string>
  readonly surfaces: ReadonlySet<string>
  /** The kit's, and common words for what holds a light; empty where the kit has none. */
  readonly stands: ReadonlySet<string>
  readonly cameras: ReadonlySet<string>
}

const gearOf = (root: TextMap): Gear => {
  const kit = mapAt(root, 'kit')
  const names = (key: string): readonly string[] => keysOf(mapAt(kit, key))
  const stands = names('stands')
  return {
    units: new Set([...names('units'), ...unitNames]),
    modifiers: new Set(names('modifiers')),
    surfaces: new Set(knownSurfaces(names('backdrops'))),
    stands: new Set(stands.length === 0 ? [] : [...stands, ...commonStands]),
    cameras: new Set(names('cameras')),
  }
}

const checkUnit = (of: Known, gear: Gear, at: Word | undefined): void => {
  if (at !== undefined && !gear.units.has(at.value)) unknown(of, at, 'unit', [...gear.units])
}

/** A kind that is known but for its size is told so; else the name is unknown. */
const checkModifier = (of: Known, gear: Gear, at: Word | undefined): void => {
  if (at === undefined || gear.modifiers.has(at.value)) return
  const read = readModifier(at.value)
  if (read === undefined) unknown(of, at, 'modifier', [...gear.modifiers, ...modifierExamples])
  else if (!read.ok)
    of.mistakes.add({
      rule: 'plan-unreadable',
      at,
      message: `the modifier ${at.value} cannot be read`,
      why: read.says,
    })
}

/** By name, or by its facts; a map that has none goes by its name. */
const checkSurface = (of: Known, gear: Gear, at: TextNode | undefined): void => {
  const facts = ['reflectance', 'colour'].some((key) => nodeAt(at, key) !== undefined)
  const name = isWord(at) ? at : facts ? undefined : wordAt(at, 'name')
  if (name === undefined || gear.surfaces.has(name.value)) return
  const why = isWord(at) ? undefined : 'a name of your own needs its reflectance or its colour besides'
  unknown(of, name, 'surface', [...gear.surfaces], why)
}

const checkSurfaces = (of: Known, gear: Gear): void => {
  const { root } = of
  const room = mapAt(root, 'room')
  checkSurface(of, gear, nodeAt(mapAt(root, 'backdrop'), 'surface'))
  checkSurface(of, gear, nodeAt(mapAt(mapAt(root, 'subject'), 'stands-on'), 'surface'))
  for (const key of ['ceiling', 'floor', 'walls']) checkSurface(of, gear, nodeAt(room, key))
  for (const side of ['left', 'right', 'front', 'back'])
    checkSurface(of, gear, nodeAt(mapAt(room, 'walls'), side))
  for (const [, panel] of valuesOf(mapAt(root, 'panels')))
    for (const key of ['surface', 'inside', 'outside']) checkSurface(of, gear, nodeAt(panel, key))
}

/** Names inside the kit itself. */
const checkKit = (of: Known, gear: Gear): void => {
  const kit = mapAt(of.root, 'kit')
  const builtIn = { ...gear, surfaces: new Set(knownSurfaces([])) }
  for (const [, backdrop] of valuesOf(mapAt(kit, 'backdrops')))
    checkSurface(of, builtIn, nodeAt(backdrop, 'surface'))
  for (const one of listAt(kit, 'measured')?.items ?? []) {
    checkUnit(of, gear, wordAt(one, 'unit'))
    checkModifier(of, gear, wordAt(one, 'modifier'))
  }
}

// ---------------------------------------------------------------- lights, panels, camera, readings

const checkLight = (of: Known, gear: Gear, light: TextNode): void => {
  if (of.gathered.kitWhole) {
    checkUnit(of, gear, wordAt(light, 'unit'))
    checkModifier(of, gear, wordAt(light, 'modifier'))
    const stand = wordAt(mapAt(light, 'stand'), 'kind')
    if (stand !== undefined && gear.stands.size > 0 && !gear.stands.has(stand.value))
      unknown(of, stand, 'stand', [...gear.stands])
  }
  checkAim(of, nodeAt(light, 'aim'))
  checkPoint(of, wordAt(mapAt(light, 'meters'), 'at'))
  checkFacing(of, wordAt(light, 'faces'))
  const role = wordAt(light, 'role')
  if (role?.value === 'backdrop' && !of.backdrop)
    of.mistakes.add({
      rule: 'unknown-name',
      at: role,
      message: 'the light is for the backdrop, but the plan has none',
      why: 'state backdrop: { surface: white paper, behind: 2 m }, or give the light another role',
    })
  const circuit = wordAt(light, 'circuit')
  const circuits = keysOf(mapAt(mapAt(of.root, 'room'), 'circuits'))
  if (circuit !== undefined && of.gathered.roomWhole && !circuits.includes(circuit.value))
    unknown(
      of,
      circuit,
      'circuit',
      circuits,
      circuits.length === 0 ? 'state room.circuits: { a: { voltage: 230 V, breaker: 16 A } }' : undefined,
    )
}

const checkCamera = (of: Known, gear: Gear): void => {
  const camera = mapAt(of.root, 'camera')
  const body = wordAt(camera, 'body')
  if (body !== undefined && of.gathered.kitWhole && !gear.cameras.has(body.value))
    unknown(
      of,
      body,
      'camera in the kit',
      [...gear.cameras],
      gear.cameras.size === 0 ? 'name a kit that has cameras, or leave body out' : undefined,
    )
  const aim = wordAt(camera, 'aim')
  if (aim?.value !== 'level') checkTarget(of, aim)
  const focus = wordAt(camera, 'focus')
  if (focus === undefined || /^[0-9]/.test(focus.value)) return
  const row = /^row ([0-9]+)$/.exec(focus.value)?.[1]
  if (row === undefined) checkPoint(of, focus)
  else if (Number(row) < 1 || Number(row) > of.rows)
    of.mistakes.add({
      rule: 'unknown-name',
      at: focus,
      message: `there is no ${focus.value} to focus on`,
      why: of.rows === 0 ? 'the subject has no rows' : `the group has ${of.rows}`,
    })
}

const checkReading = (of: Known, reading: TextNode): void => {
  checkPoint(of, wordAt(reading, 'at'))
  const light = (name: TextScalar): void => {
    if (!of.lights.has(String(name.value))) unknown(of, name, 'light', [...of.lights])
  }
  const whom = nodeAt(reading, 'of')
  if (isWord(whom) && whom.value !== 'all' && whom.value !== 'ambient') light(whom)
  if (whom?.kind === 'list') for (const one of whom.items) if (isWord(one)) light(one)
  for (const entry of mapAt(reading, 'taken')?.entries.values() ?? []) light(entry.key)
  const faces = wordAt(reading, 'faces')
  if (faces !== undefined && faces.value !== 'light' && faces.value !== 'camera') checkPoint(of, faces)
}

export const checkNames = (gathered: Gathered, mistakes: MistakeList): void => {
  const of = known(gathered, mistakes)
  const gear = gearOf(gathered.root)
  for (const [, light] of valuesOf(mapAt(of.root, 'lights'))) checkLight(of, gear, light)
  for (const [, panel] of valuesOf(mapAt(of.root, 'panels'))) checkFacing(of, wordAt(panel, 'faces'))
  checkCamera(of, gear)
  for (const reading of listAt(of.root, 'readings')?.items ?? []) checkReading(of, reading)
  if (!gathered.kitWhole) return
  checkSurfaces(of, gear)
  checkKit(of, gear)
}
