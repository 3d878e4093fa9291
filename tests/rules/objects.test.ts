/** A bottle has neither face nor feet: whatever is found of an object is said of an object. */
import { describe, expect, it } from 'vitest'
import { rules } from '../../src/rules/index.js'
import { checkText } from './check-text.js'

const bottle =
  'subject: { kind: object, height: 30 cm, width: 9 cm, depth: 9 cm, stands-on: { height: 1.3 m, surface: white paper, size: 1 x 1.4 m } }'
const crate = 'subject: { kind: object, height: 1.7 m, width: 50 cm, depth: 40 cm }'

/** The rules' own examples with something else before the camera; those with rows have no such line. */
const plans = (subject: string, turn: number): readonly string[] =>
  rules.flatMap(({ fires }) =>
    fires
      .map(({ plan }) => plan)
      .filter((plan, i) => i % 2 === turn && /^subject: .*$/m.test(plan))
      .map((plan) =>
        plan
          .replace(/^subject: .*$/m, subject)
          .replace(/framing: [a-z -]+/, 'framing: all')
          .replace(/sharp: face/, 'sharp: subject'),
      ),
  )

const ofPeople = /\b(faces?|feet|foot of|eyes?|sitter|sitters|cheeks?|hair|nose|chin|head to knee)\b/

/** Every second example each: what is advised takes its time. */
describe.each([
  ['bottle', bottle, 0],
  ['crate', crate, 1],
])('a %s', (_, subject, turn) => {
  it('has no face in what is said of it', () => {
    const said = plans(subject, turn).flatMap((plan) =>
      checkText(plan).findings.flatMap(({ rule, message, why, advice, also, cause = '', scale }) =>
        [
          message,
          why,
          cause,
          scale?.against ?? '',
          ...also.map(({ says }) => says),
          ...advice.flatMap(({ title, gives = '', costs = '' }) => [title, gives, costs]),
        ].map((sentence) => ({ rule, sentence })),
      ),
    )
    expect(said.length).toBeGreaterThan(200)
    const wrong = said
      // Lights and points keep the names that they have in the plan.
      .filter(({ sentence }) =>
        ofPeople.test(sentence.replace(/\b(?:lights|panels|readings)\.\S+|\bhair\b/g, '')),
      )
      .map(({ rule, sentence }) => `${rule}: ${sentence}`)
    expect([...new Set(wrong)]).toEqual([])
  })
})
