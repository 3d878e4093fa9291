import { describe, expect, it } from 'vitest'
import { look } from '../../src/reports/look.js'
import { scale } from '../../src/reports/scale.js'

const drawn = (value: number, u: number, needs: number, ascii = false, columns = 89) =>
  scale({ value, u, needs, against: 'over the camera' }, look({ ascii }), columns)

describe('scale', () => {
  it('puts the figure, its doubled uncertainty and the limit on thirds of a stop', () => {
    expect(drawn(-2 / 3, 1 / 6, 1 / 3)).toEqual([
      '-2  .  . -1  .  .  0  .  . +1  .  . +2',
      '          [  ▲  ]     |   needs +0.3 over the camera, is -0.7 ± 0.3',
    ])
  })

  it('has its strokes where the ruler has its numbers', () => {
    for (const value of [-2, -1, 0, 1, 2]) {
      const [ruler, marks] = drawn(value, 0, value)
      const number = ruler!.indexOf(value > 0 ? `+${value}` : String(value))
      expect(marks!.indexOf('▲')).toBe(number + (value === 0 ? 0 : 1))
    }
  })

  it('grows with the figure, up to an end', () => {
    expect(drawn(-3.2, 0.1, 0)[0]).toMatch(/^-4 .* \+2$/)
    const [ruler, marks] = drawn(-14, 0.5, 0.4)
    expect(ruler).toMatch(/^-5 .* \+2$/)
    expect(marks).toMatch(/^ </)
  })

  it('keeps to its columns', () => {
    for (const columns of [49, 69, 89]) {
      for (const line of drawn(-14, 0.5, 4.6, false, columns))
        expect(line.length).toBeLessThanOrEqual(columns)
    }
    expect(drawn(-2 / 3, 1 / 6, 1 / 3, false, 60)).toEqual([
      '-2  .  . -1  .  .  0  .  . +1  .  . +2',
      '          [  ▲  ]     |',
      'needs +0.3 over the camera, is -0.7 ± 0.3',
    ])
    expect(drawn(-5, 0, 5, false, 69)[0]).toBe(
      '-5 . .-4 . .-3 . .-2 . .-1 . . 0 . .+1 . .+2 . .+3 . .+4 . .+5',
    )
  })

  it('in ASCII', () => {
    expect(drawn(0, 0, 1, true)[1]).toBe(
      '                   ^        |   needs +1.0 over the camera, is 0.0 +/- 0.0',
    )
  })
})
