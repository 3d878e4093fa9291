import type { Section } from '../check-values.js'

export const section4: Section = {
  section: '4',
  evaluators: {},
  waiting: {},
}
