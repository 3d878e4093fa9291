/** The room, and the light that is there without any of the set's own. */
import { choice, duv, either, map, named, oneOfKeys, ref, type Schema, use, when, written } from './build.js'

const wallSides = {
  left: use('surface', 'The camera-left wall.', { examples: ['white paint'] }),
  right: use('surface', 'The camera-right wall.', { examples: ['black curtain'] }),
  front: use('surface', 'The wall behind the camera.', { examples: [0.5] }),
  back: use('surface', 'The wall behind the backdrop.', { examples: [0.5] }),
} satisfies Record<string, Schema>

/** The keys of `room` in a plan, and of a room file. */
export const roomKeys = {
  width: use('length', 'Width of the room, across the set.', { examples: ['4.2 m', '14 ft'] }),
  length: use('length', 'Length of the room, along the set.', { examples: ['7 m', '23 ft'] }),
  height: use('length', 'Height of the ceiling.', { examples: ['2.6 m', '8 ft 6 in'] }),
  'left-wall': use(
    'length',
    'From the centre line of the set to the camera-left wall. Without it, the set stands in the middle.',
    { examples: ['2.1 m'] },
  ),
  'behind-backdrop': use('length', 'From the backdrop to the wall behind it.', {
    examples: ['0.4 m'],
    default: '40 cm',
  }),
  walls: either(
    'The walls: one surface for all, or one for each side.',
    {
      object: {
        ...when(
          oneOfKeys('reflectance', 'colour', 'name'),
          ref('surface'),
          map('A surface for each wall.', wallSides),
        ),
      },
      number: ref('surface'),
      string: ref('surface'),
    },
    { examples: ['white paint', { left: 'white paint', right: 'black curtain' }], default: 0.5 },
  ),
  ceiling: use('surface', 'The ceiling.', { examples: ['white paint'], default: 'white ceiling' }),
  floor: use('surface', 'The floor.', { examples: ['grey carpet', 0.3], default: 0.3 }),
  mains: use(
    'mains',
    'Frequency of the mains, on which lamps flicker. Without it, by the voltage of the circuits: 60 Hz under 130 V, 50 Hz over 200 V.',
    { examples: ['50 Hz', '60 Hz'] },
  ),
  circuits: named(
    "The room's electrical circuits, by name.",
    map(
      'A circuit.',
      {
        voltage: use('volts', 'Mains voltage.', { examples: ['230 V', '120 V'] }),
        breaker: use('amperes', 'What its breaker is rated for.', { examples: ['16 A', '15 A'] }),
      },
      { required: ['voltage', 'breaker'] },
    ),
    ref('circuit-name'),
    40,
    { examples: [{ a: { voltage: '230 V', breaker: '16 A' } }] },
  ),
} satisfies Record<string, Schema>

export const roomNeeds = ['width', 'length', 'height'] as const

export const roomDefinitions = {
  room: map('The room: its size and what its surfaces are like.', roomKeys, {
    'x-whole': { required: roomNeeds },
  }),
  ambient: map(
    'The light that is there with the flashes off, metered incident at the subject.',
    {
      reads: use('aperture', 'What the meter read.', { examples: ['f/2.8'] }),
      shutter: use('shutter', 'Shutter time set on the meter.', { examples: ['1/60'] }),
      iso: use('iso', 'ISO set on the meter.', { examples: [100] }),
      colour: use('kelvin', 'Colour temperature of the light.', { examples: ['3000 K', '5600 K'] }),
      flicker: choice(
        ['none', 'mains'],
        'Whether the light flickers with the mains, as tubes on plain ballasts and cheap lamps do.',
        { examples: ['mains'] },
      ),
      duv: duv(
        'How far it lies from the black-body locus, in the 1960 diagram: green is over zero, magenta under. An office lit by fluorescent tubes may be 0.012.',
      ),
    },
    { required: ['reads', 'shutter', 'iso'], allOf: [when(written('duv'), { required: ['colour'] })] },
  ),
} satisfies Record<string, Schema>
