/** Who or what is photographed. */
import { choice, list, map, number, ref, type Schema, says, use, when, whole, yes } from './build.js'
import { finishes } from './surface.js'

const face = use(
  'height',
  'Height of the face over the floor (over the table, where the subject stands on one).',
  {
    examples: ['1.2 m', '4 ft'],
  },
)

export const subjectDefinitions = {
  row: map(
    'A row of people, side by side.',
    {
      people: whole('How many people stand or sit in the row.', 1, 40, { examples: [3] }),
      spacing: use('length', 'From the middle of one person to the middle of the next.', {
        examples: ['50 cm'],
      }),
      behind: use('length', 'How far behind the row in front; not said for the first row.', {
        examples: ['45 cm'],
      }),
      'faces-at': face,
    },
    {
      required: ['people', 'faces-at'],
      allOf: [
        when(
          { properties: { people: { type: 'integer', minimum: 2 } }, required: ['people'] },
          { required: ['spacing'] },
        ),
      ],
    },
  ),
  platform: map(
    'A table or platform; a sweep then lies on it.',
    {
      height: use('length', 'Height of its top over the floor.', { examples: ['80 cm'] }),
      surface: use('surface', 'What its top is made of or covered with.', {
        examples: ['white paper'],
        default: 'white board',
      }),
      size: use('size', 'Its top, width across the set by depth along it.', { examples: ['1 x 1.4 m'] }),
      finish: choice(
        finishes,
        'How its top shines. A glossy one mirrors lights. Without it, what its surface is known for (acrylic glossy, vinyl satin), else matte.',
        { examples: ['glossy'] },
      ),
    },
    { required: ['height'] },
  ),
  subject: map(
    'The subject: a person, a group in rows, or an object.',
    {
      kind: choice(['person', 'group', 'object'], 'What is photographed.', { examples: ['person'] }),
      height: use('length', 'Height of the person standing, or of the object.', {
        examples: ['1.72 m', '5 ft 8 in'],
        default: '1.72 m',
      }),
      pose: choice(
        ['standing', 'seated', 'lying'],
        'How the person is. It says how high the face is, unless `faces-at` does.',
        {
          default: 'standing',
        },
      ),
      'faces-at': face,
      turned: use('sided-angle', "How far the subject is turned from facing the camera's end of the set.", {
        examples: ['30 deg right'],
        default: '0 deg',
      }),
      width: use('length', "Shoulder to shoulder, or the object's width.", {
        examples: ['45 cm'],
        default: '45 cm',
      }),
      depth: use('length', 'Front to back.', { examples: ['28 cm'], default: '28 cm' }),
      rows: list(
        "A group's rows. Row 1 is nearest the camera.",
        ref('row'),
        { minItems: 1, maxItems: 40 },
        { examples: [[{ people: 3, spacing: '50 cm', 'faces-at': '75 cm' }]] },
      ),
      'stands-on': use('platform', 'The table or platform that the subject stands on.', {
        examples: [{ height: '80 cm', surface: 'white paper', size: '1 x 1.4 m' }],
      }),
      reflectance: number(
        'Share of the light that skin, clothes or object give back.',
        { minimum: 0, maximum: 1 },
        {
          examples: [0.35],
          default: 0.35,
        },
      ),
      finish: choice(
        ['matte', 'satin', 'glossy', 'clear'],
        'How the surface shines. A glossy or clear subject mirrors its surroundings: its tone is not judged.',
        { examples: ['glossy'], default: 'matte' },
      ),
      shape: choice(
        ['plane', 'cylinder', 'ball'],
        'What an object that mirrors is like: flat (a book, a screen), round one way (a bottle, a can), round every way. Without it, a cylinder where it is taller than wide, else a ball.',
        { examples: ['cylinder'] },
      ),
      moves: use('speed', 'The fastest movement that must come out sharp.', { examples: ['2 m/s'] }),
      area: use('size', 'Where the subject may move to: width across the set by depth along it.', {
        examples: ['1 x 2 m'],
      }),
      glasses: yes('Wears glasses.'),
      hair: choice(['dark', 'brown', 'fair'], 'Hair: how bright a rim or hair light may be depends on it.'),
      age: choice(['newborn', 'baby', 'child', 'adult'], 'Age, for cautions.', { default: 'adult' }),
    },
    {
      'x-whole': {
        required: ['kind'],
        ...when(says('kind', 'group'), { required: ['rows'] }),
      },
    },
  ),
} satisfies Record<string, Schema>
