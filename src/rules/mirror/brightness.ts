/** How bright a light's front, or a panel, looks from a place: what a mirror there shows of it. */
import type { Light, Panel } from '../../language/plan.js'
import { solidAngleOf } from '../../light/outline.js'
import { recordedLinear } from '../../picture/tone.js'
import { shownFace } from '../../scene/front-places.js'
import type { Face } from '../../scene/scene.js'
import { dot, scale, subtract, unit, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'

/**
 * Of a light that is lit, lx·s per sr: what comes straight from it onto a card that looks at it, spread over what is
 * seen of it. Undefined where its strength is not known; 0 from where its front or its grid looks away.
 */
export const lightBrightness = (set: ComputedSet, light: Light, from: Vec3): number | undefined => {
  const placed = set.scene.lights.get(light.name)
  if (placed === undefined || set.strength(light.name) === undefined) return undefined
  const face = shownFace(placed)
  const normal = unit(subtract(face.centre, from))
  const got = set.unshaded({ at: from, normal, kind: 'flat' }, [light.name])?.byPath.direct ?? 0
  return got / Math.max(solidAngleOf(face, from), 1e-9)
}

/** The same of the side of a panel that looks there: what it throws back and lets through, spread evenly over the half about it. */
export const panelBrightness = (set: ComputedSet, panel: Panel, face: Face, from: Vec3): number => {
  const side = dot(subtract(from, face.centre), face.normal) < 0 ? -1 : 1
  const onSide = (looks: number): number =>
    set.exposure({ at: face.centre, normal: scale(face.normal, looks), kind: 'flat', onSurface: true }, 'all')
      ?.luxSeconds ?? 0
  const surface = side > 0 ? panel.surface : panel.outside
  const back = surface.reflectance * onSide(side)
  const through = panel.transmits > 0 ? panel.transmits * onSide(-side) : 0
  return (back + through) / Math.PI
}

/** Linear value that so bright a thing records; 1 is white. Undefined where the set has no reading to go by. */
export const recordedBrightness = (set: ComputedSet, brightness: number): number | undefined => {
  const white = set.key ?? set.reading({ at: 'subject', of: 'all' })
  return (
    white && recordedLinear(1, white.overCamera.stops + Math.log2((Math.PI * brightness) / white.luxSeconds))
  )
}

/** Stops over white paper in the light of the key reading; undefined without one. */
export const overWhite = (set: ComputedSet, brightness: number): number | undefined =>
  set.key && Math.log2((Math.PI * brightness) / set.key.luxSeconds)
