import type { ShadowSeen } from '../../set/shadow-seen.js'
import { faceOf } from '../key-lights.js'
import { degreesAside, degreesUp, sideOf, towardLight } from '../light-direction.js'
import { lightPointer } from '../place-pointer.js'
import { type Evidence, inTurn, type RuleContext, rule } from '../rule.js'
import {
  backdropLit,
  lightHigher,
  lightWider,
  moreSeparation,
  needsLight,
  ontoTheAxis,
} from './out-of-sight.js'
import {
  beyondOf,
  byLight,
  causeOf,
  depthText,
  figures,
  otherText,
  shadowsMissing,
  sideText,
  sizeText,
  toneText,
} from './seen.js'

const nearWall = (behind: string, key: string, wanted = 'hidden', more = ''): string => `plan: 1
title: Portrait before a grey wall
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
backdrop: { surface: { reflectance: 0.5 }, width: 4 m, height: 2.7 m, behind: ${behind} }
lights:
  key: { unit: head 400 Ws, meters: f/8, ${key} }
${more}wanted: { framing: head and shoulders, backdrop: any, shadow: ${wanted} }
`
const box = (angle: string) =>
  `modifier: softbox 90 x 90 cm, at: { angle: ${angle}, distance: 1.5 m, up: 30 deg }`
const bare = (angle: string) =>
  `modifier: standard reflector, at: { angle: ${angle}, distance: 2 m, height: 1.9 m }`
const wallLight = (meters: string) =>
  `  wall: { role: backdrop, unit: head 400 Ws, modifier: white umbrella 1 m, meters: ${meters}, at: { right: 1.6 m, before-backdrop: 40 cm, height: 1.9 m } }\n`

interface ShadowInFrame extends Evidence {
  readonly shadow: ShadowSeen
}

export const shadowInFrame = rule<ShadowInFrame>({
  id: 'shadow-in-frame',
  family: 'shadow',
  level: 'warning',
  finds: "the subject's shadow on the backdrop where the camera sees it",
  limits: {
    depth: {
      value: 1 / 3,
      unit: 'stop',
      says: 'under what the backdrop would record there without the subject, on one side more than on the other',
    },
  },
  why: 'A shadow beside the head doubles its outline, and tells everybody where the lamp stood and that the wall was close. Right behind the subject nobody sees it.',
  formula:
    'depth = log2(tone without the subject / tone with it), both no more than white; it shows where depth here − depth as far out on the other side is over the limit and over 6 L*, over 2 % of the short side of the frame',
  sources: [
    {
      kind: 'derived',
      says: 'the penumbra of an edge is source × distance behind it / distance before it wide; at a silhouette seen along the light’s axis half of the source is hidden on both sides alike',
    },
    { kind: 'standard', says: 'lightness L*: CIE 15' },
    { kind: 'common practice', says: 'a third of a stop and six L* are seen by anyone who looks' },
  ],
  basis:
    'covered parts of each front, exact; sRGB, IEC 61966-2-1; L*, CIE 15; the limits are common practice',
  fires: [
    { title: 'a softbox at 45 degrees, a foot from the wall', plan: nearWall('0.3 m', box('45 deg left')) },
    { title: 'a bare reflector, half a metre from the wall', plan: nearWall('0.5 m', bare('20 deg right')) },
    { title: 'a soft one is wanted: only a note', plan: nearWall('0.5 m', bare('20 deg right'), 'soft') },
    {
      title: 'the light on the wall is too weak to fill it',
      plan: nearWall('0.5 m', bare('20 deg right'), 'hidden', wallLight('f/5.6')),
    },
  ],
  passes: [
    { title: 'well off the wall it falls out of the frame', plan: nearWall('2.4 m', box('45 deg left')) },
    { title: 'on the camera’s axis', plan: nearWall('0.5 m', box('0 deg left')) },
    { title: 'nobody minds', plan: nearWall('0.5 m', bare('20 deg right'), 'any') },
    {
      title: 'the wall has light of its own',
      plan: nearWall('0.5 m', bare('20 deg right'), 'hidden', wallLight('f/16')),
    },
  ],

  needs: (context) => (context.plan.wanted.shadow === 'any' ? 'silent' : shadowsMissing(context)),

  detect: (context) => {
    const { set, plan } = context
    const level = plan.wanted.shadow === 'soft' ? 'note' : 'warning'
    return byLight(set.shadows).map((shadow) => ({
      pointer: lightPointer(shadow.light, 'at'),
      also: [
        { pointer: '/backdrop/behind', says: 'so far behind the subject' },
        ...(plan.places.stated('/wanted/shadow')
          ? [{ pointer: '/wanted/shadow', says: 'this is wanted' }]
          : []),
      ],
      beyond: beyondOf(shadow, context),
      level,
      measured: figures(shadow, context),
      cause: causeOf(shadow),
      shadow,
    }))
  },

  tell: ({ shadow }, words, context) => ({
    message: `a shadow shows on the ${shadow.on} ${sideText(shadow, context)}, ${sizeText(shadow, words)}: it ${toneWords(shadow, words)}, as ${whereStands(shadow, context)}`,
    why: `${depthText(shadow.depth.stops, words)}, ${otherText(shadow.otherSide, words)} as far out on the other side; the subject stands ${words.length(context.plan.backdrop!.behind)} before the backdrop`,
  }),

  mend: ({ shadow }, words, context) =>
    inTurn(
      () => backdropLit(shadow, context, words),
      () => ontoTheAxis(shadow, context, words),
      () => moreSeparation(shadow, context, words),
      () => lightHigher(shadow, context, words),
      () => lightWider(shadow, context),
      () => needsLight(shadow, context, words),
    ),

  inShort: ({ shadow }, words, context) =>
    `a shadow shows on the ${shadow.on} ${sideText(shadow, context)}, ${depthText(shadow.depth.stops, words)}`,
})

const toneWords = (shadow: ShadowSeen, words: Parameters<typeof toneText>[1]): string =>
  `records ${toneText(shadow, words)}`

/** `key stands 45 deg to camera-left of the lens, 30 deg up`, against the line to the camera. */
const whereStands = ({ light }: ShadowSeen, { set }: RuleContext): string => {
  const face = faceOf(set)
  const toward = towardLight(set.scene, light, face)
  const aside = toward && degreesAside(set.scene, face, toward)
  if (toward === undefined || aside === undefined) return `${light} stands where it does`
  const up = Math.round(degreesUp(toward))
  const round = Math.round(Math.abs(aside))
  return `${light} stands ${round === 0 ? 'in line with the camera' : `${round} deg to ${sideOf(aside)} of the lens`}${Math.abs(up) < 3 ? '' : `, ${Math.abs(up)} deg ${up > 0 ? 'up' : 'down'}`}`
}
