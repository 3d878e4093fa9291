import type { Words } from '../words.js'

/** A duration as photographers say it, to two digits: `1/450`. `at most`: none longer than it. */
export const durationText = (
  seconds: number,
  words: Words,
  to: 'nearest' | 'at most' = 'nearest',
): string => {
  const per = 1 / seconds
  if (per < 10) return words.shutter(seconds)
  const grain = 10 ** (Math.floor(Math.log10(per)) - 1)
  const digits = to === 'nearest' ? Math.round(per / grain) : Math.ceil(per / grain - 0.02)
  return words.shutter(1 / (digits * grain))
}

/** `1.5 ms`; never negative. */
export const milliseconds = (seconds: number): string => `${Math.round(Math.max(0, seconds) * 1e4) / 10} ms`
