/** Shares: `45 %`. */
import { decimal, gap, reader, refusal, whole } from './grammar.js'
import { parsed, refused } from './parsed.js'

export const pattern = whole(`(${decimal})${gap}%`)

/** 0 to 1. */
export const readShare = reader<number>(
  pattern,
  (text) => {
    const value = Number(text)
    return value <= 100 ? parsed(value / 100) : refused('a share goes up to 100 %')
  },
  refusal({
    what: 'a share',
    examples: '45 %',
    pattern,
    bare: (text) => {
      const value = Math.abs(Number(text))
      return `write ${value < 1 ? Number((value * 100).toPrecision(6)) : value} %`
    },
  }),
)
