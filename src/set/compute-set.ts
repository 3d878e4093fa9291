/** Composes scene, light and picture into one set that computes what it is asked, once. */
import type { Light, Plan } from '../language/plan.js'
import type { LightColour } from '../light/colour/light-colour.js'
import { type Apart, colourApart, type Mix, uOfColours } from '../light/colour/mix.js'
import { fNumberFor, luxSecondsFor, luxSecondsOfReflected, stopsOverSetting } from '../light/exposure.js'
import { difference, type Figure } from '../light/figure.js'
import { type Candidate, uncertainties, uncertainty, uncertaintyWith } from '../light/how-sure.js'
import type { Receptor } from '../light/receptor.js'
import type { Source } from '../light/source.js'
import { lazy, lazyOf } from '../scene/lazy.js'
import type { Scene } from '../scene/scene.js'
import type { FNumber, Iso, LuxSeconds, Stops } from '../units/quantity.js'
import { applyChanges } from './apply-change.js'
import type { BackdropView } from './backdrop-view.js'
import type { ThrownBy } from './bounced.js'
import { cameraSetting } from './camera-setting.js'
import { colourOf, mixedAt } from './colour-at.js'
import type {
  ByPath,
  ColourHow,
  ComputedSet,
  Exposed,
  HeldReading,
  LightPath,
  LightStrength,
  MeterAsk,
  MeterFigure,
  Of,
  UnusedReading,
} from './computed-set.js'
import { exposed, type Ways } from './exposed.js'
import { hazeOf } from './haze.js'
import type { Change, Knob } from './knobs.js'
import { shareScene } from './plan-scene.js'
import { incidentU, kindCause } from './read-reading.js'
import type { MeterPlace } from './receptor-at.js'
import type { ShadowSeen } from './shadow-seen.js'
import { shadowsOf } from './shadows.js'
import { carriedKnowledge, estimatedKnowledge, type Knowledge } from './strengths.js'
import { ambientName, makeTransport, modellingName, type Probe, type Transport } from './transport.js'
import { viewBackdrop } from './view-backdrop.js'
import { spend, type Work } from './work.js'
import { wrapSides } from './wrap.js'
import type { Haze, WrapSide } from './wrap-and-haze.js'

export const computeSet = (plan: Plan): ComputedSet => {
  const transport = makeTransport(plan)
  return new LazySet(plan, transport, estimatedKnowledge(transport))
}

/** Knobs that turn no geometry: what is known of the transport holds. */
const withoutGeometry: readonly Knob['knob'][] = ['strength', 'aperture', 'shutter', 'iso', 'filter']

/** A class and not a record of functions, because a what-if makes one: a solve makes dozens. */
class LazySet implements ComputedSet {
  constructor(
    readonly plan: Plan,
    private readonly transport: Transport,
    readonly knowledge: Knowledge,
  ) {}

  get scene(): Scene {
    return this.transport.scene
  }
  get work(): Work {
    return this.transport.work
  }

  strength(light: string): LightStrength | undefined {
    return this.knowledge.strength(light)
  }
  get readings(): readonly HeldReading[] {
    return this.knowledge.readings()
  }
  get unusedReadings(): readonly UnusedReading[] {
    return this.knowledge.unused
  }

  private knownOn: readonly Light[] | undefined
  private get on(): readonly Light[] {
    this.knownOn ??= [...this.plan.lights.values()].filter((light) => light.on)
    return this.knownOn
  }
  private knownLit: readonly Light[] | undefined
  get lit(): readonly Light[] {
    this.knownLit ??= this.on.filter((light) => this.strength(light.name) !== undefined)
    return this.knownLit
  }
  get unknown(): readonly Light[] {
    return this.on.filter((light) => this.strength(light.name) === undefined)
  }

  private knownGiving: readonly string[] | undefined
  get giving(): readonly string[] {
    this.knownGiving ??= [
      ...this.lit.map((light) => light.name),
      ...this.on
        .filter((light) => light.modelling && this.strength(modellingName(light.name)) !== undefined)
        .map((light) => modellingName(light.name)),
      ...(this.strength(ambientName) === undefined ? [] : [ambientName]),
    ]
    return this.knownGiving
  }

  /** Rules ask the same moves of gear, and each costs light anew: other sets by their changes. */
  private readonly moved = new Map<string, ComputedSet>()
  with(...changes: readonly Change[]): ComputedSet {
    const same = changes.every(({ knob }) => withoutGeometry.includes(knob.knob))
    if (same) return this.after(changes, () => this.transport)
    const key = JSON.stringify(changes)
    let set = this.moved.get(key)
    if (set === undefined) {
      spend(
        this.work,
        this.transport.isQuick ? 'quick move' : 'move',
        this.plan.lights.size,
        this.scene.solids.length,
      )
      set = this.after(changes, (plan) => this.transport.moved(plan))
      this.moved.set(key, set)
    }
    return set
  }
  private readonly knownQuick = lazy((): ComputedSet => {
    const transport = this.transport.quick()
    return transport === this.transport
      ? this
      : new LazySet(this.plan, transport, carriedKnowledge(this, transport, this.plan, []))
  })
  get quick(): ComputedSet {
    return this.knownQuick()
  }
  private after(changes: readonly Change[], transportOf: (plan: Plan) => Transport): ComputedSet {
    const plan = applyChanges(this.plan, changes)
    const transport = transportOf(plan)
    return new LazySet(plan, transport, carriedKnowledge(this, transport, plan, changes))
  }

  restated(plan: Plan): ComputedSet {
    shareScene(plan, this.plan)
    // Quick light is for comparing, and readings are no comparisons.
    const transport = this.transport.isQuick ? makeTransport(plan) : this.transport.moved(plan)
    return new LazySet(plan, transport, estimatedKnowledge(transport))
  }

  source(light: string): Source | undefined {
    return this.transport.source(light)
  }

  exposure(receptor: Receptor, of: Of, ways?: readonly LightPath[]): Exposed | undefined {
    return this.exposed(this.transport.probe(receptor), of, ways)
  }
  unshaded(receptor: Receptor, of: Of): Exposed | undefined {
    return this.exposed(this.transport.probe(receptor), of, 'unshaded')
  }
  unshadowed(receptor: Receptor, of: Of): Exposed | undefined {
    return this.exposed(this.transport.probe(receptor, { aside: 'people' }), of)
  }
  private readonly colours = new Map<string, LightColour | undefined>()
  lightColour(light: string): LightColour | undefined {
    if (!this.colours.has(light)) this.colours.set(light, colourOf(this.plan, light))
    return this.colours.get(light)
  }
  colour(where: Receptor | Omit<MeterAsk, 'of'>, of: Of, how: ColourHow = {}): Mix | undefined {
    const lights = of === 'all' ? this.giving : of
    const { strength } = this.knowledge
    const colours = (light: string) => this.lightColour(light)
    if ('normal' in where) {
      const probe = this.transport.probe(where, how.unshadowed === true ? { aside: 'people' } : undefined)
      return mixedAt(probe, lights, strength, colours, [], how)
    }
    const probe = this.transport.asked({ ...where, of })?.probe
    return probe && mixedAt(probe, lights, strength, colours, where.shaded ?? [], how)
  }
  thrown(ask: MeterAsk): readonly ThrownBy[] {
    const probe = this.transport.asked(ask)?.probe
    const lights = ask.of === 'all' ? this.giving : ask.of
    return lights.flatMap((light) => {
      const strength = this.knowledge.strength(light)?.candelaSeconds ?? 0
      if (probe === undefined || strength === 0) return []
      return probe.thrown(light).map((one) => ({ ...one, exposure: one.exposure * strength }))
    })
  }
  colourApart(a: Mix, b: Mix): Apart & { readonly u: number } {
    const byStrengths = difference(miredFigure(a), miredFigure(b))
    return { ...colourApart(a, b), u: Math.hypot(uOfColours(a.causes, b.causes), this.u(byStrengths)) }
  }
  hides(receptor: Receptor, light: string): ReadonlyMap<string, number> {
    return this.transport.probe(receptor).hides(light)
  }

  private exposed(probe: Probe, of: Of, ways?: Ways, shaded?: readonly string[]): Exposed | undefined {
    return exposed(probe, of === 'all' ? this.giving : of, this.knowledge.strength, ways, shaded)
  }

  reading(ask: MeterAsk): MeterFigure | undefined {
    const asked = this.transport.asked(ask)
    const got = asked && this.exposed(asked.probe, ask.of, undefined, ask.shaded)
    if (asked === undefined || got === undefined) return undefined
    return new Metered(ask.of, asked.place, got, this.plan.camera.iso, (figure) => this.overCamera(figure))
  }

  private settingStops: number | undefined
  /** A figure in log₂ lx·s as stops over the camera's setting: an absolute tone. */
  private overCamera(figure: Figure): Figure {
    const { stops, gradient, variance } = figure
    return { stops: (stops + this.unitOverCamera) as Stops, gradient, variance, rendering: 1 }
  }
  /** One lx·s over the camera's setting. */
  private get unitOverCamera(): number {
    this.settingStops ??=
      stopsOverSetting(1 as LuxSeconds, cameraSetting(this.plan, this.scene)) + this.knowledge.rendering()
    return this.settingStops
  }

  get keyLights(): readonly Light[] {
    return this.on.filter((light) => light.role === 'key' || light.role === 'fill')
  }
  private readonly knownKey = lazy(() => this.readKey())
  get key(): MeterFigure | undefined {
    return this.knownKey()
  }
  /** A key reading without its key would be the fill's: none is better than that. */
  private readKey(): MeterFigure | undefined {
    const lights = this.keyLights
    return lights.some((light) => light.role === 'key' && this.strength(light.name) === undefined)
      ? undefined
      : this.reading({
          at: 'subject',
          of: lights.map((light) => light.name),
          dome: 'raised',
          faces: 'camera',
        })
  }

  private readonly knownView = lazy(() => this.view())
  get backdropView(): BackdropView | undefined {
    return this.knownView()
  }
  private view(): BackdropView | undefined {
    const { grid } = this.transport
    const { backdrop } = this.plan
    if (grid === undefined || backdrop === undefined) return undefined
    const sky = skyOver(this.plan)
    return viewBackdrop(grid, backdrop.surface.reflectance, (place) => {
      const figure = sky ?? this.exposed(this.transport.onBackdrop(place), 'all')?.figure
      return figure && this.overCamera(figure)
    })
  }

  private readonly knownWrap = lazy(() => wrapSides(this))
  get wrap(): readonly WrapSide[] {
    return this.knownWrap()
  }
  private readonly knownHaze = lazy(() => hazeOf(this, 2 ** this.unitOverCamera))
  get haze(): Haze | undefined {
    return this.knownHaze()
  }

  private readonly knownShadows = lazy(() => shadowsOf(this, 2 ** this.unitOverCamera))
  get shadows(): readonly ShadowSeen[] {
    return this.knownShadows()
  }

  private readonly knownUnfilled = lazy(() => shadowsOf(this, 2 ** this.unitOverCamera, false))
  get unfilledShadows(): readonly ShadowSeen[] {
    return this.knownUnfilled()
  }

  u(figure: Figure): number {
    return uncertainty(figure, this.knowledge.parts, this.knowledge.covariance)
  }

  uIf(figure: Figure, ask: MeterAsk): number {
    const candidate = this.candidateOf(ask)
    return candidate === undefined
      ? this.u(figure)
      : uncertaintyWith(figure, candidate, this.knowledge.parts, this.knowledge.covariance)
  }
  /** One reading is weighed against all figures in turn. */
  private readonly candidateOf = lazyOf((ask: MeterAsk): Candidate | undefined => {
    const reading = this.reading(ask)
    if (reading === undefined) return undefined
    const { own: u, byLight } = incidentU(reading.dome)
    const shared = [...reading.figure.gradient].map(([light, share]) => ({
      entry: kindCause(light),
      u: share * byLight,
    }))
    const [lone] = reading.figure.gradient.size === 1 ? reading.figure.gradient.keys() : []
    const settles = lone !== undefined && !this.knowledge.settled(lone)
    return { figure: reading.figure, shared, u, settles }
  })
}

/** What a mixture owes to the lights' strengths, in mired. */
const miredFigure = ({ mired, gradient }: Mix): Figure => ({
  stops: mired as number as Stops,
  gradient,
  variance: 0,
  rendering: 0,
})

/** What is asked of it is worked out then: most readings are asked for one thing. */
class Metered implements MeterFigure {
  private knownOver: Figure | undefined
  readonly luxSeconds: LuxSeconds

  constructor(
    readonly of: Of,
    private readonly place: MeterPlace,
    private readonly got: Exposed,
    private readonly iso: Iso,
    private readonly over: (figure: Figure) => Figure,
  ) {
    this.luxSeconds = got.luxSeconds
  }

  get point(): string {
    return this.place.point
  }
  get dome(): 'raised' | 'flat' {
    return this.place.dome
  }
  get faces(): string {
    return this.place.faces
  }
  get fNumber(): FNumber {
    return fNumberFor(this.luxSeconds, this.iso)
  }
  get figure(): Figure {
    return this.got.figure
  }
  get overCamera(): Figure {
    this.knownOver ??= this.over(this.got.figure)
    return this.knownOver
  }
  get byLight(): ReadonlyMap<string, LuxSeconds> {
    return this.got.byLight
  }
  get byPath(): ByPath {
    return this.got.byPath
  }
}

/**
 * A sky is as bright as it was metered, whatever the lights do: as the exposure that a surface of the backdrop's own
 * reflectance would need to look like it. An incident reading is that of the light on such a surface.
 */
const skyOver = ({ backdrop, camera }: Plan): Figure | undefined => {
  const sky = backdrop?.sky
  if (backdrop === undefined || sky === undefined) return undefined
  const metered =
    sky.kind === 'reflected'
      ? luxSecondsOfReflected(sky.reads, sky.iso, backdrop.surface.reflectance)
      : luxSecondsFor(sky.reads, sky.iso)
  return {
    stops: Math.log2((metered * camera.shutter) / sky.shutter) as Stops,
    gradient: new Map(),
    variance: uncertainties.reflectedReading ** 2,
    rendering: 0,
  }
}
