import { averageDraw, flashesFrom, rechargeTime, storedEnergy } from '../../../src/light/charge.js'
import type { Seconds, WattSeconds } from '../../../src/units/quantity.js'
import type { Section } from '../check-values.js'

export const section13: Section = {
  section: '13',
  evaluators: {
    'pow.rec.': ({ energy_Ws, efficiency, recycle_s }) => {
      const draw = averageDraw(energy_Ws as WattSeconds, efficiency, recycle_s as Seconds)
      // A charger of that draw takes as long again.
      return { average_power_W: draw * (rechargeTime(energy_Ws, efficiency, draw) / recycle_s) }
    },
    'pow.bat.': ({ cells, volts_per_cell, capacity_Ah, efficiency, energy_per_flash_Ws }) => {
      const stored = storedEnergy(cells, volts_per_cell, capacity_Ah)
      return { stored_Wh: stored / 3600, flashes: flashesFrom(stored, efficiency, energy_per_flash_Ws) }
    },
  },
  waiting: {},
}
