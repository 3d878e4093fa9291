/** The camera: what it is, where it stands, how it is set. */
import { beginsWithLetter, choice, map, number, ref, type Schema, text, use, when, wordOr } from './build.js'

const sensor = wordOr(
  ['full frame', 'aps-c', 'four thirds'],
  'size',
  'Size of the sensor: full frame, aps-c, four thirds, or its size, width by height as the camera is held level.',
  { examples: ['full frame', 'aps-c', '44 x 33 mm'], default: 'full frame' },
)

/** What a camera is, in the plan or in the kit. */
export const cameraFacts = {
  sensor,
  sync: use(
    'shutter',
    'Sync speed: the fastest shutter speed at which the whole frame is open at once for the flash.',
    { examples: ['1/200', '1/250'], default: '1/160' },
  ),
  curtain: use(
    'time',
    'How long a shutter curtain takes to travel over the frame. Without it 0.7 to 1.0 of the sync time is taken.',
    { examples: ['4 ms', '1/250'] },
  ),
  'shutter-kind': choice(
    ['focal-plane', 'leaf', 'electronic'],
    'Kind of shutter: focal-plane (two curtains), leaf (in the lens), electronic (read line by line).',
    { default: 'focal-plane' },
  ),
  readout: use(
    'time',
    'Electronic shutter: the time that reading the whole frame takes; 0 ms reads all at once.',
    {
      examples: ['1/30', '1/60', '0 ms'],
    },
  ),
  headroom: use(
    'stops',
    'How far over a white of 100 % reflectance the camera still holds detail before a channel clips.',
    { examples: ['1/4 stop', '1/2 stop'], default: '1/4 stop' },
  ),
} satisfies Record<string, Schema>

export const cameraDefinitions = {
  'camera-place': map(
    'Where the camera stands.',
    {
      distance: use(
        'length',
        'Along the floor, from the subject to the camera, down the centre line of the set.',
        {
          examples: ['3.4 m', '8 ft'],
        },
      ),
      height: use('height', 'Height of the lens over the floor. Without it, the height of the face.', {
        examples: ['1.5 m', '20 cm over table'],
      }),
      aside: use(
        'aside',
        'How far to the side of the centre line the camera stands, camera-left or camera-right.',
        {
          examples: ['30 cm right', '1 ft left'],
        },
      ),
    },
    { required: ['distance'] },
  ),
  camera: map(
    'The camera: its lens, its place and its settings.',
    {
      body: use('kit-name', 'A camera of the kit, which says its sensor, sync speed, curtain and headroom.', {
        examples: ['main'],
      }),
      ...cameraFacts,
      lens: use('focal-length', 'Focal length as marked on the lens.', { examples: ['85 mm', '50 mm'] }),
      frame: choice(
        ['vertical', 'horizontal'],
        'How the camera is held. Without it: vertical for one person, horizontal for groups and objects.',
      ),
      at: use('camera-place', 'Where the camera stands: distance, and if need be height and aside.', {
        examples: [{ distance: '3.4 m', height: '1.5 m' }],
      }),
      aim: use(
        'target',
        'Where the camera looks: level (parallel to the floor, straight ahead) or a point.',
        {
          examples: ['level', 'subject'],
          default: 'level',
        },
      ),
      focus: wordOrName('What the focus is set on: a point, a row of the group (row 2), or a distance.', {
        examples: ['subject', 'row 2', '2.4 m'],
        default: 'subject',
      }),
      aperture: use('aperture', 'Aperture, as the camera shows it.', { examples: ['f/5.6', 'f/8'] }),
      shutter: use('shutter', 'Shutter speed, as the camera shows it.', { examples: ['1/125', '1/160'] }),
      iso: use('iso', 'ISO speed.', { examples: [100, 200] }),
      filter: use('stops', 'Neutral density filter on the lens: the stops that it takes.', {
        examples: ['3 stops'],
        default: '0 stops',
      }),
      exposure: choice(
        ['manual', 'auto-iso', 'automatic'],
        'Who sets the exposure: manual (you), auto-iso (the camera changes the ISO), automatic (it changes more).',
        { default: 'manual' },
      ),
      'white-balance': use('kelvin', 'White balance of the camera.', { examples: ['5500 K'] }),
      'held-by': choice(
        ['person', 'stand'],
        'Who holds the camera: a person stands in the light behind it, a stand hardly. Without it: a person, unless the shutter is slower than 1/60.',
      ),
    },
    { 'x-whole': { required: ['lens', 'at', 'aperture', 'shutter', 'iso'] } },
  ),
  iso: number(
    'ISO speed, a plain number.',
    { minimum: 1, maximum: 10_000_000 },
    { examples: [100, 200, 400] },
  ),
} satisfies Record<string, Schema>

function wordOrName(description: string, notes: Pick<Schema, 'examples' | 'default'>): Schema {
  return {
    ...text(description, notes),
    ...when(beginsWithLetter, ref('place-name'), ref('length')),
  }
}
