/** What to say when the program itself failed: enough to report it, and no more of the user's files than their names. */
import { version } from '../reports/version.js'
import { visible } from '../reports/visible.js'

export const defectReport = (error: unknown, about: readonly string[]): string => {
  const stack = error instanceof Error ? (error.stack ?? String(error)) : String(error)
  return [
    'thirdstop: this is a defect of thirdstop, not a fault of the plan. Nothing was written.',
    'Please report what follows, with the plan if you can share it:',
    `  thirdstop ${version}, node ${process.version}, ${process.platform} ${process.arch}`,
    `  ${visible(about.join(' '))}`,
    ...stack.split('\n').map((line) => `  ${visible(line)}`),
    '',
  ].join('\n')
}
