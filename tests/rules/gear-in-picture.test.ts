/** Gear in the picture, by similar triangles and by facts of the trade. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { seenOf } from '../../src/picture/in-picture.js'
import { rayThrough } from '../../src/scene/camera-view.js'
import { firstHit } from '../../src/scene/first-hit.js'
import { feetOf } from '../../src/scene/stands.js'
import { computeSet } from '../../src/set/compute-set.js'
import { findingsOf, planOf } from './check-text.js'

/**
 * Focused at infinity: half the frame of 36 × 24 mm is 12/100 of the way across and 18/100 up, with 100 mm. The camera is
 * 1.5 m high and looks straight ahead.
 */
const set = (more: string, camera = 'distance: 3 m, height: 1.5 m'): string => `plan: 1
title: By similar triangles
camera: { lens: 100 mm, frame: vertical, focus: 1000 m, at: { ${camera} }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person, faces-at: 1.5 m }
${more}`

const light = (at: string) =>
  `lights:\n  key: { unit: { guide-number: 36 m at 35 mm, zoom: 24..105 mm }, modifier: { kind: softbox, size: 40 x 40 cm, depth: 10 cm }, meters: f/8, at: { ${at} } }\n`
const board = (at: string, faces = 'camera') =>
  `lights: { key: { unit: flashgun, at: camera } }\npanels:\n  board: { kind: reflector, surface: white board, size: 40 x 40 cm, at: { ${at} }, faces: ${faces} }\n`

const inside = (rule: string, text: string): number | undefined =>
  findingsOf(rule, text)[0]?.measured.inside?.value

describe('how far a panel reaches in', () => {
  // A metre behind the subject the frame is 0.12 × 4 = 48 cm to either side; the board's inner edge 20 cm inside its middle.
  it.each([
    [60, 8],
    [65, 3],
    [50, 18],
  ])('in the plane of a board %i cm aside: %i cm', (aside, reaches) => {
    expect(
      inside('panel-in-frame', set(board(`right: ${aside} cm, behind: 1 m, height: 1.5 m`))),
    ).toBeCloseTo(reaches, 0)
    const [found] = findingsOf('panel-in-frame', set(board(`left: ${aside} cm, behind: 1 m, height: 1.5 m`)))
    expect(found!.message).toContain('camera-left')
  })

  it('a pair as in a mirror is told once, moved together, and its frame is that of its own depth', () => {
    const two = (right: string) =>
      set(
        `${board('left: 60 cm, behind: 1 m, height: 1.5 m')}  other: { kind: reflector, surface: white board, size: 40 x 40 cm, at: { right: ${right}, behind: 1 m, height: 1.5 m }, faces: camera }\n`,
      )
    const found = findingsOf('panel-in-frame', two('60 cm'))
    expect(found).toHaveLength(1)
    expect(found[0]!.message).toBe('board and other are in the picture, each 8 cm in from either side')
    // 2 × 0.12 and 2 × 0.18 of 4 m.
    expect(found[0]!.why).toMatch(/96 cm wide and 1\.44 m high, 4 m from the camera$/)
    expect(found[0]!.also.map(({ pointer }) => pointer)).toContain('/panels/other/at')
    expect(found[0]!.advice[0]!.title).toBe('panels.board.at.left → 70 cm, panels.other.at.right → 70 cm')
    // Not as in a mirror, they are two.
    const apart = findingsOf('panel-in-frame', two('55 cm')).map(({ message }) => message)
    expect(apart).toEqual([
      'board is in the picture, 8 cm in from the camera-left edge',
      'other is in the picture, 13 cm in from the camera-right edge',
    ])
  })

  it('tells the stands of a pair of lights once', () => {
    const stands = (right: string) => {
      const one = light('left: 60 cm, front: 10 cm, height: 2.4 m').replace(
        '} }',
        '}, stand: { kind: light stand } }',
      )
      const other = one.split('\n')[1]!.replace('key:', 'fill:').replace('left: 60 cm', `right: ${right}`)
      return set(`${one}${other}\n`, 'distance: 6 m, height: 1 m')
    }
    expect(findingsOf('stand-in-frame', stands('60 cm')).map(({ message }) => message)).toEqual([
      expect.stringMatching(
        /^the stands of key and fill are in the picture, each 10 cm up from the bottom edge$/,
      ),
    ])
    expect(findingsOf('stand-in-frame', stands('50 cm'))).toHaveLength(2)
  })

  it('not at all a centimetre outside', () => {
    expect(findingsOf('panel-in-frame', set(board('right: 69 cm, behind: 1 m, height: 1.5 m')))).toEqual([])
  })

  it('over the top: 0.18 × 2.5 = 45 cm over the lens half a metre before the subject', () => {
    const text = set(board('right: 0 cm, front: 50 cm, height: 2.05 m'))
    expect(inside('panel-in-frame', text)).toBeCloseTo(10, 0)
    expect(findingsOf('panel-in-frame', text)[0]!.message).toContain('down from the top edge')
  })

  it('is an error before the face, none where the subject hides it all', () => {
    const [before] = findingsOf('panel-in-frame', set(board('right: 0 cm, front: 50 cm, height: 1.5 m')))
    expect(before!.level).toBe('error')
    expect(before!.message).toContain('the face is hidden')
    // 10 cm wide, 1 m behind: its shadow on the subject's plane is 7.5 cm wide.
    const small = board('right: 0 cm, behind: 1 m, height: 1.2 m').replace('40 x 40', '10 x 10')
    expect(findingsOf('panel-in-frame', set(small))).toEqual([])
    expect(findingsOf('panel-in-frame', set(small.replace('right: 0 cm', 'right: 30 cm'))).length).toBe(1)
  })

  it('by similar triangles wherever it stands beside the subject', () => {
    const centimetres = (min: number, max: number) => fc.integer({ min, max })
    fc.assert(
      fc.property(
        centimetres(65, 90),
        centimetres(10, 200),
        centimetres(60, 240),
        fc.constantFrom('left', 'right'),
        (aside, behind, height, side) => {
          const depth = 3 + behind / 100
          const [halfWidth, halfHeight] = [0.12 * depth, 0.18 * depth]
          const inward = halfWidth - (aside / 100 - 0.2)
          const [top, bottom] = [height / 100 + 0.2 - 1.5, height / 100 - 0.2 - 1.5]
          const ways = [
            inward,
            // Down from the top edge to its lowest, up from the bottom edge to its highest in the frame.
            halfHeight - Math.max(bottom, -halfHeight),
            Math.min(top, halfHeight) + halfHeight,
          ]
          const seen = inward > 0 && bottom < halfHeight && top > -halfHeight
          const by = seen ? 100 * Math.min(...ways) : 0
          // At the limit itself a last digit decides.
          fc.pre(Math.abs(by - 2) > 0.2)
          const reaches = inside(
            'panel-in-frame',
            set(board(`${side}: ${aside} cm, behind: ${behind} cm, height: ${height} cm`)),
          )
          if (by > 2) expect(Math.abs(reaches! - by)).toBeLessThan(0.2)
          else expect(reaches).toBeUndefined()
        },
      ),
      { numRuns: 60 },
    )
  })

  it('hides half of a head whose middle its edge cuts, and no head beside it', () => {
    const [half] = findingsOf('panel-in-frame', set(board('right: 20 cm, front: 50 cm, height: 1.5 m')))
    expect(Math.abs(half!.measured['head-hidden']!.value - 0.5)).toBeLessThan(0.03)
    expect(half!.level).toBe('error')
    expect(half!.message).toMatch(/^5\d % of the head is hidden: board stands before it$/)
    const [beside] = findingsOf('panel-in-frame', set(board('right: 40 cm, front: 50 cm, height: 1.5 m')))
    expect(beside!.level).toBe('warning')
    expect(beside!.measured['head-hidden']).toBeUndefined()
  })

  it('hides nobody from behind', () => {
    const [found] = findingsOf('panel-in-frame', set(board('right: 20 cm, behind: 50 cm, height: 1.5 m')))
    expect(found!.level).toBe('warning')
    expect(found!.measured['subject-hidden']).toBeUndefined()
  })

  it('is never behind the camera', () => {
    expect(findingsOf('panel-in-frame', set(board('right: 0 cm, front: 3.2 m, height: 1.5 m')))).toEqual([])
  })

  it('is hidden by the backdrop that it stands behind', () => {
    const behind = set(
      `backdrop: { surface: white paper, behind: 80 cm }\n${board('right: 40 cm, behind: 1 m, height: 1.5 m')}`,
    )
    expect(findingsOf('panel-in-frame', behind)).toEqual([])
  })
})

describe('a light', () => {
  // Square to the camera's axis a metre before the subject: 0.18 × 2 = 36 cm from the axis to the frame's top.
  it.each([
    [2.01, 5],
    [1.96, 10],
    [1.76, 30],
  ])('at %d m comes %d cm down over the top edge', (height, reaches) => {
    const text = set(
      light(`left: 0 cm, front: 1 m, height: ${height} m`).replace(' } }\n', ' }, aim: back-wall }\n'),
    )
    expect(inside('light-in-frame', text)).toBeCloseTo(reaches, 0)
  })

  it('over the frame, beside it or behind the camera is not in it', () => {
    for (const at of [
      'left: 0 cm, front: 1 m, height: 2.1 m',
      'left: 50 cm, front: 1 m, height: 1.5 m',
      'left: 20 cm, front: 3.4 m, height: 1.6 m',
    ])
      expect(findingsOf('light-in-frame', set(light(at)))).toEqual([])
  })

  it('behind the backdrop or behind a panel is seen by nobody', () => {
    const beside = light('right: 40 cm, behind: 1.5 m, height: 1.5 m')
    expect(findingsOf('light-in-frame', set(beside)).length).toBe(1)
    expect(
      findingsOf('light-in-frame', set(`backdrop: { surface: black cloth, behind: 1 m }\n${beside}`)),
    ).toEqual([])
    const flag =
      'panels: { flag: { kind: flag, size: 1 x 1 m, at: { right: 50 cm, behind: 1 m, height: 1.5 m }, faces: camera } }\n'
    expect(findingsOf('light-in-frame', set(beside + flag))).toEqual([])
    expect(findingsOf('panel-in-frame', set(beside + flag)).length).toBe(1)
  })

  it('of which only a guessed depth would show is a note', () => {
    // Its front looks to camera-right, 5 cm outside the frame; the box behind it reaches in.
    const box = (modifier: string) =>
      set(
        `lights:\n  rim: { unit: head 400 Ws, modifier: ${modifier}, meters: f/8, at: { right: 53 cm, behind: 1 m, height: 1.5 m }, aim: right-wall }\n`,
      )
    const [guessed] = findingsOf('light-in-frame', box('softbox 40 x 40 cm'))
    expect(guessed!.level).toBe('note')
    expect(guessed!.message).toMatch(/^perhaps /)
    const [known] = findingsOf('light-in-frame', box('{ kind: softbox, size: 40 x 40 cm, depth: 25 cm }'))
    expect(known!.level).toBe('warning')
  })

  it('shows its front as a panel does', () => {
    // Its front a metre behind the subject, where the frame is 48 cm to either side, turned to the face.
    const [found] = findingsOf('light-in-frame', set(light('right: 60 cm, behind: 1 m, height: 1.5 m')))
    expect(found!.level).toBe('warning')
    expect(found!.measured.inside!.value).toBeGreaterThan(5)
  })

  it('on the camera is never in the picture', () => {
    expect(findingsOf('light-in-frame', set('lights: { key: { unit: flashgun, at: camera } }\n'))).toEqual([])
  })

  it('behind the subject is fine when wholly hidden, and is not when the subject no longer hides it (common practice, no source)', () => {
    const paper = (height: string, left = '0 cm') =>
      set(
        `backdrop: { surface: white paper, behind: 2 m }\nlights:\n  paper: { role: backdrop, unit: flashgun, meters: f/8, at: { left: ${left}, before-backdrop: 1.2 m, height: ${height} } }\n`,
      )
    expect(findingsOf('light-in-frame', paper('1.2 m'))).toEqual([])
    expect(findingsOf('light-in-frame', paper('1.2 m', '45 cm')).length).toBe(1)
  })

  it('that is a window or the sun is no gear', () => {
    const window = set(
      'lights:\n  window: { role: key, unit: window, size: 1 x 1 m, at: { left: 20 cm, behind: 2 m, height: 1.5 m }, faces: camera, reads: f/4, shutter: 1/60, iso: 100 }\n',
    )
    expect(findingsOf('light-in-frame', window)).toEqual([])
    expect(findingsOf('stand-in-frame', window)).toEqual([])
  })

  it('reported: an umbrella as near as it goes, up and to one side, shows an edge', () => {
    const [found] = findingsOf(
      'light-in-frame',
      `plan: 1
title: As near as it goes
camera: { sensor: aps-c, lens: 56 mm, at: { distance: 1.8 m }, aperture: f/8, shutter: 1/125, iso: 100 }
subject: { kind: person }
lights: { key: { unit: flashgun, modifier: white umbrella 1 m, meters: f/8, at: { angle: 30 deg right, distance: 80 cm, height: 2 m } } }
`,
    )
    expect(found!.level).toBe('warning')
  })
})

describe('what is hidden of the subject', () => {
  /** Pixel by pixel: where the subject would be seen, and something stands before it. */
  const byPixels = (text: string): number => {
    const { scene } = computeSet(planOf(text))
    const { camera } = scene
    const board = new Set(['board'])
    let [hidden, all] = [0, 0]
    for (let i = 0; i < 80; i++)
      for (let j = 0; j < 120; j++) {
        const ray = rayThrough(camera, ((i + 0.5) / 80) * 2 - 1, ((j + 0.5) / 120) * 2 - 1)
        if (firstHit(scene, camera.eye, ray, board)?.on !== 'figure') continue
        all++
        if (firstHit(scene, camera.eye, ray)?.on === 'panel') hidden++
      }
    return hidden / all
  }

  it.each([
    ['right: 10 cm, front: 60 cm, height: 1.3 m', 'camera'],
    ['left: 20 cm, front: 80 cm, height: 1.1 m', 'camera'],
    ['right: 5 cm, front: 40 cm, height: 1.6 m', 'camera'],
    ['right: 25 cm, front: 90 cm, height: 1.4 m', 'subject'],
  ])('by a board at %s, facing the %s', (at, faces) => {
    const text = set(board(at, faces))
    const [found] = findingsOf('panel-in-frame', text)
    expect(Math.abs(found!.measured['subject-hidden']!.value - byPixels(text))).toBeLessThan(0.04)
  })
})

describe('what is seen of a thing', () => {
  it('lies on it', () => {
    const { scene } = computeSet(planOf(set(board('right: 50 cm, behind: 1 m, height: 1.5 m'))))
    const solid = scene.solids.find(({ name }) => name === 'board')!
    const seen = seenOf(scene, solid)
    expect(seen.length).toBeGreaterThan(20)
    for (const [x, y, z] of seen) {
      expect(y).toBeCloseTo(1, 9)
      expect(Math.abs(x - 0.5)).toBeLessThanOrEqual(0.2)
      expect(Math.abs(z - 1.5)).toBeLessThanOrEqual(0.2)
    }
  })
})

describe('stands', () => {
  const stand = (text: string) => computeSet(planOf(text)).scene.stands[0]
  const held = (height: string, more = '', at = 'angle: 60 deg left, distance: 2 m') =>
    set(
      `lights:\n  key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/8, at: { ${at}, height: ${height} }${more} }\n`,
    )

  it('hold what is near the floor by nothing that stands, and what is over the subject from a boom', () => {
    expect(stand(held('1.8 m'))?.kind).toBe('pole')
    expect(stand(held('2.8 m'))?.kind).toBe('boom')
    expect(stand(held('2.4 m', '', 'angle: 180 deg left, distance: 1.1 m'))?.kind).toBe('boom')
    expect(stand(held('30 cm'))).toBeUndefined()
  })

  it('are what the plan says', () => {
    expect(stand(held('2.8 m', ', stand: { kind: light stand }'))?.kind).toBe('pole')
    expect(stand(held('1.8 m', ', stand: { kind: boom, arm: 2 m }'))?.arm).toBe(2)
    expect(stand(held('1.8 m', ', stand: { kind: ceiling rail }'))).toBeUndefined()
    expect(stand(set('lights: { key: { unit: flashgun, at: camera } }\n'))).toBeUndefined()
  })

  it('of a boom stand anywhere on a circle about the light', () => {
    const one = stand(held('1.8 m', ', stand: { kind: boom, arm: 2 m }'))!
    for (const foot of feetOf(one)) {
      expect(Math.hypot(foot[0] - one.mount[0], foot[1] - one.mount[1])).toBeCloseTo(2, 9)
      expect(foot[2]).toBe(0)
    }
  })

  it('show where the pole comes down into the frame, and not one frame further aside', () => {
    // 3 m off the pole's place at 0.12: 36 cm to either side. A bare flashgun is held 10 cm behind its front, straight behind.
    const pole = (left: number) =>
      set(
        `lights:\n  key: { unit: flashgun, meters: f/8, at: { left: ${left} cm, behind: 0 cm, height: 2.4 m }, aim: { at: camera }, stand: { kind: light stand } }\n`,
      )
    const shown = findingsOf('stand-in-frame', pole(30))
    expect(shown.length).toBe(1)
    expect(shown[0]!.level).toBe('warning')
    expect(findingsOf('stand-in-frame', pole(75))).toEqual([])
  })
})
