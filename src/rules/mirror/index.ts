import type { Rule } from '../rule.js'
import { backdropMirrorsLight } from './backdrop-mirrors-light.js'
import { glassesMirrorLight } from './glasses-mirror-light.js'
import { glossShows } from './gloss-shows.js'

export const mirrorRules: readonly Rule[] = [glassesMirrorLight, backdropMirrorsLight, glossShows]
