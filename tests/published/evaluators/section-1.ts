import type { Section } from '../check-values.js'

export const section1: Section = {
  section: '1',
  evaluators: {},
  waiting: {},
}
