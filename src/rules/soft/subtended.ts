/** How large a light looks from where it is to be soft. */
import type { Light, ModifierKind } from '../../language/plan.js'
import { solidAngleOf } from '../../light/outline.js'
import { rayMeetsFace } from '../../scene/ray.js'
import type { Face, Scene } from '../../scene/scene.js'
import { subtract, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { inDegrees } from '../../units/quantity.js'
import { isBounced } from './spilt.js'

/** Fronts that are there to make light soft. A strip is narrow on purpose. */
export const softKinds: readonly ModifierKind[] = [
  'softbox',
  'octa',
  'shoot-through umbrella',
  'white umbrella',
  'silver umbrella',
  'deep umbrella',
]

/** The disc of the sun, from memory. */
const sunDegrees = 0.53

export interface Subtended {
  /** Of the cone that holds as much of the view as the front does. */
  readonly degrees: number
  /** Metres: across a disc square to the line of sight that looks as large; undefined for the sun. */
  readonly across: number | undefined
  readonly away: number | undefined
  /** The scrim that stands before the light, and is the source for what lies behind it. */
  readonly through: string | undefined
}

const scrimBefore = (
  { panels }: Scene,
  front: Vec3,
  from: Vec3,
): { readonly name: string; readonly face: Face } | undefined => {
  for (const { name, kind, faces } of panels.values()) {
    const face = kind === 'scrim' ? faces[0] : undefined
    const met = face && rayMeetsFace(face, from, subtract(front, from))
    if (face !== undefined && met !== undefined && met.t < 1) return { name, face }
  }
  return undefined
}

/**
 * Undefined for a light that works by way of a surface: how large the patch is that it lights, the plan does not say.
 *
 * @param straight of what falls there past that surface
 */
export const subtended = (
  { scene }: ComputedSet,
  { name, aim }: Light,
  from: Vec3,
  straight = false,
): Subtended | undefined => {
  const placed = scene.lights.get(name)
  if (placed === undefined) return undefined
  if (placed.front === undefined)
    return { degrees: sunDegrees, across: undefined, away: undefined, through: undefined }
  if (!straight && isBounced({ aim })) return undefined
  const scrim = scrimBefore(scene, placed.front.centre, from)
  const face = scrim?.face ?? placed.front
  const half = Math.acos(Math.max(-1, 1 - solidAngleOf(face, from) / (2 * Math.PI)))
  const away = Math.hypot(...subtract(face.centre, from))
  return { degrees: inDegrees(2 * half), across: 2 * away * Math.tan(half), away, through: scrim?.name }
}
