import type { Section } from '../check-values.js'

export const section14: Section = {
  section: '14',
  evaluators: {},
  waiting: {},
}
