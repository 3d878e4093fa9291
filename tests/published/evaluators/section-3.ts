import type { Section } from '../check-values.js'

export const section3: Section = {
  section: '3',
  evaluators: {},
  waiting: {},
}
