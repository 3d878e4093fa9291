/** What stands in what, and what the room holds: by plane geometry and by facts of the trade. */
import { describe, expect, it } from 'vitest'
import { computeSet } from '../../src/set/compute-set.js'
import { checkText, findingsOf, planOf } from './check-text.js'

const set = (more: string, lights = 'key: { unit: flashgun, at: camera }'): string => `plan: 1
title: By plane geometry
camera: { lens: 85 mm, at: { distance: 2.6 m, height: 1.5 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.5 m }
lights:
  ${lights}
${more}`
const board = (name: string, at: string, faces: string, size = '1 x 1 m') =>
  `  ${name}: { kind: reflector, surface: white board, size: ${size}, at: { ${at} }, faces: ${faces} }\n`
const collisions = (text: string) => findingsOf('in-collision', text)
const depth = (text: string): number | undefined => collisions(text)[0]?.measured.depth?.value

describe('in one place', () => {
  it.each([
    ['1 x 1 m', '30 cm', 20],
    ['60 x 200 cm', '90 cm', 10],
    ['60 x 200 cm', '97 cm', undefined],
  ])(
    'a board of %s at %s stands %s cm in the floor: half its height less its middle',
    (size, height, into) => {
      const found = depth(set(`panels:\n${board('low', `left: 1.5 m, height: ${height}`, 'right', size)}`))
      if (into === undefined) expect(found).toBeUndefined()
      else expect(found).toBeCloseTo(into, 6)
    },
  )

  it('two boards that cross like a T: as far as the one must go back', () => {
    // The one lies along the set, a metre to the left; the other square to it, its near end this much past.
    const cross = (past: number) =>
      set(
        `panels:\n${board('along', 'left: 1 m, behind: 1 m, height: 1.5 m', 'right', '2 x 1 m')}${board('square', `left: ${150 - past} cm, behind: 1 m, height: 1.5 m`, 'camera')}`,
      )
    expect(depth(cross(12))).toBeCloseTo(12, 3)
    expect(depth(cross(30))).toBeCloseTo(30, 3)
    expect(depth(cross(4))).toBeUndefined()
    expect(depth(cross(-1))).toBeUndefined()
  })

  it('a board beside the subject, and one through it', () => {
    // 45 cm wide: 22.5 cm to either side. A board square to the shoulders reaches this much past the arm.
    const beside = (right: number) =>
      set(
        `panels:\n${board('card', `right: ${right} cm, behind: 10 cm, height: 1.1 m`, 'camera', '40 x 40 cm')}`,
      )
    expect(depth(beside(45))).toBeUndefined()
    // 34 cm aside, its inner edge 14 cm from the middle: out by 8.5 cm.
    expect(depth(beside(34))).toBeCloseTo(8.5, 0)
    expect(collisions(beside(34))[0]!.message).toMatch(/^card and the subject stand in one place: /)
  })

  it('legs of stands interleave: two heads a hand apart are no collision (common practice, no source)', () => {
    const pair = (apart: number) =>
      set(
        '',
        `left: { role: key, unit: head 200 Ws, meters: f/8, at: { left: 1 m, front: 1 m, height: 2 m }, aim: { at: subject } }\n  right: { role: fill, unit: head 200 Ws, meters: f/4, at: { left: ${100 - apart} cm, front: 1 m, height: 2 m } }`,
      )
    expect(collisions(pair(20))).toEqual([])
    expect(collisions(pair(0)).length).toBe(1)
  })

  it('the box where the photographer stands', () => {
    const fill = (distance: string) =>
      set(
        '',
        `fill: { unit: head 400 Ws, modifier: octa 150 cm, meters: f/4, at: { angle: 0 deg, distance: ${distance}, height: 1.6 m } }`,
      )
    expect(collisions(fill('2.8 m'))[0]!.message).toContain('whoever holds the camera')
    expect(collisions(fill('2.7 m'))[0]!.level).toBe('warning')
    // An arm in the edge of the box: one leans aside.
    const beside = fill('2.8 m').replace('angle: 0 deg', 'angle: 16 deg left')
    expect(collisions(beside).map(({ level }) => level)).toEqual(['note'])
    // Well behind the back of whoever stands there.
    expect(collisions(fill('3.4 m'))).toEqual([])
  })

  it('only the guessed back of a box: perhaps', () => {
    const wallward = (modifier: string, left: string) =>
      set(
        `panels:\n${board('far', 'left: 2 m, height: 1.5 m', 'right')}`,
        `key: { unit: head 400 Ws, modifier: ${modifier}, meters: f/8, at: { left: ${left}, height: 1.5 m } }`,
      )
    // 60 x 60 cm: 36 cm deep if the kit says nothing, give or take a third. The board is 2 m off, the front this far.
    const [doubtful] = collisions(wallward('softbox 60 x 60 cm', '1.73 m'))
    expect(doubtful!.level).toBe('note')
    expect(doubtful!.message).toMatch(/^perhaps /)
    expect(collisions(wallward('softbox 60 x 60 cm', '1.85 m'))[0]!.level).toBe('warning')
    expect(
      collisions(wallward('{ kind: softbox, size: 60 x 60 cm, depth: 36 cm }', '1.73 m'))[0]!.level,
    ).toBe('warning')
    expect(collisions(wallward('softbox 60 x 60 cm', '1.6 m'))).toEqual([])
  })
})

describe('between the walls', () => {
  /** A room 4 m wide, its centre line in the middle, 6 m long from 2.4 m behind the subject. */
  const room =
    'room: { width: 4 m, length: 6 m, height: 2.6 m, behind-backdrop: 40 cm }\nbackdrop: { surface: grey paper, width: 2.7 m, behind: 2 m }\n'
  const through = (text: string) => findingsOf('outside-room', text)

  it.each([
    ['left: 1.6 m, behind: 1 m, height: 1.3 m', 'camera', 10, 'the camera-left wall'],
    ['right: 1.65 m, behind: 1 m, height: 1.3 m', 'camera', 15, 'the camera-right wall'],
    ['left: 1 m, behind: 2.1 m, height: 1.3 m', 'right', 20, 'the wall behind the set'],
    ['left: 1 m, front: 3.3 m, height: 1.3 m', 'right', 20, 'the wall behind the camera'],
    ['left: 1 m, behind: 1 m, height: 2.2 m', 'right', 10, 'the ceiling'],
  ])('a board of a metre at %s, facing %s: %d cm in %s', (at, faces, cm, wall) => {
    const [found] = through(set(`${room}panels:\n${board('card', at, faces)}`))
    expect(found!.level).toBe('error')
    expect(found!.measured.through!.value).toBeCloseTo(cm, 6)
    expect(found!.message).toContain(`${cm} cm of it would be in ${wall}`)
  })

  it('a light with its depth, square to the wall: its front and the way to its mount', () => {
    const light = (left: string) =>
      set(
        room,
        `key: { unit: head 400 Ws, modifier: { kind: softbox, size: 60 x 60 cm, depth: 36 cm }, meters: f/8, at: { left: ${left}, height: 1.5 m } }`,
      )
    expect(through(light('1.8 m'))[0]!.measured.through!.value).toBeCloseTo(16, 6)
    expect(through(light('1.6 m'))).toEqual([])
  })

  it('a roll wider than the room, as an error if the plan names its width', () => {
    const roll = (width: string) =>
      through(set(room.replace('width: 4 m', 'width: 2.5 m').replace('width: 2.7 m', width)))
    expect(roll('width: 2.7 m')[0]!.level).toBe('error')
    expect(roll('width: 2.7 m')[0]!.measured.through!.value).toBeCloseTo(10, 6)
    expect(roll('height: 2.5 m')[0]!.level).toBe('note')
    expect(roll('width: 2.5 m')).toEqual([])
  })

  it('is asked of plans with a room only, and says so', () => {
    const { notChecked } = checkText(set(''))
    const said = notChecked.find((one) => one.rule === 'outside-room')
    expect(said?.because).toBe('the plan states no room')
    const sky = set(
      'backdrop: { surface: sky, sky: { reads: f/8, kind: reflected, shutter: 1/1000, iso: 100 } }\n',
    )
    expect(checkText(sky).notChecked.filter((one) => one.rule === 'outside-room')).toEqual([])
  })
})

describe('the length of the room', () => {
  const studio = (
    length: string,
    camera: string,
    framing = 'full length',
    held = 'person',
  ): string => `plan: 1
title: How long must it be
room: { width: 4 m, length: ${length}, height: 2.8 m, behind-backdrop: 0 cm }
camera: { ${camera}, height: 90 cm }, held-by: ${held}, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, height: 1.8 m, depth: 2 cm }
backdrop: { surface: grey paper, behind: 2 m }
lights: { key: { unit: flashgun, at: camera } }
wanted: { framing: ${framing}, shadow: any }
`
  const short = (text: string) => findingsOf('room-short', text)[0]
  const behind = (text: string): number | undefined => short(text)?.measured.behind?.value

  it('a frame takes its height × focal length / 36 mm, and a focal length (thin lens)', () => {
    // 1.8 m high, in a room that ends 2.6 m before the subject.
    for (const lens of [85, 70, 60]) {
      const text = studio('4.6 m', `lens: ${lens} mm, at: { distance: 2.2 m`)
      const { min, max } = computeSet(planOf(text)).scene.subject.bounds
      // From the lens to the middle of the body, a hand behind the face that the distance is to.
      const toMiddle = ((max[2] - min[2]) * lens) / 36 + lens / 1000
      expect(Math.abs(2.6 - behind(text)! - (toMiddle - (min[1] + max[1]) / 2))).toBeLessThan(0.02)
    }
  })

  it('eight metres hold full length with 85 mm, seven do not (common practice, no source)', () => {
    expect(short(studio('8 m', 'lens: 85 mm, at: { distance: 5 m'))).toBeUndefined()
    expect(short(studio('6.5 m', 'lens: 85 mm, at: { distance: 4 m'))!.level).toBe('error')
  })

  it.each([
    ['1.9 m', undefined],
    ['2.05 m', 'note'],
    ['2.25 m', 'error'],
    ['2.8 m', 'error'],
  ])('the camera %s away, the wall 2.6 m: %s', (distance, level) => {
    expect(short(studio('4.6 m', `lens: 85 mm, at: { distance: ${distance}`, 'face'))?.level).toBe(level)
  })

  it('a stand needs less than a person', () => {
    const at = 'lens: 85 mm, at: { distance: 2.3 m'
    expect(short(studio('4.6 m', at, 'face'))!.level).toBe('error')
    expect(short(studio('4.6 m', at, 'face', 'stand'))!.level).toBe('note')
  })
})

describe('under the ceiling', () => {
  const under = (
    height: string,
    lights: string,
    subject = '{ kind: person, height: 1.83 m }',
  ): string => `plan: 1
title: How high must it be
room: { width: 4 m, length: 6 m, height: ${height} }
camera: { lens: 85 mm, at: { distance: 2.6 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: ${subject}
backdrop: { surface: grey paper, behind: 2 m }
lights:
  ${lights}
points: { under: { left: 1 m, behind: 0 cm, height: 1 cm } }
`
  const box = (height: string, aim: string) =>
    `key: { unit: head 400 Ws, modifier: { kind: softbox, size: 60 x 60 cm, depth: 36 cm }, meters: f/8, at: { left: 1 m, height: ${height} }, aim: ${aim} }`
  const low = (text: string) => findingsOf('ceiling-low', text)

  it('a box that looks down stands up by its depth, one that looks ahead by half its height', () => {
    expect(low(under('2.5 m', box('2.25 m', 'under')))[0]!.measured.through!.value).toBeCloseTo(11, 6)
    expect(low(under('2.5 m', box('2.1 m', 'under')))).toEqual([])
    expect(low(under('2.5 m', box('2.27 m', 'back-wall')))[0]!.measured.through!.value).toBeCloseTo(7, 6)
    expect(low(under('2.5 m', box('2.15 m', 'back-wall')))).toEqual([])
  })

  it('someone on a platform: 60 cm and 1.83 m under 2.3 m', () => {
    const tall = '{ kind: person, height: 1.83 m, stands-on: { height: 60 cm, size: 1 x 1 m } }'
    const [found] = low(under('2.3 m', 'key: { unit: flashgun, at: camera }', tall))
    expect(found!.level).toBe('error')
    expect(found!.measured.through!.value).toBeCloseTo(13, 0)
  })

  it('a hair light over 1.83 m wants 2.73 m; seated it fits under 2.6 m (common practice, no source)', () => {
    const hair =
      'hair: { unit: flashgun, meters: f/5.6, at: { angle: 170 deg right, distance: 1 m, height: 2 m } }'
    expect(low(under('2.6 m', hair)).map(({ level }) => level)).toEqual(['note'])
    expect(low(under('2.75 m', hair))).toEqual([])
    const seated = '{ kind: person, height: 1.83 m, pose: seated }'
    expect(low(under('2.6 m', hair.replace('height: 2 m', 'height: 1.6 m'), seated))).toEqual([])
  })
})

describe('something between a light and its aim', () => {
  // The front 60 cm wide, two metres before the face and level with it: halfway it looks 30 cm wide.
  const halfway = (edge: number, more = '') =>
    set(
      `panels:\n${board('flag', `${edge < 50 ? `left: ${50 - edge}` : `right: ${edge - 50}`} cm, front: 1 m, height: 1.5 m`, 'camera')}${more}`,
      'key: { unit: head 400 Ws, modifier: { kind: softbox, size: 60 x 60 cm, depth: 30 cm }, meters: f/8, at: { left: 0 cm, front: 2 m, height: 1.5 m } }',
    ).replace('at: { distance: 2.6 m, height: 1.5 m }', 'at: { distance: 4 m, height: 1.5 m }')
  const blocked = (text: string) => findingsOf('aim-blocked', text)

  it.each([
    [3, 60],
    [9, 80],
    [14.9, 100],
  ])('an edge %d cm past the middle hides %d %% (similar triangles)', (edge, percent) => {
    const [found] = blocked(halfway(edge))
    expect(found!.level).toBe('warning')
    expect(Math.abs(100 * found!.measured.hidden!.value - percent)).toBeLessThan(2)
    expect(found!.message).toContain('flag')
  })

  it('an edge short of the middle is a flag that does its job', () => {
    expect(blocked(halfway(-2))).toEqual([])
    expect(blocked(halfway(-20))).toEqual([])
  })

  it('a scrim is there to be shone through', () => {
    expect(
      blocked(halfway(15).replace('kind: reflector, surface: white board', 'kind: scrim, transmits: 40 %')),
    ).toEqual([])
  })

  it('a light aimed at a board, and something before that', () => {
    const bounced = (more: string) =>
      set(
        `panels:\n${board('big', 'right: 1.5 m, height: 1.5 m', 'subject')}${more}`,
        'fill: { unit: flashgun, meters: f/4, at: { left: 1.5 m, front: 2 m, height: 1.5 m }, aim: big }',
      )
    expect(blocked(bounced(''))).toEqual([])
    const [found] = blocked(bounced(board('small', 'left: 0 cm, front: 1 m, height: 1.5 m', 'subject')))
    expect(found!.message).toBe('fill does not get to big: small stands before it')
  })
})
