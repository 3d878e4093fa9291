/** Panels: what is put up to take light away, to give it back, or to spread it. */
import { choice, map, type Schema, says, use, when } from './build.js'

export const panelDefinitions = {
  panel: map(
    'A panel: flag, reflector, v-flat or scrim.',
    {
      kind: choice(
        ['flag', 'reflector', 'v-flat', 'scrim'],
        'flag takes light away, reflector gives it back, v-flat is two leaves with a black and a white side, scrim spreads it.',
      ),
      size: use('size', 'Width by height as it stands; of a v-flat, one leaf.', { examples: ['1 x 2 m'] }),
      at: use('placement', 'Its middle. A v-flat stands on the floor.', {
        examples: [{ left: '80 cm', behind: '30 cm', height: '1.2 m' }],
      }),
      faces: use('facing', 'Which way it faces: a side, a point, or an angle seen from above.', {
        examples: ['right', 'subject', '30 deg left'],
      }),
      surface: use('surface', 'Its face. Without it, a reflector is white board and a flag is black.', {
        examples: ['white board', 'silver'],
      }),
      opening: use('angle', 'V-flat: the angle between its leaves.', {
        examples: ['90 deg'],
        default: '90 deg',
      }),
      inside: use('surface', "V-flat: the side toward the fold's opening.", {
        examples: ['black'],
        default: 'black',
      }),
      outside: use('surface', 'V-flat: the outer side.', { examples: ['white'], default: 'white' }),
      transmits: use('share', 'Scrim: the share of the light that comes through.', { examples: ['45 %'] }),
    },
    {
      'x-whole': {
        required: ['kind', 'size', 'at', 'faces'],
        ...when(says('kind', 'scrim'), { required: ['transmits'] }),
      },
    },
  ),
} satisfies Record<string, Schema>
