import type { Block } from '../reports/page.js'
import { chosenLook, type LookOptions } from './paint.js'
import type { Terminal } from './terminal.js'

export interface PageWords extends LookOptions {
  readonly format: 'text' | 'markdown'
}

/** Prints a page in the form that is asked for. */
export const printPage = async (
  blocks: readonly Block[],
  words: PageWords,
  terminal: Terminal,
): Promise<void> => {
  const { markdownPage, textPage } = await import('../reports/page.js')
  terminal.out(
    words.format === 'markdown' ? markdownPage(blocks) : textPage(blocks, await chosenLook(words, terminal)),
  )
}
