import type { Rule } from '../rule.js'
import { glassesMirrorLight } from './glasses-mirror-light.js'

export const mirrorRules: readonly Rule[] = [glassesMirrorLight]
