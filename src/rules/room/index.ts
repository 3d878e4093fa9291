import type { Rule } from '../rule.js'
import { inCollision } from './in-collision.js'
import { outsideRoom } from './outside-room.js'

export const roomRules: readonly Rule[] = [outsideRoom, inCollision]
