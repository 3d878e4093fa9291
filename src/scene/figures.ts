/**
 * Who or what stands in the set. A person is a head and a body, each a capsule in elliptic section; an object is one
 * capsule. Origin under the subject point: a person's face, the middle of a group's front row, an object's middle.
 *
 * Everything is a share of the person's height, so that a set scales as a whole. Shares of height: head 0.13 high, chin
 * at 0.87, eyes 0.94 (the segment lengths of Drillis and Contini, 1966, from memory); head 0.09 wide and 0.113 deep
 * (from memory). Arms and a seated person's legs are left out.
 */
import type { Plan, Row, Subject } from '../language/plan.js'
import { capsule, endPoint, nearestOnSegment, reach, surfaceToward } from './capsule.js'
import type { SceneFigure } from './scene.js'
import { add, scale, type Vec3 } from './vector.js'

const head = { aboveFace: 0.06, belowFace: 0.07, halfWidth: 0.045, halfDepth: 0.0565 }
/** The body's rounded top reaches a little over the chin: that is the neck. */
export const neckOverChin = 0.015
const neckBelowFace = head.belowFace - neckOverChin
/** Chin to soles. */
const trunkAndLegs = 0.87

/** From facing the camera's end of the centre line, right positive: where someone so turned looks. */
const looking = (turnedRight: number): Vec3 => [Math.sin(turnedRight), -Math.cos(turnedRight), 0]

/** Height of what the subject stands on. */
export const support = (subject: Subject): number => subject.standsOn?.height ?? 0

const upright = (name: string, row: number | undefined, face: Vec3, subject: Subject): SceneFigure => {
  const tall = subject.height
  const looks = looking(subject.turnedRight)
  const across: Vec3 = [-looks[1], looks[0], 0]
  const middle = add(face, scale(looks, -head.halfDepth * tall))
  const at = (z: number): Vec3 => [middle[0], middle[1], z]

  const headCap = head.halfWidth * tall
  const top = face[2] + head.aboveFace * tall
  const chin = face[2] - head.belowFace * tall

  const ground = support(subject)
  // A face stated near the ground (a child on the floor) still has something of a body under it.
  const shoulders = Math.max(face[2] - neckBelowFace * tall, ground + 0.05 * tall)
  const cap = Math.min(subject.width / 2, subject.depth / 2, 0.49 * (shoulders - ground))
  return {
    name,
    row,
    face,
    looks,
    head: capsule(at(chin + headCap), at(top - headCap), headCap, head.halfDepth * tall, headCap, across),
    body: capsule(at(ground + cap), at(shoulders - cap), subject.width / 2, subject.depth / 2, cap, across),
    top: top as SceneFigure['top'],
  }
}

/**
 * On the back: someone who stood facing the camera's end (and turned from there), tipped over backwards. Unturned, the
 * feet are toward the camera and the head toward the backdrop; turned 90° right, the head is camera-left.
 */
const lying = (name: string, row: number | undefined, face: Vec3, subject: Subject): SceneFigure => {
  const tall = subject.height
  const feet = looking(subject.turnedRight)
  const across: Vec3 = [-feet[1], feet[0], 0]
  const ground = support(subject)
  const z = Math.max(face[2] - head.halfDepth * tall, ground + 0.02 * tall)
  /** Along the body, toward the feet positive, from under the face. */
  const at = (toFeet: number): Vec3 => [face[0] + feet[0] * toFeet, face[1] + feet[1] * toFeet, z]

  const headCap = head.halfWidth * tall
  const cap = Math.min(subject.width / 2, subject.depth / 2, 0.2 * tall)
  const thick = Math.min(subject.depth / 2, z - ground)
  const body = capsule(
    at((head.belowFace + trunkAndLegs) * tall - cap),
    at(neckBelowFace * tall + cap),
    subject.width / 2,
    thick,
    cap,
    across,
  )
  const headCapsule = capsule(
    at(head.belowFace * tall - headCap),
    at(-head.aboveFace * tall + headCap),
    headCap,
    face[2] > z ? Math.min(head.halfDepth * tall, face[2] - z) : head.halfDepth * tall,
    headCap,
    across,
  )
  return {
    name,
    row,
    face,
    looks: [0, 0, 1],
    head: headCapsule,
    body,
    top: Math.max(reach(headCapsule, [0, 0, 1]), reach(body, [0, 0, 1])) as SceneFigure['top'],
  }
}

const person = (name: string, row: number | undefined, face: Vec3, subject: Subject): SceneFigure =>
  subject.pose === 'lying' ? lying(name, row, face, subject) : upright(name, row, face, subject)

/** `row-1-1` is the front row's first from camera-left; a row is centred on the centre line. */
const rowFigures = (row: Row, number: number, y: number, subject: Subject): SceneFigure[] =>
  Array.from({ length: row.people }, (_, i) =>
    person(
      `row-${number}-${i + 1}`,
      number,
      [(i - (row.people - 1) / 2) * row.spacing, y, support(subject) + row.facesAt],
      subject,
    ),
  )

const group = (subject: Subject): SceneFigure[] => {
  let y = 0
  return subject.rows.flatMap((row, i) => {
    y += i === 0 ? 0 : row.behind
    return rowFigures(row, i + 1, y, subject)
  })
}

const object = (subject: Subject): SceneFigure => {
  const looks = looking(subject.turnedRight)
  const across: Vec3 = [-looks[1], looks[0], 0]
  const ground = support(subject)
  // Blunt ends: a bottle or a box is filled out to its corners better than a person is.
  const cap = Math.min(subject.width / 8, subject.depth / 8, 0.49 * subject.height)
  const body = capsule(
    [0, 0, ground + cap],
    [0, 0, ground + subject.height - cap],
    subject.width / 2,
    subject.depth / 2,
    cap,
    across,
  )
  const front = surfaceToward(body, nearestOnSegment(body, [0, 0, ground + subject.facesAt]), [0, -1, 0])
  return {
    name: 'object',
    row: undefined,
    face: front.at,
    looks: front.normal,
    head: undefined,
    body,
    top: endPoint(body, 1)[2] as SceneFigure['top'],
  }
}

/** A group without rows counts as one person. */
export const sceneFigures = (plan: Plan): readonly SceneFigure[] => {
  const { subject } = plan
  if (subject.kind === 'object') return [object(subject)]
  const people = subject.kind === 'group' ? group(subject) : []
  return people.length > 0
    ? people
    : [person('person', undefined, [0, 0, support(subject) + subject.facesAt], subject)]
}

/**
 * Where the tape starts: a person's face, an object's middle; of a group the middle of its front row, at the mean
 * height of its faces.
 */
export const tapeOrigin = (plan: Plan): Vec3 => [0, 0, support(plan.subject) + plan.subject.facesAt]
