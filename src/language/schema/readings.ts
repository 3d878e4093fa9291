/** What a meter, or a test frame, did show; and the findings that the author lives with. */
import {
  alone,
  choice,
  either,
  list,
  map,
  named,
  oneOfKeys,
  ref,
  type Schema,
  text,
  use,
  whole,
} from './build.js'

export const readingDefinitions = {
  reading: map(
    'A reading: of which lights, at which point, what it was, and what the lights were set to then.',
    {
      at: use('place-name', 'The point that was metered.', {
        examples: ['subject', 'backdrop', 'backdrop-left'],
      }),
      of: either(
        'The lights that were on: their names in a list, all, or ambient (no flash).',
        {
          array: { items: ref('light-name'), minItems: 1, maxItems: 64 },
          string: { ...text('One light by name, all, or ambient.'), maxLength: 60 },
        },
        { examples: [['key'], ['key', 'fill'], 'all', 'ambient'] },
      ),
      reads: use('aperture', 'What the meter read.', { examples: ['f/5.6', 'f/5.6 + 0.3'] }),
      records: whole('No meter: what a test frame recorded there, as an sRGB code.', 0, 255, {
        examples: [243],
      }),
      taken: named(
        'What the lights were set to when the reading was taken, by light.',
        map('The settings of one light at the time.', {
          power: use('power', 'Its power then.', { examples: ['1/4'] }),
          distance: use('length', 'Its distance from the subject then.', { examples: ['1.4 m'] }),
        }),
        ref('light-name'),
        64,
        { examples: [{ key: { power: '1/4', distance: '1.4 m' } }] },
      ),
      kind: choice(
        ['incident', 'reflected'],
        'incident: the light that arrives. reflected: what the surface gives back (+2.4 stops on white paper).',
        { default: 'incident' },
      ),
      dome: choice(
        ['raised', 'flat'],
        'The dome of the meter. Without it: raised at the subject and in free air, flat on a surface.',
      ),
      faces: use('place-name', 'What the dome was turned to: light, camera, backdrop, or a point.', {
        examples: ['light', 'camera', 'backdrop', 'subject'],
      }),
      iso: use('iso', "ISO set on the meter. Without it, the camera's.", { examples: [100] }),
    },
    { required: ['at', 'of'], ...oneOfKeys('reads', 'records'), allOf: [alone('reads', ['records'])] },
  ),
  accepted: map(
    'A finding that you have decided to live with.',
    {
      rule: text('The rule, as the finding names it.', { examples: ['frame-past-backdrop'] }),
      because: text('Why it is acceptable here.', { examples: ['the edges are cropped in delivery'] }),
      until: {
        type: 'string',
        pattern: '^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$',
        description: 'The last day that it holds, year-month-day.',
        examples: ['2027-06-30'],
      },
    },
    { required: ['rule', 'because'] },
  ),
  'readings-list': list("What a meter did read. A reading fixes a light's strength.", ref('reading'), {
    maxItems: 500,
  }),
  'accept-list': list('Findings that you have decided to live with.', ref('accepted'), { maxItems: 500 }),
} satisfies Record<string, Schema>
