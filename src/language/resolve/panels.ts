/** Flags, reflectors, v-flats and scrims. */
import { pointer } from '../../text/place.js'
import { degrees, stops } from '../../units/quantity.js'
import type { Panel as PanelFile } from '../generated/types.js'
import type { Panel, Surface } from '../plan.js'
import { type Desk, maybe, openingAt, refuse, shareAt, sizeAt } from './desk.js'
import { facingAt, type Ground, placementAt } from './placing.js'
import { builtInSurface, surfaceAt } from './surface.js'

/** What a scrim does not let through it mostly gives back; a fifth is lost (from memory). */
const scrimCloth = (transmits: number): Surface => ({
  name: 'scrim',
  reflectance: 0.8 * (1 - transmits),
  u: stops(0.3),
  colour: undefined,
})

/** Face and back, where they are not stated. */
const usual = (kind: Panel['kind'], transmits: number): readonly [Surface, Surface] => {
  switch (kind) {
    case 'flag':
      return [builtInSurface('black'), builtInSurface('black')]
    case 'v-flat':
      return [builtInSurface('black'), builtInSurface('white')]
    case 'scrim':
      return [scrimCloth(transmits), scrimCloth(transmits)]
    default:
      return [builtInSurface('white board'), builtInSurface('white board')]
  }
}

const panelOf = (desk: Desk, ground: Ground, name: string, file: PanelFile): Panel => {
  const at = pointer('panels', name)
  const transmits =
    file.kind === 'scrim' ? (maybe(shareAt, desk, `${at}/transmits`, file.transmits) ?? 0.5) : 0
  const surface = (key: 'surface' | 'inside' | 'outside'): Surface | undefined =>
    file[key] === undefined ? undefined : surfaceAt(desk, `${at}/${key}`, file[key])
  const [face, back] = usual(file.kind, transmits)
  const inside = surface('inside')
  const front = surface('surface')
  const made = (file.kind === 'v-flat' ? inside : undefined) ?? front ?? inside ?? face
  if (transmits > 0 && transmits + made.reflectance >= 1)
    refuse(
      desk,
      `${at}/transmits`,
      'the scrim lets through and gives back more light than reaches it',
      'both shares together stay under 100 %',
    )
  return {
    name,
    kind: file.kind,
    size: sizeAt(desk, `${at}/size`, file.size),
    at: placementAt(desk, ground, `${at}/at`, file.at),
    faces: facingAt(desk, `${at}/faces`, file.faces),
    surface: made,
    outside: surface('outside') ?? (file.kind === 'v-flat' ? back : (front ?? back)),
    opening:
      file.kind === 'v-flat'
        ? (maybe(openingAt, desk, `${at}/opening`, file.opening) ?? degrees(90))
        : undefined,
    transmits,
  }
}

export const resolvePanels = (
  desk: Desk,
  ground: Ground,
  files: ReadonlyMap<string, PanelFile>,
): ReadonlyMap<string, Panel> =>
  new Map([...files].map(([name, file]) => [name, panelOf(desk, ground, name, file)]))
