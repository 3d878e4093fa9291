/** Reads plans for tests: files in a map, paths with `/`, nothing outside `set/`. */
import { posix } from 'node:path'
import { expect } from 'vitest'
import type { Mistake } from '../../src/language/mistake.js'
import type { Plan } from '../../src/language/plan.js'
import type { FilePort } from '../../src/language/port.js'
import { type PlanReading, readPlan } from '../../src/language/read-plan.js'

export type Files = Readonly<Record<string, string>>

export const memoryPort = (files: Files): FilePort => ({
  read: (path, from) => {
    const file = posix.normalize(posix.join(posix.dirname(from), path))
    if (!file.startsWith('set/')) return { ok: false, says: `${path} leads outside the repository` }
    const text = files[file]
    return text === undefined
      ? { ok: false, says: `${path} cannot be read: no such file` }
      : { ok: true, file, text }
  },
})

export const ownFile = 'set/own.plan.yaml'

export const read = (text: string, files: Files = {}): PlanReading =>
  readPlan(ownFile, text, memoryPort({ ...files, [ownFile]: text }))

/** The plan of a text that has no mistakes. */
export const planOf = (text: string, files: Files = {}): Plan => {
  const { plan, mistakes } = read(text, files)
  expect(mistakes).toEqual([])
  return plan!
}

/** `line:column rule`, and what is said, of each mistake. */
export const told = (reading: PlanReading): readonly string[] =>
  reading.mistakes.map(
    ({ place, rule, message }) => `${place.file}:${place.line}:${place.column} ${rule}: ${message}`,
  )

export const onlyMistake = (text: string, files: Files = {}): Mistake => {
  const { plan, mistakes } = read(text, files)
  expect(mistakes.map(({ message }) => message)).toHaveLength(1)
  expect(plan).toBeUndefined()
  return mistakes[0]!
}

/** What the mistake's place covers, in the file that it names. */
export const pointsAt = (mistake: Mistake, text: string, files: Files = {}): string =>
  ({ ...files, [ownFile]: text })[mistake.place.file]!.slice(mistake.place.start, mistake.place.end)

/** The plan without what says where it is written. */
export const bare = ({ places: _, file: __, ...plan }: Plan): Omit<Plan, 'places' | 'file'> => plan

export const least = `plan: 1
title: Headshot on white
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/160, iso: 100 }
subject: { kind: person }
backdrop: { surface: white paper, behind: 2 m }
lights:
  key:   { unit: flashgun, modifier: shoot-through umbrella 1 m, power: 1/4, at: { angle: 35 deg left, distance: 1.2 m, height: 2 m } }
  paper: { role: backdrop, unit: flashgun, power: 1/4, at: { left: 1.5 m, before-backdrop: 1.5 m, height: 1.5 m } }
wanted: { backdrop: white, framing: head and shoulders }
`

/** The least plan with lines of it replaced, by their first key, or taken out (`undefined`), or added. */
export const leastWith = (lines: Readonly<Record<string, string | undefined>>): string => {
  const kept = least.split('\n').filter((line) => line !== '')
  const result = kept.map((line) => {
    const key = /^ *([a-z-]+):/.exec(line)?.[1] ?? ''
    return key in lines ? lines[key] : line
  })
  const keys = kept.map((line) => /^ *([a-z-]+):/.exec(line)?.[1])
  const added = Object.entries(lines).flatMap(([key, line]) => (keys.includes(key) ? [] : [line]))
  return `${[...result, ...added].filter((line) => line !== undefined).join('\n')}\n`
}
