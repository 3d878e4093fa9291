/**
 * What draws a clear object: its edges against the ground right beside them. Before a light ground they must be darker
 * (bright field), before a dark one lighter (dark field).
 */
import type { EdgeView } from '../../picture/on-subject.js'
import type { Hit } from '../../scene/first-hit.js'
import { shownFace } from '../../scene/front-places.js'
import { dot, subtract, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import type { Mend } from '../rule.js'
import { lightBrightness, overWhite, panelBrightness } from './brightness.js'
import { nameOf } from './highlight-words.js'

/** `lost`: as light as the ground; no edge is seen. */
export type Drawn = 'dark' | 'light' | 'lost'

export interface ClearEdges {
  /** Camera-left, camera-right. */
  readonly drawn: readonly [Drawn, Drawn]
  /** The lighter side of the ground, and how light it is, in stops over white. */
  readonly ground: Hit | undefined
  readonly level: number
}

/** Stops over white: what is darker is black; before what is lighter than the next, black still shows; middle grey, of 18 %. */
const black = -7
const overBlack = -5
const middleGrey = Math.log2(0.18)
/** Stops over white of a light that nothing is known of but that it is on. Common practice, no source. */
const aLight = 2

/** @param differs stops */
export const clearEdges = (
  set: ComputedSet,
  edges: readonly [EdgeView, EdgeView],
  differs: number,
): ClearEdges => {
  const { eye } = set.scene.camera
  const each = edges.map(({ near, ground }) => {
    const behind = levelOf(set, ground, eye)
    // One line near the edge that stands off is enough.
    const [edge] = near
      .map(({ hit, at }) => levelOf(set, hit, at))
      .sort((a, b) => Math.abs(b - behind) - Math.abs(a - behind))
    return { edge: edge!, behind, ground }
  })
  const drawn = each.map(({ edge, behind }): Drawn => {
    if (Math.abs(edge - behind) < differs) return 'lost'
    return edge < behind ? 'dark' : 'light'
  })
  const [left, right] = each as [(typeof each)[number], (typeof each)[number]]
  const lighter = left.behind >= right.behind ? left : right
  return {
    drawn: drawn as unknown as ClearEdges['drawn'],
    ground: lighter.ground,
    level: lighter.behind,
  }
}

/** Stops over white. */
const levelOf = (set: ComputedSet, hit: Hit | undefined, from: Vec3): number => {
  if (hit === undefined) return black
  const { plan, scene } = set
  const brightness = (): number | undefined => {
    if (hit.on === 'light') {
      const light = plan.lights.get(hit.name)
      const found = scene.lights.get(hit.name)
      if (light === undefined || found === undefined || !light.on) return 0
      const front = shownFace(found)
      const isFront = Math.abs(dot(subtract(hit.at, front.centre), front.normal)) < onFront
      return isFront ? lightBrightness(set, light, from) : 0
    }
    const panel = hit.on === 'panel' ? plan.panels.get(hit.name) : undefined
    const near = (centre: Vec3, normal: Vec3): number => Math.abs(dot(subtract(hit.at, centre), normal))
    const [face] = [...(scene.panels.get(hit.name)?.faces ?? [])].sort(
      (a, b) => near(a.centre, a.normal) - near(b.centre, b.normal),
    )
    if (panel !== undefined && face !== undefined) return panelBrightness(set, panel, face, from)
    const { at, normal, surface } = hit
    const onIt = set.exposure({ at, normal, kind: 'flat', onSurface: true }, 'all')
    return onIt && (onIt.luxSeconds * (surface?.reflectance ?? skin)) / Math.PI
  }
  const found = brightness()
  const over = found === undefined ? undefined : overWhite(set, found)
  const guess = hit.on === 'light' ? aLight : Math.log2(hit.surface?.reflectance ?? skin)
  return Math.max(black, over ?? guess)
}

/** Metres. */
const onFront = 0.01
/** What people and gear give back; common practice, no source. */
const skin = 0.18

/** `bright field: dark edges draw it before key`. */
export const clearText = ({ drawn: [left, right], level, ground }: ClearEdges): string => {
  const isLight = level >= middleGrey
  const before = ground !== undefined && level > overBlack ? nameOf(ground) : 'a dark ground'
  if (left === 'lost' && right === 'lost')
    return `its edges are lost before ${before}, as ${isLight ? 'light' : 'dark'} as they are`
  if (left === right) {
    const field =
      isLight && left === 'dark' ? 'bright field: ' : !isLight && left === 'light' ? 'dark field: ' : ''
    return `${field}${left} edges draw the object before ${before}`
  }
  const side = (drawn: Drawn): string => (drawn === 'lost' ? 'is lost' : `is ${drawn}`)
  return `before ${before} its camera-left edge ${side(left)}, its camera-right edge ${side(right)}`
}

/** Where an edge is lost. */
export const drawnEdges = ({ drawn, level }: ClearEdges): readonly Mend[] =>
  !drawn.includes('lost')
    ? []
    : level > overBlack
      ? [
          {
            title: 'black cards close beside and behind it, just out of the picture',
            gives: 'dark edges that stand off from the ground: on a light one, a bright field',
          },
        ]
      : [
          {
            title:
              'a large light behind it, and right before that a black card that just fills the picture, so that light comes round all its sides',
            gives: 'light edges that stand off from a dark ground: a dark field',
          },
        ]
