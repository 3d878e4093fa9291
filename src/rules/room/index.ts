import type { Rule } from '../rule.js'
import { inCollision } from './in-collision.js'

export const roomRules: readonly Rule[] = [inCollision]
