/** Light units and modifiers: in a kit by name, or written out at a light. */

import { modifierExamples, modifierKinds } from '../catalogue/modifiers.js'
import { unitNames } from '../catalogue/units.js'
import {
  alone,
  choice,
  duv,
  either,
  list,
  map,
  named,
  number,
  oneOfKeys,
  ref,
  type Schema,
  says,
  text,
  use,
  when,
  whole,
  wordOr,
  written,
  yes,
} from './build.js'

const held = {
  count: whole('How many of them the kit holds.', 0, 1000, { examples: [2] }),
  weight: use('weight', 'Weight, as it hangs on the stand.', { examples: ['2.4 kg', '5 lb'] }),
} satisfies Record<string, Schema>

const everyUnit = {
  name: text('What the unit is called in the output, where it is written out at a light.', {
    examples: ['old flash'],
  }),
  colour: use('kelvin', 'Colour temperature of its light.', { examples: ['5600 K'] }),
  duv: duv(
    'How far its light lies from the black-body locus, in the 1960 diagram: green is over zero, magenta under. Without it: none up to 3600 K, that of daylight from 4500 K on.',
  ),
  draw: use('watts', 'What it draws from the mains while charging, or while it burns.', {
    examples: ['1500 W'],
  }),
  ...held,
} satisfies Record<string, Schema>

const range = (description: string): Schema =>
  map(description, {
    from: use('power', 'The lowest setting.', { examples: ['1/128', '6 Ws'] }),
    to: use('power', 'The highest setting.', { examples: ['full'], default: 'full' }),
    step: use('stops', 'The step between two settings.', { examples: ['1/3 stop', '0.1 stop'] }),
    dial: number(
      'For a dial in numbers: the number at its top, which is full power. One whole number is one stop.',
      { exclusiveMinimum: 0, maximum: 100 },
      { examples: [10] },
    ),
  })

const flash: Schema = map(
  'A flash: flashgun, head, or head on a pack.',
  {
    kind: choice(['flash'], 'A flash.', { default: 'flash' }),
    ...everyUnit,
    'guide-number': either(
      'Guide number at ISO 100 with the zoom that it holds for (the zoom matters by over a stop), or a table over the zoom.',
      {
        object: {
          type: 'object',
          minProperties: 1,
          maxProperties: 40,
          propertyNames: ref('focal-length'),
          additionalProperties: ref('length'),
          examples: [{ '24 mm': '28 m', '35 mm': '36 m', '105 mm': '58 m' }],
        },
        string: ref('guide-number'),
      },
      { examples: ['36 m at 35 mm', '118 ft at 35 mm'] },
    ),
    'rated-with': wordOr(
      ['standard reflector', 'bare'],
      'focal-length',
      'What the guide number was rated with: a zoom, the standard reflector, or the bare tube.',
      { examples: ['35 mm', 'standard reflector', 'bare'] },
    ),
    'rated-as': choice(
      ['print', 'measured'],
      "Whether the guide number is the maker's (printed figures run optimistic, 2/3 stop is taken off) or was measured.",
      { default: 'print' },
    ),
    energy: use('energy', 'Energy at full power.', { examples: ['400 Ws', '320 J'] }),
    reflector: use('angle', 'Beam angle of its standard reflector, between the half-peak directions.', {
      examples: ['60 deg'],
    }),
    meters: use(
      'metered',
      'What a meter reads straight ahead with the standard reflector, at full power and ISO 100.',
      {
        examples: ['f/8 at 2 m'],
      },
    ),
    power: use('power-range', 'The settings of its power.', {
      examples: [{ from: '1/128', to: 'full', step: '1/3 stop' }],
    }),
    zoom: use('focal-range', 'The zoom of its head, widest to longest. Without it the head is fixed.', {
      examples: ['24..105 mm'],
    }),
    durations: list(
      'How long the flash lasts at some powers.',
      map(
        'The duration at one power.',
        {
          power: use('power', 'The power.', { examples: ['full', '1/16'] }),
          't0.1': use('time', 'Time over a tenth of its peak (this one freezes movement).', {
            examples: ['1/300'],
          }),
          't0.5': use('time', 'Time over half of its peak.', { examples: ['1/900'] }),
        },
        { required: ['power'], ...oneOfKeys('t0.1', 't0.5') },
      ),
      { minItems: 1, maxItems: 40 },
    ),
    colours: list(
      'Colour temperatures at some powers, where they differ.',
      map(
        'The colour at one power.',
        {
          power: use('power', 'The power.', { examples: ['full', '1/32'] }),
          colour: use('kelvin', 'Colour temperature at this power.', { examples: ['5200 K'] }),
        },
        { required: ['power', 'colour'] },
      ),
      { minItems: 1, maxItems: 40 },
      { examples: [[{ power: '1/32', colour: '5200 K' }]] },
    ),
    regulated: choice(
      ['igbt', 'voltage'],
      'How its power is set: igbt cuts the flash short (lower power is shorter), voltage charges it less (lower power is longer and warmer).',
    ),
    recycle: use('time', 'Recycling time after a flash at full power.', { examples: ['2.5 s'] }),
    'flashes-per-charge': whole('Flashes at full power from one charge or one set of cells.', 1, 1_000_000, {
      examples: [220],
    }),
    'spare-charges': whole('Charged batteries or sets of cells at hand, besides what is in it.', 0, 1000, {
      examples: [2],
      default: 0,
    }),
    'high-speed-loss': use('stops', 'What high-speed sync loses at once, before the shutter cuts further.', {
      examples: ['2 stops'],
      default: '2 stops',
    }),
    modelling: use('watts', 'Its modelling lamp.', { examples: ['150 W'] }),
    'trigger-voltage': use('volts', 'Voltage at its sync contact: that of old flashes kills cameras.', {
      examples: ['5 V'],
    }),
    'pre-flash': yes(
      'Gives a pre-flash before the flash itself, unless the light says `mode: manual`. Automatic flashes always do.',
    ),
  },
  {
    ...oneOfKeys('guide-number', 'energy', 'meters'),
    allOf: [alone('guide-number', ['meters'])],
  },
)

const continuous: Schema = map(
  'A continuous light: panel, lamp, tube.',
  {
    kind: choice(['continuous'], 'A light that burns steadily.', { default: 'continuous' }),
    ...everyUnit,
    lux: use('lux', 'Illuminance straight ahead at a distance, at full power.', {
      examples: ['1200 lx at 1 m'],
    }),
    lumens: use('lumens', 'Luminous flux at full power.', { examples: ['9000 lm'] }),
    beam: use('angle', 'Beam angle, between the half-peak directions.', { examples: ['110 deg'] }),
    'photometric-file': text(
      'Path of its photometric file (LM-63, .ies), relative to this file: its strength and beam, and its size and draw where they are not stated here. Of type C vertical angle 0 is straight ahead, horizontal angle 0 to the right of who faces the light, 90 up; lying: true turns it a quarter, 0 up. The explained plan tells which way the angles go; a mirrored light is not turned inside out: its left stays its left.',
      { examples: ['panel.ies'] },
    ),
    size: use('size', 'Size of what glows.', { examples: ['30 x 30 cm'] }),
    power: use('power-range', 'The settings of its power.', {
      examples: [{ from: '10 %', to: 'full', step: '1/10 stop' }],
    }),
    flicker: choice(['none', 'mains'], 'Whether it flickers with the mains.', { default: 'none' }),
  },
  {
    ...oneOfKeys('lux', 'lumens', 'photometric-file'),
    allOf: [
      alone('lux', ['lumens', 'photometric-file']),
      alone('lumens', ['photometric-file']),
      // The file tells the beam.
      when(written('photometric-file'), {}, when(written('lumens'), { required: ['beam'] })),
    ],
  },
)

/** A unit says what it is by how its strength is told; failing that, by what only a continuous light has. */
const flashes: Schema = {
  anyOf: [written('guide-number'), written('energy'), written('meters'), says('kind', 'flash')],
}
const burnsSteadily: Schema = {
  anyOf: [
    ...['lux', 'lumens', 'photometric-file', 'beam', 'size', 'flicker'].map(written),
    says('kind', 'continuous'),
  ],
}

export const gearDefinitions = {
  'power-range': range("The settings of a unit's power."),
  unit: {
    description:
      'A light unit: a flash, or (with lux, lumens or a photometric file) a light that burns steadily.',
    type: 'object',
    ...when(flashes, ref('flash'), when(burnsSteadily, ref('continuous'), ref('flash'))),
  },
  flash,
  continuous,
  'unit-or-name': either(
    'The light unit: one of the kit, a built-in one, or a map with its facts.',
    {
      object: ref('unit'),
      string: {
        ...text('A unit of the kit, or a built-in one.', { examples: [...unitNames] }),
        maxLength: 60,
      },
    },
    { examples: [...unitNames] },
  ),
  modifier: map(
    'What stands before the flash: box, umbrella, dish, reflector.',
    {
      name: text('What it is called in the output, where it is written out at a light.', {
        examples: ['big box'],
      }),
      kind: choice(modifierKinds, 'Kind of modifier.', { examples: ['softbox'] }),
      size: use('front', 'Size of its front: width by height, or the diameter of a round one.', {
        examples: ['60 x 90 cm', '1 m'],
      }),
      outline: choice(
        ['rectangle', 'disc', 'octagon', 'ring'],
        'Outline of its front, where its kind does not say it already.',
      ),
      loss: use('stops', 'What it takes, straight ahead and far off, against the unit as it is rated.', {
        examples: ['2 stops'],
      }),
      transmits: use('share', "Share of the unit's light that leaves by its front.", { examples: ['50 %'] }),
      beam: use('angle', 'Beam angle, between the half-peak directions.', { examples: ['65 deg'] }),
      'hot-middle': yes('A single front that is brighter in the middle and throws further straight ahead.'),
      grid: use('grid', 'The grid that is on it.', { examples: ['40 deg'] }),
      depth: use('length', 'How deep it is, front to mount.', { examples: ['45 cm'] }),
      ...held,
    },
    { required: ['kind'] },
  ),
  'modifier-or-name': either(
    'The modifier: one of the kit, a built-in one by kind and size, or a map with its facts.',
    {
      object: ref('modifier'),
      string: {
        ...text('A modifier of the kit, or a built-in one by kind and size.', {
          examples: [...modifierExamples],
        }),
        maxLength: 60,
      },
    },
    { examples: [...modifierExamples] },
  ),
  grid: either(
    'A grid: the cut-off angle of an egg crate, the half-peak angle of a honeycomb.',
    {
      object: map(
        'A grid of a stated kind.',
        {
          kind: choice(
            ['egg-crate', 'honeycomb'],
            'An egg crate goes on cloth fronts, a honeycomb in reflectors.',
          ),
          angle: use('angle', 'Cut-off angle of an egg crate, half-peak angle of a honeycomb.', {
            examples: ['40 deg'],
          }),
        },
        { required: ['kind', 'angle'] },
      ),
      string: ref('angle'),
    },
    { examples: ['40 deg', { kind: 'honeycomb', angle: '20 deg' }] },
  ),
  front: {
    type: 'string',
    description: 'Width by height, or a diameter.',
    ...when({ pattern: '[x×X]' }, ref('size'), ref('length')),
  },
} satisfies Record<string, Schema>

export const unitMap = (description: string): Schema => named(description, ref('unit'), ref('kit-name'), 500)
export { held }
