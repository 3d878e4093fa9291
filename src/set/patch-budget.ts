/** How fine the surfaces of a set are cut for what they throw back. */
import type { Scene } from '../scene/scene.js'

/** The set as it is planned; one in which a trial has moved something, good to some hundredths of a stop; see `ComputedSet.quick`. */
export type Worked = 'plan' | 'trial' | 'quick light'

/** As few as keep the sets that a path tracer judges within its bounds. */
const usual = 176
/** And for each figure more: they shade what is close behind them. */
const perFigure = 7
/** Panels stand near to what is metered; a scrim's bright middle and its edges are seen from close by. */
const withPanels = 400
const withScrims = 600
const tried = 80
const quick = 40
/** With more things in the way than this, fewer in proportion: the work goes with the product. */
const crowd = 20
const fewest = 40

/** About how many patches at most. */
export const patchBudget = (scene: Scene, light: Worked): number => {
  const most = light === 'plan' ? planned(scene) : light === 'trial' ? tried : quick
  return Math.max(fewest, Math.round(most * Math.min(1, crowd / scene.solids.length)))
}

const planned = ({ panels, surfaces, subject }: Scene): number =>
  panels.size === 0
    ? usual + perFigure * subject.figures.length
    : surfaces.some(({ transmits }) => transmits > 0)
      ? withScrims
      : withPanels
