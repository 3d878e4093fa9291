/**
 * In what order to meter: each light alone where it does its job, one trigger group after the other, so that nobody runs
 * between stands; then the lights of the key reading together, which set the camera. Key first, backdrop last among the
 * lights: common practice, no source.
 */
import type { Light, Role } from '../language/plan.js'
import type { ComputedSet, MeterAsk, MeterFigure } from '../set/computed-set.js'
import { rolePoint } from '../set/role-point.js'

export interface MeterStep {
  /** Trigger, group, channel: `radio A`, `radio A, channel 3`, `cable`; undefined where the plan does not say. */
  readonly fires: string | undefined
  /** Lights that are fired with it and are to be switched off meanwhile. */
  readonly without: readonly string[]
  readonly figure: MeterFigure
  readonly u: number
  /** What it is for, beyond that light: the key reading sets the camera. */
  readonly sets: 'light' | 'camera' | 'nothing'
}

const turn: readonly Role[] = ['key', 'fill', 'hair', 'rim', 'kicker', 'effect', 'backdrop']

export const meterOrder = (set: ComputedSet): readonly MeterStep[] => {
  const step = (
    ask: MeterAsk,
    fires: string | undefined,
    without: readonly string[],
    sets: MeterStep['sets'],
  ): readonly MeterStep[] => {
    const figure = set.reading(ask)
    return figure === undefined ? [] : [{ fires, without, figure, u: set.u(figure.figure), sets }]
  }
  const groups = groupsOf(set.lit)
  const keyNames = set.keyLights.filter((light) => set.lit.includes(light)).map(({ name }) => name)
  return [
    ...(set.plan.ambient === undefined ? [] : step(ambient, undefined, [], 'light')),
    ...groups.flatMap(({ fires, lights }) =>
      lights.flatMap((light) =>
        step(
          { at: light.meters?.at ?? rolePoint(light), of: [light.name] },
          fires,
          fires === undefined ? [] : lights.filter((one) => one !== light).map(({ name }) => name),
          'light',
        ),
      ),
    ),
    ...(keyNames.length === 0
      ? []
      : step({ at: 'subject', of: keyNames, dome: 'raised', faces: 'camera' }, undefined, [], 'camera')),
    ...(set.plan.backdrop === undefined || set.plan.backdrop.sky !== undefined || set.lit.length < 2
      ? []
      : step({ at: 'backdrop', of: 'all' }, undefined, [], 'nothing')),
  ]
}

/** With the flashes off. */
const ambient: MeterAsk = { at: 'subject', of: ['ambient'], faces: 'camera' }

interface Group {
  readonly fires: string | undefined
  readonly lights: Light[]
}

/** Lights by what fires them; those of which nothing says so stand alone. In the turn of their foremost role. */
const groupsOf = (lit: readonly Light[]): readonly Group[] => {
  const inTurn = [...lit].sort((a, b) => turn.indexOf(a.role) - turn.indexOf(b.role))
  const groups: Group[] = []
  for (const light of inTurn) {
    const fires = firedBy(light)
    const same = fires === undefined ? undefined : groups.find((group) => group.fires === fires)
    if (same === undefined) groups.push({ fires, lights: [light] })
    else same.lights.push(light)
  }
  return groups
}

/** A basic radio and a radio with groups of the same name are one system as far as the plan says. */
const firedBy = ({ trigger }: Light): string | undefined => {
  if (trigger === undefined) return undefined
  const { by, group, channel } = trigger
  return [
    group === undefined ? by : `${by} ${group}`,
    ...(channel === undefined ? [] : [`channel ${channel}`]),
  ].join(', ')
}
