import { visible } from '../reports/visible.js'

/** Something is wrong with the call itself: said in one line on standard error, exit code 2. */
export class Misuse extends Error {
  override name = 'Misuse'
}

/** `thirdstop: says`, as a line. */
export const complaint = (says: string): string => `thirdstop: ${visible(says)}\n`
