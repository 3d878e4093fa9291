import type { Rule } from '../rule.js'
import { frontUnfilled } from './front-unfilled.js'
import { sourceSmall } from './source-small.js'

export const softRules: readonly Rule[] = [sourceSmall, frontUnfilled]
