import type { Rule } from '../rule.js'
import { colourMixed } from './colour-mixed.js'
import { wallCast } from './wall-cast.js'
import { whiteBalanceOff } from './white-balance-off.js'

export const colourRules: readonly Rule[] = [colourMixed, whiteBalanceOff, wallCast]
