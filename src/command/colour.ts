/** Whether to colour, from everything that has a say in it. One pure function, so that every case can be tested. */
export interface ColourSay {
  /** `--color` and `--no-color`; undefined where neither was given. */
  readonly flag: boolean | undefined
  readonly environment: Readonly<Record<string, string | undefined>>
  /** Whether the output is a terminal. */
  readonly terminal: boolean
}

/**
 * The nearest say wins: the flag, then NO_COLOR (any text), then FORCE_COLOR (any text but `0` and `false`, which mean
 * off), then a terminal that can show colours. Empty variables count as absent (no-color.org, force-color.org).
 */
export const wantsColour = ({ flag, environment, terminal }: ColourSay): boolean => {
  if (flag !== undefined) return flag
  if (environment.NO_COLOR) return false
  if (environment.FORCE_COLOR) return !['0', 'false'].includes(environment.FORCE_COLOR)
  return terminal && environment.TERM !== 'dumb'
}
