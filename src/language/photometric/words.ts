/** Goes through the text of a photometric file word by word, and knows where each word stands. */

export interface Word {
  readonly text: string
  /** Offsets into the file's text, end exclusive. */
  readonly start: number
  readonly end: number
}

/** What is wrong with a file and where; thrown inside this folder only, so that each step reads on as if all were well. */
export class PhotometricFault extends Error {
  constructor(
    readonly at: Pick<Word, 'start' | 'end'>,
    message: string,
    readonly why: string,
  ) {
    super(message)
  }
}

/** Blanks, line ends of all systems, the commas that also part numbers, and the end mark of old systems. */
const isBetween = (code: number): boolean => code <= 0x20 || code === 0x2c || code === 0xa0 || code === 0xfeff

const number = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/
const longestShown = 20

export const quoted = (text: string): string =>
  `"${text.length <= longestShown ? text : `${text.slice(0, longestShown)}…`}"`

export class Words {
  constructor(
    private readonly text: string,
    private at: number,
  ) {}

  /** Goes on over what parts words, or over a word. */
  private pass(parting: boolean): void {
    const { text } = this
    while (this.at < text.length && isBetween(text.charCodeAt(this.at)) === parting) this.at += 1
  }

  /** Undefined at the end. */
  next(): Word | undefined {
    this.pass(true)
    const start = this.at
    this.pass(false)
    return start === this.at ? undefined : { text: this.text.slice(start, this.at), start, end: this.at }
  }

  /** How many words are left, without going on. */
  left(): number {
    const here = this.at
    let count = 0
    for (this.pass(true); this.at < this.text.length; this.pass(true)) {
      count += 1
      this.pass(false)
    }
    this.at = here
    return count
  }

  /** The next word as a finite number, and where it stands. `what` it is, for who reads what is wrong. */
  number(what: string): Word & { readonly value: number } {
    const word = this.next()
    if (word === undefined) {
      const end = this.text.trimEnd().length
      throw new PhotometricFault(
        { start: Math.max(0, end - 1), end },
        `the photometric file ends where ${what} should stand`,
        'it is cut short, or a number before is left out',
      )
    }
    const value = number.test(word.text) ? Number(word.text) : Number.NaN
    if (!Number.isFinite(value))
      throw new PhotometricFault(
        word,
        `${quoted(word.text)} is no number; ${what} should stand here`,
        'write numbers with a point and blanks between: 12.5 30',
      )
    return { ...word, value }
  }
}
