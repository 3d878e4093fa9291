/**
 * One computed set, as rules, cards and pictures ask it. Everything is computed when first asked and remembered.
 * `with` gives the set after a change, with the lights' strengths as they were estimated before it.
 */

import type { Light, Plan } from '../language/plan.js'
import type { Figure } from '../light/figure.js'
import type { Receptor } from '../light/receptor.js'
import type { AreaSource, Source } from '../light/source.js'
import type { Scene } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'
import type { CandelaSeconds, FNumber, LuxSeconds, Stops } from '../units/quantity.js'
import type { BackdropView } from './backdrop-view.js'
import type { Change } from './knobs.js'

export interface ComputedSet {
  readonly plan: Plan
  readonly scene: Scene
  /** Lights that are on and whose strength is known, in the plan's order. */
  readonly lit: readonly Light[]
  /** Lights that are on and whose strength nothing in the plan tells (no power, no `meters`, no reading). */
  readonly unknown: readonly Light[]

  /** The set after changes. Strengths stay as estimated here; what does not depend on the change is shared. */
  with(...changes: readonly Change[]): ComputedSet

  source(light: string): Source | undefined
  /** What the light gives now; undefined where unknown. */
  strength(light: string): LightStrength | undefined

  /** Exposure from the lights named (`all`: every lit light and the ambient) on a receptor. Undefined where no light is known or nothing arrives. */
  exposure(receptor: Receptor, of: Of): Exposed | undefined
  /** A meter reading at a point by name, by the defaults of the language (dome, facing) unless said. */
  reading(ask: MeterAsk): MeterFigure | undefined
  /** The key reading against which rules judge: see 2-language. Undefined without a known light that it counts. */
  readonly key: MeterFigure | undefined
  /** The lights that the key reading counts. */
  readonly keyLights: readonly Light[]

  /** What the camera sees of the backdrop, metered over a grid; undefined without a backdrop in frame or a known light. */
  readonly backdropView: BackdropView | undefined

  /** Standard uncertainty of a figure in stops. */
  u(figure: Figure): number
}

/** `ambient` counts as a light of that name. */
export type Of = 'all' | readonly string[]

export interface LightStrength {
  /** On-axis far-field intensity over the exposure: cd·s (a continuous light's cd times the shutter). For the sun and the ambient: lx·s on a plane square to it. */
  readonly candelaSeconds: CandelaSeconds
  readonly u: number
  /** What it is known from. */
  readonly from: 'reading' | 'measured' | 'meters' | 'guide number' | 'metered output' | 'energy' | 'stated'
}

export interface Exposed {
  readonly luxSeconds: LuxSeconds
  /** log₂ lx·s. */
  readonly figure: Figure
  readonly byLight: ReadonlyMap<string, LuxSeconds>
}

export interface MeterAsk {
  /** A point's name or a place in metres. */
  readonly at: string | Vec3
  readonly of: Of
  readonly dome?: 'raised' | 'flat'
  /** What it faces: a light, the camera, out of the surface it lies on, a direction. */
  readonly faces?: 'camera' | 'out' | { readonly light: string } | { readonly direction: Vec3 }
}

export interface MeterFigure {
  readonly point: string
  readonly of: Of
  readonly dome: 'raised' | 'flat'
  readonly faces: string
  readonly luxSeconds: LuxSeconds
  /** At the camera's ISO, filter off: what the meter shows. */
  readonly fNumber: FNumber
  /** log₂ lx·s; compare figures by `difference`. */
  readonly figure: Figure
  /** Stops over the camera's setting; its filter and close-up loss counted. */
  readonly overCamera: Figure
  readonly byLight: ReadonlyMap<string, LuxSeconds>
}

export type { AreaSource, Stops }
