/**
 * One computed set, as rules, cards and pictures ask it. Everything is computed when first asked and remembered.
 * `with` gives the set after a change, with the lights' strengths as they were estimated before it.
 */

import type { Light, Plan } from '../language/plan.js'
import type { LightColour } from '../light/colour/light-colour.js'
import type { Apart, Mix } from '../light/colour/mix.js'
import type { Figure } from '../light/figure.js'
import type { Receptor } from '../light/receptor.js'
import type { Source } from '../light/source.js'
import type { Strength } from '../light/strength.js'
import type { Scene } from '../scene/scene.js'
import type { Vec3 } from '../scene/vector.js'
import type { FNumber, LuxSeconds, Stops } from '../units/quantity.js'
import type { BackdropView } from './backdrop-view.js'
import type { ThrownBy } from './bounced.js'
import type { Change } from './knobs.js'
import type { ShadowSeen } from './shadow-seen.js'
import type { Work } from './work.js'
import type { Haze, WrapSide } from './wrap-and-haze.js'

export interface ComputedSet {
  readonly plan: Plan
  readonly scene: Scene
  /** Lights that are on and whose strength is known, in the plan's order. */
  readonly lit: readonly Light[]
  /** Lights that are on and whose strength nothing in the plan tells (no power, no `meters`, no reading). */
  readonly unknown: readonly Light[]
  /** Names of all that gives light: lit lights, modelling lamps, the ambient. */
  readonly giving: readonly string[]

  /**
   * The set after changes. Strengths stay as estimated here, but that a light known by what it is to meter goes on
   * metering that wherever it goes; what does not depend on the change is shared.
   *
   * @throws WorkSpent where the change moves anything and `work` allows no further move
   */
  with(...changes: readonly Change[]): ComputedSet
  /**
   * The same by quick light: what comes straight, and what the backdrop and panels throw back of it once. The room and
   * all further bounces are left out; lights that are to meter something are turned so that they do. For solving: what
   * is found holds when the set itself bears it out.
   */
  readonly quick: ComputedSet

  /**
   * The set of a plan that differs in nothing but powers, readings and what lights are to meter: strengths are estimated
   * anew from what it says, the ways of the light are kept.
   */
  restated(plan: Plan): ComputedSet

  source(light: string): Source | undefined
  /** What the light gives now; undefined where unknown. */
  strength(light: string): LightStrength | undefined

  /**
   * Exposure from the lights named (`all`: every lit light, modelling lamps and the ambient) on a receptor, past what
   * stands between, by all ways or by those named. Undefined where no light is known or nothing arrives.
   */
  exposure(receptor: Receptor, of: Of, ways?: readonly LightPath[]): Exposed | undefined
  /** The same, were nothing in the way of what comes straight from the lights. Bounce stays as it is. */
  unshaded(receptor: Receptor, of: Of): Exposed | undefined
  /** As `exposure`, were no person in the way, subject or operator: panels and gear go on shading. */
  unshadowed(receptor: Receptor, of: Of): Exposed | undefined
  /** The colour of one light by its name among `giving`; undefined where nothing tells it. */
  lightColour(light: string): LightColour | undefined
  /**
   * The colour of the light on a receptor, or where a meter would be held, as it mixes there. Undefined where no light
   * of known colour arrives.
   */
  colour(where: Receptor | Omit<MeterAsk, 'of'>, of: Of, how?: ColourHow): Mix | undefined
  /** What surfaces throw where a meter would be held, by the side that threw it there last, lx·s. */
  thrown(ask: MeterAsk): readonly ThrownBy[]
  /** How far the first is from the second, and one standard deviation of that, mired. */
  colourApart(a: Mix, b: Mix): Apart & { readonly u: number }
  /** What hides how much of one light's direct light on a receptor: shares of what would arrive, by the solid's name. */
  hides(receptor: Receptor, light: string): ReadonlyMap<string, number>
  /**
   * A meter reading at a point by name, by the defaults of the language (dome, facing) unless said. Whoever stands
   * behind the camera for the picture holds the meter: that they stand in a light is not in it.
   */
  reading(ask: MeterAsk): MeterFigure | undefined
  /** The key reading against which rules judge: see 2-language. Undefined without a known light that it counts. */
  readonly key: MeterFigure | undefined
  /** The lights that the key reading counts. */
  readonly keyLights: readonly Light[]

  /** What the camera sees of the backdrop, metered over a grid; undefined without a backdrop in frame or a known light. */
  readonly backdropView: BackdropView | undefined

  /** What the backdrop throws back round the subject's outline, side by side. */
  readonly wrap: readonly WrapSide[]
  /** The veil that the bright field lays over the picture; undefined where no light is known. */
  readonly haze: Haze | undefined

  /** Shadows of the subject on the backdrop in frame, those that do not show too; see `margin`. */
  readonly shadows: readonly ShadowSeen[]
  /** The same without what surfaces add, in which they are at their deepest: soon worked out, for trying many sets. */
  readonly unfilledShadows: readonly ShadowSeen[]

  /** Standard uncertainty of a figure in stops: √(∇ᵀΣ∇ + geometry² + rendering²), Σ as all readings together leave it. */
  u(figure: Figure): number
  /** The same once this incident reading is taken too, at today's settings, whatever it shows. Never more than `u`. */
  uIf(figure: Figure, candidate: MeterAsk): number

  /**
   * The plan's readings, each held against all that is known without it. In a set that `with` made, as in the set that
   * the strengths were estimated from.
   */
  readonly readings: readonly HeldReading[]
  /** Readings that tell nothing of the strengths, and why. */
  readonly unusedReadings: readonly UnusedReading[]

  /** What was computed for this set and all that `with` made of it. */
  readonly work: Work
}

/** A reading against what ratings, calibrations and all other readings predict for it. */
export interface HeldReading {
  /** In the plan's `readings`. */
  readonly index: number
  /** The lights that it is of, by name; of `ambient` also the sun and windows, of `all` also modelling lamps. */
  readonly lights: readonly string[]
  /** What the meter showed; for a test frame what an incident meter would have, flat on the surface, at the reading's ISO. */
  readonly read: FNumber
  /** At the same settings. */
  readonly predicted: FNumber
  /** Read over predicted. */
  readonly difference: Stops
  /** One standard deviation of the difference, stops: the reading's own, what is predicted from, geometry. */
  readonly u: number
}

export interface UnusedReading {
  /** In the plan's `readings`. */
  readonly index: number
  readonly because:
    | 'unknown point'
    /** Read off a surface whose reflectance the plan does not say. */
    | 'unknown surface'
    /** A test frame that is clipped there says only "at most" or "at least". */
    | 'records black'
    | 'records white'
    /** A light that it counts is off today. */
    | 'light is off'
    /** A light that it counts has no source. */
    | 'light not computed'
    | 'no light arrives'
    | 'too many readings'
}

export interface ColourHow {
  /** What surfaces throw back takes on no colour of theirs. */
  readonly grey?: true
  /** No person is in the way of what a receptor gets. */
  readonly unshadowed?: true
}

/** The ambient counts as a light of the name `ambient`, a modelling lamp as `<light> modelling lamp`. */
export type Of = 'all' | readonly string[]

/**
 * On-axis far-field intensity over the exposure: cd·s (a continuous light's cd times the shutter). For the sun lx·s on a
 * plane square to it, for the ambient on a level plane in the open. `from`: what it is known from.
 */
export type LightStrength = Strength

/** Straight from the light, or last from the room's surfaces, from panels, from the backdrop with its sweep. */
export type LightPath = 'direct' | 'room' | 'panels' | 'backdrop'

export interface Exposed {
  readonly luxSeconds: LuxSeconds
  /** log₂ lx·s. */
  readonly figure: Figure
  readonly byLight: ReadonlyMap<string, LuxSeconds>
  readonly byPath: ByPath
}

export type ByPath = Readonly<Record<LightPath, LuxSeconds>>

export interface MeterAsk {
  /** A point's name or a place in metres. */
  readonly at: string | Vec3
  readonly of: Of
  readonly dome?: 'raised' | 'flat'
  /** What it faces: a light, the camera, out of the surface it lies on, a direction. */
  readonly faces?: 'camera' | 'out' | { readonly light: string } | { readonly direction: Vec3 }
  /** Who shades nothing meanwhile: the operator, and at points that are not on the subject the subject too, unless said. */
  readonly aside?: 'operator' | 'people'
  /** Lights that a hand keeps off the dome: of them only what surfaces throw back arrives. */
  readonly shaded?: readonly string[]
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
  /**
   * Stops over the camera's setting; its filter and close-up loss counted. An absolute tone: it carries the camera's
   * rendering, which cancels in the difference of two.
   */
  readonly overCamera: Figure
  readonly byLight: ReadonlyMap<string, LuxSeconds>
  readonly byPath: ByPath
}
