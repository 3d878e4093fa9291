/** A studio's settings, `thirdstop.yaml`: house limits and levels, which files are plans, what fails a check. */
import { choice, either, list, map, type Schema, text } from './build.js'

const ruleName: Schema = {
  type: 'string',
  pattern: '^[a-z]+(?:-[a-z]+){0,8}$',
  'x-name': 'rule',
  description: 'The name of a rule, as its findings show it: small letters and hyphens.',
}

const patterns = (description: string, examples: readonly string[], standard: readonly string[]): Schema =>
  list(
    description,
    {
      type: 'string',
      minLength: 1,
      maxLength: 300,
      description: 'A pattern of paths; ** stands for any folders.',
      examples: ['recipes/**/*.plan.yaml'],
    },
    { maxItems: 100 },
    { examples: [examples], default: standard },
  )

export const settingsDefinitions = {
  settings: map(
    'Settings of a studio: `thirdstop.yaml` beside the plans.',
    {
      thirdstop: { const: 1, description: 'Version of the settings; always 1.', examples: [1] },
      notes: text('Notes for people.'),
      plans: patterns(
        'Which files are plans, as patterns of paths; ** stands for any folders.',
        ['recipes/**/*.plan.yaml'],
        ['**/*.plan.yaml'],
      ),
      ignore: patterns('Which files and folders are left out.', ['old/**'], []),
      levels: {
        type: 'object',
        description: 'The level that a rule reports at, by rule; off: it does not run.',
        propertyNames: ruleName,
        additionalProperties: choice(['error', 'warning', 'note', 'off'], 'The level of the rule.'),
        maxProperties: 200,
        examples: [{ 'power-off-step': 'off' }],
      },
      limits: {
        type: 'object',
        description: "House limits, by rule and by the limit's name (`thirdstop explain` shows both).",
        propertyNames: ruleName,
        additionalProperties: {
          type: 'object',
          description: 'Limits of the rule, by name.',
          propertyNames: {
            type: 'string',
            pattern: '^[a-z0-9]+(?:-[a-z0-9]+){0,8}$',
            'x-name': 'limit',
            description: 'The name of a limit of the rule: small letters and hyphens.',
          },
          additionalProperties: either('A limit with its unit.', {
            number: { minimum: -100_000, maximum: 100_000 },
            string: text('A quantity.', { examples: ['1 stop', '30 cm'] }),
          }),
          maxProperties: 40,
        },
        maxProperties: 200,
        examples: [{ 'backdrop-uneven': { warning: '2/3 stop' } }],
      },
      'fail-on': choice(['error', 'warning', 'note'], 'The level from which `check` ends with exit code 1.', {
        default: 'warning',
      }),
    },
    { required: ['thirdstop'] },
  ),
} satisfies Record<string, Schema>
