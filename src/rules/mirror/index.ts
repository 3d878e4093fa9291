import type { Rule } from '../rule.js'
import { backdropMirrorsLight } from './backdrop-mirrors-light.js'
import { glassesMirrorLight } from './glasses-mirror-light.js'

export const mirrorRules: readonly Rule[] = [glassesMirrorLight, backdropMirrorsLight]
