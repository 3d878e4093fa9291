/**
 * Surfaces by name: luminous reflectance, how sure, and where the figure is from; what mirrors or smears lights says
 * so. A plan may state its own reflectance and finish.
 *
 * `sourced` figures were read in a public table: the 24-patch chart data of the Colour library (colour-science/colour,
 * 1976 luminance factors) and an old table of papers and cloths ("Reflective power of color"). The rest are from
 * memory; ranges met by practitioners set their uncertainty.
 */

export interface SurfaceRow {
  /** 0 to 1. */
  readonly reflectance: number
  /** Standard uncertainty, stops. */
  readonly u: number
  /** sRGB; of about the luminance that the reflectance says. From memory. */
  readonly colour?: string
  /** How it shines, where that is not matte. Common practice, no source. */
  readonly finish?: 'satin' | 'glossy'
  readonly from: 'sourced' | 'memory'
  /** Where the figure is from, and its spread. */
  readonly says: string
}

const memory = (reflectance: number, u: number, says: string, colour?: string): SurfaceRow => ({
  reflectance,
  u,
  ...(colour === undefined ? {} : { colour }),
  from: 'memory',
  says,
})

const sourced = (reflectance: number, u: number, says: string, colour?: string): SurfaceRow => ({
  reflectance,
  u,
  ...(colour === undefined ? {} : { colour }),
  from: 'sourced',
  says,
})

const shining = (finish: 'satin' | 'glossy', row: SurfaceRow): SurfaceRow => ({ ...row, finish })

const oldTable = 'Reflective power of color (old table)'
const chart = '24-patch chart, 1976 data'

export const surfaceTable: Readonly<Record<string, SurfaceRow>> = {
  'white paper': memory(0.9, 0.06, 'studio paper rolls 0.85 to 0.90; the white chart patch is 0.90'),
  'light grey paper': memory(0.5, 0.25, 'light grey rolls'),
  'grey paper': memory(0.18, 0.25, 'mid grey rolls 0.15 to 0.25'),
  'dark grey paper': sourced(0.09, 0.3, `${chart}, neutral 3.5; rolls differ`),
  'black paper': memory(0.045, 0.3, 'black rolls 0.03 to 0.06'),
  'blue paper': sourced(0.25, 0.4, oldTable, '#3f8fd0'),
  'green paper': sourced(0.18, 0.4, `${oldTable}, emerald green`, '#00804c'),
  'pink paper': sourced(0.36, 0.4, `${oldTable}, light pink`, '#e28e9e'),
  'brown paper': sourced(0.13, 0.4, `${oldTable}, dark brown`, '#7a6043'),
  'red paper': memory(0.13, 0.4, 'red rolls', '#c8252c'),
  'yellow paper': memory(0.55, 0.3, 'yellow rolls', '#e8c31e'),
  newspaper: sourced(0.6, 0.25, `${oldTable}, 0.5 to 0.7`),

  'white cloth': memory(0.75, 0.2, 'white muslin and sheets'),
  'grey cloth': memory(0.18, 0.4, 'mid grey muslin'),
  'black cloth': sourced(0.012, 0.8, `${oldTable}; practitioners quote up to 0.04`),
  'black velvet': memory(0.01, 0.8, 'an old table says 0.004, practitioners up to 0.05'),
  'black curtain': memory(0.03, 0.6, 'stage and blackout cloth'),
  'white vinyl': shining('satin', memory(0.85, 0.1, 'vinyl backdrops')),

  'white paint': memory(0.8, 0.12, 'painted coves 0.80 to 0.88, lived-in walls less'),
  'grey paint': memory(0.3, 0.5, 'mid grey wall paint'),
  'black paint': memory(0.05, 0.4, 'matte black wall paint'),
  'white wall': memory(0.8, 0.12, 'as white paint'),
  'grey wall': memory(0.3, 0.5, 'as grey paint'),
  'black wall': memory(0.05, 0.4, 'as black paint'),
  'cream wall': memory(0.65, 0.2, 'off-white paint', '#d9d2bd'),
  'yellow wall': sourced(0.4, 0.3, `${oldTable}, yellow painted wall, clean`, '#c4a44d'),
  'white ceiling': memory(0.8, 0.12, 'as white paint'),
  brick: memory(0.25, 0.4, 'red brick', '#a8806f'),
  glass: shining('glossy', memory(0.1, 0.6, 'windows at night: what they do not mirror is lost')),
  'wooden wall': memory(0.3, 0.4, 'wood panels', '#b08a5e'),

  'grey carpet': memory(0.15, 0.5, 'grey carpets'),
  'dark carpet': memory(0.06, 0.5, 'dark carpets'),
  'wooden floor': memory(0.3, 0.4, 'oak and pine boards', '#b08a5e'),
  'dark wooden floor': memory(0.12, 0.4, 'stained boards', '#735a41'),
  concrete: memory(0.3, 0.4, 'bare concrete'),
  'white floor': memory(0.8, 0.15, 'painted white'),
  'grey floor': memory(0.3, 0.4, 'painted or grey vinyl'),
  'black floor': memory(0.05, 0.4, 'painted black'),
  grass: memory(0.2, 0.4, 'lawn', '#5f8a48'),
  sand: memory(0.4, 0.3, 'dry sand', '#bca98a'),
  asphalt: memory(0.1, 0.4, 'worn asphalt'),

  'white board': memory(0.85, 0.1, 'foam board'),
  'black board': memory(0.05, 0.4, 'black foam board'),
  'grey board': memory(0.2, 0.4, 'grey card'),
  'white acrylic': shining('glossy', memory(0.8, 0.15, 'opal acrylic, what it does not mirror')),
  'black acrylic': shining('glossy', memory(0.04, 0.4, 'gloss black acrylic, what it does not mirror')),
  silver: memory(0.8, 0.2, 'rough silver cloth, taken as scattering'),
  gold: memory(0.6, 0.3, 'rough gold cloth, taken as scattering', '#dec678'),
  white: memory(0.85, 0.12, 'white panels'),
  grey: memory(0.18, 0.4, 'mid grey panels'),
  black: memory(0.05, 0.4, 'black panels'),
}

export const surfaceNames: readonly string[] = Object.keys(surfaceTable)

/** The row of a name; `undefined` for names that are not in the table, whatever objects inherit. */
export const surfaceRow = (name: string): SurfaceRow | undefined =>
  Object.hasOwn(surfaceTable, name) ? surfaceTable[name] : undefined
