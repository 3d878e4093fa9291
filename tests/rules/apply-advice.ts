import { setValue } from '../../src/text/edit.js'
import { pointer } from '../../src/text/place.js'

/** `lights.paper.power → 1/8 + 0.3, lights.other.power → full`: the edits that a title names; undefined for a sentence. */
const edits = (title: string): readonly (readonly [string, string])[] | undefined => {
  const parts = title.split(/, (?=lights\.|camera\.|backdrop\.)/)
  const found = parts.map((part) => /^((?:lights|camera|backdrop)[\w.-]+) → ([^,]+)$/.exec(part))
  return found.every((one) => one !== null)
    ? found.map((one) => [pointer(...one![1]!.split('.')), one![2]!] as const)
    : undefined
}

/** The plan's text after what the title names; undefined for a sentence, and where the value is not written in the plan. */
export const applied = (text: string, title: string): string | undefined =>
  edits(title)?.reduce<string | undefined>((changed, [at, source]) => {
    if (changed === undefined) return undefined
    const edited = setValue(changed, at, source)
    return edited.ok ? edited.text : undefined
  }, text)
