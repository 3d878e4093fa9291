/** The subject as a whole: its figures, what the wanted framing must hold of them, the table. */
import type { Framing, Plan } from '../language/plan.js'
import { endPart, isInside, reach } from './capsule.js'
import { neckOverChin, sceneFigures, support, tapeOrigin } from './figures.js'
import type { Capsule, SceneFigure, SceneSubject } from './scene.js'
import { distance, type Vec3 } from './vector.js'

/** How far down from the chin each framing reaches, in shares of the height (common practice, no source). */
const bodyBelowChin: Readonly<Record<Exclude<Framing, 'face' | 'full length' | 'all'>, number>> = {
  'head and shoulders': 0.12,
  waist: 0.28,
  'three-quarter': 0.5,
}

const framedParts = (figure: SceneFigure, framing: Framing | undefined, tall: number): readonly Capsule[] => {
  if (figure.head === undefined) return [figure.body]
  if (framing === 'face') return [figure.head]
  const whole = framing === undefined || framing === 'full length' || framing === 'all'
  return [
    figure.head,
    whole ? figure.body : endPart(figure.body, (bodyBelowChin[framing] + neckOverChin) * tall),
  ]
}

const directions: readonly Vec3[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

const extent = (parts: readonly Capsule[]): SceneSubject['bounds'] => {
  const far = (sign: 1 | -1) =>
    directions.map((one) => {
      const along: Vec3 = [sign * one[0], sign * one[1], sign * one[2]]
      return sign * parts.reduce((most, part) => Math.max(most, reach(part, along)), -Infinity)
    }) as unknown as Vec3
  return { min: far(-1), max: far(1) }
}

/** What a framing must hold of the subject: an upright box in metres. */
export const framedBounds = (
  plan: Plan,
  figures: readonly SceneFigure[],
  framing: Framing | undefined,
): SceneSubject['bounds'] =>
  extent(figures.flatMap((figure) => framedParts(figure, framing, plan.subject.height)))

export const sceneSubject = (plan: Plan): SceneSubject => {
  const figures = sceneFigures(plan)
  const stands = plan.subject.standsOn
  const z = support(plan.subject)
  return {
    figures,
    bounds: framedBounds(plan, figures, plan.wanted.framing),
    tapeFrom: tapeOrigin(plan),
    table: stands && {
      z: stands.height,
      min: [-stands.width / 2, -stands.depth / 2, z],
      max: [stands.width / 2, stands.depth / 2, z],
    },
  }
}

/** Nearer to the face than this is on it. */
const onTheFace = 0.01

/** True for a place where no light or camera can stand: in a head or a body, or on the face itself. */
export const isInSubject = (subject: SceneSubject, at: Vec3): boolean =>
  subject.figures.some(
    (figure) =>
      distance(figure.face, at) < onTheFace ||
      isInside(figure.body, at) ||
      (figure.head !== undefined && isInside(figure.head, at)),
  )
