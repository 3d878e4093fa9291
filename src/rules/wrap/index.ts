import type { Rule } from '../rule.js'
import { backdropLightOnSubject } from './backdrop-light-on-subject.js'
import { edgeWrap } from './edge-wrap.js'
import { lightIntoLens } from './light-into-lens.js'
import { veilingGlare } from './veiling-glare.js'

export const wrapRules: readonly Rule[] = [edgeWrap, veilingGlare, lightIntoLens, backdropLightOnSubject]
