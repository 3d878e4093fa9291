/** The files themselves: plan, base, kit, room. */
import { either, list, map, named, ref, type Schema, text, use, when } from './build.js'
import { kitKeys } from './kit.js'
import { roomKeys, roomNeeds } from './room.js'

const version = (what: string): Schema => ({
  const: 1,
  description: `Version of the ${what} language; always 1.`,
  examples: [1],
})

/** A base may take a light or a panel away by setting it to nothing (null). */
const orNothing = (name: string): Schema => when({ type: 'null' }, {}, ref(name))

const planKeys = {
  plan: version('plan'),
  title: text('What the plan is called.', { examples: ['White paper, two flashes'] }),
  notes: text('Notes for people.'),
  base: use('path', 'A base file that this plan starts from; keys written here win.', {
    examples: ['../base/white.base.yaml'],
  }),
  kit: ref('kit'),
  room: either(
    'The room, or the path of a room file. Without it the set is dark and open.',
    { object: ref('room'), string: ref('path') },
    { examples: ['../rooms/front.room.yaml', { width: '4.2 m', length: '7 m', height: '2.6 m' }] },
  ),
  ambient: use('ambient', 'The light that is there with the flashes off, indoors or out.', {
    examples: [{ reads: 'f/2.8', shutter: '1/60', iso: 100 }],
  }),
  camera: ref('camera'),
  subject: ref('subject'),
  backdrop: ref('backdrop'),
  lights: named('The lights, by name.', orNothing('light'), ref('light-name'), 64),
  panels: named('Flags, reflectors, v-flats and scrims, by name.', orNothing('panel'), ref('panel-name'), 64),
  points: named(
    'Points of your own, by name, to meter and to aim at.',
    ref('placement'),
    ref('point-name'),
    200,
    { examples: [{ hands: { front: '20 cm', height: '1 m' } }] },
  ),
  wanted: ref('wanted'),
  readings: ref('readings-list'),
  accept: ref('accept-list'),
  tags: list(
    'Words to find the plan by.',
    { type: 'string', minLength: 1, maxLength: 60, description: 'A word to find the plan by.' },
    { maxItems: 100 },
    {
      examples: [['white', 'portrait']],
    },
  ),
} satisfies Record<string, Schema>

export const documentDefinitions = {
  path: {
    type: 'string',
    pattern: '\\S',
    maxLength: 1000,
    description: 'A path, relative to this file.',
    'x-name': 'path',
  },
  base: map('A base: a plan that others start from. Everything may be left out.', planKeys, {
    'x-whole': { required: ['plan', 'title', 'camera', 'subject', 'lights'] },
  }),
  'kit-file': map(
    'A kit file: the gear there is.',
    { kit: version('kit'), ...kitKeys },
    { required: ['kit', 'title'] },
  ),
  'room-file': map(
    'A room file.',
    {
      room: version('room'),
      title: text('What the room is called.', { examples: ['Back room'] }),
      ...roomKeys,
    },
    { required: ['room', ...roomNeeds] },
  ),
} satisfies Record<string, Schema>
