/** The picture that is wanted: what the rules hold the light against. */
import {
  alone,
  choice,
  either,
  map,
  oneOfKeys,
  type Schema,
  use,
  when,
  whole,
  wordOr,
  written,
} from './build.js'

export const wantedDefinitions = {
  wanted: map('The picture that is wanted. What is not said here is not judged.', {
    framing: choice(
      ['face', 'head and shoulders', 'waist', 'three-quarter', 'full length', 'all'],
      'How much of the subject is in the frame.',
      { examples: ['head and shoulders'] },
    ),
    backdrop: either(
      'How the backdrop is to come out: white, grey, black, a tone, a colour; any: it does not matter.',
      {
        object: when(
          written('colour'),
          map(
            'A coloured backdrop.',
            { colour: use('colour', 'The colour.', { examples: ['blue'] }) },
            { required: ['colour'] },
          ),
          map(
            'A tone.',
            { tone: whole('The tone that it is to record, as an sRGB code.', 0, 255, { examples: [200] }) },
            { required: ['tone'] },
          ),
        ),
        string: { enum: ['white', 'grey', 'black', 'any'] },
      },
      { examples: ['white', 'grey', 'black', { tone: 200 }, { colour: 'blue' }, 'any'] },
    ),
    'backdrop-over-key': use('stops-range', 'By how much the backdrop is to be over the key.', {
      examples: ['1/2..1 stop', '+1 stop'],
    }),
    'backdrop-even': use(
      'stops',
      'How far the brightest and the darkest part of the backdrop may lie apart.',
      {
        examples: ['1/3 stop'],
      },
    ),
    floor: choice(['white', 'any'], 'How the floor of a sweep is to come out.', { default: 'any' }),
    exposure: use('stops', 'The subject over (+) or under (-) its reading on purpose.', {
      examples: ['+1/3 stop'],
      default: '0 stops',
    }),
    ratio: map(
      'The lighting ratio, of a named kind.',
      {
        'lit-to-shadow': use(
          'ratio',
          '(key + fill) to fill, at the face, dome to the camera; a panel or the walls may be the fill.',
          {
            examples: ['3:1'],
          },
        ),
        'key-to-fill': use('ratio', 'Key to fill, each alone, dome to the light.', { examples: ['2:1'] }),
      },
      {
        examples: [{ 'lit-to-shadow': '3:1' }],
        ...oneOfKeys('lit-to-shadow', 'key-to-fill'),
        allOf: [alone('lit-to-shadow', ['key-to-fill'])],
      },
    ),
    shadow: choice(
      ['hidden', 'soft', 'any'],
      "The subject's shadow on the backdrop. Without it: hidden when white is wanted, else any.",
    ),
    sharp: wordOr(
      ['face', 'subject', 'rows'],
      'length',
      'What must be sharp: the face (12 cm), the subject, rows (all of them), or a depth.',
      {
        examples: ['face', 'rows', '30 cm'],
      },
    ),
    motion: choice(['frozen', 'any'], 'Whether movement must be frozen.', { default: 'any' }),
    ambient: either(
      'How much of the light of the place may be in the picture. Without it: none when all lights flash. `any`: as much as there is; the colour that it gives the shadows is still noted.',
      {
        object: map(
          'So far under the key.',
          { 'under-key': use('stops', 'How far under the key.', { examples: ['2 stops'] }) },
          { required: ['under-key'] },
        ),
        string: { enum: ['none', 'any'] },
      },
      { examples: ['none', 'any', { 'under-key': '2 stops' }] },
    ),
    shooting: map(
      'The pace of shooting, for recycling and charge.',
      {
        every: use('time', 'A frame every so often.', { examples: ['2 s'] }),
        frames: whole('How many frames.', 1, 1_000_000, { examples: [300] }),
      },
      { required: ['every'], examples: [{ every: '2 s', frames: 300 }] },
    ),
  }),
} satisfies Record<string, Schema>
