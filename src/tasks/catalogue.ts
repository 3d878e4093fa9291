/** What is built in and may be named in a plan: surfaces, units, modifiers, colours and gels, with where the figures are from. */
import { colourTable } from '../language/catalogue/colours.js'
import { allGels } from '../language/catalogue/gels.js'
import { type ModifierRow, modifierTable } from '../language/catalogue/modifiers.js'
import { type SurfaceRow, surfaceTable } from '../language/catalogue/surfaces.js'
import { type UnitRow, unitTable } from '../language/catalogue/units.js'
import { stops } from '../units/quantity.js'
import { writeStops } from '../units/stops.js'

export const catalogueNames = ['surfaces', 'units', 'modifiers', 'colours', 'gels'] as const
export type CatalogueName = (typeof catalogueNames)[number]

export interface Catalogue {
  readonly name: CatalogueName
  readonly says: string
  /** Names of the columns after that of the entry. */
  readonly columns: readonly string[]
  readonly entries: readonly (readonly string[])[]
  readonly sources: readonly string[]
}

export const isCatalogue = (name: string): name is CatalogueName =>
  (catalogueNames as readonly string[]).includes(name)

export const catalogue = (name: CatalogueName): Catalogue => ({ name, ...made[name]() })

type Made = Omit<Catalogue, 'name'>

const from = { sourced: 'read in a public source', memory: 'from memory' } as const

const surfaces = (): Made => ({
  says: 'What a surface gives back of the light that falls on it, how sure that is, and how it shines. Its own figures may be written in place of the name, or on top of it: { name: wooden floor, finish: glossy }.',
  columns: ['gives back', 'shines', 'from'],
  entries: Object.entries(surfaceTable).map(([name, row]) => [
    name,
    `${percent(row.reflectance)} ± ${writeStops(stops(row.u), 'negative')}`,
    look(row),
    `${row.says} (${from[row.from]})`,
  ]),
  sources: ['finishes and colours are from memory and common practice, whatever the reflectance is from'],
})

const look = ({ finish, colour }: SurfaceRow): string =>
  [finish ?? 'matte', ...(colour === undefined ? [] : [colour])].join(', ')

const percent = (share: number): string => `${Number((share * 100).toPrecision(2))} %`

const units = (): Made => ({
  says: 'Units that every plan has without a kit. They are guesses: a kit with the figures of your own replaces them.',
  columns: ['colour', 'is'],
  entries: Object.entries(unitTable).map(([name, row]) => [name, colourOf(row), row.describe]),
  sources: ['all from memory, as what such gear usually does'],
})

const colourOf = (row: UnitRow): string => ('colour' in row ? `${row.colour} K` : 'as stated')

const modifiers = (): Made => ({
  says: 'Kinds of modifiers, each as it may be written; most with any size in place of the one shown.',
  columns: ['loses', 'is'],
  entries: Object.values(modifierTable as Readonly<Record<string, ModifierRow>>).map((row) => [
    row.example,
    losses(row),
    [row.describe, ...(row.also === undefined ? [] : [`also ${row.also.join(', ')}`])].join('; '),
  ]),
  sources: [
    'losses are on the axis against the unit as rated, larger ones more; by reports of practitioners, good to ± 0.6 stop',
  ],
})

const losses = ({ loss }: ModifierRow): string => {
  const all = loss.map((step) => step.stops)
  const [least, most] = [Math.min(...all), Math.max(...all)]
  return least === most
    ? writeStops(stops(least), 'negative')
    : `${least} to ${writeStops(stops(most), 'negative')}`
}

const colours = (): Made => ({
  says: 'Colours of surfaces and of gels by name; any other as an sRGB code in quotes.',
  columns: ['sRGB'],
  entries: Object.entries(colourTable),
  sources: ['what a colour of that name looks like is from memory; the codes are those of IEC 61966-2-1'],
})

const gels = (): Made => ({
  says: 'Gels as they are sold, by what they shift and lose: what a finding means by 1/4 CTO. In a plan: gel: full CTO, or gel: [1/2 CTO, 1/4 plus-green].',
  columns: ['shifts', 'loses', 'from'],
  entries: allGels.map((row) => [
    row.name,
    row.duv === 0
      ? `${row.shift > 0 ? '+' : ''}${row.shift} mired`
      : `duv ${row.duv > 0 ? '+' : ''}${row.duv}`,
    writeStops(stops(row.loss), 'negative'),
    from[row.from],
  ]),
  sources: [
    'read in a public source: the shift; losses of full and 1/2 CTB and of full CTO as reported in public, all others from memory',
    'makers differ by some mired',
  ],
})

const made: Readonly<Record<CatalogueName, () => Made>> = { surfaces, units, modifiers, colours, gels }
