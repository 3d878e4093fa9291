/**
 * Units that every plan has without a kit: guesses, each with the uncertainty of a guess. From memory, as what such
 * gear usually does; a kit replaces them with facts. Lengths in metres, energies in Ws.
 */

export type UnitRow =
  | {
      readonly kind: 'flash'
      /** Metres at ISO 100, at the zoom given. */
      readonly guideNumber?: { readonly metres: number; readonly zoom: number }
      readonly energy: number
      /** Beam angle of the reflector that it is used with when it has no modifier, degrees. */
      readonly reflector?: number
      /** Shares of full power; the step in stops. */
      readonly power: { readonly from: number; readonly to: number; readonly step: number }
      readonly zoom?: { readonly from: number; readonly to: number }
      readonly colour: number
      readonly modelling?: number
      readonly describe: string
    }
  | {
      readonly kind: 'continuous'
      readonly lux: number
      readonly distance: number
      readonly beam: number
      readonly size: { readonly width: number; readonly height: number }
      readonly power: { readonly from: number; readonly to: number; readonly step: number }
      readonly colour: number
      readonly describe: string
    }
  | { readonly kind: 'sun' | 'window'; readonly describe: string }

/** Mains heads turn down five stops in tenths; their standard reflector spreads 55 to 65 degrees. */
const head = (energy: number, modelling: number): UnitRow => ({
  kind: 'flash',
  energy,
  reflector: 60,
  power: { from: 1 / 32, to: 1, step: 0.1 },
  colour: 5500,
  modelling,
  describe: `a mains flash head of ${energy} Ws in its standard reflector`,
})

export const unitTable: Readonly<Record<string, UnitRow>> = {
  flashgun: {
    kind: 'flash',
    guideNumber: { metres: 36, zoom: 0.035 },
    energy: 75,
    power: { from: 1 / 128, to: 1, step: 1 / 3 },
    zoom: { from: 0.024, to: 0.105 },
    colour: 5500,
    describe: 'a battery flash with a zoom head, guide number 36 m at 35 mm and ISO 100',
  },
  'head 200 Ws': head(200, 150),
  'head 400 Ws': head(400, 150),
  'head 600 Ws': head(600, 250),
  'led panel': {
    kind: 'continuous',
    lux: 2000,
    distance: 1,
    beam: 120,
    size: { width: 0.3, height: 0.3 },
    power: { from: 0.1, to: 1, step: 0.1 },
    colour: 5600,
    describe: 'a flat LED panel 30 cm square, 2000 lx at 1 m',
  },
  sun: { kind: 'sun', describe: 'the sun; say what a meter reads of it' },
  window: {
    kind: 'window',
    describe: 'daylight through a window; say its size and what a meter reads of it',
  },
}

export const unitNames: readonly string[] = Object.keys(unitTable)

/** The row of a name; `undefined` for names that are not in the table, whatever objects inherit. */
export const unitRow = (name: string): UnitRow | undefined =>
  Object.hasOwn(unitTable, name) ? unitTable[name] : undefined
