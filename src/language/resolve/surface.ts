/** Surfaces: by name (built in, or a backdrop of the kit), by reflectance, by measured facts. */
import { pointer } from '../../text/place.js'
import { stops } from '../../units/quantity.js'
import { decode } from '../../units/srgb.js'
import { readColour } from '../catalogue/colours.js'
import { surfaceNames, surfaceRow } from '../catalogue/surfaces.js'
import type { Surface as SurfaceFile } from '../generated/types.js'
import type { Finish, Surface } from '../plan.js'
import { type Desk, refuse } from './desk.js'

/** Standard uncertainty of a reflectance that the author states, stops. */
const statedU = 0.1

const none: Surface = { name: '', reflectance: 0.5, u: stops(1), colour: undefined }

/** A built-in surface; what is not in the table is refused by name elsewhere. */
export const builtInSurface = (name: string): Surface => {
  const row = surfaceRow(name)
  if (row === undefined) return none
  return {
    name,
    reflectance: row.reflectance,
    u: stops(row.u),
    colour: row.colour === undefined ? undefined : readColour(row.colour),
    ...(row.finish === undefined ? {} : { finish: row.finish }),
  }
}

/** The same surface, finished as is said of it where it lies. */
export const finished = (surface: Surface, finish: Finish | undefined): Surface =>
  finish === undefined ? surface : { ...surface, finish }

/** What is not stated about a room is uncertain. */
export const unstatedSurface = (name: string, reflectance: number): Surface => ({
  name,
  reflectance,
  u: stops(0.4),
  colour: undefined,
})

/** Relative luminance of sRGB by IEC 61966-2-1: what a surface of that colour reflects of white light. */
export const luminanceOf = ([r, g, b]: readonly [number, number, number]): number =>
  0.2126 * decode(r) + 0.7152 * decode(g) + 0.0722 * decode(b)

/** Nothing that one can hang is blacker than a thousandth (from memory): a stated 0 means as black as can be. */
const blackest = 1e-3

const number = (reflectance: number): Surface => ({
  name: `reflectance ${reflectance}`,
  reflectance: Math.max(reflectance, blackest),
  u: stops(statedU),
  colour: undefined,
})

/** @param kitBackdrops false inside the kit's own backdrops, which are not made of each other */
export const surfaceAt = (desk: Desk, at: string, file: SurfaceFile, kitBackdrops = true): Surface => {
  if (typeof file === 'number') return number(file)
  if (typeof file === 'string') {
    const backdrops = desk.kit.backdrops ?? {}
    if (kitBackdrops && Object.hasOwn(backdrops, file)) {
      const made = surfaceAt(
        desk,
        pointer('kit', 'backdrops', file, 'surface'),
        backdrops[file]!.surface,
        false,
      )
      return finished({ ...made, name: file }, backdrops[file]!.finish)
    }
    return builtInSurface(file)
  }
  const word = file.colour as string | undefined
  const colour = word === undefined ? undefined : readColour(word)
  if (word !== undefined && colour === undefined)
    refuse(desk, `${at}/colour`, `${word} is no colour`, 'write an sRGB code in quotes: "#2040a0"')
  const named =
    file.name !== undefined &&
    knownSurfaces(kitBackdrops ? Object.keys(desk.kit.backdrops ?? {}) : []).includes(file.name)
      ? surfaceAt(desk, at, file.name, kitBackdrops)
      : undefined
  const reflectance = file.reflectance ?? (colour === undefined ? undefined : luminanceOf(colour))
  const { reflectance: known, u } = named ?? none
  const facts = {
    name: file.name ?? (word === undefined ? number(reflectance ?? known).name : `colour ${word}`),
    reflectance: Math.max(reflectance ?? known, blackest),
    u: reflectance === undefined ? u : stops(statedU),
    colour: colour ?? named?.colour,
  }
  return finished(facts, file.finish ?? named?.finish)
}

/** Names that a surface may be called by in this plan. */
export const knownSurfaces = (kitBackdrops: readonly string[]): readonly string[] => [
  ...kitBackdrops,
  ...surfaceNames,
]
