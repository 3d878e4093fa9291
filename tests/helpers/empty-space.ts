/**
 * For files that hold direct light alone against closed forms: imported first, it makes bodies hide nothing and surfaces
 * throw nothing back. Shade and bounce are held where they are (tests/light, tests/trace), and in whole sets by the laws
 * that keep in them.
 */
import { vi } from 'vitest'

vi.mock('../../src/scene/solids.js', async (original) => ({
  ...(await original<typeof import('../../src/scene/solids.js')>()),
  sceneSolids: () => [],
}))

vi.mock('../../src/scene/surfaces.js', async (original) => ({
  ...(await original<typeof import('../../src/scene/surfaces.js')>()),
  sceneSurfaces: () => [],
}))
