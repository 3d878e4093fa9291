/** Photometric files as plans and kits name them: where they are looked for, what is told where. */
import { describe, expect, it } from 'vitest'
import type { ContinuousUnit } from '../../../src/language/plan.js'
import { readPlan } from '../../../src/language/read-plan.js'
import { photometricText, steps } from '../../helpers/photometric-text.js'
import { leastWith, memoryPort, onlyMistake, ownFile, planOf, pointsAt, read, told } from '../reading.js'

const panel = photometricText({
  vertical: steps(0, 90, 15),
  horizontal: [0],
  candela: (v) => Math.round(3000 * Math.cos((v * Math.PI) / 180)),
  watts: 95,
})
const broken = panel.replace('30 45 60', '30 29 60')

const at = 'at: { angle: 35 deg left, distance: 1.2 m, height: 2 m }'
const inline = leastWith({ key: `  key: { unit: { photometric-file: lamps/panel.ies }, ${at} }` })
const named = leastWith({ key: `  key: { unit: panel, ${at} }`, kit: 'kit: kits/own.kit.yaml' })
const kit = (unit: string): string => `kit: 1\ntitle: Own\nunits:\n  panel: ${unit}\n`

const unitOf = (text: string, files: Parameters<typeof read>[1]): ContinuousUnit => {
  const { unit } = planOf(text, files).lights.get('key')!
  if (unit.kind !== 'continuous') throw new Error('no continuous light')
  return unit
}

describe('a photometric file', () => {
  it('is looked for from the file that names it: the plan, or the kit', () => {
    const own = unitOf(inline, { 'set/lamps/panel.ies': panel })
    expect(own.strength).toMatchObject({ kind: 'photometric file', file: 'set/lamps/panel.ies' })
    const fromKit = unitOf(named, {
      'set/kits/own.kit.yaml': kit('{ photometric-file: ../lamps/panel.ies }'),
      'set/lamps/panel.ies': panel,
    })
    expect(fromKit.strength).toEqual(own.strength)
  })

  it('gives its watts where the unit states no draw, and its opening where it states no size', () => {
    const unit = unitOf(inline, { 'set/lamps/panel.ies': panel })
    expect(unit.draw).toBe(95)
    expect(unit.size).toBeUndefined()
    expect(unit.strength).toMatchObject({
      table: { opening: { outline: 'rectangle', width: 0.3, height: 0.3 } },
    })
    const stated = leastWith({
      key: `  key: { unit: { photometric-file: p.ies, draw: 120 W, size: 60 x 30 cm }, ${at} }`,
    })
    expect(unitOf(stated, { 'set/p.ies': panel })).toMatchObject({
      draw: 120,
      size: { width: 0.6, height: 0.3 },
    })
  })

  it('what is wrong in it is one mistake at its place there, with where it is named and used', () => {
    const files = { 'set/lamps/panel.ies': broken }
    const mistake = onlyMistake(inline, files)
    expect(mistake.place).toMatchObject({ file: 'set/lamps/panel.ies', line: 7, column: 9, pointer: '' })
    expect(mistake.message).toBe('the vertical angles do not rise: 29 comes after 30')
    expect(pointsAt(mistake, inline, files)).toBe('29')
    expect(mistake.also.map((one) => `${one.file}:${one.line} ${one.pointer} ${one.says}`)).toEqual([
      `${ownFile}:7 /lights/key/unit/photometric-file the file is named here`,
    ])

    const fromKit = onlyMistake(named, {
      'set/kits/own.kit.yaml': kit('{ photometric-file: ../lamps/panel.ies }'),
      ...files,
    })
    expect(fromKit.place).toEqual(mistake.place)
    expect(fromKit.also.map((one) => `${one.file}:${one.line} ${one.says}`)).toEqual([
      'set/kits/own.kit.yaml:4 the file is named here',
      `${ownFile}:10 used here`,
    ])
  })

  it('two lights of one broken file are one mistake, also in the next plan of the run', () => {
    const text = leastWith({
      key: `  key: { unit: panel, ${at} }`,
      paper: '  paper: { like: key, mirrored: true }',
      kit: 'kit: kits/own.kit.yaml',
    })
    const files = {
      'set/kits/own.kit.yaml': kit('{ photometric-file: ../lamps/panel.ies }'),
      'set/lamps/panel.ies': broken,
    }
    const port = memoryPort(files)
    for (let i = 0; i < 2; i++) {
      const { mistakes, texts } = readPlan(ownFile, text, port)
      expect(mistakes.map(({ place }) => place.file)).toEqual(['set/lamps/panel.ies'])
      expect(texts.get('set/lamps/panel.ies')).toBe(broken)
    }
  })

  it('a file that cannot be had, or is something else, is told at the name or in it', () => {
    expect(told(read(inline))).toEqual([
      `${ownFile}:7:36 plan-unreadable: lamps/panel.ies cannot be read: no such file`,
    ])
    const outside = leastWith({ key: `  key: { unit: { photometric-file: ../../panel.ies }, ${at} }` })
    expect(told(read(outside))[0]).toContain('../../panel.ies leads outside')
    const itself = leastWith({ key: `  key: { unit: { photometric-file: own.plan.yaml }, ${at} }` })
    expect(told(read(itself))).toEqual([
      `${ownFile}:1:1 plan-unreadable: this is no photometric file (LM-63): it has no line TILT=`,
    ])
  })

  it('a beam beside it is told to say nothing, and the plan stands', () => {
    const text = leastWith({ key: `  key: { unit: { photometric-file: p.ies, beam: 40 deg }, ${at} }` })
    const reading = read(text, { 'set/p.ies': panel })
    expect(told(reading)).toEqual([
      `${ownFile}:7:49 value-unused: beam says nothing beside a photometric file`,
    ])
    expect(reading.plan?.lights.get('key')?.unit).toMatchObject({ strength: { kind: 'photometric file' } })
  })

  it('units of a kit that no light uses are not read', () => {
    const text = leastWith({ kit: 'kit: kits/own.kit.yaml' })
    planOf(text, { 'set/kits/own.kit.yaml': kit('{ photometric-file: gone.ies }') })
  })
})
