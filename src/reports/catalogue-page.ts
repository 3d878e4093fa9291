/** What `thirdstop explain surfaces` shows, and the other lists of what is built in. */
import type { Catalogue } from '../tasks/catalogue.js'
import type { Block } from './page.js'

export const cataloguePage = ({ name, says, columns, entries, sources }: Catalogue): readonly Block[] => [
  { heading: name, level: 1 },
  { paragraph: says },
  { head: ['name', ...columns], table: entries },
  { items: sources },
]
