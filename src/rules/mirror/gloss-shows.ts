import { mirroredShare } from '../../light/fresnel.js'
import { type EdgeView, edgesShow, type Highlight, highlightsOn } from '../../picture/on-subject.js'
import { lazyOf } from '../../scene/lazy.js'
import type { Face, Scene, SceneFigure } from '../../scene/scene.js'
import { type SubjectMirror, subjectMirror } from '../../scene/subject-mirror.js'
import { dot, subtract, unit } from '../../scene/vector.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { subjectMirrors } from '../../set/surface-at.js'
import { cameraMisplaced } from '../known.js'
import { type Evidence, type Mend, type RuleContext, rule } from '../rule.js'
import type { Words } from '../words.js'
import { overWhite } from './brightness.js'
import { type ClearEdges, clearEdges, clearText, drawnEdges } from './clear-edges.js'
import { movedAndHeldUntil } from './held-there.js'
import { edgesText, heightOf, type OnSubject, shownText, widthOf } from './highlight-words.js'
import { longerHighlight } from './longer-highlight.js'
import { brightnessOf, facesOf, type Thing, thingsOf } from './things.js'

const product = (subject: string, lights: string, more = ''): string => `plan: 1
title: Something glossy
camera: { lens: 100 mm, at: { distance: 1.6 m, height: 95 cm }, aperture: f/11, shutter: 1/125, iso: 100, held-by: stand }
subject: { kind: object, height: 30 cm, ${subject}, stands-on: { height: 80 cm } }
backdrop: { surface: grey paper, behind: 1 m }
lights:
${lights}
${more}wanted: { backdrop: any, shadow: any }
`
const strip =
  '  key: { unit: head 400 Ws, modifier: strip 30 x 120 cm, meters: f/11, at: { left: 60 cm, front: 10 cm, height: 1.1 m } }'
const framed = 'width: 40 cm, depth: 4 cm, finish: glossy, shape: plane'
const bare = '  key: { unit: flashgun, meters: f/11, at: { left: 90 cm, front: 60 cm, height: 1.2 m } }'

interface GlossShows extends Evidence {
  /** The brightest first. */
  readonly shown: readonly OnSubject[]
  readonly edges: readonly [EdgeView, EdgeView] | undefined
  /** Of a clear object. */
  readonly clear: ClearEdges | undefined
  readonly mirror: SubjectMirror
}

export const glossShows = rule<GlossShows>({
  id: 'gloss-shows',
  family: 'mirror',
  level: 'note',
  finds: 'what a glossy or clear object shows: the highlight of each light and panel, and its edges',
  limits: {
    shows: {
      value: -6,
      unit: 'stop',
      says: 'against white in the light of the key, at least, of what the object mirrors of it: a white card shows in black glaze',
    },
    spot: {
      value: 0.06,
      unit: 'share',
      says: 'of the object, at most: the side of a square as large as the highlight, a hot spot',
    },
    long: { value: 0.7, unit: 'share', says: 'of its height: a highlight that runs along it' },
    differs: {
      value: 1,
      unit: 'stop',
      says: 'at least, between the edge of a clear object and the ground beside it, for the edge to draw it',
    },
  },
  why: 'Of a glossy or clear thing the camera sees what it mirrors, not how light it is. Long highlights with clean edges draw its shape; a bare head leaves a hot spot, and where it mirrors nothing it goes dark. What stands behind shows along its edges. A clear thing is drawn by its edges alone: dark ones before a light ground (bright field), light ones before a dark ground (dark field).',
  formula:
    'the place at which the normal halves the angle between lens and light, for lines of sight over the whole object; on a flat, a round or a ball-shaped thing as `shape` says, without the ends of a bottle or the corners of a box. An edge of a clear thing: what it mirrors some nine tenths of the way out, against what is seen right beside it',
  sources: [
    {
      kind: 'derived',
      says: 'law of reflection; of round mirrors Alhazen’s problem, solved by turning the normal until it halves the angle',
    },
    {
      kind: 'derived',
      says: 'glass and glaze mirror 4 % of what they meet straight on: Fresnel’s equations',
    },
    {
      kind: 'common practice',
      says: 'one clean highlight that runs the length of a bottle; black cards for dark edges, white ones for light',
    },
    {
      kind: 'common practice',
      says: 'bright field and dark field for glass; that the edges of glass look like what they mirror is a rough stand-in for what they refract',
    },
  ],
  basis: 'law of reflection, Fresnel’s equations; what is a spot and what is long is common practice',
  fires: [
    { title: 'a strip beside a bottle', plan: product('width: 8 cm, finish: glossy', strip) },
    { title: 'a bare flash on a vase', plan: product('width: 30 cm, finish: glossy', bare) },
    {
      title: 'a clear bottle between black cards',
      plan: product(
        'width: 8 cm, finish: clear',
        strip,
        'panels:\n  card-left: { kind: flag, size: 20 x 60 cm, at: { left: 25 cm, behind: 15 cm, height: 95 cm }, faces: right }\n  card-right: { kind: flag, size: 20 x 60 cm, at: { right: 25 cm, behind: 15 cm, height: 95 cm }, faces: left }\n',
      ),
    },
    {
      title: 'a black vase that mirrors nothing but the room',
      plan: product(
        'width: 30 cm, finish: glossy',
        '  key: { unit: head 400 Ws, modifier: strip 30 x 120 cm, meters: f/11, at: { left: 60 cm, front: 10 cm, height: 1.1 m }, aim: away }',
        'points: { away: { left: 5 m, height: 1.1 m } }\n',
      ),
    },
    {
      title: 'a framed picture with a box over it',
      plan: product(framed, strip.replace('left: 60 cm, front: 10 cm', 'left: 25 cm, front: 1.5 m')),
    },
  ],
  passes: [
    { title: 'a framed picture with nothing over it', plan: product(framed, strip) },
    { title: 'matte', plan: product('width: 8 cm', strip) },
    { title: 'satin is judged as matte', plan: product('width: 8 cm, finish: satin', strip) },
    {
      title: 'a person in patent leather',
      plan: product('width: 8 cm', strip).replace(
        /subject: .*/,
        'subject: { kind: person, finish: glossy, faces-at: 95 cm, pose: seated }',
      ),
    },
  ],

  needs: ({ plan, set }) =>
    plan.subject.kind === 'object' && subjectMirrors(plan) && !cameraMisplaced(set) ? undefined : 'silent',

  detect: ({ set, plan, limits }) => {
    const [figure] = set.scene.subject.figures
    if (figure === undefined) return []
    const mirror = subjectMirror(figure, plan.subject)
    const shown: GlossShows['shown'] = thingsOf(set)
      .flatMap((thing) => onSubject(set, figure, mirror, thing))
      .filter(({ over }) => over >= limits.shows!)
      .sort((a, b) => b.over - a.over)
    // Over a flat thing nothing need lie.
    if (mirror.shape === 'plane' && shown.length === 0) return []
    const edges = edgesShow(set.scene, figure, mirror)
    return [
      {
        pointer: '/subject/finish',
        beyond: 'certain',
        measured: Object.fromEntries(
          shown.flatMap(({ thing, highlights }) => {
            const all = (of: (one: Highlight) => number): readonly number[] => highlights.map(of)
            const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0)
            return [
              [`${thing.name}-width`, { value: Math.min(1, sum(all(widthOf))), unit: 'share' as const }],
              [`${thing.name}-height`, { value: Math.max(...all(heightOf)), unit: 'share' as const }],
              [`${thing.name}-covers`, { value: sum(all(({ covers }) => covers)), unit: 'share' as const }],
            ]
          }),
        ),
        shown,
        edges,
        clear:
          plan.subject.finish === 'clear' && edges !== undefined
            ? clearEdges(set, edges, limits.differs!)
            : undefined,
        mirror,
      },
    ]
  },

  tell: ({ shown, edges, clear, mirror }, words, { limits }) => {
    const kinds = { spot: limits.spot!, long: limits.long! }
    const shows =
      shown.length === 0
        ? clear === undefined
          ? 'the object shows no light: it mirrors its surroundings alone, and looks as they do'
          : 'it shows no light'
        : `${clear === undefined ? 'the object' : 'it'} shows ${words.list(shown.slice(0, told).map((one) => shownText(one, mirror.shape, kinds)))}`
    return {
      message: clear === undefined ? shows : `${clearText(clear)}; ${shows}`,
      why: [`it is taken as a ${mirror.shape}`, ...(edges === undefined ? [] : [edgesText(edges)])].join(
        '; ',
      ),
    }
  },

  mend: (evidence, words, context) =>
    evidence.mirror.shape === 'plane'
      ? besideIt(evidence, words, context)
      : [
          ...longerHighlight(evidence, words, context),
          ...(evidence.clear === undefined ? [] : drawnEdges(evidence.clear)),
          ...(evidence.shown.length === 0 && evidence.clear === undefined ? [anyHighlight] : []),
        ],
})

const anyHighlight: Mend = {
  title: 'a strip, a scrim or a white card beside the object, turned to it',
  gives: 'a highlight that draws its shape',
}

/** More highlights than these nobody looks for. */
const told = 3

interface Seen {
  readonly face: Face
  readonly highlights: readonly Highlight[]
}

/** Of each of its faces that the object shows. */
const highlightsOf = (
  scene: Scene,
  figure: SceneFigure,
  mirror: SubjectMirror,
  thing: Thing,
): readonly Seen[] => {
  const sides = thing.of === 'panel' ? 'both' : 'front'
  return facesOf(scene, thing).flatMap((face) => {
    const highlights = highlightsOn(scene, figure, mirror, { name: thing.name, face, sides })
    return highlights.length === 0 ? [] : [{ face, highlights }]
  })
}

/** Of a panel where no light is known. */
const unlit = Number.NEGATIVE_INFINITY

/** A rule is asked again and again of one set. */
const known = lazyOf((_: Scene) => new Map<string, readonly Seen[]>())

/** By how much its image in the object lies over white; a light of which nothing tells how strong it is shows. */
const onSubject = (
  set: ComputedSet,
  figure: SceneFigure,
  mirror: SubjectMirror,
  thing: Thing,
): readonly (OnSubject & { readonly over: number })[] => {
  const all = known(set.scene)
  const key = `${thing.of} ${thing.name}`
  const seen = all.get(key) ?? highlightsOf(set.scene, figure, mirror, thing)
  all.set(key, seen)
  return seen
    .map(({ face, highlights }) => {
      const over = highlights.map(({ at, normal }) => {
        const brightness = brightnessOf(set, thing, face, at)
        const straight = brightness === undefined ? undefined : overWhite(set, brightness)
        const cosine = dot(normal, unit(subtract(set.scene.camera.eye, at)))
        return straight === undefined
          ? thing.of === 'light'
            ? 0
            : unlit
          : straight + Math.log2(mirroredShare(cosine))
      })
      return { thing, highlights, over: Math.max(...over) }
    })
    .sort((a, b) => b.over - a.over)
    .slice(0, 1)
}

/** What lies over a flat thing hides it: the light that does most goes aside. */
const besideIt = ({ shown: [first] }: GlossShows, words: Words, { set }: RuleContext): readonly Mend[] => {
  if (first === undefined) return []
  const { thing } = first
  const isOut = (scene: Scene): boolean => {
    const [figure] = scene.subject.figures
    return (
      figure !== undefined &&
      highlightsOf(scene, figure, subjectMirror(figure, set.plan.subject), thing).length === 0
    )
  }
  return movedAndHeldUntil(set, thing, isOut, `nothing of ${thing.name} lies over it`, words)
}
