/** The kit: what gear there is, with measured facts in place of guesses. */
import { choice, either, list, map, named, ref, type Schema, text, use } from './build.js'
import { cameraFacts } from './camera.js'
import { held, unitMap } from './gear.js'
import { finishes } from './surface.js'

const kitName = ref('kit-name')

/** The keys of a kit, in its own file or inline in a plan. */
export const kitKeys = {
  title: text('What the kit is called.', { examples: ['Corner studio'] }),
  notes: text('Notes for people.'),
  units: unitMap("Light units by name: what a light's `unit` refers to."),
  modifiers: named("Modifiers by name: what a light's `modifier` refers to.", ref('modifier'), kitName, 500),
  stands: named("Stands by name: what a light's `stand.kind` refers to.", ref('kit-stand'), kitName, 500),
  cameras: named(
    'Cameras by name: what `camera.body` refers to.',
    map('A camera.', cameraFacts),
    kitName,
    100,
  ),
  backdrops: named(
    'Backdrops by name: what `backdrop.surface` refers to.',
    ref('kit-backdrop'),
    kitName,
    500,
  ),
  meters: named('Light meters by name.', ref('kit-meter'), kitName, 40),
  measured: list(
    'What lights of this kit did meter once, straight ahead: one measurement serves every plan.',
    ref('measurement'),
    { maxItems: 1000 },
  ),
} satisfies Record<string, Schema>

export const kitDefinitions = {
  'kit-stand': map('A stand.', {
    highest: use('length', 'The highest that it goes.', { examples: ['3 m'] }),
    base: use('length', 'Across its legs, spread.', { examples: ['1 m'] }),
    weight: held.weight,
    load: use('weight', 'What it may carry.', { examples: ['5 kg'] }),
    count: held.count,
  }),
  'kit-backdrop': map(
    'A backdrop.',
    {
      surface: use('surface', 'What it is made of, or its reflectance and colour.', {
        examples: ['white paper'],
      }),
      width: use('length', 'Its width.', { examples: ['2.72 m'] }),
      height: use('length', 'Height of its upper edge as it hangs.', { examples: ['2.8 m'] }),
      finish: choice(finishes, 'How it shines. Without it, what its surface is known for, else matte.', {
        examples: ['satin'],
      }),
      count: held.count,
    },
    { required: ['surface'] },
  ),
  'kit-meter': map('A light meter.', {
    offset: use('stops', 'What it reads over (+) or under (-) the truth.', { examples: ['+0.1 stop'] }),
    'flat-over-dome': use(
      'stops',
      'What it reads with the dome lowered over what it reads with it raised, of one light straight ahead.',
      { examples: ['0.2 stop'], default: '0 stops' },
    ),
  }),
  measurement: map(
    'One measurement of a unit with its modifier, metered straight ahead.',
    {
      unit: use('kit-name', 'The unit.', { examples: ['flashgun'] }),
      modifier: use('kit-name', 'The modifier that was on it.', { examples: ['umbrella-100'] }),
      zoom: use('focal-length', 'The zoom of its head.', { examples: ['24 mm'] }),
      power: use('power', 'What it was set to.', { examples: ['1/4'] }),
      distance: use('length', 'From the middle of its front to the meter.', { examples: ['1.2 m'] }),
      reads: use('aperture', 'What the meter read.', { examples: ['f/5.6'] }),
      iso: use('iso', 'ISO set on the meter.', { examples: [100] }),
    },
    { required: ['unit', 'power', 'distance', 'reads', 'iso'] },
  ),
  'kit-map': map('A kit, written out in the plan.', {
    kit: { const: 1, description: 'Version of the kit, as in a kit file; always 1.', examples: [1] },
    ...kitKeys,
  }),
  kit: either(
    'The kit: the path of a kit file, a list of paths (the later wins), or the kit itself.',
    {
      object: ref('kit-map'),
      array: { items: ref('path'), minItems: 1, maxItems: 32 },
      string: ref('path'),
    },
    { examples: ['../kits/corner-studio.kit.yaml'] },
  ),
} satisfies Record<string, Schema>
