/**
 * Text from a plan reaches a terminal only through here: what would move the cursor, hide itself or turn the reading
 * order is written as its code instead (`\u{202e}`). Tabs become a space: where columns matter they are expanded before.
 */
const hidden =
  // Controls; line and paragraph separators; marks of direction; characters that show nothing; tags; lone surrogates.
  /[\u0000-\u001f\u007f-\u009f\u2028\u2029\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\u00ad\u180e\u200b\u2060-\u2065\u206a-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}\ud800-\udfff]/gu

export const visible = (text: string): string =>
  text.replace(hidden, (one) => (one === '\t' ? ' ' : code(one)))

const code = (one: string): string => `\\u{${one.codePointAt(0)!.toString(16)}}`

/** For terminals and files that hold nothing but ASCII: signs by what they mean, everything else by its code. */
export const ascii = (text: string): string =>
  text.replace(/[^\u0000-\u007f]/gu, (one) => spelled[one] ?? code(one))

const spelled: Readonly<Record<string, string>> = {
  '±': '+/-',
  '×': 'x',
  '·': '-',
  '‾': '~',
  '▲': '^',
  '→': '->',
  '–': '-',
  '—': '-',
  '−': '-',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '…': '...',
  '°': ' deg',
  '≥': '>=',
  '≤': '<=',
  '√': 'sqrt',
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '²': '^2',
  '³': '^3',
  '₂': '2',
  ρ: 'rho',
  π: 'pi',
  Ω: 'Omega',
  Δ: 'Delta',
}
