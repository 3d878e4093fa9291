/** What the rules on shadows on the backdrop share. */
import { srgbCode } from '../../picture/tone.js'
import type { ComputedSet } from '../../set/computed-set.js'
import { type ShadowSeen, shows } from '../../set/shadow-seen.js'
import { backdropMissing } from '../known.js'
import type { Measured, NotNeeded, RuleContext } from '../rule.js'
import { whose } from '../whose.js'
import type { Words } from '../words.js'

/** Of each light the shadow that shows most. */
export const byLight = (shadows: readonly ShadowSeen[]): readonly ShadowSeen[] => {
  const most = new Map<string, ShadowSeen>()
  for (const one of shadows) {
    const before = most.get(one.light)
    if (before === undefined || one.margin > before.margin) most.set(one.light, one)
  }
  return [...most.values()].sort((a, b) => (Math.abs(a.margin - b.margin) < alike ? 0 : b.margin - a.margin))
}

/** Stops: margins that differ by less are equal. */
const alike = 1e-6

/** A shadow that is nowhere: as far from showing as a shadow can be. */
const none = -shows.stops

/** Stops by which a light's shadow (any light's) is deeper than it must be to show, straight light alone. */
export const showsBy = ({ unfilledShadows }: ComputedSet, light?: string): number =>
  unfilledShadows.reduce(
    (most, one) => (light === undefined || one.light === light ? Math.max(most, one.margin) : most),
    none,
  )

/** A house that lets shadows be deeper, or less deep, before they count. */
export const beyondOf = (shadow: ShadowSeen, { limits, u }: RuleContext) => ({
  stops: shadow.margin + shows.stops - limits.depth!,
  u: u(shadow.depth),
})

/** Silent where the author says that any shadow will do. */
export const shadowsMissing = (context: RuleContext): NotNeeded | 'silent' | undefined => {
  const { plan } = context
  if (plan.backdrop === undefined || plan.backdrop.sky !== undefined) return 'silent'
  if (plan.wanted.shadow === 'any' && plan.places.stated('/wanted/shadow')) return 'silent'
  return backdropMissing(context, 'at least')
}

export const figures = (shadow: ShadowSeen, context: RuleContext): Readonly<Record<string, Measured>> => ({
  depth: { value: shadow.depth.stops, unit: 'stop', u: context.u(shadow.depth) },
  'other-side': { value: shadow.otherSide, unit: 'stop' },
  width: { value: 100 * shadow.width, unit: 'cm' },
  share: { value: shadow.share, unit: 'share' },
})

export const causeOf = ({ light }: ShadowSeen): string => `the shadow that ${light} throws`

/** `camera-right of the subject`, `above person 2 in row 1`. */
export const sideText = ({ side, figure }: ShadowSeen, { plan }: RuleContext): string =>
  `${side === 'above' ? 'above' : `${side} of`} ${whose(figure, plan)}`

/** `12 cm wide, 9 % of the frame's short side`; above a head it is high. */
export const sizeText = ({ side, width, share }: ShadowSeen, words: Words): string =>
  `${words.small(width)} ${side === 'above' ? 'high' : 'wide'}, ${Math.max(1, Math.round(100 * share))} % of the frame's short side`

/** `records dark grey (sRGB 80) where it would be mid grey (sRGB 130)`. */
export const toneText = ({ surround, shaded }: ShadowSeen, words: Words): string =>
  `${words.tone(srgbCode(shaded))} where it would be ${words.tone(srgbCode(surround))}`

/** Deeper than this nothing of the light is left to speak of. */
const whole = 6

/** `1.2 stops deep`. */
export const depthText = (stops: number, words: Words): string =>
  stops > whole ? 'hardly any light in it' : `${words.howMany(stops)} deep`

/** `0.3 stop`, where there is one. */
export const otherText = (stops: number, words: Words): string =>
  stops < 0.05 ? 'none' : stops > whole ? 'as much' : words.howMany(stops)

/** `1.2 stops less light`. */
export const lessText = (stops: number, words: Words): string =>
  stops > whole ? 'hardly any light' : `${words.howMany(stops)} less light`
