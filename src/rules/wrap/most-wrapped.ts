import type { ComputedSet } from '../../set/computed-set.js'
import type { WrapSide } from '../../set/wrap-and-haze.js'

/** The side of the subject, or of anyone in a group, that gets most back from the backdrop. */
export const mostWrapped = ({ wrap }: ComputedSet): WrapSide | undefined =>
  wrap.reduce<WrapSide | undefined>(
    (most, one) => (most === undefined || one.reKey.stops > most.reKey.stops ? one : most),
    undefined,
  )
