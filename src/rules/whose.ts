import type { Plan } from '../language/plan.js'

/** A figure of the scene in words: `the subject`, `the object`, `person 2 in row 1`. */
export const whose = (figure: string, { subject }: Plan): string => {
  if (subject.kind === 'object') return 'the object'
  const [, row, number] = /^row-(\d+)-(\d+)$/.exec(figure) ?? []
  return number === undefined ? 'the subject' : `person ${number} in row ${row}`
}
