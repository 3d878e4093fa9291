/**
 * What a receptor gets that lies flat on one of the surfaces: as the patches about it do, taken as running smoothly from
 * one to the next. Where something stands close by, or hides much of what it sees, that is not so: there it is gathered.
 */
import { dot, length, subtract, type Vec3 } from '../../scene/vector.js'
import type { Blocker } from '../visibility/blockers.js'
import type { Outlook } from '../visibility/outlook.js'
import type { Mesh } from './mesh.js'
import { type Round, type Sheet, sheetsOf } from './sheet.js'

/** Nearer than this a receptor lies on a surface, metres. */
const touching = 1e-3
/** Cosine from which on it faces straight out of it. */
const straight = 0.999999

/** Something stands close when it is nearer than so many lengths of the patches there. */
const close = 1.2
/** Of all that a place would get, from which share on what stands before it hides much. */
const much = 0.3
/** And up to which share gear that stands close hides next to nothing. */
const little = 0.03
/** So many patches times bodies can be gathered from for every place that a picture asks of. */
const most = 20_000

/** Of surfaces that exchange nothing, what lies on them gets nothing. */
export const liesOnSurface = (mesh: Mesh, { receptor: { at, normal, kind, onSurface } }: Outlook): boolean =>
  kind === 'flat' &&
  onSurface === true &&
  sheetsOf(mesh).some((sheet) => placeOn(sheet, at, normal) !== undefined)

/** Undefined for a receptor that lies on no surface, and where what it gets must be gathered. */
export const patchesRound = (mesh: Mesh, { receptor, blockers }: Outlook): Round | undefined => {
  const { at, normal, kind, onSurface } = receptor
  if (kind !== 'flat' || onSurface !== true) return undefined
  for (const sheet of sheetsOf(mesh)) {
    const place = placeOn(sheet, at, normal)
    if (place === undefined) continue
    const { u, v, side } = place
    const isRough =
      mesh.patches.length * blockers.length <= most &&
      isBeset(blockers, at, normal, close * sheet.lengthAt(u, v))
    return isRough ? undefined : sheet.round(u, v, side)
  }
  return undefined
}

const placeOn = (
  { face }: Sheet,
  at: Vec3,
  normal: Vec3,
): { readonly u: number; readonly v: number; readonly side: 0 | 1 } | undefined => {
  const facing = dot(normal, face.normal)
  if (Math.abs(facing) < straight) return undefined
  const off = subtract(at, face.centre)
  if (Math.abs(dot(off, face.normal)) > touching) return undefined
  const [u, v] = [dot(off, face.across), dot(off, face.up)]
  const within = Math.abs(u) <= face.width / 2 + touching && Math.abs(v) <= face.height / 2 + touching
  return within ? { u, v, side: facing > 0 ? 0 : 1 } : undefined
}

/** Whether a body stands nearer than this, or all together hide much of what a place would get from all around. */
const isBeset = (blockers: readonly Blocker[], at: Vec3, normal: Vec3, reach: number): boolean => {
  let hidden = 0
  for (const one of blockers) {
    const d = subtract(one.centre, at)
    const far = length(d)
    const out = dot(d, normal) / far
    const hides = out > 0 ? (facingArea(one, d, far) * out) / (Math.PI * far * far) : 0
    // A small head on its stand shades what is near it no more than the patches there are wrong anyway.
    const matters = one.solid.body.shape !== 'hull' || hides > little
    if (matters && far < reach + one.radius && gapTo(one, at) < reach) return true
    hidden += hides
    if (hidden > much) return true
  }
  return false
}

/** Metres from a place to a body: no more than it is. */
const gapTo = ({ solid: { body }, round, centre, radius }: Blocker, at: Vec3): number => {
  if (body.shape === 'plate') {
    const { face } = body
    const off = subtract(at, face.centre)
    const x = Math.max(0, Math.abs(dot(off, face.across)) - face.width / 2)
    const y = Math.max(0, Math.abs(dot(off, face.up)) - face.height / 2)
    return Math.hypot(x, y, dot(off, face.normal))
  }
  if (round === undefined) return length(subtract(at, centre)) - radius
  const { from, span, coat } = round
  const off = subtract(at, from)
  const square = dot(span, span)
  const t = square > 0 ? Math.min(1, Math.max(0, dot(off, span) / square)) : 0
  return Math.hypot(off[0] - t * span[0], off[1] - t * span[1], off[2] - t * span[2]) - coat
}

/** About what a body covers as seen from a place, m². */
const facingArea = ({ solid: { body }, radius }: Blocker, d: Vec3, far: number): number => {
  if (body.shape === 'plate')
    return (body.face.width * body.face.height * Math.abs(dot(body.face.normal, d))) / far
  if (body.shape === 'capsule') return 4 * radius * Math.max(body.capsule.across, body.capsule.along)
  return radius * radius
}
