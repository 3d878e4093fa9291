/**
 * The JSON that `check` and `meter` print, format 1. More keys may be added, so keys that are not listed are let through;
 * those that are listed keep their names and meanings. An infinite or undefined figure is null.
 */
import type { Schema } from './build.js'

const string = (description: string): Schema => ({ type: 'string', description })
const count = (description: string): Schema => ({ type: 'integer', minimum: 0, description })
const figure = (description: string): Schema => ({ type: ['number', 'null'], description })
const oneOf = (values: readonly string[], description: string): Schema => ({
  type: 'string',
  enum: values,
  description,
})
const listOf = (items: Schema, description: string): Schema => ({ type: 'array', items, description })
const ref = (name: string): Schema => ({ $ref: `#/definitions/${name}` })

/** An object; every key listed is always there but those named as optional. */
const object = (
  description: string,
  properties: { readonly [key: string]: Schema },
  optional: readonly string[] = [],
): Schema => ({
  type: 'object',
  description,
  properties,
  required: Object.keys(properties).filter((key) => !optional.includes(key)),
})

const levels = ['error', 'warning', 'note']

const head = (kind: string): { readonly [key: string]: Schema } => ({
  kind: { const: kind, description: 'What this is.' },
  format: { const: 1, description: 'Version of this format.' },
  thirdstop: string('Version of thirdstop that printed it.'),
})

const span = {
  file: string('Path with /, relative to the working folder.'),
  pointer: string('JSON pointer (RFC 6901) into that file.'),
  line: count('From 1.'),
  column: count('From 1, in UTF-16 units.'),
  endLine: count('From 1.'),
  endColumn: count('From 1, in UTF-16 units; exclusive.'),
}

const edit = object(
  'A change of the text.',
  {
    file: string('The file that is changed.'),
    op: oneOf(['set', 'insert', 'remove'], 'What is done.'),
    pointer: string('JSON pointer of the value.'),
    from: string('What is written there now.'),
    to: string('What is written instead.'),
    start: count('Offset into the text of the file, in UTF-16 units.'),
    end: count('Offset of its end, exclusive.'),
  },
  ['from', 'to', 'start', 'end'],
)

export const checkOutput: Schema = {
  ...object('What `thirdstop check --format json` prints.', {
    ...head('check'),
    plans: listOf(ref('plan'), 'The plans, in the order in which they were checked.'),
    problems: listOf(
      object('A path that could not be checked.', {
        file: string('The path.'),
        says: string('What is the matter, in one sentence.'),
      }),
      'Paths that could not be checked.',
    ),
    counts: object(
      'How many there are of each; accepted findings are not among errors, warnings and notes.',
      {
        plans: count('Plans that were checked.'),
        error: count('Errors.'),
        warning: count('Warnings.'),
        note: count('Notes.'),
        accepted: count('Accepted findings.'),
      },
    ),
  }),
  definitions: {
    place: object('Where it is written.', span),
    finding: object(
      'A finding.',
      {
        id: string('The same while rule, pointer and names stay, wherever lines move.'),
        rule: string('The rule.'),
        family: string('The family of the rule.'),
        level: oneOf(levels, 'How grave it is here.'),
        ruleLevel: oneOf(levels, 'How grave the rule takes it where it is sure.'),
        certainty: oneOf(['sure', 'probable', 'possible'], 'How sure it is.'),
        message: string('One sentence: what will be seen, the number, the cause.'),
        why: string('The figures behind it; of a mistake in the text, what to write.'),
        place: ref('place'),
        also: listOf(
          object('A related place.', { ...span, says: string('What is there.') }),
          'Related places.',
        ),
        measured: {
          type: 'object',
          description: 'The figures, by name.',
          additionalProperties: object(
            'A figure.',
            {
              value: figure('The figure.'),
              unit: string('Its unit.'),
              u: figure('One standard deviation, in stops.'),
              limit: figure('The limit that it is held against.'),
              side: oneOf(['at-least', 'at-most'], 'Whether the limit is the least or the most.'),
            },
            ['u', 'limit', 'side'],
          ),
        },
        mends: listOf(
          object(
            'A change of the plan that mends it.',
            {
              title: string('What is changed.'),
              proved: {
                type: 'boolean',
                description: 'The mended plan was checked: the finding is gone, and nothing as grave is new.',
              },
              gives: string('What comes of it.'),
              costs: string('What it costs.'),
              edits: listOf(edit, 'All of them are applied, or none.'),
            },
            ['gives', 'costs'],
          ),
          'Changes that mend it.',
        ),
        advice: listOf({ type: 'string' }, 'Mends in words.'),
        cause: string('Findings of one cause have the same text here.'),
      },
      ['cause'],
    ),
    plan: object('A plan.', {
      file: string('Its path.'),
      title: string('Its title.'),
      findings: listOf(ref('finding'), 'What was found.'),
      accepted: listOf(
        object('A finding that its author lives with.', {
          rule: string('The rule.'),
          because: string('The reason given.'),
          finding: ref('finding'),
        }),
        'Findings that the plan accepts.',
      ),
      notChecked: listOf(
        object(
          'A rule that could not be held against the plan.',
          {
            rule: string('The rule.'),
            because: string('What the plan does not state.'),
            enable: object('The line that would let it run.', {
              pointer: string('Where it would stand.'),
              text: string('What it could say.'),
            }),
          },
          ['enable'],
        ),
        'Rules that did not run.',
      ),
      remarks: listOf({ type: 'string' }, 'How the light was computed, and what was left out of it.'),
      caveats: listOf({ type: 'string' }, 'What makes its figures wrong in one direction.'),
      notJudged: listOf({ type: 'string' }, 'What the plan states and no rule judges yet.'),
    }),
  },
}

const of: Schema = {
  type: ['array', 'string'],
  items: { type: 'string' },
  description: 'The lights that are on: their names, or `all`.',
}

const meterEntry: Readonly<Record<string, Schema>> = {
  point: string('The point, or x,y,z in metres.'),
  of,
  kind: oneOf(['incident', 'reflected'], 'How it is metered.'),
  dome: oneOf(['raised', 'flat'], 'The dome of the meter.'),
  faces: string('What the dome is turned to.'),
  fNumber: figure("Exact f-number at the camera's time and ISO."),
  reads: string('As a meter shows it.'),
  overCamera: figure("Stops over the camera's setting."),
  overKey: figure('Stops over the key reading.'),
  overKeyU: figure('One standard deviation of that, in stops.'),
  u: figure('One standard deviation of the reading, in stops.'),
  luxSeconds: figure('Luminous exposure.'),
  paths: object('Shares of the light by the way that it came.', {
    direct: figure('Straight from the lights.'),
    room: figure('By walls, floor and ceiling.'),
    panels: figure('By panels.'),
    backdrop: figure('By the backdrop.'),
  }),
  kelvin: figure(
    'Correlated colour temperature; only where the plan tells of lights of unlike colour, null for light that is no white.',
  ),
  duv: figure('Distance from the black-body locus in the 1960 diagram, green positive; with `kelvin`.'),
}
const meterEntryOptional = ['kelvin', 'duv']

export const meterOutput: Schema = object(
  'What `thirdstop meter --format json` prints.',
  {
    ...head('meter'),
    file: string('Path of the plan.'),
    camera: object("The camera's setting.", {
      fNumber: figure('Exact f-number: f/5.6 is 5.65685.'),
      seconds: figure('Exact exposure time: 1/125 is 0.0078125.'),
      iso: figure('ISO speed.'),
    }),
    caveats: listOf({ type: 'string' }, 'What makes its figures wrong in one direction.'),
    keyReading: {
      ...object('The reading against which rules judge; null where nothing tells it.', {
        fNumber: figure('Exact f-number.'),
        reads: string('As a meter shows it.'),
        u: figure('One standard deviation, in stops.'),
      }),
      type: ['object', 'null'],
    },
    shadowSide: {
      ...object(
        'The side of the face that the key leaves in shadow; null where nothing but the key lights it.',
        {
          ...meterEntry,
          shaded: listOf({ type: 'string' }, 'The key lights, which a hand keeps off the dome.'),
          ratio: figure('Exposure of the lit side, dome to the camera, over that of the shadow side.'),
        },
        meterEntryOptional,
      ),
      type: ['object', 'null'],
    },
    points: listOf(
      object('What a meter will read.', meterEntry, meterEntryOptional),
      'One entry for each light at each point that it matters for, and one for all.',
    ),
    tones: listOf(
      object('What a surface records.', {
        point: string('The point.'),
        surface: string('What it is.'),
        reflectance: figure('0 to 1.'),
        srgb: figure('sRGB code, 0 to 255.'),
        lightness: figure('CIE L*.'),
        stopsFromMid: figure('Stops over linear 0.18.'),
        stopsFromWhite: figure('Stops over white for certain.'),
      }),
      'Tones of surfaces.',
    ),
    order: listOf(
      object('A step.', {
        fires: {
          ...string('What fires the lights of this step; null where the plan does not say.'),
          type: ['string', 'null'],
        },
        without: listOf({ type: 'string' }, 'Lights that are fired with it and are to be switched off.'),
        point: string('The point.'),
        of,
        dome: oneOf(['raised', 'flat'], 'The dome of the meter.'),
        faces: string('What the dome is turned to.'),
        fNumber: figure("Exact f-number at the camera's time and ISO."),
        reads: string('As a meter shows it.'),
        u: figure('One standard deviation, in stops.'),
        setsCamera: { type: 'boolean', description: 'The key reading: the camera is set to it.' },
      }),
      'What to meter one after the other: one trigger group at a time.',
    ),
    readings: listOf(
      object('What a meter did read.', {
        pointer: string('Where it stands in the plan.'),
        point: string('The point.'),
        of,
        dome: oneOf(['raised', 'flat'], 'The dome of the meter.'),
        faces: string('What the dome was turned to; `surface` where it was read off it.'),
        reads: string('As it stands in the plan.'),
        carried: { type: 'boolean', description: "Taken at other settings than today's." },
        predicted: figure('Exact f-number that all else in the plan tells for it; null where nothing does.'),
        difference: figure('Stops that were read over that.'),
        u: figure('One standard deviation of the difference, in stops.'),
        odd: { type: 'boolean', description: 'Further off than chance makes it.' },
        unused: { ...string('Why it tells nothing; null where it does.'), type: ['string', 'null'] },
      }),
      'The readings of the plan, in their order.',
    ),
  },
  ['shadowSide'],
)
