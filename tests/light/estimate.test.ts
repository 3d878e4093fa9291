/**
 * The joint estimate against Bayes' rule in closed form, against a posterior added up over a grid, against drawing many
 * sets of strengths and readings, and at its limits.
 */
import { describe, expect, it } from 'vitest'
import { independent, type UncertainStrength } from '../../src/light/causes.js'
import { type Estimate, estimate, type Prior, type SumReading } from '../../src/light/estimate.js'
import { uncertaintyWith } from '../../src/light/how-sure.js'
import type { Stops } from '../../src/units/quantity.js'
import { sequence } from './fronts.js'

type Priors = Readonly<Record<string, Prior>>

const found = (priors: Priors, readings: readonly SumReading[]): Estimate =>
  estimate((light) => priors[light], readings)

/** What a meter shows, in log₂ of its square: stops against f/1. */
const shown = (fNumber: number): number => 2 * Math.log2(fNumber)

/** Lights that answer the meter alike, to the factor of 2 to the stops given. */
const read = (
  stops: number,
  u: number,
  lights: Readonly<Record<string, number>>,
  more: Partial<SumReading> = {},
): SumReading => ({
  stops,
  u,
  lights: new Map(Object.entries(lights).map(([name, at]) => [name, { stops: at }])),
  ...more,
})
const alone = (light: string, stops: number, u: number, at = 0): SumReading =>
  read(stops, u, { [light]: at }, { settles: light })

/** Covariance of the strengths of two lights, stops². */
const covariance = (of: Estimate, a: string, b: string): number => {
  const causes = (light: string): ReadonlyMap<string, number> => {
    const { u, shared = [] } = of.of(light)!
    const own = Math.sqrt(
      Math.max(
        0,
        shared.reduce((left, part) => left - part.u ** 2, u ** 2),
      ),
    )
    const all = new Map([[`own ${light}`, own]])
    for (const part of shared) all.set(part.entry, (all.get(part.entry) ?? 0) + part.u)
    return all
  }
  return of.product(causes(a), causes(b))
}
const u = (of: Estimate, light: string): number => Math.sqrt(covariance(of, light, light))

// ---------------------------------------------------------------- closed forms

describe('figures worked out once by a prototype', () => {
  it('key f/5.6 and key with fill f/5.5: the fill is 3.2 stops under, give or take 0.58', () => {
    // Its priors are not told; with readings good to a tenth and a fill rated 2.9 stops under the key, 0.6 unsure:
    const f56 = shown(5.6)
    const both = found({ key: { stops: f56, u: 0.6 }, fill: { stops: f56 - 2.9, u: 0.6 } }, [
      read(f56, 0.1, { key: 0 }),
      read(shown(5.5), 0.1, { key: 0, fill: 0 }),
    ])
    const under = both.stops('fill')! - both.stops('key')!
    const spread =
      covariance(both, 'key', 'key') + covariance(both, 'fill', 'fill') - 2 * covariance(both, 'key', 'fill')
    expect(under).toBeCloseTo(-3.19, 2)
    expect(Math.sqrt(spread)).toBeCloseTo(0.58, 2)
  })

  it('a summed reading of two equal lights, 0.6 unsure: 0.44 each, their sum 0.10, correlation −0.90', () => {
    // That is with a reading good to 0.10; with the usual 0.15 it is 0.45, 0.14 and −0.80.
    const summed = (reading: number) => {
      const both = found({ left: { stops: 0, u: 0.6 }, right: { stops: 0, u: 0.6 } }, [
        read(1, reading, { left: 0, right: 0 }),
      ])
      const [own, with_] = [covariance(both, 'left', 'left'), covariance(both, 'left', 'right')]
      return [Math.sqrt(own), Math.sqrt((own + with_) / 2), with_ / own]
    }
    const at = (reading: number) => summed(reading).map((one) => Number(one.toFixed(2)))
    expect(at(0.1)).toEqual([0.44, 0.1, -0.9])
    expect(at(0.15)).toEqual([0.45, 0.14, -0.8])
  })
})

describe('one light, two lights: Bayes’ rule for normal errors', () => {
  it('a reading that does not settle it is weighed against the prior', () => {
    const key = found({ key: { stops: 5, u: 0.6 } }, [read(6, 0.2, { key: 0 })])
    const weight = 0.6 ** 2 / (0.6 ** 2 + 0.2 ** 2)
    expect(key.stops('key')).toBeCloseTo(5 + weight, 9)
    expect(u(key, 'key')).toBeCloseTo(0.6 * Math.sqrt(1 - weight), 9)
  })

  it('one that settles it is all that counts', () => {
    const key = found({ key: { stops: 5, u: 0.3 } }, [alone('key', 6, 0.15)])
    expect(key.stops('key')).toBeCloseTo(6, 9)
    expect(u(key, 'key')).toBeCloseTo(0.15, 5)
  })

  it('two that settle it are weighed by their certainty', () => {
    const key = found({ key: { stops: 0, u: 0.3 } }, [alone('key', 6, 0.15), alone('key', 7, 0.3)])
    expect(key.stops('key')).toBeCloseTo(6.2, 5)
    expect(u(key, 'key')).toBeCloseTo(0.15 / Math.sqrt(1.25), 5)
  })

  it('what two readings have in common does not grow surer by repeating', () => {
    const dome = [{ entry: 'dome key', u: 0.1 }]
    const reading = (stops: number): SumReading => ({
      stops,
      u: Math.sqrt(0.15 ** 2 - 0.1 ** 2),
      lights: new Map([['key', { stops: 0, shared: dome }]]),
      settles: 'key',
    })
    const often = found(
      { key: { stops: 0, u: 0.3 } },
      Array.from({ length: 20 }, () => reading(6)),
    )
    expect(u(often, 'key')).toBeCloseTo(Math.sqrt(0.1 ** 2 + (0.15 ** 2 - 0.1 ** 2) / 20), 5)
  })

  it('key and fill of one unit: a reading of the key moves the fill by what they share', () => {
    const shared = [{ entry: 'unit', u: 0.3 }]
    const priors = {
      key: { stops: 5, u: Math.hypot(0.3, 0.15), shared },
      fill: { stops: 3, u: Math.hypot(0.3, 0.15), shared },
    }
    const one = found(priors, [alone('key', 6, 0.15)])
    // Conditional normal, given what the key gives: the covariance 0.3² over its variance, 0.3² + 0.15².
    const gain = 0.3 ** 2 / (0.3 ** 2 + 0.15 ** 2)
    expect(one.stops('key')).toBeCloseTo(6, 9)
    expect(one.stops('fill')).toBeCloseTo(3 + gain, 6)
    const conditional = 0.3 ** 2 + 0.15 ** 2 - gain * 0.3 ** 2
    expect(u(one, 'fill') ** 2).toBeCloseTo(conditional + (gain * 0.15) ** 2, 4)
    // If the reading is too high, so is what the fill was moved by.
    expect(covariance(one, 'key', 'fill')).toBeCloseTo(gain * 0.15 ** 2, 4)
  })

  it('a coarse reading of the key tells less of the unit, and never makes the fill less sure', () => {
    const shared = [{ entry: 'unit', u: 0.3 }]
    const light = (stops: number): Prior => ({ stops, u: Math.hypot(0.3, 0.15), shared })
    const moved = [0.01, 0.15, 0.3, 0.6, 1.5].map((each) => {
      const one = found({ key: light(5), fill: light(3) }, [alone('key', 6, each)])
      expect(u(one, 'fill')).toBeLessThan(Math.hypot(0.3, 0.15))
      return one.stops('fill')! - 3
    })
    expect(moved).toEqual([...moved].sort((a, b) => b - a))
    expect(moved[4]).toBeLessThan(0.05)
  })

  it('sum less key: the fill is what is left, and its error grows as its share falls', () => {
    const [key, fill] = [Math.log2(80), Math.log2(20)]
    const both = found({ key: { stops: 0, u: 1 }, fill: { stops: 0, u: 10 } }, [
      alone('key', key, 0.15),
      read(Math.log2(100), 0.15, { key: 0, fill: 0 }),
    ])
    expect(both.stops('fill')).toBeCloseTo(fill, 1)
    // d log₂(sum − key) = (100·ds − 80·dk)/20
    expect(u(both, 'fill')).toBeCloseTo(Math.hypot(5 * 0.15, 4 * 0.15), 1)
  })
})

// ---------------------------------------------------------------- another way

describe('against the posterior added up over a grid', () => {
  it('two lights, two readings, one of them of both', () => {
    const priors = { a: { stops: 0.4, u: 0.5 }, b: { stops: -0.3, u: 0.4 } }
    const both = found(priors, [read(1.3, 0.12, { a: 0, b: 0.2 }), read(0.1, 0.2, { b: 0.3 })])
    let [weight, a, b, aa, bb, ab] = [0, 0, 0, 0, 0, 0]
    const normal = (x: number, width: number): number => Math.exp((-x * x) / (2 * width * width))
    for (let x = -2; x < 3; x += 0.01)
      for (let y = -2; y < 2; y += 0.01) {
        const w =
          normal(x - 0.4, 0.5) *
          normal(y + 0.3, 0.4) *
          normal(1.3 - Math.log2(2 ** x + 2 ** (y + 0.2)), 0.12) *
          normal(0.1 - (y + 0.3), 0.2)
        weight += w
        a += w * x
        b += w * y
        aa += w * x * x
        bb += w * y * y
        ab += w * x * y
      }
    const [meanA, meanB] = [a / weight, b / weight]
    // The posterior leans a little: its linear form keeps mean and deviation within a few hundredths.
    expect(Math.abs(both.stops('a')! - meanA)).toBeLessThan(0.03)
    expect(Math.abs(both.stops('b')! - meanB)).toBeLessThan(0.03)
    expect(Math.abs(u(both, 'a') / Math.sqrt(aa / weight - meanA ** 2) - 1)).toBeLessThan(0.05)
    expect(Math.abs(u(both, 'b') / Math.sqrt(bb / weight - meanB ** 2) - 1)).toBeLessThan(0.05)
    expect(Math.abs(covariance(both, 'a', 'b') - (ab / weight - meanA * meanB))).toBeLessThan(0.005)
  })
})

describe('against chance', () => {
  // Four lights, three of one unit, two behind one modifier: what they give and what the meter shows is drawn, the
  // estimate made from the readings alone, and its errors are held against what it said of them.
  const [unit, box, own] = [0.3, 0.2, 0.15]
  const prior = (stops: number, ...entries: ('unit' | 'box')[]): Prior => ({
    stops,
    u: Math.hypot(own, entries.includes('unit') ? unit : 0, entries.includes('box') ? box : 0),
    shared: entries.map((entry) => ({ entry, u: entry === 'unit' ? unit : box })),
  })
  const priors: Record<string, Prior> = {
    key: prior(6, 'unit', 'box'),
    fill: prior(4.5, 'unit', 'box'),
    rim: prior(5, 'unit'),
    lamp: prior(3),
  }
  const [dome, meter] = [0.1, Math.sqrt(0.15 ** 2 - 0.1 ** 2)]
  const draws = 4000

  const random = sequence(41)
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())

  const drawn = () => {
    const [ofUnit, ofBox] = [unit * normal(), box * normal()]
    const truth = new Map(
      Object.entries(priors).map(([name, { stops, shared = [] }]) => [
        name,
        shared.reduce((sum, { entry }) => sum + (entry === 'unit' ? ofUnit : ofBox), stops + own * normal()),
      ]),
    )
    const domes = new Map(Object.keys(priors).map((name) => [name, dome * normal()]))
    const meterReads = (lights: Readonly<Record<string, number>>): SumReading => {
      const sum = Object.entries(lights).reduce(
        (all, [name, at]) => all + 2 ** (truth.get(name)! + at + domes.get(name)!),
        0,
      )
      const names = Object.keys(lights)
      return {
        stops: Math.log2(sum) + meter * normal(),
        u: meter,
        lights: new Map(
          Object.entries(lights).map(([name, at]) => [
            name,
            { stops: at, shared: [{ entry: `dome ${name}`, u: dome }] },
          ]),
        ),
        ...(names.length === 1 ? { settles: names[0]! } : {}),
      }
    }
    return { truth, meterReads }
  }

  const causesOf = (of: Estimate, light: string, share: number, into: Map<string, number>): void => {
    const { u: all, shared = [] } = of.of(light)!
    const rest = Math.sqrt(
      Math.max(
        0,
        shared.reduce((left, part) => left - part.u ** 2, all ** 2),
      ),
    )
    for (const [entry, by] of [
      [`own ${light}`, rest] as const,
      ...shared.map((one) => [one.entry, one.u] as const),
    ])
      into.set(entry, (into.get(entry) ?? 0) + share * by)
  }
  /** A figure: so much of each light’s log₂. */
  const figures: readonly Readonly<Record<string, number>>[] = [
    { key: 1 },
    { fill: 1 },
    { rim: 1 },
    { lamp: 1 },
    { key: 1, fill: -1 },
    { key: 0.7, fill: 0.3 },
    { rim: 1, fill: -1 },
    { key: -1, rim: 0.6, lamp: 0.4 },
  ]

  it.each([
    ['the key alone', (reads: ReturnType<typeof drawn>['meterReads']) => [reads({ key: 0 })]],
    ['key and fill together', (reads) => [reads({ key: 0, fill: 0 })]],
    [
      'key alone, key and fill, all at the backdrop',
      (reads) => [
        reads({ key: 0 }),
        reads({ key: -0.2, fill: 0 }),
        reads({ key: -3, fill: -2, rim: 0, lamp: 0.5 }),
      ],
    ],
    ['key twice, rim once', (reads) => [reads({ key: 0 }), reads({ key: -1 }), reads({ rim: 0 })]],
  ] satisfies [string, (reads: ReturnType<typeof drawn>['meterReads']) => SumReading[]][])(
    'errors are as large as said: %s',
    (_, taken) => {
      const squares = figures.map(() => ({ error: 0, said: 0 }))
      for (let i = 0; i < draws; i++) {
        const { truth, meterReads } = drawn()
        const got = found(priors, taken(meterReads))
        figures.forEach((figure, at) => {
          const causes = new Map<string, number>()
          let error = 0
          for (const [light, share] of Object.entries(figure)) {
            error += share * (got.stops(light)! - truth.get(light)!)
            causesOf(got, light, share, causes)
          }
          squares[at]!.error += error ** 2
          squares[at]!.said += got.product(causes, causes)
        })
      }
      // 4,000 draws of a deviation are good to 1.1 % themselves.
      for (const { error, said } of squares) expect(Math.abs(Math.sqrt(error / said) - 1)).toBeLessThan(0.05)
    },
    60_000,
  )

  it('readings differ from what the others predict by as much as said', () => {
    let [square, said] = [0, 0]
    for (let i = 0; i < draws; i++) {
      const { meterReads } = drawn()
      const held = found(priors, [
        meterReads({ key: 0 }),
        meterReads({ key: 0, rim: 0 }),
        meterReads({ rim: 0.5 }),
      ]).held()
      // The half of geometry that a reading's own point brings is no part of what was drawn.
      const shares = 2
      square += held[0]!.difference ** 2
      said += held[0]!.u ** 2 - 0.1 ** 2 / shares
    }
    expect(Math.abs(Math.sqrt(square / said) - 1)).toBeLessThan(0.06)
  }, 60_000)
})

// ---------------------------------------------------------------- laws

describe('at its limits', () => {
  const priors = (each: number): Priors => ({ key: { stops: 5, u: each }, fill: { stops: 4, u: each } })
  const readings = (each: number) => [read(6.2, each, { key: 0, fill: 0 })]

  it('readings that tell nothing leave the lights as they were', () => {
    const same = found(priors(0.5), readings(1e6))
    expect(same.stops('key')).toBeCloseTo(5, 9)
    expect(u(same, 'key')).toBeCloseTo(0.5, 9)
    expect(found(priors(0.5), []).stops('key')).toBe(5)
  })

  it('lights known for certain are moved by no reading of several', () => {
    const fixed = found(priors(0), readings(0.15))
    expect(fixed.stops('key')).toBeCloseTo(5, 12)
    expect(u(fixed, 'key')).toBe(0)
  })

  it('a reading without error is met exactly', () => {
    const met = found(priors(0.5), readings(0))
    expect(Math.log2(2 ** met.stops('key')! + 2 ** met.stops('fill')!)).toBeCloseTo(6.2, 8)
  })

  it('of lights that are not known at all, the surer reading is followed', () => {
    const open = found({ key: { stops: 0, u: 10 } }, [read(6, 0.15, { key: 0 })])
    expect(open.stops('key')).toBeCloseTo(6, 2)
    expect(u(open, 'key')).toBeCloseTo(0.15, 3)
  })
})

describe('well posed', () => {
  const priors: Priors = { key: { stops: 5, u: 0.5 }, fill: { stops: 3, u: 0.5 }, far: { stops: -40, u: 10 } }
  it.each([
    ['the same reading twice, without error', [read(6, 0, { key: 0 }), read(6, 0, { key: 0 })]],
    ['contradictory without error', [read(6, 0, { key: 0 }), read(2, 0, { key: 0 })]],
    ['a sum far below its part', [alone('key', 6, 0.15), read(1, 0.15, { key: 0, fill: 0 })]],
    ['a sum far above its parts', [alone('key', 6, 0.15), read(20, 0.15, { key: 0, fill: 0 })]],
    ['a light that hardly counts', [read(6, 0.15, { key: 0, far: 0 })]],
    ['a hundred stops off', [alone('key', 100, 0.15), read(-100, 0.15, { key: 0, fill: 0 })]],
    ['forty readings of one light', Array.from({ length: 40 }, (_, i) => alone('key', 5 + (i % 3), 0.15))],
  ])('%s', (_, readings) => {
    const got = found(priors, readings)
    for (const light of ['key', 'fill', 'far']) {
      expect(Number.isFinite(got.stops(light))).toBe(true)
      expect(u(got, light)).toBeGreaterThanOrEqual(0)
      expect(u(got, light)).toBeLessThanOrEqual(10 + 1e-9)
    }
    for (const held of got.held()) {
      expect(Number.isFinite(held.difference)).toBe(true)
      expect(held.u).toBeGreaterThan(0)
    }
  })

  it('an impossible sum is shared out between the key and the fill, as sure as each is', () => {
    const got = found(priors, [alone('key', 5, 0.15), read(4.8, 0.15, { key: 0, fill: 0 })])
    expect(got.stops('key')).toBeGreaterThan(4.75)
    expect(got.stops('key')).toBeLessThan(5)
    expect(got.stops('fill')).toBeLessThan(3)
    expect(got.stops('fill')).toBeGreaterThan(2)
  })
})

describe('any set of lights and readings', () => {
  const random = sequence(5)
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const some = () => {
    const names = ['a', 'b', 'c', 'd'].slice(0, 2 + Math.floor(3 * random()))
    const priors = Object.fromEntries(
      names.map((name): [string, Prior] => [
        name,
        { stops: 5 + normal(), u: 0.45, ...(random() < 0.6 ? { shared: [{ entry: 'unit', u: 0.3 }] } : {}) },
      ]),
    )
    const readings = Array.from({ length: 1 + Math.floor(4 * random()) }, () => {
      const lights = names.filter(() => random() < 0.6)
      if (lights.length === 0) lights.push(names[0]!)
      const at = Object.fromEntries(lights.map((name) => [name, normal()]))
      const expected = Math.log2(
        lights.reduce((sum, name) => sum + 2 ** (priors[name]!.stops + at[name]!), 0),
      )
      return read(expected + 0.3 * normal(), 0.15, at, lights.length === 1 ? { settles: lights[0]! } : {})
    })
    return { priors, readings }
  }

  it('does not depend on the order of readings or lights', () => {
    for (let i = 0; i < 200; i++) {
      const { priors, readings } = some()
      const one = found(priors, readings)
      const turned = readings
        .map((reading) => ({ ...reading, lights: new Map([...reading.lights].reverse()) }))
        .reverse()
      const other = found(Object.fromEntries(Object.entries(priors).reverse()), turned)
      for (const a of Object.keys(priors)) {
        expect(other.stops(a)).toBeCloseTo(one.stops(a)!, 6)
        for (const b of Object.keys(priors))
          expect(covariance(other, a, b)).toBeCloseTo(covariance(one, a, b), 6)
      }
      const held = one.held()
      other.held().forEach((back, at) => {
        const forth = held[held.length - 1 - at]!
        expect(back.difference).toBeCloseTo(forth.difference, 6)
        expect(back.u).toBeCloseTo(forth.u, 6)
      })
    }
  })

  it('holds each reading against exactly what the estimate without it says', () => {
    for (let i = 0; i < 50; i++) {
      const { priors, readings } = some()
      const held = found(priors, readings).held()
      readings.forEach((reading, at) => {
        const without = found(priors, readings.toSpliced(at, 1))
        const predicted = Math.log2(
          [...reading.lights].reduce(
            (sum, [name, light]) => sum + 2 ** (without.stops(name)! + light.stops),
            0,
          ),
        )
        expect(held[at]!.difference).toBeCloseTo(reading.stops - predicted, 9)
      })
    }
  })

  const agrees = (priors: Priors, before: readonly SumReading[], more: SumReading): void => {
    const [one, two] = [found(priors, before), found(priors, [...before, more])]
    for (const name of Object.keys(priors)) {
      expect(two.stops(name)).toBeCloseTo(one.stops(name)!, 6)
      expect(u(two, name)).toBeLessThanOrEqual(u(one, name) + 1e-9)
    }
  }
  const given = (priors: Priors, before: readonly SumReading[], lights: readonly string[]): number => {
    const one = found(priors, before)
    return Math.log2(lights.reduce((sum, name) => sum + 2 ** one.stops(name)!, 0))
  }

  it('a reading of the sum that the estimate gives changes nothing and makes nothing less sure', () => {
    for (let i = 0; i < 200; i++) {
      const { priors, readings } = some()
      const lights = Object.keys(priors).slice(0, 2 + Math.floor(2 * random()))
      const at = Object.fromEntries(lights.map((name) => [name, 0]))
      agrees(priors, readings, read(given(priors, readings, lights), 0.15, at))
    }
  })

  it('nor does a reading of one light, beside readings of one light', () => {
    for (let i = 0; i < 200; i++) {
      const { priors, readings } = some()
      const lone = readings.filter(({ settles }) => settles !== undefined)
      const light = Object.keys(priors)[Math.floor(2 * random())]!
      agrees(priors, lone, alone(light, given(priors, lone, [light]), 0.15))
    }
  })
})

// ---------------------------------------------------------------- what a reading would be worth

describe('what a reading would be worth', () => {
  const strengthOf =
    (priors: Priors) =>
    (light: string): UncertainStrength | undefined =>
      priors[light]
  const figure = (gradient: Readonly<Record<string, number>>) => ({
    stops: 0 as Stops,
    gradient: new Map(Object.entries(gradient)),
    variance: 0,
    rendering: 0,
  })
  const priors: Priors = {
    left: { stops: 0, u: 0.6 },
    right: { stops: 0, u: 0.6 },
    other: { stops: 0, u: 0.4 },
  }

  it('is what it turns out to be once it is taken, and shows what was predicted', () => {
    const candidate = { figure: figure({ left: 0.5, right: 0.5 }), shared: [], u: 0.15, settles: false }
    const taken = found(priors, [read(1, 0.15, { left: 0, right: 0 })])
    const worth = (of: Readonly<Record<string, number>>): number =>
      uncertaintyWith(figure(of), candidate, strengthOf(priors), independent)
    expect(worth({ left: 1 })).toBeCloseTo(u(taken, 'left'), 9)
    expect(worth({ left: 0.5, right: 0.5 })).toBeCloseTo(
      Math.sqrt((covariance(taken, 'left', 'left') + covariance(taken, 'left', 'right')) / 2),
      9,
    )
    expect(worth({ other: 1 })).toBe(0.4)
  })

  it('of one light: what is rated of it counts no more', () => {
    const shared = [{ entry: 'unit', u: 0.3 }]
    const rated: Priors = {
      key: { stops: 5, u: Math.hypot(0.3, 0.15), shared },
      fill: { stops: 3, u: Math.hypot(0.3, 0.15), shared },
    }
    const candidate = { figure: figure({ key: 1 }), shared: [], u: 0.15, settles: true }
    const taken = found(rated, [alone('key', 5, 0.15)])
    const worth = (of: Readonly<Record<string, number>>): number =>
      uncertaintyWith(figure(of), candidate, strengthOf(rated), independent)
    expect(worth({ key: 1 })).toBeCloseTo(u(taken, 'key'), 5)
    expect(worth({ fill: 1 })).toBeCloseTo(u(taken, 'fill'), 3)
    // A light that is known as well as a meter tells it gains nothing.
    const sure: Priors = { key: { stops: 5, u: 0.15 } }
    expect(uncertaintyWith(figure({ key: 1 }), candidate, strengthOf(sure), independent)).toBeCloseTo(0.15, 6)
  })
})
