/** What wrap and haze may be. The house's own limits are those of the rules; other rules speak of these. */

/** Stops against the key that the backdrop may throw back round the outline. */
export const wrapLimits = { note: -1.5, warning: -1 } as const

/** Stops by which the veil may lift a deep black. */
export const hazeLimits = { note: 1, warning: 1.5 } as const
