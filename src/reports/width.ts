/**
 * Columns that a text takes in a terminal, so that a mark stands under what it marks. Source: Unicode Standard Annex 11
 * (wide and fullwidth take two columns), by scripts and properties instead of its table; marks that combine take none.
 */
export const width = (text: string): number => {
  if (/^[\x20-\x7e]*$/.test(text)) return text.length
  let columns = 0
  let joined = false
  for (const one of text) {
    columns += joined || combining.test(one) ? 0 : narrow.test(one) || !wide.test(one) ? 1 : 2
    joined = one === '\u200d'
  }
  return columns
}

const combining = /[\p{Mn}\p{Me}\p{Cf}\u1160-\u11ff\p{Emoji_Modifier}]/u
const narrow = /[\uff61-\uffdc\u3248-\u324f]/u
const wide =
  /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}\p{Script=Bopomofo}\p{Script=Yi}\p{Emoji_Presentation}\u2329\u232a\u3000-\u303e\u3200-\u33ff\ufe10-\ufe19\ufe30-\ufe6b\uff01-\uff60\uffe0-\uffe6]/u

/** Fills with spaces on the left up to a number of columns. */
export const padLeft = (text: string, columns: number): string =>
  ' '.repeat(Math.max(0, columns - width(text))) + text

/** Fills with spaces on the right up to a number of columns. */
export const padRight = (text: string, columns: number): string =>
  text + ' '.repeat(Math.max(0, columns - width(text)))

/**
 * Breaks at spaces so that no line is wider than it need be. A word that is wider than a line stands alone. Lines after
 * the first leave room for an indent.
 */
export const wrap = (text: string, columns: number, indent = 0): string[] => {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    const room = lines.length === 0 ? columns : columns - indent
    if (line !== '' && width(line) + 1 + width(word) > room) {
      lines.push(line)
      line = word
    } else line = line === '' ? word : `${line} ${word}`
  }
  lines.push(line)
  return lines
}
