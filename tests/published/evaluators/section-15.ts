import type { Section } from '../check-values.js'

export const section15: Section = {
  section: '15',
  evaluators: {},
  waiting: {},
}
