/** The blockers as one receptor sees them: silhouettes are found when first asked for, and kept for all lights. */
import type { Receptor } from '../receptor.js'
import { type Blocker, liesOn } from './blockers.js'
import { type Silhouette, silhouetteOf } from './silhouette.js'

export interface Outlook {
  readonly receptor: Receptor
  /** All of them. */
  readonly all: readonly Blocker[]
  /** Those that it does not lie on. */
  readonly blockers: readonly Blocker[]
  /** By its place among all; undefined for one that hides nothing from here. */
  silhouette(index: number): Silhouette | undefined
}

export const outlookFrom = (receptor: Receptor, blockers: readonly Blocker[]): Outlook =>
  new Seen(receptor, blockers)

class Seen implements Outlook {
  private others: readonly Blocker[] | undefined
  private silhouettes: (Silhouette | null | undefined)[] | undefined

  constructor(
    readonly receptor: Receptor,
    readonly all: readonly Blocker[],
  ) {}

  get blockers(): readonly Blocker[] {
    this.others ??= this.all.filter((one) => !liesOn(one, this.receptor.at))
    return this.others
  }

  silhouette(index: number): Silhouette | undefined {
    this.silhouettes ??= []
    let known = this.silhouettes[index]
    if (known === undefined) {
      const { at } = this.receptor
      const blocker = this.all[index]!
      known = liesOn(blocker, at) ? null : (silhouetteOf(blocker, at) ?? null)
      this.silhouettes[index] = known
    }
    return known ?? undefined
  }
}
