import type { Section } from '../check-values.js'

export const section5: Section = {
  section: '5',
  evaluators: {},
  waiting: {},
}
