/** `thirdstop rules`: all rules, from their own data. */
import { exitCodes } from './exit-codes.js'
import { choice, lookOptions } from './options.js'
import { type PageWords, printPage } from './print-page.js'
import type { AddCommand } from './work.js'

export const rulesCommand: AddCommand = (program, terminal, choose) => {
  const command = program
    .command('rules')
    .summary('list the rules')
    .description('Lists the rules by family: what each finds, and the highest level that it gives.')
    .addOption(choice('--format <form>', 'for people, or as Markdown', 'text', 'markdown').default('text'))
  lookOptions(command).action((words: PageWords) =>
    choose(async () => {
      const [{ rulesList }, { rulesPage }] = await Promise.all([
        import('../tasks/rules-list.js'),
        import('../reports/rule-page.js'),
      ])
      await printPage(rulesPage(rulesList()), words, terminal)
      return exitCodes.clean
    }),
  )
}
