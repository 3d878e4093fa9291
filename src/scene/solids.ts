/** What stands in the way of light and sight, as convex bodies. Stands are thin, and hide nothing to speak of. */
import type { Light, Plan } from '../language/plan.js'
import { pointer } from '../text/place.js'
import { face } from './facing.js'
import type {
  Capsule,
  Face,
  Scene,
  SceneBackdrop,
  SceneFigure,
  SceneLight,
  ScenePanel,
  SceneSubject,
  Solid,
} from './scene.js'
import { add, scale, type Vec3 } from './vector.js'

/** Corners of a face in order, counter-clockwise seen from in front; a round one as a polygon of its area. */
export const cornersOf = (of: Face): readonly Vec3[] => {
  const { centre, across, up, width, height } = of
  const at = (u: number, v: number): Vec3 => add(centre, add(scale(across, u), scale(up, v)))
  if (of.outline === 'rectangle')
    return [
      at(-width / 2, -height / 2),
      at(width / 2, -height / 2),
      at(width / 2, height / 2),
      at(-width / 2, height / 2),
    ]
  const count = of.outline === 'octagon' ? 8 : 16
  const turn = (2 * Math.PI) / count
  const grown = of.outline === 'octagon' ? 1 : Math.sqrt(turn / Math.sin(turn))
  return Array.from({ length: count }, (_, i) =>
    at(
      ((grown * width) / 2) * Math.cos((i + 0.5) * turn),
      ((grown * height) / 2) * Math.sin((i + 0.5) * turn),
    ),
  )
}

const plate = (name: string, of: Solid['of'], at: string, one: Face): Solid => ({
  name,
  of,
  pointer: at,
  body: { shape: 'plate', face: one, corners: cornersOf(one) },
})

const round = (name: string, of: Solid['of'], at: string, capsule: Capsule): Solid => ({
  name,
  of,
  pointer: at,
  body: { shape: 'capsule', capsule },
})

const figureSolids = (figure: SceneFigure, of: 'figure' | 'operator', at: string): readonly Solid[] => [
  ...(figure.head === undefined ? [] : [round(figure.name, of, at, figure.head)]),
  round(figure.name, of, at, figure.body),
]

const tableSolids = ({ table }: SceneSubject): readonly Solid[] =>
  table === undefined
    ? []
    : [
        plate('table', 'table', '/subject/stands-on', {
          outline: 'rectangle',
          centre: [(table.min[0] + table.max[0]) / 2, (table.min[1] + table.max[1]) / 2, table.z],
          normal: [0, 0, 1],
          across: [1, 0, 0],
          up: [0, 1, 0],
          width: (table.max[0] - table.min[0]) as Face['width'],
          height: (table.max[1] - table.min[1]) as Face['height'],
        }),
      ]

/** The upright part, as a face that looks toward the camera's end. */
export const backdropFace = ({ y, left, right, bottom, top }: SceneBackdrop): Face =>
  face('rectangle', [(left + right) / 2, y, (bottom + top) / 2], [0, -1, 0], right - left, top - bottom)

/** Metres from the front to the back of a bare unit: a flashgun's head, a head with its reflector (common practice, no source). */
const bareDepth = { rectangle: 0.1, disc: 0.3 } as const
/** A modifier narrows to its mount, which is about this wide. */
const mount = 0.15

/**
 * From the front to the mount. A light at the camera counts as well: it is a body before the operator. What gives light
 * to both sides has its depth behind its front all the same.
 */
const lightSolid = (light: Light, { front }: SceneLight): readonly Solid[] => {
  if (front === undefined || light.unit.kind === 'window' || light.unit.kind === 'sun') return []
  const { modifier } = light
  const depth =
    modifier === undefined ? bareDepth[front.outline === 'rectangle' ? 'rectangle' : 'disc'] : modifier.depth
  const narrowed = Math.min(1, mount / Math.max(front.width, front.height, 1e-6))
  const back: Face = {
    ...front,
    centre: add(front.centre, scale(front.normal, -depth)),
    width: (front.width * narrowed) as Face['width'],
    height: (front.height * narrowed) as Face['height'],
  }
  return [
    {
      name: light.name,
      of: 'light',
      pointer: pointer('lights', light.name, 'at'),
      body: { shape: 'hull', corners: [...cornersOf(front), ...cornersOf(back)] },
    },
  ]
}

const panelSolids = (panel: ScenePanel): readonly Solid[] =>
  panel.faces.map((one) => plate(panel.name, 'panel', pointer('panels', panel.name, 'at'), one))

export const sceneSolids = (
  plan: Plan,
  scene: Pick<Scene, 'subject' | 'backdrop' | 'lights' | 'panels' | 'operator'>,
): readonly Solid[] => [
  ...scene.subject.figures.flatMap((figure) => figureSolids(figure, 'figure', '/subject')),
  ...(scene.operator === undefined ? [] : figureSolids(scene.operator, 'operator', '/camera/at')),
  ...tableSolids(scene.subject),
  ...(scene.backdrop === undefined || plan.backdrop?.sky !== undefined
    ? []
    : [plate('backdrop', 'backdrop', '/backdrop', backdropFace(scene.backdrop))]),
  ...[...scene.panels.values()].flatMap(panelSolids),
  ...[...scene.lights.values()].flatMap((one) => {
    const light = plan.lights.get(one.name)
    return light === undefined ? [] : lightSolid(light, one)
  }),
]
