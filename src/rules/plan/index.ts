import type { Rule } from '../rule.js'
import { acceptExpired } from './accept-expired.js'
import { acceptUnused } from './accept-unused.js'
import { duplicateName } from './duplicate-name.js'
import { noTriangle } from './no-triangle.js'
import { nothingWanted } from './nothing-wanted.js'
import { planUnreadable } from './plan-unreadable.js'
import { unknownName } from './unknown-name.js'
import { valueUnused } from './value-unused.js'

export const planRules: readonly Rule[] = [
  planUnreadable,
  unknownName,
  duplicateName,
  noTriangle,
  valueUnused,
  nothingWanted,
  acceptUnused,
  acceptExpired,
]
