/** `thirdstop explain RULE`: one rule in full, or a list of what is built in. */
import { exitCodes } from './exit-codes.js'
import { choice, lookOptions } from './options.js'
import { type PageWords, printPage } from './print-page.js'
import { Misuse } from './usage.js'
import type { AddCommand } from './work.js'

export const explainCommand: AddCommand = (program, terminal, choose) => {
  const command = program
    .command('explain')
    .summary('explain a rule, or list what is built in')
    .description(
      'Explains a rule: what it finds and why it matters, how it is computed, its limits, sources and examples. Or lists what is built in: surfaces, units, modifiers, colours, gels.',
    )
    .argument('<rule>', 'the name in square brackets at the end of a finding, or surfaces, units, …')
    .addOption(choice('--format <form>', 'for people, or as Markdown', 'text', 'markdown').default('text'))
  command.option('--all', 'all examples in full, also on a terminal')
  lookOptions(command).action((name: string, words: PageWords & { readonly all?: boolean }) =>
    choose(async () => {
      const [{ explain }, { rulePage }] = await Promise.all([
        import('../tasks/explain.js'),
        import('../reports/rule-page.js'),
      ])
      const explained = explain(name)
      if (!explained.ok) {
        const meant = explained.nearest === undefined ? '' : `; did you mean ${explained.nearest}?`
        throw new Misuse(`there is no rule ${name}${meant} (thirdstop rules lists them)`)
      }
      if ('catalogue' in explained) {
        const { cataloguePage } = await import('../reports/catalogue-page.js')
        await printPage(cataloguePage(explained.catalogue), words, terminal)
        return exitCodes.clean
      }
      const brief = terminal.isTerminal && words.format === 'text' && words.all !== true
      await printPage(rulePage(explained.rule, brief), words, terminal)
      return exitCodes.clean
    }),
  )
}
