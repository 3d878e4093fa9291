import type { Section } from '../check-values.js'

export const section2: Section = {
  section: '2',
  evaluators: {},
  waiting: {},
}
