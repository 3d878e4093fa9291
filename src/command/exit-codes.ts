/** What the process says to whoever called it. A public contract. */
export const exitCodes = {
  /** Nothing at or above `--fail-on`. */
  clean: 0,
  /** A finding at or above `--fail-on`; a plan that cannot be understood is one. */
  found: 1,
  /** The call is wrong, a named path cannot be read, or no plan was found. Wins over 1. */
  misused: 2,
  /** The program itself failed. Wins over all. */
  failed: 3,
} as const

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes]
