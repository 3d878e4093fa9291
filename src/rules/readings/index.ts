import type { Rule } from '../rule.js'
import { readingKind } from './reading-kind.js'
import { readingNeeded } from './reading-needed.js'
import { readingOutdated } from './reading-outdated.js'
import { readingUnstamped } from './reading-unstamped.js'
import { readingsDisagree } from './readings-disagree.js'

export const readingRules: readonly Rule[] = [
  readingsDisagree,
  readingUnstamped,
  readingOutdated,
  readingKind,
  readingNeeded,
]
