import type { Receptor } from '../light/receptor.js'
import type { Vec3 } from '../scene/vector.js'

/** A flat receptor lying on the backdrop, facing out. */
export const onBackdrop = (at: Vec3): Receptor => ({ at, normal: [0, -1, 0], kind: 'flat', onSurface: true })
