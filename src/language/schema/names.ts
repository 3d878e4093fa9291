/** Names that an author chooses, and the names that already mean something. */
import type { Schema } from './build.js'

/** Points that every plan has. Groups have besides `row-1-left`, `row-1-right` … for each row. */
export const builtInPoints = [
  'subject',
  'subject-left',
  'subject-right',
  'subject-back',
  'hair',
  'backdrop',
  'backdrop-left',
  'backdrop-right',
  'backdrop-top',
  'backdrop-bottom',
  'floor',
  'camera',
] as const

/** What a light may be there for. */
export const roles = ['key', 'fill', 'rim', 'hair', 'kicker', 'backdrop', 'effect'] as const

/** Surfaces of the room that a light may be aimed at. */
export const wallNames = ['left-wall', 'right-wall', 'front-wall', 'back-wall', 'ceiling', 'floor'] as const

/** Which way a panel or a window faces. */
export const sides = ['left', 'right', 'camera', 'backdrop', 'up', 'down'] as const

const takenByReadings = ['all', 'ambient'] as const

/** A light may be called after its role (`hair`, `backdrop`), for a light and a point are never asked for in one place. */
export const reservedForLights: readonly string[] = [
  ...takenByReadings,
  ...builtInPoints.filter((name) => !(roles as readonly string[]).includes(name)),
]

/** Points and panels share the places where one can be named (`aim`, `faces`, `focus`). */
export const reservedForPlaces: readonly string[] = [
  ...new Set([...takenByReadings, ...builtInPoints, ...wallNames, ...sides, 'light', 'level', 'row']),
]

/** A letter, then letters, digits, spaces, hyphens and underscores: safe in a pointer, a sentence and a command line. */
const spelling = '^\\p{L}(?:[\\p{L}\\p{M}\\p{N}_-]| (?=[\\p{L}\\p{N}])){0,39}$'

const chosen = (what: string, reserved: readonly string[], more: Schema = {}): Schema => ({
  type: 'string',
  pattern: spelling,
  description: `The name of a ${what}: letters, digits, spaces, hyphens and underscores, at most 40, beginning with a letter.`,
  ...(reserved.length === 0 ? {} : { not: { enum: reserved } }),
  'x-name': what,
  ...more,
})

export const nameDefinitions = {
  'light-name': chosen('light', reservedForLights),
  'panel-name': chosen('panel', reservedForPlaces),
  'point-name': chosen('point', reservedForPlaces, {
    // Groups' own points.
    allOf: [{ not: { pattern: '^row-[0-9]' } }],
  }),
  'kit-name': {
    type: 'string',
    pattern: '^\\S(?:[^\\r\\n\\t]{0,58}\\S)?$',
    'x-name': 'piece of kit',
    description: 'The name of a piece of kit: one line, at most 60 characters.',
  },
  'circuit-name': chosen('circuit', []),
} satisfies Record<string, Schema>
