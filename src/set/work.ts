/** How much has been computed for a plan, so that the work on a crowded one can be bounded. Counted, never timed. */

/** What was computed so far, over a set and all sets made from it. */
export interface Work {
  /** Responses of one receptor to one light. */
  responses: number
  /** Sets in which gear, subject or surfaces were moved, each by how crowded it is: a small set counts 1. */
  moves: number
  /** Moves from which on a further one throws `WorkSpent`. */
  mostMoves: number
}

/** Thrown by `ComputedSet.with` where the moves that a plan is worth are spent. */
export class WorkSpent extends Error {
  constructor() {
    super('the work that is done on one plan is spent')
  }
}

/** Moves that the mends of one plan are worth: dozens in a usual set, a few in the most crowded. */
export const movesForMends = 400

/** Light of each source past each body is found anew in a set that was moved. */
const crowded = 100

/** By quick light a move costs so little of a whole one. */
const quickly = 0.2

export const moveCost = (lights: number, solids: number, isQuick: boolean): number =>
  (1 + (lights * solids) / crowded) * (isQuick ? quickly : 1)

export const noWork = (): Work => ({ responses: 0, moves: 0, mostMoves: Number.POSITIVE_INFINITY })
