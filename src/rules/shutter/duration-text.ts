import type { Words } from '../words.js'

/** A duration as photographers say it, to two digits: `1/450`. */
export const durationText = (seconds: number, words: Words): string => {
  const per = 1 / seconds
  if (per < 10) return words.shutter(seconds)
  const grain = 10 ** (Math.floor(Math.log10(per)) - 1)
  return words.shutter(1 / (Math.round(per / grain) * grain))
}

/** `1.5 ms`; never negative. */
export const milliseconds = (seconds: number): string => `${Math.round(Math.max(0, seconds) * 1e4) / 10} ms`
