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

/** The same for something that is worked out of another, once for each. */
export const lazyOf = <K extends object, T>(compute: (of: K) => T): ((of: K) => T) => {
  const known = new WeakMap<K, T>()
  return (of) => {
    const was = known.get(of)
    if (was !== undefined) return was
    const made = compute(of)
    known.set(of, made)
    return made
  }
}
