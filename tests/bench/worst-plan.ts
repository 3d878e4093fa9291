/** The largest plan that the language takes, or nearly so: what work is bounded for. */

const spread = (index: number, count: number, from: number, to: number): string =>
  (from + ((to - from) * index) / Math.max(1, count - 1)).toFixed(2)

const numbered = (count: number, write: (index: number) => string): string[] =>
  Array.from({ length: count }, (_, index) => write(index))

const modifiers = [
  'softbox 60 x 90 cm',
  'octa 90 cm',
  'strip 30 x 120 cm',
  'white umbrella 1 m',
  'beauty dish 55 cm',
]

/** 64 lights with grids and modifiers, 64 panels, 40 people in rows, a room, 200 points; readings as asked, at most 500. */
export const worstPlan = (readings = 0): string =>
  `${[
    'plan: 1',
    'title: As much as a plan may hold',
    'room: { width: 14 m, length: 16 m, height: 5 m, behind-backdrop: 1 m, walls: white paint, ceiling: white paint, floor: grey carpet }',
    'camera: { lens: 35 mm, at: { distance: 9 m }, aperture: f/8, shutter: 1/125, iso: 100, sync: 1/200 }',
    'subject:',
    '  kind: group',
    '  rows:',
    ...numbered(
      4,
      (row) =>
        `    - { people: 10, spacing: 55 cm, behind: ${row === 0 ? 0 : 60} cm, faces-at: ${(1.1 + row * 0.25).toFixed(2)} m }`,
    ).map((line) => line.replace('behind: 0 cm, ', '')),
    'backdrop: { surface: white paper, width: 10 m, behind: 3 m }',
    'lights:',
    ...numbered(64, (index) => {
      const side = index % 2 === 0 ? 'left' : 'right'
      const grid = index % 3 === 0 ? ', grid: 40 deg' : ''
      return `  light-${index}: { role: ${index === 0 ? 'key' : index % 4 === 1 ? 'backdrop' : 'fill'}, unit: head 400 Ws, modifier: ${modifiers[index % 5]}${grid}, power: 1/16, at: { angle: ${spread(index, 64, 5, 170)} deg ${side}, distance: ${spread(index % 7, 7, 2.5, 5)} m, height: ${spread(index % 5, 5, 1.6, 3.5)} m } }`
    }),
    'panels:',
    ...numbered(
      64,
      (index) =>
        `  panel-${index}: { kind: ${index % 2 === 0 ? 'reflector' : 'flag'}, size: 1 x 1 m, at: { ${index % 2 === 0 ? 'left' : 'right'}: ${spread(index, 64, 2.5, 6)} m, front: ${spread(index % 9, 9, 0.2, 4)} m, height: 1.5 m }, faces: subject }`,
    ),
    'points:',
    ...numbered(
      200,
      (index) =>
        `  point-${index}: { front: ${spread(index, 200, 0.1, 3)} m, height: ${spread(index % 9, 9, 0.3, 2)} m }`,
    ),
    'wanted: { framing: all, backdrop: white }',
    ...(readings === 0 ? [] : ['readings:']),
    ...numbered(
      readings,
      (index) =>
        `  - { at: point-${index % 200}, of: [light-${index % 64}], reads: f/${index % 2 === 0 ? 4 : 5.6}, iso: 100 }`,
    ),
  ].join('\n')}\n`
