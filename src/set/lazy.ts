/** Computes on the first call, remembers for the rest. */
export const lazy = <T>(compute: () => T): (() => T) => {
  let done = false
  let value: T
  return () => {
    if (!done) {
      value = compute()
      done = true
    }
    return value!
  }
}
