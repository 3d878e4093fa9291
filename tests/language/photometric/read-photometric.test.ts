/** Photometric files by the grammar of LM-63, against what is written in them by hand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPhotometric } from '../../../src/language/photometric/read-photometric.js'
import type { PhotometricTable } from '../../../src/language/photometric/table.js'
import { lineAndColumn, lineIndex } from '../../../src/text/lines.js'
import { type PhotometricText, photometricText, steps } from '../../helpers/photometric-text.js'

const tableOf = (text: string): PhotometricTable => {
  const reading = readPhotometric(text)
  if (!reading.ok) throw new Error(reading.says)
  return reading.table
}

/** `line: what is wrong`, and what the place covers. */
const faultOf = (text: string): readonly [string, string] => {
  const reading = readPhotometric(text)
  if (reading.ok) return ['read', '']
  const { line } = lineAndColumn(lineIndex(text), reading.start)
  return [`${line}: ${reading.says}`, text.slice(reading.start, reading.end)]
}

/** A candela value that tells by itself which direction it is of. */
const telling = (v: number, h: number): number => 1000 + v + h / 1000

/** In the plane, and about the pole. */
const at = ({ inPlane, planes, candela }: PhotometricTable, v: number, h: number): number =>
  candela[planes.indexOf(h) * inPlane.length + inPlane.indexOf(v)]!

const small = `IESNA:LM-63-2002
[TEST] 12
[MANUFAC] own workshop
[MORE] TILT=no line of its own
TILT=NONE
1 -1 2 3 1 1 2 0.4 0.6 0
0.9 1 75
0 45 90
0
500 300 0
`

describe('a photometric file', () => {
  it('gives its candela with all factors, its opening and its watts', () => {
    const table = tableOf(small)
    expect(table.type).toBe('C')
    expect([...table.inPlane]).toEqual([0, 45, 90])
    expect([...table.planes]).toEqual([0])
    // Multiplier 2, ballast factor 0.9.
    expect([...table.candela]).toEqual([900, 540, 0])
    expect(table.opening).toEqual({ outline: 'rectangle', width: 0.6, height: 0.4 })
    expect(table.watts).toBe(75)
    expect(table.tilt).toBeUndefined()
  })

  it('reads numbers on whatever lines, parted by blanks or commas, in any line ends, with a byte-order mark', () => {
    const whole = tableOf(small)
    const numbers = small
      .slice(small.indexOf('NONE') + 5)
      .trim()
      .split(/\s+/)
    const head = small.slice(0, small.indexOf('NONE') + 4)
    for (const between of ['\n', '\r\n', '\r', ', ', ',', '\t\t ', ' \n\n  '])
      expect(tableOf(`${head}\n${numbers.join(between)}`)).toEqual(whole)
    expect(tableOf(small.replaceAll('\n', '\r\n'))).toEqual(whole)
    expect(tableOf(`\uFEFF${small}`)).toEqual(whole)
    expect(tableOf(`${small}\u001A`)).toEqual(whole)
    expect(tableOf(small.replace('TILT=NONE', '  tilt = none '))).toEqual(whole)
    expect(tableOf(small.replace('500 300 0', '+5e2 300. .0'))).toEqual(whole)
  })

  it('counts the thirteenth number as a factor in files of 1986 and 1991 only', () => {
    const headed = (heading: string): number =>
      tableOf(small.replace('IESNA:LM-63-2002\n', heading).replace('0.9 1 75', '0.9 0.5 75')).candela[0]!
    expect(headed('')).toBe(450)
    expect(headed('IESNA91\n')).toBe(450)
    expect(headed('IESNA:LM-63-1995\n')).toBe(900)
    expect(headed('IESNA:LM-63-2002\n')).toBe(900)
    // 2019 tells there how the file came about: 1.10000 is a test at an accredited laboratory.
    expect(headed('IES:LM-63-2019\n')).toBe(900)
  })

  it('takes lengths in feet, and the signs that tell what is round', () => {
    const opening = (
      width: number,
      length: number,
      height = 0,
      unit: 1 | 2 = 2,
      heading = 'IESNA:LM-63-2002',
    ) =>
      tableOf(
        photometricText({
          vertical: [0, 90],
          horizontal: [0],
          candela: () => 1,
          opening: [width, length, height],
          unit,
          heading,
        }),
      ).opening
    expect(opening(1, 2, 0, 1)).toEqual({ outline: 'rectangle', width: 0.6096, height: 0.3048 })
    expect(opening(-0.3, -0.3)).toEqual({ outline: 'disc', width: 0.3, height: 0.3 })
    // A circle as it was written before 2002, an ellipse, a sphere, cylinders upright and lying.
    expect(opening(-0.3, 0)).toEqual({ outline: 'disc', width: 0.3, height: 0.3 })
    expect(opening(-0.3, -0.6)).toEqual({ outline: 'disc', width: 0.6, height: 0.3 })
    expect(opening(-0.3, -0.3, -0.3)).toEqual({ outline: 'disc', width: 0.3, height: 0.3 })
    expect(opening(-0.3, -0.3, 1)).toEqual({ outline: 'disc', width: 0.3, height: 0.3 })
    expect(opening(-0.04, 1.2, -0.04)).toEqual({ outline: 'rectangle', width: 1.2, height: 0.04 })
    expect(opening(1.2, -0.04, -0.04)).toEqual({ outline: 'rectangle', width: 0.04, height: 1.2 })
    expect(opening(0, 1.2)).toEqual({ outline: 'rectangle', width: 1.2, height: 0.01 })
    // Ellipses before 2002, cylinders that lie and ellipsoids in 1995.
    const [first, third] = ['IESNA91', 'IESNA:LM-63-1995']
    expect(opening(-0.3, 0.6, 0, 2, first)).toEqual({ outline: 'disc', width: 0.6, height: 0.3 })
    expect(opening(-0.3, 0.6, 0.4, 2, third)).toEqual({ outline: 'disc', width: 0.6, height: 0.3 })
    expect(opening(-0.3, 0.6, -0.4, 2, third)).toEqual({ outline: 'disc', width: 0.6, height: 0.3 })
    expect(opening(0, 1.2, -0.04, 2, third)).toEqual({ outline: 'rectangle', width: 1.2, height: 0.04 })
    expect(opening(1.2, 0, -0.04, 2, third)).toEqual({ outline: 'rectangle', width: 0.04, height: 1.2 })
    expect(opening(0, 0)).toBeUndefined()
    expect(opening(0, 0, 0.5)).toBeUndefined()
  })

  it('reads what TILT=INCLUDE states', () => {
    const tilted = small.replace('TILT=NONE', 'TILT=INCLUDE\n3\n4\n0 30 60 90\n1 0.98 0.95 0.9')
    expect(tableOf(tilted).tilt).toEqual({
      lamp: 'along height',
      angles: Float64Array.of(0, 30, 60, 90),
      factors: Float64Array.of(1, 0.98, 0.95, 0.9),
    })
    expect(tableOf(tilted).candela[0]).toBe(900)
  })
})

describe('symmetry written out', () => {
  const text = (given: Partial<PhotometricText>): string =>
    photometricText({ vertical: [0, 45, 90], horizontal: [0], candela: telling, ...given })

  it('a quarter stands for four', () => {
    const table = tableOf(text({ horizontal: [0, 30, 90] }))
    expect([...table.planes]).toEqual([0, 30, 90, 150, 180, 210, 270, 330, 360])
    for (const alike of [30, 150, 210, 330]) expect(at(table, 45, alike)).toBe(1045.03)
    for (const alike of [0, 180, 360]) expect(at(table, 90, alike)).toBe(1090)
  })

  it('half of a turn stands for both sides of the plane through 0 and 180', () => {
    const table = tableOf(text({ horizontal: [0, 30, 90, 180] }))
    expect([...table.planes]).toEqual([0, 30, 90, 180, 270, 330, 360])
    expect([at(table, 45, 330), at(table, 45, 270)]).toEqual([1045.03, 1045.09])
  })

  it('from 90 to 270 it stands for both sides of the plane through 90 and 270', () => {
    const table = tableOf(text({ horizontal: [90, 120, 180, 270] }))
    expect([...table.planes]).toEqual([0, 60, 90, 120, 180, 270, 360])
    expect([at(table, 45, 60), at(table, 45, 0)]).toEqual([1045.12, 1045.18])
    // With no plane at 180 the turn is closed past 0.
    const open = tableOf(text({ horizontal: [90, 120, 270] }))
    expect([...open.planes]).toEqual([-90, 60, 90, 120, 270, 420])
    expect(at(open, 45, 420)).toBe(at(open, 45, 60))
  })

  it('a whole turn may leave its last angle out', () => {
    const table = tableOf(text({ horizontal: steps(0, 330, 30) }))
    expect([...table.planes]).toEqual(steps(0, 360, 30))
    expect(at(table, 45, 360)).toBe(1045)
    expect(tableOf(text({ horizontal: steps(0, 360, 30) })).candela.length).toBe(39)
  })

  it('types B and A: from 0 both sides are alike, upward and to the side', () => {
    const table = tableOf(text({ type: 2, vertical: [0, 20, 60], horizontal: [0, 30, 90] }))
    expect(table.type).toBe('B')
    // Planes of vertical angles about the level pole, with the horizontal angles in them.
    expect([...table.planes]).toEqual([-60, -20, 0, 20, 60])
    expect([...table.inPlane]).toEqual([-90, -30, 0, 30, 90])
    expect([at(table, -30, -20), at(table, 30, 20)]).toEqual([1020.03, 1020.03])
    const whole = tableOf(text({ type: 3, vertical: [-40, 0, 40], horizontal: [-50, 0, 50] }))
    expect(whole.type).toBe('A')
    expect([...whole.planes]).toEqual([-50, 0, 50])
    expect(at(whole, -40, -50)).toBe(1000 - 40 - 0.05)
  })
})

describe('what is wrong is told with its line', () => {
  const wrong: readonly (readonly [what: string, text: string, line: number, says: RegExp, at: string])[] = [
    ['no photometric file', 'plan: 1\ntitle: A plan\n', 1, /no line TILT=/, 'plan: 1'],
    ['an empty file', '', 1, /no line TILT=/, ''],
    [
      'another file for the tilt',
      small.replace('=NONE', '=lamp.tlt'),
      5,
      /names another file, "lamp.tlt"/,
      'TILT=lamp.tlt',
    ],
    ['no number', small.replace('300', '3oo'), 10, /"3oo" is no number; a candela value/, '3oo'],
    [
      'decimal commas do not fit the counts',
      small.replace('0.9 1 ', '0.9 1,5 '),
      6,
      /take 7 numbers, and 8 follow/,
      '3 1',
    ],
    ['not a number of this world', small.replace('300', '1e999'), 10, /"1e999" is no number/, '1e999'],
    ['NaN', small.replace('300', 'NaN'), 10, /is no number/, 'NaN'],
    ['no lamps', small.replace('1 -1', '0 -1'), 6, /number of lamps cannot be 0/, '0'],
    ['lumens under zero', small.replace('-1 2', '-5 2'), 6, /lumens of each lamp cannot be -5/, '-5'],
    ['no multiplier', small.replace('-1 2 ', '-1 0 '), 6, /multiplier cannot be 0/, '0'],
    ['half a count', small.replace(' 3 1 ', ' 2.5 1 '), 6, /vertical angles cannot be 2.5/, '2.5'],
    ['one vertical angle', small.replace(' 3 1 ', ' 1 1 '), 6, /vertical angles cannot be 1/, '1'],
    [
      'too many angles',
      small.replace(' 3 1 ', ' 1000000000 1 '),
      6,
      /take 2000000001 numbers, and 7 follow/,
      '1000000000 1',
    ],
    ['an unknown type', small.replace('1 1 2 0.4', '1 4 2 0.4'), 6, /photometric type cannot be 4/, '4'],
    ['an unknown unit', small.replace('1 2 0.4', '1 3 0.4'), 6, /unit of lengths cannot be 3/, '3'],
    [
      'an opening as large as a hall',
      small.replace('0.4 0.6', '0.4 60'),
      6,
      /length of the luminous opening cannot be 60/,
      '60',
    ],
    ['a ballast factor of nothing', small.replace('0.9 1', '0 1'), 7, /ballast factor cannot be 0/, '0'],
    [
      'angles that fall',
      small.replace('45 90', '45 40'),
      8,
      /vertical angles do not rise: 40 comes after 45/,
      '40',
    ],
    ['angles twice', small.replace('45 90', '45 45'), 8, /do not rise/, '45'],
    [
      'an angle out of range',
      small.replace('45 90', '45 190'),
      8,
      /vertical angle 190 is out of range/,
      '190',
    ],
    ['a value under zero', small.replace('300', '-3'), 10, /candela value cannot be -3/, '-3'],
    ['no light at all', small.replace('500 300 0', '0 0 0'), 6, /no light in any direction/, '1'],
    ['cut short', small.slice(0, small.indexOf(' 300')), 6, /take 7 numbers, and 5 follow/, '3 1'],
    [
      'cut short before the counts',
      small.slice(0, small.indexOf(' 3 1')),
      6,
      /ends where the number of vertical angles/,
      '2',
    ],
    ['too long', `${small}7\n`, 6, /take 7 numbers, and 8 follow/, '3 1'],
    ['too many tilts', small.replace('NONE', 'INCLUDE\n1\n400\n0 90 1 1'), 7, /states 400 angles/, '400'],
    ['a lamp that lies in no way', small.replace('NONE', 'INCLUDE\n4\n1\n0\n1'), 6, /how the lamp lies/, '4'],
  ]
  for (const [what, text, line, says, covers] of wrong)
    it(what, () => {
      const [message, place] = faultOf(text)
      expect(message).toMatch(says)
      expect(message).toMatch(new RegExp(`^${line}: `))
      expect(place).toBe(covers)
    })

  it('a turn that does not close', () => {
    const text = (horizontal: readonly number[], type: 1 | 2 = 1) =>
      photometricText({ vertical: [0, 90], horizontal, candela: telling, type })
    expect(faultOf(text([0, 45]))[0]).toMatch(/go from 0 to 45, which is no way round/)
    expect(faultOf(text([10, 90]))).toEqual([
      '8: the horizontal angles go from 10 to 90, which is no way round',
      '10',
    ])
    expect(faultOf(text([...steps(0, 150, 30), 181]))[1]).toBe('181')
    expect(faultOf(text([0], 2))[0]).toMatch(/one horizontal angle only/)
    expect(faultOf(text([0, 60, 100], 2))).toEqual(['8: the horizontal angle 100 is out of range', '100'])
  })

  it('a file that is one long line of anything is told at once', () => {
    const begun = performance.now()
    for (const filler of [' ', 'a', '1 ', ',', '=', 'TILT=', '[', '\n', '-'])
      for (const head of ['', 'TILT=', 'TILT=NONE\n', 'TILT=INCLUDE\n1 '])
        expect(readPhotometric(head + filler.repeat(1_000_000 / filler.length)).ok).toBe(false)
    // Thirty-six files of a megabyte; a rule that went through them twice a line would take hours.
    expect(performance.now() - begun).toBeLessThan(20_000)
  })
})

describe('whatever a file holds', () => {
  const sound = [
    small,
    photometricText({ vertical: steps(0, 180, 15), horizontal: steps(0, 360, 45), candela: telling }),
    photometricText({
      vertical: steps(-90, 90, 30),
      horizontal: steps(0, 90, 30),
      candela: telling,
      type: 2,
    }),
  ]

  it('it is read or refused with a place in it, and no table holds what is no light', () => {
    const pieces = [
      '',
      '-',
      '.',
      'e',
      '1e9',
      '1e308',
      '-0',
      ' ',
      '\n',
      ',',
      'NONE',
      'INCLUDE',
      'TILT=',
      '\0',
      '°',
      '99999999999',
    ]
    let read = 0
    fc.assert(
      fc.property(
        fc.constantFrom(...sound),
        fc.array(
          fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(12), fc.constantFrom(...pieces)),
          {
            maxLength: 4,
          },
        ),
        (text, cuts) => {
          let changed = text
          for (const [share, length, piece] of cuts) {
            const from = Math.floor(share * changed.length)
            changed = changed.slice(0, from) + piece + changed.slice(from + length)
          }
          const reading = readPhotometric(changed)
          if (!reading.ok) {
            expect(reading.start).toBeGreaterThanOrEqual(0)
            expect(reading.end).toBeGreaterThanOrEqual(reading.start)
            expect(reading.end).toBeLessThanOrEqual(changed.length)
            expect(reading.says.length).toBeLessThan(200)
            expect(reading.says).not.toMatch(/[\0-\x1f]/)
            return
          }
          read += 1
          const { candela, inPlane, planes } = reading.table
          expect(candela.length).toBe(inPlane.length * planes.length)
          expect(candela.every((one) => one >= 0 && one < Number.POSITIVE_INFINITY)).toBe(true)
          expect(candela.some((one) => one > 0)).toBe(true)
          for (const angles of [inPlane, planes])
            expect(angles.every((one, i) => i === 0 || one > angles[i - 1]!)).toBe(true)
        },
      ),
      { numRuns: 3000, seed: 63 },
    )
    expect(read).toBeGreaterThan(100)
  })
})
