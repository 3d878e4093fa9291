import { verdict } from '../light/how-sure.js'
import type { HeldFigure } from './rule.js'

/** Sure or clear: what a surer figure would not change. */
export const isDecided = ({ beyond }: HeldFigure): boolean => {
  const found = verdict(beyond.stops, beyond.u)
  return found === 'sure' || found === 'clear'
}
