import { backdropRules } from './backdrop/index.js'
import { colourRules } from './colour/index.js'
import { exposureRules } from './exposure/index.js'
import { frameRules } from './frame/index.js'
import { mirrorRules } from './mirror/index.js'
import { planRules } from './plan/index.js'
import { powerRules } from './power/index.js'
import { readingRules } from './readings/index.js'
import { rimRules } from './rim/index.js'
import { roomRules } from './room/index.js'
import type { Rule } from './rule.js'
import { settingsRules } from './settings/index.js'
import { shadowRules } from './shadow/index.js'
import { shutterRules } from './shutter/index.js'
import { softRules } from './soft/index.js'
import { triggerRules } from './trigger/index.js'
import { wrapRules } from './wrap/index.js'

/** Every rule, family by family. */
export const rules: readonly Rule[] = [
  ...backdropRules,
  ...wrapRules,
  ...shadowRules,
  ...frameRules,
  ...exposureRules,
  ...shutterRules,
  ...powerRules,
  ...settingsRules,
  ...mirrorRules,
  ...rimRules,
  ...softRules,
  ...colourRules,
  ...triggerRules,
  ...readingRules,
  ...roomRules,
  ...planRules,
]

const byName = new Map(rules.map((rule) => [rule.id, rule]))

export const ruleNamed = (id: string): Rule | undefined => byName.get(id)
