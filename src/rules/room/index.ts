import type { Rule } from '../rule.js'
import { aimBlocked } from './aim-blocked.js'
import { ceilingLow } from './ceiling-low.js'
import { inCollision } from './in-collision.js'
import { outsideRoom } from './outside-room.js'
import { roomShort } from './room-short.js'

export const roomRules: readonly Rule[] = [outsideRoom, roomShort, ceilingLow, inCollision, aimBlocked]
