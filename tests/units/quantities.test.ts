/** Grammars of the quantities: what they accept, what they refuse, and that pattern and reader agree. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Parsed } from '../../src/units/parsed.js'
import { type QuantityName, quantities } from '../../src/units/quantities.js'

const entries = Object.entries(quantities) as [QuantityName, (typeof quantities)[QuantityName]][]
const read = (name: QuantityName, text: string): Parsed<unknown> => quantities[name].read(text)
const matches = (name: QuantityName, text: string): boolean =>
  new RegExp(quantities[name].pattern, 'u').test(text)

/** Refusals of what is out of range name the range; all others tell how the quantity is written. */
const namesRange =
  /go(?:es)? up to|run from|runs from|over zero|end first|smaller end|less than two stops|at most 12 stops|written off: true|measure from the other side/

describe.each(entries)('%s', (name, entry) => {
  it('reads its examples', () => {
    for (const example of entry.examples) {
      expect(matches(name, example), example).toBe(true)
      expect(read(name, example), example).toMatchObject({ ok: true })
    }
  })

  it('accepts by its pattern what it reads, and reads what the pattern accepts but for its range', () => {
    fc.assert(
      fc.property(fc.stringMatching(new RegExp(entry.pattern, 'u')), (text) => {
        const result = read(name, text)
        if (!result.ok) expect(result.says).toMatch(namesRange)
      }),
      { numRuns: 300 },
    )
  })

  it('refuses by its pattern what it does not read', () => {
    const piece = fc.oneof(
      fc.constantFrom(...entry.examples),
      fc.constantFrom(
        ' ',
        '.',
        ',',
        '/',
        '-',
        '+',
        ':',
        '%',
        'x',
        'm',
        'cm',
        'ft',
        'f/',
        "'",
        '"',
        '..',
        'deg',
        'left',
        '1',
        '5.6',
        's',
      ),
      fc.string({ maxLength: 3 }),
    )
    const mangled = fc.oneof(
      fc.array(piece, { maxLength: 5 }).map((pieces) => pieces.join('')),
      fc
        .tuple(fc.constantFrom(...entry.examples), fc.nat(), fc.nat(3), fc.string({ maxLength: 2 }))
        .map(([text, at, cut, put]) => {
          const from = at % (text.length + 1)
          return text.slice(0, from) + put + text.slice(from + cut)
        }),
    )
    fc.assert(
      fc.property(mangled, (text) => {
        const result = read(name, text)
        if (matches(name, text)) expect(result.ok || namesRange.test(result.says)).toBe(true)
        else {
          expect(result.ok).toBe(false)
          if (!result.ok) {
            expect(result.says).not.toMatch(namesRange)
            expect(result.says).not.toContain('\n')
          }
        }
      }),
      { numRuns: 500 },
    )
  })

  it('gives finite figures only', () => {
    const finite = (value: unknown): boolean =>
      typeof value === 'object' && value !== null
        ? Object.values(value).every(finite)
        : typeof value !== 'number' || Number.isFinite(value)
    fc.assert(
      fc.property(fc.stringMatching(new RegExp(entry.pattern, 'u')), (text) => {
        const result = read(name, text)
        return !result.ok || finite(result.value)
      }),
      { numRuns: 300 },
    )
  })

  it('takes a time that grows no faster than its text: every repeat is bounded, none holds another', () => {
    expect(repeats(entry.pattern)).toEqual([])
    for (const filler of [' ', '1', '1 ', '1/', "1'", '\u00a0', '-', '.'])
      expect(matches(name, filler.repeat(2000)), filler).toBe(false)
  })
})

/**
 * Repeats in an expression that could make matching slow: without an upper bound, or of a group (one that is only
 * optional repeats nothing).
 */
const repeats = (pattern: string): string[] => {
  const found: string[] = []
  let inClass = false
  for (let i = 0; i < pattern.length; i += 1) {
    const sign = pattern[i]!
    if (sign === '\\') i += 1
    else if (inClass) inClass = sign !== ']'
    else if (sign === '[') inClass = true
    else if (sign === '*' || sign === '+') found.push(`${sign} at ${i}`)
    else if (sign === '{') {
      const counts = /^\{([0-9]+),([0-9]+)\}/.exec(pattern.slice(i))
      if (counts === null) found.push(`unbounded at ${i}`)
      else if (pattern[i - 1] === ')') found.push(`group repeated at ${i}`)
    }
  }
  return found
}

it('the check on repeats finds those it looks for', () => {
  expect(repeats('^(a+)+$').length).toBe(2)
  expect(repeats('^a*$').length).toBe(1)
  expect(repeats('^a{2,}$').length).toBe(1)
  expect(repeats('^(?:a{1,2}){1,3}$').length).toBe(1)
  expect(repeats('^[*+]{0,4}\\+(?:a{1,2})?$')).toEqual([])
})

// International yard and pound, 1959: 1 ft is 0.3048 m, 1 in 0.0254 m, 1 lb 0.45359237 kg, all exact.
const accepted: readonly (readonly [QuantityName, string, unknown])[] = [
  ['length', '2.4 m', 2.4],
  ['length', '2.4m', 2.4],
  ['length', '240 cm', 2.4],
  ['length', '900 mm', 0.9],
  ['length', '8 ft', 2.4384],
  ['length', '6 ft 6 in', 1.9812],
  ['length', `6'6"`, 1.9812],
  ['length', '6′ 6″', 1.9812],
  ['length', '6’6”', 1.9812],
  ['length', '5 1/2 ft', 1.6764],
  ['length', '5½ ft', 1.6764],
  ['length', '30 in', 0.762],
  ['length', '.5 m', 0.5],
  ['length', ' 2.4\u00a0m ', 2.4],
  ['length', '0 m', 0],
  ['length', '1000 m', 1000],
  ['height', '20 cm over table', { over: 'table', metres: 0.2 }],
  ['height', '20 cm over the table', { over: 'table', metres: 0.2 }],
  ['height', '1.2 m over floor', { over: 'floor', metres: 1.2 }],
  ['height', '2 m', { over: 'floor', metres: 2 }],
  ['aside', '30 cm right', 0.3],
  ['aside', '30 cm left', -0.3],
  ['aside', '30 cm camera-left', -0.3],
  ['focal-length', '85 mm', 0.085],
  ['focal-range', '24..105 mm', { from: 0.024, to: 0.105 }],
  ['focal-range', '24 mm to 105 mm', { from: 0.024, to: 0.105 }],
  // f/5.6 is 2^(5/2); 0.3 stop more closes it by 2^0.15.
  ['aperture', 'f/5.6', 5.656854249],
  ['aperture', 'F5.6', 5.656854249],
  ['aperture', 'f 5.6', 5.656854249],
  ['aperture', 'ƒ/5.6', 5.656854249],
  ['aperture', 'f/5.6 + 0.3', 6.276672783],
  ['aperture', 'f/5.6 - 1/3', 5.0396842],
  ['aperture', 'f/5.7', 5.7],
  ['shutter', '1/125', { exact: 0.0078125, marked: 0.008 }],
  ['shutter', '1/125 s', { exact: 0.0078125, marked: 0.008 }],
  ['shutter', '1/160', { exact: 2 ** (-22 / 3), marked: 0.00625 }],
  ['shutter', '0.5 s', { exact: 0.5, marked: 0.5 }],
  ['shutter', '2 s', { exact: 2, marked: 2 }],
  ['shutter', '15 s', { exact: 16, marked: 15 }],
  ['shutter', '7 s', { exact: 7, marked: 7 }],
  ['time', '4 ms', 0.004],
  ['time', '1/800', 0.00125],
  ['time', '50 µs', 0.00005],
  ['time', '2 min', 120],
  ['power', '1/4', { kind: 'share', share: 0.25 }],
  ['power', '1/4 + 0.3', { kind: 'share', share: 0.307786103 }],
  ['power', '1/4+0.3', { kind: 'share', share: 0.307786103 }],
  ['power', '1/4 + 1/3 stop', { kind: 'share', share: 0.314980262 }],
  ['power', '1/4 - 1/3', { kind: 'share', share: 0.198425131 }],
  ['power', '1/4 − 1/3', { kind: 'share', share: 0.198425131 }],
  ['power', 'full', { kind: 'share', share: 1 }],
  ['power', '1/1', { kind: 'share', share: 1 }],
  ['power', 'full - 1', { kind: 'share', share: 0.5 }],
  ['power', '50 %', { kind: 'share', share: 0.5 }],
  ['power', '250 Ws', { kind: 'energy', energy: 250 }],
  ['power', '250 J', { kind: 'energy', energy: 250 }],
  ['power', 'dial 7.3', { kind: 'dial', dial: 7.3 }],
  ['stops', '+1 stop', 1],
  ['stops', '2/3 stop', 2 / 3],
  ['stops', '1 1/3 stops', 4 / 3],
  ['stops', '-1.5 stops', -1.5],
  ['stops', '−1.5 stops', -1.5],
  ['stops', '+1/3 EV', 1 / 3],
  ['stops-range', '1/2..1 stop', { from: 0.5, to: 1 }],
  ['stops-range', '-1 .. +1 stop', { from: -1, to: 1 }],
  ['stops-range', '1/2 to 1 stop', { from: 0.5, to: 1 }],
  ['stops-range', '1 stop', { from: 1, to: 1 }],
  ['angle', '45 deg', Math.PI / 4],
  ['angle', '45°', Math.PI / 4],
  ['angle', '45 degrees', Math.PI / 4],
  ['sided-angle', '45 deg left', { radians: Math.PI / 4, side: 'left' }],
  ['sided-angle', '90° camera-right', { radians: Math.PI / 2, side: 'right' }],
  ['sided-angle', '180 deg', { radians: Math.PI }],
  ['feather', '15 deg towards camera', { by: Math.PI / 12, towards: 'camera' }],
  ['feather', '15 deg toward the backdrop', { by: Math.PI / 12, towards: 'backdrop' }],
  ['size', '60 x 90 cm', { width: 0.6, height: 0.9 }],
  ['size', '60x90cm', { width: 0.6, height: 0.9 }],
  ['size', '60 × 90 cm', { width: 0.6, height: 0.9 }],
  ['size', '1 x 1.4 m', { width: 1, height: 1.4 }],
  ['size', '1 m x 140 cm', { width: 1, height: 1.4 }],
  ['size', '44 x 33 mm', { width: 0.044, height: 0.033 }],
  ['size', `5' x 6'6"`, { width: 1.524, height: 1.9812 }],
  ['kelvin', '5600 K', 5600],
  ['mired', '+159 mired', 159],
  ['mired', '-50 mired', -50],
  ['energy', '400 Ws', 400],
  ['volts', '230 V', 230],
  ['amperes', '16 A', 16],
  ['watts', '1500 W', 1500],
  ['watts', '1.5 kW', 1500],
  ['mains', '50 Hz', 50],
  ['mains', '60hz', 60],
  ['weight', '4 kg', 4],
  ['weight', '10 lb', 4.5359237],
  ['ratio', '2:1', 2],
  ['ratio', '2.5 : 1', 2.5],
  ['ratio', '1:2', 0.5],
  ['guide-number', '36 m at 35 mm', { metres: 36, zoom: 0.035 }],
  ['guide-number', 'GN 36 m at 35 mm', { metres: 36, zoom: 0.035 }],
  ['guide-number', '100 ft at 35 mm', { metres: 30.48, zoom: 0.035 }],
  ['guide-number', '36 m', { metres: 36, zoom: undefined }],
  ['metered', 'f/8 at 2 m', { reads: 8, distance: 2 }],
  ['share', '45 %', 0.45],
  ['speed', '2 m/s', 2],
  ['speed', '36 km/h', 10],
  ['lux', '1200 lx at 1 m', { lux: 1200, distance: 1 }],
  ['lumens', '5000 lm', 5000],
]

const close = (got: unknown, want: unknown): void => {
  if (typeof want === 'number') expect(got as number).toBeCloseTo(want, 8)
  else if (typeof want === 'object' && want !== null) {
    expect(Object.keys(got as object)).toEqual(Object.keys(want))
    for (const [key, value] of Object.entries(want)) close((got as Record<string, unknown>)[key], value)
  } else expect(got).toBe(want)
}

it.each(accepted)('%s reads %s', (name, text, want) => {
  const result = read(name, text)
  expect(result).toMatchObject({ ok: true })
  if (result.ok) close(result.value, want)
})

const refusals: readonly (readonly [QuantityName, string, string])[] = [
  ['length', '2.4', 'a length needs its unit: write 2.4 m or 2.4 ft'],
  ['length', '2,4 m', 'write 2.4 m with a point'],
  [
    'length',
    '-1 m',
    'a length is not negative: write it without the sign, with left or right, front or behind for its side',
  ],
  ['length', '1000.1 m', 'lengths go up to 1 km'],
  ['length', '2.4 M', 'a length is written 2.4 m, 85 mm, 8 ft or 6 ft 6 in'],
  ['length', 'NaN m', 'a length is written 2.4 m, 85 mm, 8 ft or 6 ft 6 in'],
  ['length', '1e3 m', 'a length is written 2.4 m, 85 mm, 8 ft or 6 ft 6 in'],
  ['length', '1/0 m', 'a length is written 2.4 m, 85 mm, 8 ft or 6 ft 6 in'],
  ['length', '', 'a length is written 2.4 m, 85 mm, 8 ft or 6 ft 6 in'],
  ['aside', '30 cm', 'say on which side: write 30 cm left or 30 cm right'],
  ['focal-length', '85', 'write 85 mm'],
  ['focal-range', '105..24 mm', 'write the shorter end first: 24..105 mm'],
  ['aperture', '5.6', 'an aperture is written f/5.6'],
  ['aperture', 'f5,6', 'write f/5.6 with a point'],
  ['aperture', '5,6', 'write f/5.6 with a point'],
  ['aperture', 'f/0', 'apertures run from f/0.3 to f/1000'],
  ['shutter', '125', 'write 1/125'],
  ['shutter', '0.5', 'write 0.5 s'],
  ['shutter', '1/0', 'a shutter time is written 1/125, 0.5 s or 2 s'],
  ['shutter', '0 s', 'shutter times run from 1/100000 s to an hour'],
  ['time', '4', 'a time needs its unit: write 4 s or 4 ms'],
  ['power', '25', 'power needs to say of what: write 1/25, 25 %, 25 Ws or dial 25'],
  ['power', '0.25', 'write 1/4, or 25 %'],
  ['power', '1', 'write full, or 1/1'],
  ['power', '0 %', 'a light that gives nothing is written off: true'],
  ['stops', '1', 'write 1 stop'],
  ['stops', '-1.5', 'write -1.5 stops'],
  ['stops-range', '1..1/2 stop', 'write the smaller end of a range first: 1/2..1 stop'],
  ['angle', '45', 'write 45 deg'],
  ['sided-angle', '45 deg', 'say on which side: write 45 deg left or 45 deg right'],
  ['sided-angle', '200 deg left', 'angles to one side go up to 180 deg: measure from the other side'],
  ['mains', '50', 'write 50 Hz'],
  ['mains', '55 Hz', 'the frequency of mains is written 50 Hz or 60 Hz'],
  ['size', '60 x 90', 'a size needs its unit: write 60 x 90 cm'],
  ['size', '1 x 1.4', 'a size needs its unit: write 1 x 1.4 m'],
  ['size', '90 cm', 'a size is width by height: write 90 cm x 90 cm'],
  ['size', '0 x 90 cm', 'a size is over zero both ways'],
  ['kelvin', '5600', 'write 5600 K'],
  ['energy', '400', 'energy needs its unit: write 400 Ws'],
  ['watts', '1,500 W', 'a load is written 1500 W'],
  ['ratio', '2', "write '2:1'"],
  [
    'guide-number',
    '36',
    'a guide number needs its unit and zoom, which matters by over a stop: write 36 m at 35 mm',
  ],
  ['metered', 'f/8', 'say at what distance: write f/8 at 2 m'],
  ['share', '0.45', 'write 45 %'],
  ['share', '101 %', 'a share goes up to 100 %'],
  ['speed', '2', 'a speed needs its unit: write 2 m/s'],
]

it.each(refusals)('%s refuses %s', (name, text, says) => {
  expect(read(name, text)).toEqual({ ok: false, says })
})

it('what the sentences say to write does read', () => {
  const told = refusals.flatMap(([name, , says]) =>
    [...says.matchAll(/write '?([^'f][^']*?|f\/[^']*?)'?(?: with a point| or |, |$)/gu)].map(
      (found) => [name, found[1]!] as const,
    ),
  )
  const texts = told.filter(([, text]) => !text.startsWith('the ') && /[0-9]|full/.test(text))
  expect(texts.length).toBeGreaterThan(20)
  for (const [name, text] of texts) expect(read(name, text), text).toMatchObject({ ok: true })
})
