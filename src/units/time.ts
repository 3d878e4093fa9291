/** Times that are no shutter marks: `4 ms`, `2 s`, `1/800 s`, `1/800`. Taken literally. */
import { decimal, fraction, gap, reader, refusal, toNumber, whole } from './grammar.js'
import { parsed, refused } from './parsed.js'
import { type Seconds, seconds } from './quantity.js'

export const pattern = whole(
  `(?:(${fraction})(?:${gap}(?:s|sec|seconds?))?|(${decimal})${gap}(µs|μs|us|ms|s|sec|seconds?|min|minutes?))`,
)

const unitSeconds = (unit: string): number =>
  unit === 'ms'
    ? 1e3
    : unit.endsWith('us') || unit === 'µs' || unit === 'μs'
      ? 1e6
      : unit.startsWith('min')
        ? 1 / 60
        : 1

/** Seconds, up to a day. */
export const readTime = reader<Seconds>(
  pattern,
  (share, plain, unit) => {
    const value = share !== undefined ? toNumber(share) : Number(plain) / unitSeconds(unit!)
    return value <= 86_400 ? parsed(seconds(value)) : refused('times go up to a day')
  },
  refusal({
    what: 'a time',
    examples: '4 ms, 1/800 s or 2 s',
    pattern,
    bare: (text) =>
      `a time needs its unit: write ${text.replace(/^[-+\u2212]/u, '')} s or ${text.replace(/^[-+\u2212]/u, '')} ms`,
  }),
)
