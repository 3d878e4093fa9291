import { mirroredShare } from '../../light/fresnel.js'
import { type InGlasses, lightInGlasses, panelInGlasses } from '../../picture/in-glasses.js'
import { lazyOf } from '../../scene/lazy.js'
import { mirrorNormal } from '../../scene/mirror.js'
import type { Scene } from '../../scene/scene.js'
import { dot } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { knobToday } from '../../set/knob-value.js'
import { inDegrees } from '../../units/quantity.js'
import { type Evidence, inTurn, type Mend, type RuleContext, rule } from '../rule.js'
import { reached } from '../tiers.js'
import { whose } from '../whose.js'
import type { Words } from '../words.js'
import { overWhite } from './brightness.js'
import { heldThere } from './held-there.js'
import { settingUntil } from './setting-until.js'
import { asideKnob, brightnessOf, type Thing, thingPointer, thingsOf, upKnob } from './things.js'

const portrait = (key: string, more = '', subject = '{ kind: person, glasses: true }'): string => `plan: 1
title: Portrait with glasses
camera: { lens: 85 mm, at: { distance: 1.8 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: ${subject}
lights:
  key: { unit: head 400 Ws, modifier: softbox 90 x 90 cm, meters: f/8, at: ${key} }
${more}`

interface InGlassesFound extends Evidence {
  readonly thing: Thing
  readonly seen: InGlasses
  /** Faces in whose glasses it shows. */
  readonly faces: number
}

export const glassesMirrorLight = rule<InGlassesFound>({
  id: 'glasses-mirror-light',
  family: 'mirror',
  level: 'warning',
  finds: 'a light that shows as a white patch in the glasses of whoever is photographed',
  limits: {
    note: {
      value: 0,
      unit: 'deg',
      says: 'that a light may lie inside the zone that ordinary glasses mirror',
    },
    warning: { value: 5, unit: 'deg', says: 'inside it: few pairs, worn in few ways, would not show it' },
    shows: {
      value: -4.5,
      unit: 'stop',
      says: 'against white in the light of the key, at least, of what the glass mirrors of it',
    },
  },
  why: 'Glasses are two small round mirrors that lean a little down. Whatever their many slopes throw the line of sight at is seen in them, and a lit front is far brighter than an eye behind glass. So a light is set over the zone that they mirror, or beside it.',
  formula:
    'the normal halfway between camera and light, seen from the eyes; lenses tilted down by 8 degrees offer normals up to 16 degrees aside and 14 up and down; twice what is to spare is how far inside the light lies, for the part of its front that lies in most',
  sources: [
    { kind: 'derived', says: 'law of reflection: a mirror turned by one degree turns what it shows by two' },
    {
      kind: 'memory',
      says: 'glasses lean over by some 8 degrees; a lens 50 mm wide of 90 mm radius turns by 16 degrees to either side. Wearers differ by several degrees: that is what the limit of a warning allows for',
    },
    {
      kind: 'derived',
      says: 'each surface of a lens mirrors 4 % of what it meets straight on, both together 8 %: Fresnel’s equations; a coated lens mirrors less, and tinted',
    },
    {
      kind: 'common practice',
      says: 'lights up or further round, chin down, arms of the glasses up; chin up from a light that lies low',
    },
    { kind: 'memory', says: 'a coating against reflections mirrors some tenth of what bare glass does' },
  ],
  basis: 'law of reflection; the shape of lenses from memory',
  fires: [
    {
      title: 'a box just over the eyes',
      plan: portrait('{ angle: 30 deg left, distance: 1.5 m, up: 20 deg }'),
    },
    {
      title: 'a box level with the eyes, a little too far in',
      plan: portrait('{ angle: 48 deg right, distance: 1.5 m, height: 1.7 m }'),
    },
    {
      title: 'a fill beside the lens, under a key that stands well',
      plan: portrait(
        '{ angle: 30 deg left, distance: 1.5 m, height: 2.75 m }',
        '  fill: { unit: head 400 Ws, modifier: octa 120 cm, meters: f/5.6, at: { angle: 5 deg right, distance: 2.2 m, height: 1.6 m } }\n',
      ),
    },
    {
      title: 'a silk that the key shines through',
      plan: portrait(
        '{ left: 1.8 m, front: 1.4 m, height: 2 m }',
        'panels:\n  silk: { kind: scrim, transmits: 45 %, size: 1 x 1 m, at: { left: 80 cm, front: 70 cm, height: 1.8 m }, faces: subject }\n',
      ).replace('softbox 90 x 90 cm', 'standard reflector'),
    },
    {
      title: 'two rows',
      plan: portrait(
        '{ angle: 25 deg left, distance: 2.6 m, height: 2 m }',
        '',
        '{ kind: group, glasses: true, rows: [{ people: 3, spacing: 60 cm, faces-at: 1.2 m }, { people: 1, behind: 60 cm, faces-at: 1.65 m }] }',
      ).replace('distance: 1.8 m', 'distance: 3.2 m'),
    },
  ],
  passes: [
    { title: 'raised', plan: portrait('{ angle: 30 deg left, distance: 1.5 m, up: 35 deg }') },
    {
      title: 'far enough round',
      plan: portrait('{ angle: 55 deg right, distance: 1.5 m, height: 1.7 m }'),
    },
    {
      title: 'no glasses',
      plan: portrait('{ angle: 30 deg left, distance: 1.5 m, up: 20 deg }', '', '{ kind: person }'),
    },
    {
      title: 'a hair light behind the head',
      plan: portrait(
        '{ angle: 30 deg left, distance: 1.5 m, up: 35 deg }',
        '  hair: { unit: head 200 Ws, modifier: strip 30 x 120 cm, lying: true, grid: 40 deg, meters: f/8, at: { angle: 180 deg, distance: 1.1 m, height: 2.5 m } }\n',
      ),
    },
  ],

  needs: ({ plan }) => (plan.subject.kind !== 'object' && plan.subject.glasses ? undefined : 'silent'),

  detect: (context) => {
    const { set, limits } = context
    return thingsOf(set).flatMap((thing): InGlassesFound[] => {
      const seen = inGlassesOf(set.scene, thing)
      const most = seen[0]
      // What lies well outside need not be asked how bright it is.
      if (most === undefined || inDegrees(most.inside) <= limits.note! - placedWithin) return []
      if (!isBright(set, thing, most, limits.shows!)) return []
      const inside = inDegrees(most.inside)
      const { level, limit, beyond } = reached((over) => inside - over, placedWithin, [
        { level: 'note', limit: limits.note! },
        { level: 'warning', limit: limits.warning! },
      ])
      return [
        {
          pointer: thingPointer(thing),
          also: [{ pointer: '/subject/glasses', says: 'these glasses' }],
          beyond,
          level,
          measured: { inside: { value: inside, unit: 'deg', u: placedWithin, limit, side: 'at-most' } },
          cause: `where ${thing.name} stands`,
          thing,
          seen: most,
          faces: seen.filter((one) => one.inside > 0).length,
        },
      ]
    })
  },

  tell: ({ thing, seen, faces }, words, { plan, set }) => {
    const all = set.scene.subject.figures.length
    const inside = Math.round(inDegrees(seen.inside))
    return {
      message: `${thing.name} shows as a white patch in the glasses${all === 1 ? '' : ` of ${faces} of ${all}, most in those of ${whose(seen.figure.name, plan)}`}: its nearest part lies ${inside < 0 ? `within ${-inside} deg of` : `${inside} deg inside`} what they mirror`,
      why: `a camera straight ahead sees in ordinary glasses what lies up to ${words.degrees(zone.aside)} to either side and ${words.degrees(zone.up)} up`,
    }
  },

  mend: (evidence, words, context) =>
    inTurn(
      () => raised(evidence, words, context),
      () => swung(evidence, words, context),
      () => tilted(evidence, words, context),
      () => [coated],
    ),

  inShort: ({ thing }) => `${thing.name} shows in the glasses`,
})

/** Degrees: how well a light and a head stand where the plan has them. How glasses differ is in the limits. */
const placedWithin = 2

/** Of the lens as it is assumed, for a camera straight ahead of the face: twice its normals, its tilt taken off. */
const zone = { aside: (32 * Math.PI) / 180, up: (12 * Math.PI) / 180 }

/** In whose glasses it may show, the worst first. */
const inGlassesOf = (scene: Scene, thing: Thing): readonly InGlasses[] => {
  const all = known(scene)
  const key = `${thing.of} ${thing.name}`
  const was = all.get(key)
  if (was !== undefined) return was
  const found = lookIntoGlasses(scene, thing)
  all.set(key, found)
  return found
}

/** A rule is asked again and again of one set. */
const known = lazyOf((_: Scene) => new Map<string, readonly InGlasses[]>())

const lookIntoGlasses = (scene: Scene, { of, name }: Thing, leaning = 0): readonly InGlasses[] => {
  const light = of === 'light' ? scene.lights.get(name) : undefined
  const panel = of === 'panel' ? scene.panels.get(name) : undefined
  return scene.subject.figures
    .flatMap((figure) => {
      if (light !== undefined) return lightInGlasses(scene, figure, light, leaning) ?? []
      return (panel && panelInGlasses(scene, figure, panel, leaning)) ?? []
    })
    .sort((a, b) => b.inside - a.inside)
}

/** Of a lens: both mirror nearly the same way, and what goes to and fro between them adds up. Derived: a geometric series. */
const bothSurfaces = (one: number): number => (2 * one) / (1 + one)

/** A light of which nothing tells how strong it is is taken as one that shows. */
const isBright = (
  set: ComputedSet,
  thing: Thing,
  { figure, face, toward }: InGlasses,
  least: number,
): boolean => {
  const brightness = brightnessOf(set, thing, face, figure.face)
  const over = brightness === undefined ? undefined : overWhite(set, brightness)
  if (over === undefined) return thing.of === 'light'
  const cosine = dot(mirrorNormal(figure.face, set.scene.camera.eye, toward), toward)
  return over + Math.log2(bothSurfaces(mirroredShare(cosine))) >= least
}

/** Inside the limit by what one places lights within. */
const isClear =
  (thing: Thing) =>
  (scene: Scene): boolean =>
    inGlassesOf(scene, thing).every(({ inside }) => inDegrees(inside) <= -placedWithin)

/** Higher than this a light for a face is no key any more, and further round it is a rim. */
const farthest = { up: (60 * Math.PI) / 180, metres: 1.5, aside: (85 * Math.PI) / 180 }

const besides = 'it lies beside what the glasses mirror'

/** Over the zone, or under it where it lies low in it; a light from low down that would be raised past the lens is tried last. */
const raised = ({ thing, seen }: InGlassesFound, words: Words, { set }: RuleContext): readonly Mend[] => {
  const knob = upKnob(set, thing)
  const most = knob.knob === 'light-up' ? farthest.up : farthest.metres
  return (seen.below ? ([-1, 1] as const) : ([1] as const)).flatMap((way) =>
    heldThere(
      set,
      thing,
      settingUntil(set, thing, knob, way, most, isClear(thing)),
      besides,
      [way > 0 ? 'longer shadows under brows and nose' : 'shadows that fall up'],
      words,
    ),
  )
}

const swung = ({ thing }: InGlassesFound, words: Words, { set }: RuleContext): readonly Mend[] => {
  const knob = asideKnob(set, thing)
  const today = knob && knobToday(set.plan, knob)
  if (knob === undefined || today === undefined) return []
  const most = knob.knob === 'light-angle' ? farthest.aside - Math.abs(today) : farthest.metres
  const turned = settingUntil(set, thing, knob, today < 0 ? -1 : 1, most, isClear(thing))
  const isKey = thing.of === 'light' && thing.light.role === 'key'
  const costs = isKey ? 'a darker far side of the face' : 'light from further round'
  return heldThere(set, thing, turned, besides, [costs], words)
}

/** Further than this a head or glasses are not tilted, in degrees. */
const mostTilt = 10

/** Whole degrees: the least tilt after which neither it nor another light or panel shows. */
const tilted = ({ thing, seen }: InGlassesFound, words: Words, { set }: RuleContext): readonly Mend[] => {
  const { scene } = set
  const others = thingsOf(set).filter((one) => inGlassesOf(scene, one).every(({ inside }) => inside <= 0))
  const way = seen.below ? -1 : 1
  const isOut = (degrees: number): boolean =>
    [thing, ...others].every((one) =>
      lookIntoGlasses(scene, one, (way * degrees * Math.PI) / 180).every(
        ({ inside }) => inDegrees(inside) <= (one === thing ? -placedWithin : 0),
      ),
    )
  for (let degrees = 1; degrees <= mostTilt; degrees++) {
    if (!isOut(degrees)) continue
    const by = words.degrees((degrees * Math.PI) / 180)
    return [
      {
        title: seen.below
          ? 'chin up a little'
          : 'chin down a little, or the arms of the glasses lifted off the ears',
        gives: `${by} of tilt takes it out; each degree turns what they mirror ${seen.below ? 'up' : 'down'} by two`,
      },
    ]
  }
  return []
}

const coated: Mend = {
  title: 'the frame without its lenses, or glasses with a coating against reflections',
  gives: 'a coating mirrors some tenth as much',
}
