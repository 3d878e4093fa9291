/** What turning some of the lights does to a sum of light: light adds, so it needs no trying. */

/**
 * Stops that the lights named must all change by so that the sum changes by `stops`; undefined where they cannot do it:
 * they give nothing, or the others alone give more than is wanted.
 */
export const stopsToChange = (
  byLight: ReadonlyMap<string, number>,
  lights: readonly string[],
  stops: number,
): number | undefined => {
  const { own, rest } = split(byLight, lights)
  const wanted = (own + rest) * 2 ** stops - rest
  return own > 0 && wanted > 0 ? Math.log2(wanted / own) : undefined
}

/** Stops by which the sum changes when the lights named all change by `stops`. */
export const changeOf = (
  byLight: ReadonlyMap<string, number>,
  lights: readonly string[],
  stops: number,
): number => {
  const { own, rest } = split(byLight, lights)
  return Math.log2((own * 2 ** stops + rest) / (own + rest))
}

const split = (byLight: ReadonlyMap<string, number>, lights: readonly string[]) => {
  let [own, rest] = [0, 0]
  for (const [name, part] of byLight) {
    if (lights.includes(name)) own += part
    else rest += part
  }
  return { own, rest }
}
