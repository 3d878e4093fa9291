import type { Section } from '../check-values.js'

export const section8: Section = {
  section: '8',
  evaluators: {},
  waiting: {},
}
