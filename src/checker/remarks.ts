/** Lines that say how the light of this plan was computed, and what was left out of it. */
import type { Plan } from '../language/plan.js'
import type { Words } from '../rules/words.js'
import type { ComputedSet, UnusedReading } from '../set/computed-set.js'

export const remarksOn = (set: ComputedSet, words: Words): readonly string[] => {
  const { plan } = set
  const on = [...plan.lights.values()].filter((light) => light.on)
  const flash = on.some(({ unit }) => unit.kind === 'flash')
  return [
    ...(plan.room === undefined ? ['dark and open: the plan states no room'] : []),
    ...(flash && plan.camera.shutterKind === 'focal-plane' && !plan.places.stated('/camera/sync')
      ? [`sync taken as ${words.shutter(plan.camera.sync)}: the plan states none`]
      : []),
    ...set.unusedReadings.map((reading) => unusedReading(plan, reading)),
  ]
}

const unusedReading = (plan: Plan, { index, because }: UnusedReading): string => {
  const { line } = plan.places.of(`/readings/${index}`)
  return `the reading in line ${line} is not used: ${reasons[because]}`
}

const reasons: Readonly<Record<UnusedReading['because'], string>> = {
  'unknown point': 'what it names is not in the set',
  'unknown surface': 'nothing says how much the surface reflects',
  'records black': 'a frame that is black there only says "at most"',
  'records white': 'a frame that is white there only says "at least"',
  'light is off': 'a light that it counts is off',
  'light not computed': 'a light that it counts is not computed',
  'no light arrives': 'none of its light arrives there, as far as it is computed',
  'too many readings': 'so many readings are more than are used',
}

/** What makes the figures of a plan wrong in one direction; it belongs beside every verdict on them. */
export const caveatsOn = ({ lights, room }: Plan): readonly string[] =>
  room !== undefined
    ? []
    : [...lights.values()].flatMap(({ on, name, aim, role }) => {
        const at =
          aim.at === 'ceiling'
            ? 'the ceiling'
            : aim.at === 'wall' && role !== 'backdrop'
              ? `the ${aim.wall.replace('-', ' ')}`
              : undefined
        return on && at !== undefined
          ? [`${name} is aimed at ${at}, and the plan states no room: its figures are too low`]
          : []
      })

/** What the plan states and no rule is held against yet, so that silence is not taken for consent. */
export const notJudgedIn = ({ room, lights, subject }: Plan): readonly string[] => [
  ...((room?.circuits.size ?? 0) > 0 ? ['what hangs on room.circuits'] : []),
  ...([...lights.values()].some(({ stand }) => stand !== undefined) ? ['whether stands and booms tip'] : []),
  ...(subject.age === undefined ? [] : ['cautions for subject.age']),
]
