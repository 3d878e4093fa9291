/** Advice is tried before it is given: what does not help is left out, what it costs elsewhere is named. */
import { describe, expect, it } from 'vitest'
import { type Mend, type Rule, rule } from '../../src/rules/rule.js'
import type { ComputedSet } from '../../src/set/computed-set.js'
import { checkText } from '../rules/check-text.js'

const plan = `plan: 1
title: Tried
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, power: 1/4, at: { angle: 30 deg left, distance: 1.4 m, height: 2 m } }
`

/** Finds a number of the set over a limit; watched if it can say so in short. */
const limitOn = (
  id: string,
  of: (set: ComputedSet) => number,
  limit: number,
  mends: (set: ComputedSet) => readonly Mend[] = () => [],
  watched = false,
): Rule =>
  rule({
    id,
    family: 'exposure',
    level: 'warning',
    finds: 'a number over its limit',
    limits: {},
    why: '',
    formula: '',
    sources: [],
    basis: '',
    fires: [],
    passes: [],
    needs: () => undefined,
    detect: ({ set }) => [
      {
        pointer: '/camera/iso',
        beyond: { stops: Math.log2(of(set) / limit), u: 0.01 },
        measured: {},
      },
    ],
    tell: () => ({ message: `${id} is over`, why: '' }),
    mend: (_, __, { set }) => mends(set),
    ...(watched ? { inShort: () => `${id} is over` } : {}),
  })

const iso = ({ plan: { camera } }: ComputedSet): number => camera.iso
const shutterSpeed = ({ plan: { camera } }: ComputedSet): number => 1 / camera.shutter
const turned = (set: ComputedSet, knob: 'iso' | 'shutter', to: number): ComputedSet =>
  set.with({ knob: { knob }, to })

const adviceOf = (mends: (set: ComputedSet) => readonly Mend[], ...others: readonly Rule[]) =>
  checkText(plan, { rules: [limitOn('own-limit', iso, 50, mends), ...others] }).findings[0]!.advice

describe('advice', () => {
  it('that leaves the finding as it was is not given', () => {
    const advice = adviceOf((set) => [
      { title: 'nothing', after: turned(set, 'iso', 100) },
      { title: 'enough', after: turned(set, 'iso', 40) },
      { title: 'words alone' },
    ])
    expect(advice).toEqual([{ title: 'enough' }, { title: 'words alone' }])
  })

  it('that brings three more of its own level is given only where nothing else helps', () => {
    const others = ['one', 'two', 'three'].map((id) =>
      limitOn(`${id}-limit`, shutterSpeed, 200, () => [], true),
    )
    const quick = (set: ComputedSet): Mend => ({
      title: 'quick',
      after: set.with({ knob: { knob: 'iso' }, to: 40 }, { knob: { knob: 'shutter' }, to: 1 / 250 }),
    })
    const plain = (set: ComputedSet): Mend => ({ title: 'plain', after: turned(set, 'iso', 40) })
    expect(adviceOf((set) => [quick(set), plain(set)], ...others)).toEqual([{ title: 'plain' }])
    expect(adviceOf((set) => [quick(set)], ...others)).toEqual([
      { title: 'quick', costs: 'then one-limit is over; then two-limit is over; then three-limit is over' },
    ])
    expect(adviceOf((set) => [quick(set), plain(set)], ...others.slice(1))[0]!.title).toBe('quick')
  })

  it('that settles one of two findings is given, though the other stays', () => {
    // A rule that points at ISO and at the shutter, each over its own limit.
    const two = rule({
      ...limitOn('own-limit', iso, 50),
      detect: ({ set }) =>
        [
          { pointer: '/camera/iso', over: iso(set) / 50 },
          { pointer: '/camera/shutter', over: shutterSpeed(set) / 50 },
        ].flatMap(({ pointer, over }) =>
          over <= 1 ? [] : [{ pointer, beyond: 'certain' as const, measured: {} }],
        ),
      mend: (_, __, { set }) => [{ title: 'a lower ISO', after: turned(set, 'iso', 25) }],
    })
    const { findings } = checkText(plan, { rules: [two] })
    const at = (pointer: string) => findings.find((one) => one.place.pointer === pointer)!
    expect(at('/camera/iso').advice).toEqual([{ title: 'a lower ISO' }])
    expect(at('/camera/shutter').advice).toEqual([])
  })

  it('that says itself how far it comes is given', () => {
    const advice = adviceOf((set) => [
      { title: 'some', gives: 'half of it', after: turned(set, 'iso', 70), partial: true },
    ])
    expect(advice).toEqual([{ title: 'some', gives: 'half of it' }])
  })

  it('says what it brings that was not there, and not what was there before', () => {
    const mends = (set: ComputedSet): readonly Mend[] => [
      { title: 'both', costs: 'grain', after: turned(turned(set, 'iso', 40), 'shutter', 1 / 500) },
    ]
    const fast = (limit: number) => limitOn('too-fast', shutterSpeed, limit, undefined, true)
    expect(adviceOf(mends, fast(200))).toEqual([{ title: 'both', costs: 'grain; then too-fast is over' }])
    expect(adviceOf(mends, fast(1000))).toEqual([{ title: 'both', costs: 'grain' }])
    const unwatched = limitOn('too-fast', shutterSpeed, 200)
    expect(adviceOf(mends, unwatched)).toEqual([{ title: 'both', costs: 'grain' }])
    // Over before as well, and no more than before.
    const same = (set: ComputedSet): readonly Mend[] => [{ title: 'iso', after: turned(set, 'iso', 40) }]
    expect(adviceOf(same, fast(100))).toEqual([{ title: 'iso' }])
  })

  it('is three at most, and no more of a generator is worked out', () => {
    let worked = 0
    const many = rule({
      ...(limitOn('own-limit', iso, 50) as unknown as Parameters<typeof rule>[0]),
      *mend() {
        for (; worked < 9; ) {
          worked += 1
          yield { title: `way ${worked}` }
        }
      },
    })
    const [finding] = checkText(plan, { rules: [many] }).findings
    expect(worked).toBe(0)
    expect(finding!.advice.map(({ title }) => title)).toEqual(['way 1', 'way 2', 'way 3'])
    expect(worked).toBe(3)
  })
})
