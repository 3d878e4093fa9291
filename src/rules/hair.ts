/** What hair makes of light: from in front by its tone, from behind by its shine. */
import type { Subject } from '../language/plan.js'

export type Hair = NonNullable<Subject['hair']>

/** Where a light from behind is best begun, stops over the key, metered with the dome toward it. Common practice, no source. */
export const rimStart: Readonly<Record<Hair, number>> = { dark: 0, brown: -1, fair: -2 }

/** Share of light from in front that hair gives back. From memory. */
export const hairTone: Readonly<Record<Hair, number>> = { dark: 0.04, brown: 0.08, fair: 0.25 }

/**
 * What a surface would have to give back to look as hair does in light that grazes it from behind: at the level where
 * such a light is begun a line of about half white is drawn on any hair; so common practice has it, no source.
 */
export const hairShine = (hair: Hair): number => 0.5 * 2 ** -rimStart[hair]

/** Stops: heads of one word differ by as much. */
export const hairU = 0.5
