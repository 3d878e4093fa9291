/** Where something is written. Lines and columns count from 1, columns and offsets in UTF-16 units. */
export interface Place {
  /** Path with `/`, as it was given to the reader. */
  readonly file: string
  /** JSON pointer (RFC 6901) inside that file. */
  readonly pointer: string
  readonly line: number
  readonly column: number
  readonly endLine: number
  readonly endColumn: number
  /** Offsets into the file's text, end exclusive. */
  readonly start: number
  readonly end: number
}

/** JSON pointer from keys; `~` and `/` are escaped as RFC 6901 says. */
export const pointer = (...keys: readonly (string | number)[]): string =>
  keys.map((key) => `/${String(key).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('')

/** Keys of a JSON pointer, unescaped. */
export const pointerKeys = (text: string): string[] =>
  text === ''
    ? []
    : text
        .slice(1)
        .split('/')
        .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'))
