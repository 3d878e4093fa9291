/** What would draw a round object by one highlight from its foot to its top. */
import { highlightsOn } from '../../picture/on-subject.js'
import { face as faceOf } from '../../scene/facing.js'
import type { Face, SceneCamera } from '../../scene/scene.js'
import type { SubjectMirror } from '../../scene/subject-mirror.js'
import { cross, subtract, unit, type Vec3 } from '../../scene/vector.js'
import type { Mend, RuleContext } from '../rule.js'
import type { Words } from '../words.js'
import { heightOf, isBehind, isDark, largest, type OnSubject } from './highlight-words.js'
import { facesOf } from './things.js'

/**
 * A front that would be seen from its foot to its top: as lines by way of a cylinder go on, they spread. From above the
 * foot mirrors the table; where that is so the camera has to come down first.
 */
export const longerHighlight = (
  { shown, mirror }: { readonly shown: readonly OnSubject[]; readonly mirror: SubjectMirror },
  words: Words,
  { set, limits }: RuleContext,
): readonly Mend[] => {
  const first = shown.find(({ thing }) => thing.of === 'light' && thing.light.role !== 'backdrop')
  const face = first && facesOf(set.scene, first.thing)[0]
  const [figure] = set.scene.subject.figures
  if (first === undefined || face === undefined || figure === undefined || mirror.shape === 'plane') return []
  // What reaches out from behind draws the edges, not a highlight.
  if (isBehind(first)) return []
  const isLong = (one: OnSubject): boolean =>
    !isDark(one) && one.highlights.some((part) => heightOf(part) >= limits.long!)
  if (shown.some(isLong)) return []
  const { name } = first.thing
  for (const camera of [set.scene.camera, levelWith(mirror.middle, set.scene.camera)]) {
    const strip = stripAlong(mirror, largest(first).at, camera.eye, face)
    if (mirror.shape === 'ball' || strip.height > longest) continue
    const [seen] = highlightsOn({ ...set.scene, camera }, figure, mirror, {
      name,
      face: strip,
      sides: 'front',
    })
    if (seen === undefined || heightOf(seen) < limits.long!) continue
    const lower = camera === set.scene.camera ? '' : `the camera at ${words.length(camera.eye[2])}, and `
    return [
      {
        title: `${lower}a strip or a scrim ${words.length(strip.height)} high where ${name} stands, its middle at ${words.length(strip.centre[2])}`,
        gives: `one clean highlight along ${heightOf(seen) > 0.98 ? 'the whole' : `${Math.round(100 * heightOf(seen))} %`} of it`,
      },
    ]
  }
  return [
    {
      title: `a larger front near the object in place of ${name}, or a scrim between them`,
      gives: 'a larger highlight with a clean edge',
    },
  ]
}

const levelWith = (middle: Vec3, camera: SceneCamera): SceneCamera => {
  const eye: Vec3 = [camera.eye[0], camera.eye[1], middle[2]]
  const forward = unit(subtract(middle, eye), camera.forward)
  return { ...camera, eye, forward, right: cross(forward, [0, 0, 1]), up: [0, 0, 1] }
}

/** Upright where the light stands, as wide as it, turned to the object. */
const stripAlong = (
  mirror: Exclude<SubjectMirror, { shape: 'plane' }>,
  [x, y]: Vec3,
  eye: Vec3,
  light: Face,
): Face => {
  const near = Math.hypot(eye[0] - x, eye[1] - y)
  const spread = (near + Math.hypot(light.centre[0] - x, light.centre[1] - y)) / near
  const centre: Vec3 = [light.centre[0], light.centre[1], eye[2] + (mirror.middle[2] - eye[2]) * spread]
  const toObject = unit(subtract([x, y, centre[2]], centre))
  return faceOf('rectangle', centre, toObject, light.width, (mirror.to - mirror.from) * spread)
}

/** Metres: no strip is longer. Common practice, no source. */
const longest = 2
