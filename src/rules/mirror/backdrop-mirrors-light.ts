import type { Finish } from '../../language/plan.js'
import { mirroredShare } from '../../light/fresnel.js'
import { solidAngleOf } from '../../light/outline.js'
import { type PlaneMirror, type SeenInPlane, seenInPlane } from '../../picture/in-plane-mirror.js'
import { recordedLinear } from '../../picture/tone.js'
import { lazyOf } from '../../scene/lazy.js'
import type { Face, Scene, SceneSurface } from '../../scene/scene.js'
import { dot, subtract, unit } from '../../scene/vector.js'
import { pointer } from '../../text/place.js'
import { inDegrees } from '../../units/quantity.js'
import { unknownLight } from '../known.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { recordedBrightness } from './brightness.js'
import { movedAndHeldUntil } from './held-there.js'
import { brightnessOf, facesOf, type Thing, thingPointer, thingsOf } from './things.js'

const portrait = (backdrop: string, lights: string): string => `plan: 1
title: Portrait before a shining backdrop
camera: { lens: 50 mm, at: { distance: 2.2 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { ${backdrop}, behind: 1 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 90 cm, meters: f/8, at: ${lights} }
wanted: { backdrop: any, shadow: any }
`
const bottle = (table: string, at: string): string => `plan: 1
title: Something small on a table
camera: { lens: 70 mm, frame: horizontal, at: { distance: 1.4 m, height: 1.2 m }, aim: subject, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 15 cm, width: 15 cm, stands-on: { height: 80 cm, ${table}, size: 1.4 x 1.4 m } }
backdrop: { surface: grey paper, behind: 1 m }
lights:
  key: { unit: head 400 Ws, modifier: softbox 60 x 60 cm, meters: f/11, at: ${at} }
wanted: { backdrop: any, shadow: any }
`
const overhead = '{ right: 0 cm, behind: 60 cm, height: 1.45 m }'
const beside = '{ left: 90 cm, front: 30 cm, height: 1.5 m }'

interface Mirrors extends Evidence {
  readonly thing: Thing
  readonly surface: SceneSurface
  readonly seen: SeenInPlane
  /** Stops by which the place is lighter for it. */
  readonly lighter: number
  /** Radians off square at which the line of sight meets it. */
  readonly slant: number
}

export const backdropMirrorsLight = rule<Mirrors>({
  id: 'backdrop-mirrors-light',
  family: 'mirror',
  level: 'warning',
  finds: 'a light, a window or a white panel that is seen in a glossy backdrop, table, floor or wall',
  limits: {
    lighter: {
      value: 1 / 3,
      unit: 'stop',
      says: 'by which a place grows lighter for what it mirrors: as much as a shadow must darken it to show',
    },
    seen: { value: 0.0001, unit: 'share', says: 'of the picture; smaller is a speck' },
  },
  why: 'A glossy sheet is a dim mirror behind or under the subject. A light that it shows is a white patch with sharp edges where a plain tone was meant, and no power setting takes it out: its image goes up and down with the light.',
  formula:
    'the front as the camera behind the mirror sees it, within the surface and past what stands between; log2((ρ·2^x + F·L) / (ρ·2^x)), F by Fresnel’s equations for an index of 1.5, L what the front records seen straight; satin spreads it over a cone of 10 degrees about',
  sources: [
    {
      kind: 'derived',
      says: 'law of reflection; Fresnel’s equations, 4 % of gloss seen straight, 9 % at 60 degrees',
    },
    {
      kind: 'memory',
      says: 'acrylic, varnish and glass have an index of about 1.5; satin sheets smear by some 10 degrees',
    },
    { kind: 'common practice', says: 'a third of a stop with an edge to it shows' },
    {
      kind: 'common practice',
      says: 'a polariser takes out most of what gloss mirrors at some 55 degrees off square, and next to nothing near square',
    },
  ],
  basis: 'law of reflection, Fresnel’s equations; the limit is common practice',
  fires: [
    {
      title: 'a box from beside the camera, in black acrylic',
      plan: portrait('surface: black acrylic', '{ left: 60 cm, front: 2 m, height: 2.1 m }'),
    },
    { title: 'a box behind a thing on a glossy table', plan: bottle('surface: black acrylic', overhead) },
    {
      title: 'the same on satin: a bright smear',
      plan: bottle('surface: { reflectance: 0.05 }, finish: satin', overhead),
    },
  ],
  passes: [
    {
      title: 'the same backdrop matte',
      plan: portrait('surface: { reflectance: 0.04 }', '{ left: 60 cm, front: 2 m, height: 2.1 m }'),
    },
    {
      title: 'the box so far aside that its image lies out of the picture',
      plan: portrait('surface: black acrylic', '{ left: 1.9 m, front: 60 cm, height: 2.1 m }'),
    },
    { title: 'the box beside the thing on a glossy table', plan: bottle('surface: black acrylic', beside) },
    { title: 'a table of board', plan: bottle('surface: white board', overhead) },
  ],

  needs: ({ set }) => {
    const mirrors = mirrorsOf(set.scene)
    if (mirrors.length === 0) return 'silent'
    const unknown = set.unknown.find((light) =>
      mirrors.some((one) => imageOf(set.scene, one, { of: 'light', name: light.name, light }) !== undefined),
    )
    return unknown && unknownLight(unknown, set)
  },

  detect: (context) => {
    const { set, limits } = context
    const mirrors = mirrorsOf(set.scene)
    return thingsOf(set).flatMap((thing) =>
      mirrors.flatMap((surface): Mirrors[] => {
        const found = imageOf(set.scene, surface, thing)
        if (found === undefined || found.seen.share < limits.seen!) return []
        const shows = lighterBy(context, surface, thing, found)
        return shows === undefined ? [] : [evidenceOf(thing, surface, found.seen, shows, limits.lighter!)]
      }),
    )
  },

  tell: ({ thing, surface, seen, lighter, slant }, words) => ({
    message: `${thing.name} is seen in the ${finishOf(surface)} ${called(surface)} ${whereIn(seen)}, ${ofPicture(seen)}: ${words.howMany(lighter)} lighter than without it`,
    why: `there the line of sight goes on to it at an equal angle, ${words.degrees(slant)} off square`,
  }),

  mend: (evidence, words, context) =>
    inTurn(
      () => moved(evidence, words, context),
      () => polarised(evidence, words),
      () => matte(evidence),
    ),

  inShort: ({ thing, surface }) => `${thing.name} is seen in the ${called(surface)}`,
})

const finishOf = ({ front }: SceneSurface): Finish => front.finish ?? 'matte'

/** Large ones may come in parts. */
const mirrorsOf = ({ surfaces }: Scene): readonly SceneSurface[] =>
  surfaces.filter((one) => one.path !== 'panels' && finishOf(one) !== 'matte')

const called = ({ name }: SceneSurface): string =>
  name === 'sweep' ? 'backdrop, where it lies under the subject,' : name.replace('-', ' ')

const pointers: Readonly<Record<string, string>> = {
  backdrop: pointer('backdrop'),
  sweep: pointer('backdrop'),
  table: pointer('subject', 'stands-on'),
  floor: pointer('room', 'floor'),
  ceiling: pointer('room', 'ceiling'),
}
const surfacePointer = ({ name }: SceneSurface): string => pointers[name] ?? pointer('room', 'walls')

interface Image {
  readonly seen: SeenInPlane
  readonly face: Face
}

/** The largest image, of a panel of several leaves. */
const imageOf = (scene: Scene, { name, face: mirror }: SceneSurface, thing: Thing): Image | undefined => {
  const all = known(scene)
  const key = `${mirror.centre.join()} ${name} ${thing.of} ${thing.name}`
  if (!all.has(key)) all.set(key, lookInto(scene, { name, face: mirror }, thing))
  return all.get(key)
}

/** A rule is asked again and again of one set. */
const known = lazyOf((_: Scene) => new Map<string, Image | undefined>())

const lookInto = (scene: Scene, mirror: PlaneMirror, thing: Thing): Image | undefined =>
  facesOf(scene, thing)
    .flatMap((face): Image[] => {
      const sides = thing.of === 'panel' ? 'both' : 'front'
      const seen = seenInPlane(scene, mirror, { name: thing.name, face, sides })
      return seen === undefined ? [] : [{ seen, face }]
    })
    .reduce<Image | undefined>(
      (most, one) => (most === undefined || one.seen.share > most.seen.share ? one : most),
      undefined,
    )

interface Lighter {
  readonly stops: number
  readonly u: number
  readonly slant: number
}

/** A surface that records less looks black. */
const blackest = 0.003
/** Steradians over which satin spreads the image of a point: 10 degrees about it. From memory. */
const smear = 2 * Math.PI * (1 - Math.cos((10 * Math.PI) / 180))
/** Stops: how glossy a sheet is, and how even a front. Common practice, no source. */
const glossU = 0.4

const lighterBy = (
  { set, u }: RuleContext,
  { front, face: mirror }: SceneSurface,
  thing: Thing,
  { seen, face }: Image,
): Lighter | undefined => {
  const brightness = brightnessOf(set, thing, face, seen.at)
  const straight = brightness === undefined ? undefined : recordedBrightness(set, brightness)
  if (straight === undefined) return undefined
  const lit = set.reading({ at: seen.at, of: 'all', dome: 'flat', faces: { direction: mirror.normal } })
  const cosine = dot(mirror.normal, unit(subtract(set.scene.camera.eye, seen.at)))
  const spread = front.finish === 'satin' ? Math.min(1, solidAngleOf(face, seen.at) / smear) : 1
  const own = lit === undefined ? 0 : recordedLinear(front.reflectance, lit.overCamera.stops)
  const tone = (linear: number): number => Math.log2(Math.min(1, Math.max(blackest, linear)))
  return {
    stops: tone(own + mirroredShare(cosine) * spread * straight) - tone(own),
    u: Math.hypot(glossU, front.u, lit === undefined ? 0 : u(lit.overCamera)),
    slant: Math.acos(Math.min(1, cosine)),
  }
}

const evidenceOf = (
  thing: Thing,
  surface: SceneSurface,
  seen: SeenInPlane,
  { stops, u, slant }: Lighter,
  limit: number,
): Mirrors => ({
  pointer: thingPointer(thing),
  also: [{ pointer: surfacePointer(surface), says: `in this, which is ${finishOf(surface)}` }],
  beyond: { stops: stops - limit, u },
  level: finishOf(surface) === 'glossy' ? 'warning' : 'note',
  measured: {
    lighter: { value: stops, unit: 'stop', u, limit, side: 'at-most' },
    'of-picture': { value: seen.share, unit: 'share' },
  },
  cause: `the ${called(surface).replace(/,.*$/, '')} is ${finishOf(surface)}`,
  thing,
  surface,
  seen,
  lighter: stops,
  slant,
})

const whereIn = ({ from, to }: SeenInPlane): string => {
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const aside = x < -1 / 3 ? 'at camera-left' : x > 1 / 3 ? 'at camera-right' : 'in the middle'
  return y > 1 / 3 ? `high ${aside}` : y < -1 / 3 ? `low ${aside}` : aside
}

const ofPicture = ({ share }: SeenInPlane): string =>
  share < 0.005 ? 'a spot' : `${Math.round(share * 100)} % of the picture`

const moved = ({ thing }: Mirrors, words: Words, { set, limits }: RuleContext): readonly Mend[] => {
  const isOut = (scene: Scene): boolean =>
    mirrorsOf(scene).every((one) => (imageOf(scene, one, thing)?.seen.share ?? 0) < limits.seen!)
  return movedAndHeldUntil(set, thing, isOut, 'its image lies out of the picture', words)
}

/** Brewster's angle for an index of 1.5 is 56 degrees; a polariser helps some 15 degrees about it. */
const polarising = { from: 40, to: 72 }

const polarised = ({ slant }: Mirrors, words: Words): readonly Mend[] => {
  const degrees = inDegrees(slant)
  return degrees < polarising.from || degrees > polarising.to
    ? []
    : [
        {
          title: 'a polariser on the lens, turned until the image fades',
          gives: `at ${words.degrees(slant)} off square it takes out most of it`,
          costs: 'a stop and a half of light',
        },
      ]
}

const matte = ({ thing, surface }: Mirrors): readonly Mend[] => [
  {
    title: `a matte ${called(surface).replace(/,.*$/, '')}, or a black card between ${thing.name} and it, out of the picture`,
  },
]
