/** A light of the set: which unit, how it is set, where it stands, what it is for. */
import { gelNames } from '../catalogue/gels.js'
import {
  alone,
  choice,
  duv,
  either,
  list,
  map,
  oneOfKeys,
  ref,
  type Schema,
  use,
  when,
  whole,
  written,
  yes,
} from './build.js'
import { roles } from './names.js'

export const lightDefinitions = {
  gel: either('A gel by its name, several sheets of them, or by what it does to the light.', {
    object: map(
      'A gel: a shift of colour temperature, of green, or a colour; and the light that it takes.',
      {
        shift: use('mired', 'Shift toward warm (+) or cold (-).', { examples: ['+159 mired', '-137 mired'] }),
        duv: duv('Shift toward green (+) or magenta (-), in the 1960 diagram: plus-green, minus-green.'),
        colour: use('colour', 'A saturated colour.', { examples: ['blue', 'red'] }),
        loss: use('stops', 'The light that it takes.', { examples: ['2/3 stop', '2 stops'] }),
      },
      {
        required: ['loss'],
        ...oneOfKeys('shift', 'duv', 'colour'),
        allOf: [alone('shift', ['colour']), alone('duv', ['colour'])],
      },
    ),
    array: list(
      'Sheets one on another: their shifts and losses add up.',
      choice(gelNames, 'A gel by its name.'),
      { minItems: 1, maxItems: 4 },
      { examples: [['full CTO', '1/4 CTO']] },
    ),
    string: choice(gelNames, 'A gel by its name, with what one sheet usually does.', {
      examples: ['full CTO', '1/2 CTB', '1/4 minus-green'],
    }),
  }),
  trigger: map(
    'How the flash is fired.',
    {
      by: choice(['cable', 'radio', 'basic radio', 'optical', 'optical groups'], 'What fires it.'),
      channel: whole('Channel of the trigger.', 0, 1000, { examples: [3] }),
      group: {
        type: ['string', 'integer'],
        maxLength: 20,
        description: 'Group of the trigger.',
        examples: ['A', 1],
      },
      early: yes(
        'Fires the flash before the shutter is open all over, so that a long flash burns through the run of the slit.',
      ),
    },
    { required: ['by'] },
  ),
  stand: map(
    'What holds the light.',
    {
      kind: use('kit-name', 'A stand of the kit, or its kind.', { examples: ['boom', 'light stand'] }),
      arm: use('length', "Boom: from the stand's pole to the light.", { examples: ['1.5 m'] }),
      counterweight: use('weight', 'Weight on the other end of a boom.', { examples: ['4 kg'] }),
      sandbag: use('weight', 'Weight on the legs.', { examples: ['10 kg'] }),
    },
    { required: ['kind'] },
  ),
  light: map(
    'A light: its unit, its modifier, its power, its place.',
    {
      role: choice(
        roles,
        'What the light is for. Without it: the first word of its name if that is a role, else key for the first light.',
      ),
      unit: use('unit-or-name', 'The unit: one of the kit, a built-in one, or a map with its facts.', {
        examples: ['flashgun', 'head 400 Ws', 'window', 'sun'],
      }),
      modifier: use('modifier-or-name', 'What is on the unit: one of the kit, or by kind and size.', {
        examples: ['softbox 60 x 90 cm', 'shoot-through umbrella 1 m'],
      }),
      lying: yes('The front lies on its side: its size is turned.'),
      power: use('power', 'What the unit is set to.', { examples: ['1/4', '1/4 + 0.3', 'full', '250 Ws'] }),
      meters: either(
        'What this light alone is to meter, at the point of its role unless another is named.',
        {
          object: map(
            'What the light is to meter, and where.',
            {
              reads: use('aperture', 'What the meter is to read.', { examples: ['f/5.6'] }),
              at: use('place-name', 'The point to meter at.', { examples: ['hands'] }),
            },
            { required: ['reads'] },
          ),
          string: ref('aperture'),
        },
        { examples: ['f/5.6', { reads: 'f/5.6', at: 'hands' }] },
      ),
      zoom: use('focal-length', 'Zoom of the flash head.', { examples: ['35 mm', '105 mm'] }),
      grid: use('grid', 'A grid on the front.', { examples: ['40 deg'] }),
      gel: use('gel', 'A gel on the light.', {
        examples: ['full CTO', ['1/2 CTO', '1/4 plus-green'], { shift: '+159 mired', loss: '2/3 stop' }],
      }),
      at: use('light-place', 'Where the middle of its front is.', {
        examples: [{ angle: '35 deg left', distance: '1.4 m', height: '2 m' }, 'camera'],
      }),
      aim: use(
        'aim',
        "What it is aimed at. Without it: backdrop lights at the backdrop, rims at the subject's back, hair lights at the hair, others at the subject.",
        {
          examples: ['subject', 'ceiling above subject', { at: 'subject', feather: '15 deg towards camera' }],
        },
      ),
      like: use('light-name', 'The same as another light of this plan; keys written here differ from it.', {
        examples: ['paper-left'],
      }),
      mirrored: yes('With `like`: on the other side of the centre line.'),
      mode: choice(
        ['manual', 'automatic', 'high-speed'],
        'How the flash is controlled: manual, automatic (metered by the camera), high-speed sync.',
        { default: 'manual' },
      ),
      modelling: {
        type: ['string', 'boolean'],
        enum: ['on', 'off', true, false],
        description: 'Whether the modelling lamp is on.',
        examples: ['on'],
        default: 'off',
      },
      off: yes('The light is rigged but switched off.'),
      trigger: use('trigger', 'How the flash is fired.', {
        examples: [{ by: 'radio', channel: 3, group: 'A' }],
      }),
      stand: use('stand', 'What holds it.', {
        examples: [{ kind: 'boom', arm: '1.5 m', counterweight: '4 kg', sandbag: '10 kg' }],
      }),
      circuit: use('circuit-name', 'The circuit of the room that it is plugged into.', { examples: ['a'] }),
      size: use('size', 'Window: size of its glass, width by height.', { examples: ['120 x 150 cm'] }),
      faces: use('facing', 'Window or panel light: which way its front faces.', { examples: ['right'] }),
      reads: use('aperture', 'Sun, window, lamp: what a meter reads of it alone, at the subject.', {
        examples: ['f/2.8'],
      }),
      shutter: use('shutter', 'Shutter time of that reading.', { examples: ['1/60'] }),
      iso: use('iso', 'ISO of that reading.', { examples: [100] }),
      colour: use('kelvin', 'Colour temperature of the light, at the power that it is set to.', {
        examples: ['5600 K'],
      }),
      duv: duv(
        'How far its light lies from the black-body locus, in the 1960 diagram: green is over zero, magenta under.',
      ),
    },
    {
      allOf: [when(written('reads'), { required: ['shutter', 'iso'] })],
      'x-whole': when(written('like'), {}, { required: ['unit', 'at'] }),
    },
  ),
} satisfies Record<string, Schema>
