/** Varied, valid plans as text, the same for the same seed: for measuring throughput and as a start for the fuzzer. */

/** A small linear congruential generator (the constants are those of Numerical Recipes, from memory). */
export const random = (seed: number) => {
  let state = seed >>> 0
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
  return {
    next,
    whole: (from: number, to: number): number => from + Math.floor(next() * (to - from + 1)),
    of: <T>(items: readonly T[]): T => items[Math.floor(next() * items.length)]!,
    chance: (share: number): boolean => next() < share,
  }
}

export type Random = ReturnType<typeof random>

const apertures = ['f/2.8', 'f/4', 'f/5.6', 'f/8', 'f/11']
const modifiers = [
  'softbox 60 x 90 cm',
  'octa 90 cm',
  'strip 30 x 120 cm',
  'shoot-through umbrella 1 m',
  'white umbrella 1 m',
  'beauty dish 55 cm',
]
const units = ['flashgun', 'head 200 Ws', 'head 400 Ws', 'head 600 Ws']
const papers = ['white paper', 'grey paper', 'black velvet']

const length = (random: Random, from: number, to: number): string => {
  const metres = from + random.next() * (to - from)
  return random.chance(0.5) ? `${metres.toFixed(2)} m` : `${Math.round(metres * 100)} cm`
}

const power = (random: Random): string =>
  random.of(['full', '1/2', '1/4', '1/8', '1/4 + 0.3', '1/8 - 1/3', '1/16', '1/2 + 0.7'])

const light = (random: Random, role: string, index: number): string => {
  const side = random.of(['left', 'right'])
  const strength = random.chance(0.7) ? `power: ${power(random)}` : `meters: ${random.of(apertures)}`
  const unit = random.of(units)
  if (role === 'backdrop') {
    return [
      `  paper-${index}:`,
      '    role: backdrop',
      `    unit: ${unit}`,
      `    ${strength}`,
      `    at: { ${side}: ${length(random, 0.8, 2)}, before-backdrop: ${length(random, 0.8, 1.6)}, height: ${length(random, 1, 2)} }`,
    ].join('\n')
  }
  const angle = role === 'rim' || role === 'hair' ? random.whole(120, 170) : random.whole(0, 60)
  return [
    `  ${role}${index > 0 ? `-${index}` : ''}:`,
    `    unit: ${unit}`,
    `    modifier: ${random.of(modifiers)}`,
    `    ${strength}`,
    `    at: { angle: ${angle} deg ${side}, distance: ${length(random, 1.2, 3)}, height: ${length(random, 1.7, 2.3)} }`,
    ...(random.chance(0.2) ? ['    aim: { at: subject, feather: 15 deg towards camera }'] : []),
  ].join('\n')
}

const subject = (random: Random): string =>
  random.of([
    'subject: { kind: person }',
    'subject: { kind: person, pose: seated, turned: 20 deg left }',
    'subject: { kind: person, height: 1.65 m, reflectance: 0.5 }',
    `subject:
  kind: group
  rows:
    - { people: 3, spacing: 50 cm, faces-at: 1.1 m }
    - { people: 2, spacing: 70 cm, behind: 45 cm, faces-at: 1.6 m }`,
    'subject: { kind: object, height: 30 cm, width: 10 cm, depth: 10 cm, stands-on: { height: 80 cm, surface: white paper, size: 1 x 1.4 m } }',
  ])

const fullStops = ['f/2.8', 'f/4', 'f/5.6', 'f/8', 'f/11']
const thirdUnder = ['f/2.5', 'f/3.5', 'f/5.0', 'f/7.1', 'f/10']

/** A set that works, or nearly so: the key meters what the camera is set to, white paper a little more from both sides. */
const soundPlan = (dice: Random, number: number): string => {
  const stop = dice.whole(2, 4)
  const paper = dice.of(papers)
  const backdropLights =
    paper === 'black velvet'
      ? []
      : ['left', 'right'].map(
          (side) =>
            `  paper-${side}: { role: backdrop, unit: head 200 Ws, meters: ${paper === 'white paper' ? thirdUnder[stop] : fullStops[stop - 1]}, at: { ${side}: ${length(dice, 1.6, 1.9)}, before-backdrop: ${length(dice, 1.5, 1.8)}, height: ${length(dice, 1.4, 1.7)} } }`,
        )
  return `${[
    'plan: 1',
    `title: Generated set ${number}`,
    `camera: { lens: ${dice.of([85, 105])} mm, at: { distance: ${length(dice, 2.6, 3.2)} }, aperture: ${fullStops[stop]}, shutter: 1/125, iso: 100, sync: 1/200 }`,
    dice.of(['subject: { kind: person }', 'subject: { kind: person, pose: seated, turned: 20 deg left }']),
    `backdrop: { surface: ${paper}, width: 2.72 m, behind: ${length(dice, 2.2, 3)} }`,
    'lights:',
    `  key: { unit: head 400 Ws, modifier: ${dice.of(modifiers)}, meters: ${fullStops[stop]}, at: { angle: ${dice.whole(5, 25)} deg ${dice.of(['left', 'right'])}, distance: ${length(dice, 1.3, 1.8)}, height: ${length(dice, 1.7, 2.1)} } }`,
    ...backdropLights,
    `wanted: { backdrop: ${paper === 'white paper' ? 'white' : paper === 'grey paper' ? 'grey' : 'black'} }`,
  ].join('\n')}\n`
}

/** One plan, in every second case sound, else thrown together. `number` only seeds it and stands in its title. */
export const planText = (number: number): string => {
  const dice = random(number * 7919 + 17)
  return number % 2 === 0 ? soundPlan(dice, number) : anyPlan(dice, number)
}

const anyPlan = (dice: Random, number: number): string => {
  const roles = ['key', ...(dice.chance(0.6) ? ['fill'] : []), ...(dice.chance(0.5) ? ['hair'] : [])]
  const backdrops = dice.whole(0, 2)
  const paper = dice.of(papers)
  const lines = [
    'plan: 1',
    `title: Generated set ${number}`,
    `camera: { lens: ${dice.of([50, 70, 85, 105])} mm, at: { distance: ${length(dice, 2, 4)} }, aperture: ${dice.of(apertures)}, shutter: ${dice.of(['1/60', '1/125', '1/160'])}, iso: ${dice.of([100, 200, 400])} }`,
    subject(dice),
    `backdrop: { surface: ${paper}, width: 2.72 m, behind: ${length(dice, 1.5, 3)} }`,
    'lights:',
    ...roles.map((role) => light(dice, role, 0)),
    ...Array.from({ length: backdrops }, (_, index) => light(dice, 'backdrop', index + 1)),
  ]
  if (dice.chance(0.5)) {
    lines.push('room:', '  width: 4.4 m', '  length: 7 m', '  height: 2.8 m', '  walls: white paint')
  }
  if (dice.chance(0.3)) lines.push('ambient: { reads: f/2.8, shutter: 1/15, iso: 100 }')
  if (dice.chance(0.3)) lines.push('points:', '  hands: { front: 20 cm, height: 1 m }')
  lines.push(
    'wanted:',
    `  backdrop: ${paper === 'white paper' ? 'white' : paper === 'grey paper' ? 'grey' : 'black'}`,
    `  framing: ${dice.of(['head and shoulders', 'waist', 'all'])}`,
  )
  if (dice.chance(0.4)) {
    lines.push('readings:', `  - { at: subject, of: [key], reads: ${dice.of(apertures)}, iso: 100 }`)
  }
  return `${lines.join('\n')}\n`
}
