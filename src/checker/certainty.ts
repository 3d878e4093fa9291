import { verdict } from '../light/how-sure.js'
import type { Evidence, Level } from '../rules/rule.js'
import type { Certainty } from './finding.js'

export interface Judged {
  readonly level: Level
  readonly certainty: Certainty
}

const lower: Readonly<Record<Level, Level>> = { error: 'warning', warning: 'note', note: 'note' }

/**
 * | how far beyond the limit | level | said |
 * |---|---|---|
 * | a fact, or sure | the rule's | as it is |
 * | probable | the rule's | probably |
 * | possible | one lower; a note stays one | perhaps |
 * | open, clear | no finding | |
 */
export const judge = (beyond: Evidence['beyond'], level: Level): Judged | undefined => {
  const certainty = beyond === 'certain' ? 'sure' : verdict(beyond.stops, beyond.u)
  switch (certainty) {
    case 'sure':
    case 'probable':
      return { level, certainty }
    case 'possible':
      return { level: lower[level], certainty }
    default:
      return undefined
  }
}

const doubt: Readonly<Record<Certainty, string>> = { sure: '', probable: 'probably ', possible: 'perhaps ' }

export const worded = (message: string, certainty: Certainty): string => `${doubt[certainty]}${message}`
