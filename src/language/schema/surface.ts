/** What things are made of, as far as light is concerned: backdrop, walls, panels, tables; and the backdrop itself. */

import { colourNames } from '../catalogue/colours.js'
import { surfaceNames } from '../catalogue/surfaces.js'
import {
  alone,
  choice,
  either,
  map,
  number,
  oneOfKeys,
  type Schema,
  text,
  use,
  when,
  written,
} from './build.js'

const reflectance = number(
  'Share of the light that the surface gives back, 0 (black) to 1.',
  { minimum: 0, maximum: 1 },
  { examples: [0.88, 0.18] },
)

export const finishes = ['matte', 'satin', 'glossy'] as const

export const surfaceDefinitions = {
  colour: {
    type: 'string',
    description: 'A colour by name, or an sRGB code in quotes.',
    examples: [...colourNames, '#2040a0'],
    ...when(
      { pattern: '^#' },
      { pattern: '^#(?:[0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})$' },
      { enum: [...colourNames] },
    ),
  },
  surface: either('A surface by name, by its reflectance alone, or by reflectance and colour.', {
    object: map(
      'A surface by its measured facts.',
      {
        name: text(
          'What the surface is called in the output. The name of a surface that is built in, or of a backdrop of the kit, brings its figures; what is written besides goes before them.',
          { examples: ['oak table', 'wooden floor'] },
        ),
        reflectance,
        colour: use('colour', 'Its colour under white light.', { examples: ['blue', '#2040a0'] }),
        finish: choice(finishes, 'How it shines. A glossy table, floor or wall mirrors lights.', {
          examples: ['glossy'],
          default: 'matte',
        }),
      },
      { ...oneOfKeys('reflectance', 'colour', 'name') },
    ),
    number: reflectance,
    string: {
      ...text('The name of a surface: built in, or a backdrop of the kit.', {
        examples: [...surfaceNames],
      }),
      maxLength: 60,
    },
  }),
  sky: map(
    'The sky as backdrop, as a meter reads it.',
    {
      reads: use('aperture', 'What the meter read.', { examples: ['f/8'] }),
      kind: choice(['incident', 'reflected'], 'How it was metered.', { default: 'reflected' }),
      shutter: use('shutter', 'Shutter time set on the meter.', { examples: ['1/1000'] }),
      iso: use('iso', 'ISO set on the meter.', { examples: [100] }),
      colour: use('kelvin', 'Colour temperature of the light.', { examples: ['3000 K', '8000 K'] }),
    },
    { required: ['reads', 'shutter', 'iso'] },
  ),
  backdrop: map(
    'The backdrop: what it is, how large, how far behind the subject.',
    {
      surface: use('surface', 'What the backdrop is made of: a name, or its reflectance and colour.', {
        examples: ['white paper', { reflectance: 0.88 }],
      }),
      sky: use('sky', 'Outdoors: the sky stands for a backdrop.', {
        examples: [{ reads: 'f/8', kind: 'reflected', shutter: '1/1000', iso: 100 }],
      }),
      width: use('length', 'Width of the backdrop.', { examples: ['2.72 m', '9 ft'], default: '2.72 m' }),
      height: use('length', 'Height of its upper edge over the floor.', {
        examples: ['2.8 m'],
        default: '2.8 m',
      }),
      behind: use('length', 'From the subject to the backdrop.', { examples: ['2.4 m', '6 ft'] }),
      'behind-last-row': use(
        'length',
        'From the last row of a group to the backdrop, in place of `behind`.',
        {
          examples: ['50 cm'],
        },
      ),
      sweep: map(
        'The backdrop curves onto the floor (or table) and comes forward under the subject.',
        {
          front: use('length', 'How far it comes forward, in front of the subject.', { examples: ['1.5 m'] }),
        },
        { required: ['front'], examples: [{ front: '1.5 m' }] },
      ),
      finish: choice(
        finishes,
        'How it shines. A glossy backdrop mirrors lights. Without it, what its surface is known for (acrylic glossy, vinyl satin), else matte.',
        { examples: ['glossy'] },
      ),
    },
    {
      allOf: [alone('sky', ['surface']), alone('behind', ['behind-last-row'])],
      'x-whole': {
        ...when(written('sky'), {}, { required: ['surface'], ...oneOfKeys('behind', 'behind-last-row') }),
      },
    },
  ),
} satisfies Record<string, Schema>
