/** Where things stand, where they are aimed, which way they face. */
import {
  alone,
  beginsWithLetter,
  either,
  map,
  oneOfKeys,
  ref,
  type Schema,
  text,
  use,
  when,
  written,
} from './build.js'
import { builtInPoints, sides, wallNames } from './names.js'

const offsets = {
  left: use('length', 'So far to camera-left of the subject.', { examples: ['1.5 m'] }),
  right: use('length', 'So far to camera-right of the subject.', { examples: ['1.5 m'] }),
  front: use('length', 'So far in front of the subject, toward the camera.', { examples: ['20 cm'] }),
  behind: use('length', 'So far behind the subject, toward the backdrop.', { examples: ['60 cm'] }),
  'before-backdrop': use('length', 'So far in front of the backdrop, toward the camera.', {
    examples: ['1.5 m'],
  }),
} satisfies Record<string, Schema>

const height = use('height', 'Height over the floor, or over the table that the object stands on.', {
  examples: ['2 m', '20 cm over table'],
})

const tape = {
  angle: use(
    'sided-angle',
    "Bearing at the subject, seen from above: 0 is straight toward the camera's end of the set, left and right as seen from there.",
    { examples: ['35 deg left', '150 deg right'] },
  ),
  distance: use(
    'length',
    "By tape, from the subject's face (an object's middle) to the middle of the light's front.",
    {
      examples: ['1.4 m', '4 ft 6 in'],
    },
  ),
  height,
  up: use('angle', 'Elevation over the level of the face, in place of a height.', { examples: ['30 deg'] }),
} satisfies Record<string, Schema>

export const placeDefinitions = {
  placement: map(
    'A place: by angle, distance and height from the subject, or by offsets from it (left or right, front or behind, height).',
    { ...tape, ...offsets },
    {
      examples: [
        { angle: '35 deg left', distance: '1.4 m', height: '2 m' },
        { left: '1.5 m', 'before-backdrop': '1.5 m', height: '1.5 m' },
      ],
      allOf: [
        alone('angle', Object.keys(offsets)),
        alone('distance', Object.keys(offsets)),
        alone('up', [...Object.keys(offsets), 'height']),
        alone('left', ['right']),
        alone('front', ['behind', 'before-backdrop']),
        alone('behind', ['before-backdrop']),
        when(written('distance'), { required: ['angle'] }),
      ],
      ...oneOfKeys('angle', ...Object.keys(offsets)),
    },
  ),
  'light-place': either("The place of a light's front, or `camera` for a flash on the camera.", {
    object: ref('placement'),
    string: { enum: ['camera'] },
  }),
  /** Anything with a place that is named: a point or a panel. Whether it exists is asked when the plan is put together. */
  'place-name': {
    ...text('A point: built in or one of `points`.', { examples: [...builtInPoints] }),
    pattern: '^\\p{L}',
    maxLength: 60,
  },
  target: {
    ...text(
      'Something to aim at: a point, a panel, a wall (`left-wall`, `right-wall`, `front-wall`, `back-wall`, `ceiling`, `floor`), or `ceiling above` a point.',
      { examples: [...builtInPoints, 'ceiling above subject', ...wallNames] },
    ),
    pattern: '^\\p{L}',
    maxLength: 80,
  },
  aim: either('What the light is aimed at, and how far it is feathered off it.', {
    object: map(
      'An aim off the target.',
      {
        at: use('target', 'What the light is aimed at before it is feathered.', { examples: ['subject'] }),
        feather: use('feather', "How far the light's axis is turned off the target, and to which side.", {
          examples: ['15 deg towards camera', '10 deg towards backdrop'],
        }),
      },
      { required: ['at'] },
    ),
    string: ref('target'),
  }),
  facing: {
    ...text('Which way the front faces: a side of the set, a point, or an angle seen from above.', {
      examples: [...sides, 'subject', '30 deg left'],
    }),
    ...when(beginsWithLetter, ref('place-name'), ref('sided-angle')),
  },
} satisfies Record<string, Schema>
