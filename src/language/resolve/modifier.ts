/** Modifiers: of the kit, by kind and size, or written out at a light. */
import { pointer } from '../../text/place.js'
import { readAngle } from '../../units/angle.js'
import { readLength } from '../../units/length.js'
import { type Parsed, parsed, refused } from '../../units/parsed.js'
import { degrees, metres, type Radians, stops } from '../../units/quantity.js'
import { readSize } from '../../units/size.js'
import {
  defaultLossU,
  type ModifierKind,
  type ModifierRow,
  modifierKinds,
  modifierRow,
} from '../catalogue/modifiers.js'
import type { Grid as GridFile, Modifier as ModifierFile } from '../generated/types.js'
import type { Grid, Modifier, Size } from '../plan.js'
import {
  beamAt,
  type Desk,
  extentAt,
  gridAngleAt,
  gridAngleRange,
  isGridAngle,
  lengthAt,
  maybe,
  onceOfKit,
  refuse,
  shareAt,
  sizeAt,
  stopsAt,
  weightAt,
} from './desk.js'

/** Standard uncertainty of a loss that the kit states, stops. */
const statedLossU = 0.2

/** Words for each kind, the longest first, so that `octa softbox` is not taken for something called octa. */
const words: readonly { readonly word: string; readonly before: string; readonly kind: ModifierKind }[] =
  modifierKinds
    .flatMap((kind) =>
      [kind, ...(modifierRow(kind).also ?? [])].map((word) => ({ word, before: `${word} `, kind })),
    )
    .sort((a, b) => b.word.length - a.word.length)

/** cosⁿ falls to half at half the beam angle. */
export const cosineOfBeam = (beam: number): number => Math.log(0.5) / Math.log(Math.cos(beam / 2))

const gridOf = (row: ModifierRow, angle: Radians, kind = row.grid): Grid =>
  kind === 'egg-crate' ? { kind, cutOff: angle } : { kind, halfPeak: angle }

interface Facts {
  readonly name: string
  readonly kind: ModifierKind
  readonly size: Size
  readonly grid: Grid | undefined
  readonly guessed: boolean
}

/** By its row, without any fact of its own. */
const byRow = ({ kind, size, ...own }: Facts): Modifier => {
  const row = modifierRow(kind)
  const larger = Math.max(size.width, size.height)
  const step = row.loss.find((one) => larger <= one.upTo + 1e-9)!
  return {
    ...own,
    kind,
    outline: row.outline,
    size,
    loss: stops(step.stops),
    lossU: stops(defaultLossU),
    emission: {
      cosine: step.cosine ?? row.cosine ?? cosineOfBeam(degrees(row.beam ?? 120)),
      both: row.both ?? false,
    },
    transmits: row.transmits,
    depth: metres(row.depth * Math.min(size.width, size.height)),
    weight: undefined,
    count: undefined,
  }
}

const square = (side: number): Size => ({ width: metres(side), height: metres(side) })

/** A built-in modifier from its words: `softbox 60 x 90 cm`; undefined where they begin with no kind. */
export const readModifier = (text: string): Parsed<Modifier> | undefined => {
  const found = words.find(({ word, before }) => text === word || text.startsWith(before))
  if (found === undefined) return undefined
  const { kind } = found
  const row = modifierRow(kind)
  const rest = text.slice(found.word.length).trim()
  const made = (size: Size, grid?: Radians): Parsed<Modifier> =>
    parsed(byRow({ name: text, kind, size, grid: grid && gridOf(row, grid), guessed: true }))
  const usual = row.usual && { width: metres(row.usual.width), height: metres(row.usual.height) }

  if (rest === '') {
    if (row.sized === 'angle') return refused(`say its angle: ${row.example}`)
    return usual === undefined ? refused(`say its size: ${row.example}`) : made(usual)
  }
  switch (row.sized) {
    case 'angle': {
      const angle = readAngle(rest)
      if (!angle.ok) return refused(`${angle.says}: ${row.example}`)
      return isGridAngle(angle.value)
        ? made(usual!, angle.value)
        : refused(`${gridAngleRange}: ${row.example}`)
    }
    case 'size': {
      const size = readSize(rest)
      return size.ok ? made(size.value) : refused(`${size.says}: ${row.example}`)
    }
    // A round one may be called by a length; a square of it is as good for an octa or a dish.
    default: {
      const size = readLength(rest)
      if (size.ok && size.value > 0) return made(square(size.value))
      return refused(size.ok ? `a diameter is over zero: ${row.example}` : `${size.says}: ${row.example}`)
    }
  }
}

/** A grid as it is written; of which kind, if it does not say, by what it is on. */
export const gridAt = (desk: Desk, at: string, file: GridFile, kind: ModifierKind | undefined): Grid => {
  const row = modifierRow(kind ?? 'standard reflector')
  return typeof file === 'string'
    ? gridOf(row, gridAngleAt(desk, at, file))
    : gridOf(row, gridAngleAt(desk, `${at}/angle`, file.angle), file.kind)
}

const sizeOf = (desk: Desk, at: string, file: ModifierFile): Size => {
  const row = modifierRow(file.kind)
  if (file.size !== undefined)
    return /[x×X]/.test(file.size)
      ? sizeAt(desk, `${at}/size`, file.size)
      : square(extentAt(desk, `${at}/size`, file.size))
  if (row.usual === undefined)
    refuse(
      desk,
      at,
      `the ${file.kind} has no size`,
      `add size: ${row.sized === 'size' ? '60 x 90 cm' : '1 m'}`,
    )
  return row.usual === undefined
    ? square(1)
    : { width: metres(row.usual.width), height: metres(row.usual.height) }
}

const modifierOf = (desk: Desk, at: string, name: string, file: ModifierFile): Modifier => {
  const grid = file.grid === undefined ? undefined : gridAt(desk, `${at}/grid`, file.grid, file.kind)
  if (file.kind === 'honeycomb' && grid === undefined)
    refuse(desk, at, 'the honeycomb does not say its angle', 'add grid: 20 deg')
  const usual = byRow({
    name: file.name ?? name,
    kind: file.kind,
    size: sizeOf(desk, at, file),
    grid,
    guessed: false,
  })
  const loss = maybe(stopsAt, desk, `${at}/loss`, file.loss)
  const beam = maybe(beamAt, desk, `${at}/beam`, file.beam)
  return {
    ...usual,
    outline: file.outline ?? usual.outline,
    loss: loss ?? usual.loss,
    lossU: loss === undefined ? usual.lossU : stops(statedLossU),
    emission: {
      cosine:
        beam !== undefined
          ? cosineOfBeam(beam)
          : file['hot-middle'] === true
            ? Math.max(2, usual.emission.cosine)
            : usual.emission.cosine,
      both: usual.emission.both,
    },
    transmits: maybe(shareAt, desk, `${at}/transmits`, file.transmits) ?? usual.transmits,
    depth: maybe(lengthAt, desk, `${at}/depth`, file.depth) ?? usual.depth,
    weight: maybe(weightAt, desk, `${at}/weight`, file.weight),
    count: file.count,
  }
}

/** A modifier by name: the kit's, else by kind and size. Undefined for a name that is refused elsewhere. */
export const modifierNamed = (desk: Desk, name: string): Modifier | undefined => {
  const modifiers = desk.kit.modifiers ?? {}
  if (Object.hasOwn(modifiers, name)) {
    const at = pointer('kit', 'modifiers', name)
    return onceOfKit(desk, at, () => modifierOf(desk, at, name, modifiers[name]!))
  }
  const read = readModifier(name)
  return read?.ok ? read.value : undefined
}

export const modifierAt = (desk: Desk, at: string, file: ModifierFile | string): Modifier | undefined =>
  typeof file === 'string' ? modifierNamed(desk, file) : modifierOf(desk, at, file.kind, file)
