/** Where key and fill make the subject brightest: its surfaces on the side that the camera sees, held against white. */
import type { Plan } from '../../language/plan.js'
import { type Figure, shifted } from '../../light/figure.js'
import { stopsToSurelyWhite } from '../../picture/tone.js'
import { inFrame } from '../../scene/camera-view.js'
import { capsuleAxes, surfaceToward } from '../../scene/capsule.js'
import type { Capsule, SceneFigure } from '../../scene/scene.js'
import { add, cross, dot, scale, subtract, unit, type Vec3 } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { faceOf } from '../key-lights.js'

interface Spot {
  readonly where: string
  readonly reflectance: number
  readonly at: Vec3
  readonly normal: Vec3
}

export interface Lit {
  readonly where: string
  readonly reflectance: number
  readonly overCamera: Figure
  /** Stops over white for certain. */
  readonly over: number
}

/** The brightest surface in frame under key and fill; undefined where nothing arrives. */
export const brightestOf = (set: ComputedSet): Lit | undefined => {
  const of = set.keyLights.map(({ name }) => name)
  return most(
    brightSpots(set, of).flatMap((spot): Lit[] => {
      const over = set.reading({ at: spot.at, of, dome: 'flat', faces: { direction: spot.normal } })
      return over === undefined ? [] : [held(spot, over.overCamera, set)]
    }),
  )
}

/**
 * The same with one light carried about the subject by an angle in radians (counter-clockwise from above) and turned so
 * that the key reading stays: it does to every place what it does today to one turned the other way.
 */
export const brightestTurned = (set: ComputedSet, light: string, by: number): number | undefined => {
  const { key, scene } = set
  if (key === undefined) return undefined
  const centre = scene.subject.tapeFrom
  const back = (place: Vec3): Vec3 => add(centre, about(subtract(place, centre), -by))
  const face = faceOf(set)
  const dome = unit(subtract(scene.camera.eye, face))
  const now = key.byLight.get(light) ?? 0
  const then =
    set.unshaded({ at: back(face), normal: about(dome, -by), kind: 'dome' }, [light])?.luxSeconds ?? 0
  if (now <= 0 || then <= 0) return undefined
  const others = set.keyLights.flatMap(({ name }) => (name === light ? [] : [name]))
  return most(
    spotsInFrame(set).flatMap((spot): Lit[] => {
      const { at, normal } = spot
      const turned = { at: back(at), normal: about(normal, -by), kind: 'flat' } as const
      const own = set.unshaded(turned, [light])?.luxSeconds ?? 0
      const rest = set.exposure({ at, normal, kind: 'flat' }, others)?.luxSeconds ?? 0
      const sum = (own * now) / then + rest
      return sum > 0 ? [held(spot, shifted(key.overCamera, Math.log2(sum / key.luxSeconds)), set)] : []
    }),
  )?.over
}

const held = ({ where, reflectance }: Spot, overCamera: Figure, { plan }: ComputedSet): Lit => ({
  where,
  reflectance,
  overCamera,
  over: overCamera.stops - stopsToSurelyWhite(reflectance, plan.camera.headroom),
})

const most = (lit: readonly Lit[]): Lit | undefined =>
  lit.reduce<Lit | undefined>(
    (best, one) => (best === undefined || one.over > best.over ? one : best),
    undefined,
  )

/** Turned about the upright, counter-clockwise from above. */
const about = ([x, y, z]: Vec3, angle: number): Vec3 => [
  x * Math.cos(angle) - y * Math.sin(angle),
  x * Math.sin(angle) + y * Math.cos(angle),
  z,
]

// ---------------------------------------------------------------- surfaces

/** Ways that the surface looks, about the figure's axis from the side toward the camera: seen, and no mere edge. */
const turns = [-60, -30, 0, 30, 60].map((degrees) => (degrees * Math.PI) / 180)
/** Shoulders also look up. */
const upward = (35 * Math.PI) / 180

/** Fair skin gives back no more than this (from memory): a higher figure is that of clothes. */
const fairSkin = 0.5

const spotsInFrame = (set: ComputedSet): readonly Spot[] => {
  const { camera } = set.scene
  return brightestFigures(set)
    .flatMap((figure) => spotsOf(figure, set.plan, camera.eye))
    .filter(({ at }) => inFrame(camera, at))
}

/** What surfaces throw there is dear to know, and much alike from spot to spot: it is asked where most comes straight. */
const closely = 6

const brightSpots = (set: ComputedSet, of: readonly string[]): readonly Spot[] => {
  const spots = spotsInFrame(set).map((spot) => {
    const straight = set.exposure({ at: spot.at, normal: spot.normal, kind: 'flat' }, of, ['direct'])
    return { spot, recorded: spot.reflectance * (straight?.luxSeconds ?? 0) }
  })
  const lit = spots.filter(({ recorded }) => recorded > 0)
  // Of light by way of surfaces alone none is told from the others.
  return (lit.length === 0 ? spots : lit.sort((a, b) => b.recorded - a.recorded).slice(0, closely)).map(
    ({ spot }) => spot,
  )
}

/** Of a group, so many are looked at: those whose face gets most. */
const few = 2

const brightestFigures = (set: ComputedSet): readonly SceneFigure[] => {
  const { figures } = set.scene.subject
  if (figures.length <= few) return figures
  const of = set.keyLights.map((light) => light.name)
  const level = ({ face }: SceneFigure): number =>
    set.reading({ at: face, of, dome: 'raised', faces: 'camera' })?.luxSeconds ?? 0
  return figures
    .map((figure) => ({ figure, level: level(figure) }))
    .sort((a, b) => b.level - a.level)
    .slice(0, few)
    .map(({ figure }) => figure)
}

const spotsOf = (figure: SceneFigure, { subject }: Plan, eye: Vec3): readonly Spot[] => {
  const { reflectance } = subject
  if (figure.head === undefined)
    return spots(figure.body, [0, 0.5, 1], eye, { where: 'the subject', reflectance })
  const skin = Math.min(reflectance, fairSkin)
  return [
    ...spots(figure.head, [0.25], eye, { where: 'the cheek', reflectance: skin }),
    ...spots(figure.body, [0.5, 1], eye, { where: 'the clothing', reflectance }),
    ...spots(figure.body, [1], eye, { where: 'the shoulder', reflectance }, upward),
  ]
}

/** Places on a part, between its ends, on the side that the camera sees. */
const spots = (
  part: Capsule,
  shares: readonly number[],
  eye: Vec3,
  is: Pick<Spot, 'where' | 'reflectance'>,
  up = 0,
): readonly Spot[] => {
  const { axis } = capsuleAxes(part)
  return shares.flatMap((share) => {
    const middle = add(part.from, scale(subtract(part.to, part.from), share))
    const toEye = subtract(eye, middle)
    const facing = unit(subtract(toEye, scale(axis, dot(toEye, axis))))
    const aside = cross(axis, facing)
    return turns.map((turn): Spot => {
      const level = add(scale(facing, Math.cos(turn)), scale(aside, Math.sin(turn)))
      const normal = add(scale(level, Math.cos(up)), scale(axis, Math.sin(up)))
      return { ...is, ...surfaceToward(part, middle, towardNormal(part, normal)) }
    })
  })
}

/** The direction in which a rounded section has this normal: the normal stretched by the squares of its half axes. */
const towardNormal = (part: Capsule, normal: Vec3): Vec3 => {
  const { across, along, axis } = capsuleAxes(part)
  return add(
    add(
      scale(across, dot(normal, across) * part.across ** 2),
      scale(along, dot(normal, along) * part.along ** 2),
    ),
    scale(axis, dot(normal, axis) * part.cap ** 2),
  )
}
