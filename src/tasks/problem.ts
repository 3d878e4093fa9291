/** Something wrong with the call or with a file as such, rather than with a plan: exit code 2. */
export interface Problem {
  readonly file: string
  /** Stands after the file's name: `cannot be read: no such file`. */
  readonly says: string
}
