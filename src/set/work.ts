/** How much has been computed for a plan, so that the work on a crowded one can be bounded. Counted, never timed. */

/** What was computed so far, over a set and all sets made from it. */
export interface Work {
  /** Responses of one receptor to one light. */
  responses: number
  /** Sets in which gear, subject or surfaces were moved, and sets that were tried, each by how crowded it is: a small one that was moved counts 1. */
  moves: number
  /** Moves from which on a further one throws `WorkSpent`. */
  mostMoves: number
}

/** Thrown where the moves that a plan is worth are spent. */
export class WorkSpent extends Error {
  constructor() {
    super('the work that is done on one plan is spent')
  }
}

/** Moves that the mends of one plan are worth: dozens in a usual set, next to none in the most crowded. */
export const movesForMends = 300

/** Light of each source past each body is found anew in a set that was moved. */
const crowded = 50

/** What there is to spend on, in whole moves: one by quick light, one at which no light is asked, and all rules run on a set. */
const costs = { move: 1, 'quick move': 0.2, look: 0.05, trial: 0.6 } as const

/** @throws WorkSpent where the work allows no more */
export const spend = (work: Work, what: keyof typeof costs, lights: number, solids: number): void => {
  if (work.moves >= work.mostMoves) throw new WorkSpent()
  work.moves += (1 + (lights * solids) / crowded) * costs[what]
}

export const noWork = (): Work => ({ responses: 0, moves: 0, mostMoves: Number.POSITIVE_INFINITY })
