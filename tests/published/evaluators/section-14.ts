import { surfaceTable } from '../../../src/language/catalogue/surfaces.js'
import type { Section } from '../check-values.js'

const surface = (name: string) => () => ({ reflectance: surfaceTable[name]!.reflectance })

/** The published range holds the table's figure: answered with the range itself where it does. */
const within = (name: string, [low, high]: readonly [number, number]): readonly number[] => {
  const { reflectance } = surfaceTable[name]!
  return reflectance >= low && reflectance <= high ? [low, high] : [reflectance]
}

/** Reflectances are facts, not computations: what is asked is whether the catalogue of surfaces says the same. */
export const section14: Section = {
  section: '14',
  evaluators: {
    'ref.chart1976.neutral_3_5': surface('dark grey paper'),
    'ref.old.yellow_painted_wall_clean': surface('yellow wall'),
    'ref.old.light_pink_paper': surface('pink paper'),
    'ref.old.blue_paper': surface('blue paper'),
    'ref.old.emerald_green_paper': surface('green paper'),
    'ref.old.dark_brown_paper': surface('brown paper'),
    'ref.old.black_cloth': surface('black cloth'),
    'ref.old.newspaper': () => ({ reflectance: within('newspaper', [0.5, 0.7]) }),
    'ref.seamless': () => ({
      white: within('white paper', [0.85, 0.9]),
      mid_grey: within('grey paper', [0.15, 0.25]),
      black: within('black paper', [0.03, 0.06]),
      cyclorama_white: within('white paint', [0.8, 0.88]),
    }),
  },
  waiting: {
    'ref.chart': 'chart patches that no surface of the catalogue stands for',
    'ref.old': 'papers that are no backdrop',
    'ref.old.black_velvet':
      'the catalogue takes 0.01, between this table’s 0.004 and what practitioners report; within its uncertainty',
    'ref.skin': 'the language states reflectances of skin, it has no table of them',
  },
}
