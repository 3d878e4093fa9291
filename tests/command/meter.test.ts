import { chmodSync, readFileSync, statSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { Ajv } from 'ajv'
import { describe, expect, it } from 'vitest'
import { put, temporaryFolder } from '../files/folder.js'
import { call, goodPlan } from './call.js'

const folder = temporaryFolder()
const twoLights = goodPlan.replace(
  'wanted:',
  `  fill: { unit: head 200 Ws, modifier: white umbrella 1 m, power: 1/8, at: { angle: 40 deg right, distance: 2 m, height: 1.7 m } }
points:
  hands: { front: 20 cm, height: 1 m }
wanted:`,
)
put(folder, { '.git/HEAD': '', 'two.plan.yaml': twoLights })

interface Entry {
  readonly point: string
  readonly of: 'all' | string[]
  readonly dome: string
  readonly fNumber: number
  readonly luxSeconds: number
  readonly overCamera: number
  readonly overKey: number
  readonly overKeyU: number
  readonly u: number
}
const card = async (...words: string[]) => {
  const { code, out, err } = await call(folder, ['meter', 'two.plan.yaml', '--format', 'json', ...words])
  expect({ code, err }).toEqual({ code: 0, err: '' })
  return JSON.parse(out) as {
    keyReading: { fNumber: number }
    points: Entry[]
    tones: { srgb: number; point: string }[]
  }
}
const entry = (points: readonly Entry[], point: string, of: string) =>
  points.find((one) => one.point === point && String(one.of) === of)!

describe('meter --format json', () => {
  it('is what its schema says', async () => {
    const schema = JSON.parse(
      readFileSync(resolve(import.meta.dirname, '../../schemas/meter.schema.json'), 'utf8'),
    )
    const validate = new Ajv({ strict: false }).compile(schema)
    expect(validate(await card()), JSON.stringify(validate.errors)).toBe(true)
  })

  it('has each light where it does its job, and all together, at each point', async () => {
    const { points } = await card()
    for (const point of ['subject', 'backdrop', 'backdrop-left', 'hands']) {
      expect(entry(points, point, 'all'), point).toBeDefined()
    }
    expect(entry(points, 'subject', 'key').fNumber).toBeCloseTo(2 ** 2.5, 4)
    expect(entry(points, 'subject', 'fill')).toBeDefined()
  })

  it('adds lights in exposure, and counts stops from the camera and the key', async () => {
    const { points, keyReading } = await card('--at', '0,-0.2,1.6', '--facing', '0,-1,0', '--dome', 'flat')
    const at = (of: string) => entry(points, '0,-0.2,1.6', of)
    // Source: exposures add (superposition); ISO 2720, an f-number goes with the square root of the exposure.
    expect(at('key').luxSeconds + at('fill').luxSeconds).toBeCloseTo(at('all').luxSeconds, 2)
    // Source: thin lens, m = f / (d - f); what is magnified m needs (1 + m)² of the light.
    const closeUp = 2 * Math.log2(1 + 0.085 / (2.5 - 0.085))
    for (const one of points) {
      expect(one.overCamera).toBeCloseTo(2 * Math.log2(one.fNumber / 2 ** 2.5) - closeUp, 3)
      expect(one.overKey).toBeCloseTo(2 * Math.log2(one.fNumber / keyReading.fNumber), 3)
      expect(one.u).toBeGreaterThan(0)
    }
  })

  it('answers several places, each with its own facing and dome', async () => {
    const { points } = await card(
      ...[
        '--at',
        '-0.5,-1,1.6',
        '--at',
        '0,-0.2,1.6',
        '--dome',
        'flat',
        '--facing',
        '0,0,1',
        '--at',
        '0.5,-1,1.6',
      ],
    )
    const names = [...new Set(points.map(({ point }) => point))]
    expect(names.slice(-3)).toEqual(['-0.5,-1,1.6', '0,-0.2,1.6', '0.5,-1,1.6'])
    expect(entry(points, '0,-0.2,1.6', 'all').dome).toBe('flat')
    expect(entry(points, '-0.5,-1,1.6', 'all').dome).toBe('raised')
    expect(entry(points, '-0.5,-1,1.6', 'key').fNumber).toBeGreaterThan(
      entry(points, '0.5,-1,1.6', 'key').fNumber,
    )
  })

  it('knows a light over the key better than either: what both owe to its rating cancels', async () => {
    put(folder, { 'rated.yaml': goodPlan.replace('meters: f/5.6', 'power: 1/4') })
    const { out } = await call(folder, ['meter', 'rated.yaml', '--format', 'json', '--at', '0.3,-0.2,1.6'])
    const { points } = JSON.parse(out) as { points: Entry[] }
    for (const point of ['backdrop', '0.3,-0.2,1.6']) {
      const { u, overKeyU } = entry(points, point, 'key')
      expect(u).toBeGreaterThan(0.4)
      expect(overKeyU).toBeLessThan(0.4)
      expect(overKeyU).toBeGreaterThan(0)
    }
  })

  it('says what the backdrop records', async () => {
    const { tones, points } = await card()
    const middle = tones.find(({ point }) => point === 'backdrop')!
    // Source: sRGB, IEC 61966-2-1, of a grey of 0.18 at the stops over the camera that the card itself states.
    const linear = 0.18 * 2 ** entry(points, 'backdrop', 'all').overCamera
    const code = linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055
    expect(middle.srgb).toBeCloseTo(255 * code, -0.5)
  })
})

describe('meter for people', () => {
  it('is a table', async () => {
    const { code, out } = await call(folder, ['meter', 'two.plan.yaml'])
    expect(code).toBe(0)
    expect(out).toMatch(
      /^Good\ncamera f\/5\.6, 1\/125, ISO 100\nkey reading f\/\S+.* ± \S+ \(key and fill\): /,
    )
    expect(out).toMatch(/^point +light +reads +over camera +± +over key +± +dome to$/m)
    expect(out).toMatch(/^subject +key +f\/5\.6 /m)
    expect(out).not.toMatch(/NaN|undefined|\[object/)
    expect((await call(folder, ['meter', 'two.plan.yaml', '--ascii'])).out).toMatch(/^[\n\x20-\x7e]*$/)
  })

  it('shows no reading that no meter shows, and JSON has its figures', async () => {
    // Half a kilometre off, f/5.6 at 1.5 m has become f/0.02.
    const words = ['meter', 'two.plan.yaml', '--at', '0,500,1.6']
    const { out } = await call(folder, words)
    expect(out).not.toMatch(/e-\d|[-+]\d\d\.|f\/0\.[0-4]/)
    const { points } = JSON.parse((await call(folder, [...words, '--format', 'json'])).out)
    const faint = points.filter((one: Entry) => one.fNumber < 0.5)
    const hardly = out.split('\n').filter((line) => /^\S* +\S+ +hardly any +\S+(, flat)?$/.test(line))
    expect(faint.length).toBeGreaterThan(0)
    expect(hardly.length).toBeGreaterThanOrEqual(faint.length)
    for (const one of points as Entry[]) expect(Number.isFinite(one.overCamera)).toBe(true)
  })

  it('names the lights that nothing tells the strength of', async () => {
    put(folder, { 'free.yaml': twoLights.replace(', power: 1/8', '') })
    const { code, out } = await call(folder, ['meter', 'free.yaml'])
    expect(code).toBe(0)
    expect(out.replace(/\s+/g, ' ')).toContain('Not counted, since nothing tells how strong it is: fill')
  })

  it('shows the mistakes of a plan that cannot be understood, and ends with 1', async () => {
    put(folder, { 'wrong.yaml': twoLights.replace('f/5.6', '5.6') })
    const { code, out, err } = await call(folder, ['meter', 'wrong.yaml'])
    expect({ code, out }).toEqual({ code: 1, out: '' })
    expect(err).toMatch(/^wrong\.yaml:3:\d+: error: /)
  })
})

describe('meter --read', () => {
  const readings = (name: string) => readFileSync(join(folder, name), 'utf8')

  it('writes the reading with the settings of the day, and touches nothing else', async () => {
    put(folder, { 'read.yaml': `\uFEFF${twoLights.replaceAll('\n', '\r\n')}# the end\r\n` })
    chmodSync(join(folder, 'read.yaml'), 0o640)
    const before = readings('read.yaml')
    const { code, out } = await call(folder, ['meter', 'read.yaml', '--read', 'fill@subject=f/2.8 + 0.3'])
    expect(code).toBe(0)
    const entry =
      '{ at: subject, of: [fill], reads: f/2.8 + 0.3, iso: 100, taken: { fill: { power: 1/8, distance: 2 m } } }'
    expect(out.split('\n')[0]).toBe(`wrote ${entry}`)
    const after = readings('read.yaml')
    const at = [...before].findIndex((one, index) => after[index] !== one)
    expect(after.replace(/\r\nreadings:\r\n {2}- .*/, '')).toBe(before)
    expect(at).toBeGreaterThan(0)
    expect(after).toContain(`\r\nreadings:\r\n  - ${entry}`)
    expect(statSync(join(folder, 'read.yaml')).mode & 0o777).toBe(0o640)
  })

  it('then holds: the light meters what was read, surely', async () => {
    put(folder, { 'hold.yaml': twoLights })
    await call(folder, ['meter', 'hold.yaml', '--read', 'fill@subject=f/4'])
    const { out } = await call(folder, ['meter', 'hold.yaml', '--format', 'json'])
    const fill = entry(JSON.parse(out).points, 'subject', 'fill')
    expect(fill.fNumber).toBeCloseTo(4, 1)
    expect(fill.u).toBeLessThan(0.25)
  })

  it('adds to readings that are there, several at once', async () => {
    put(folder, {
      'more.yaml': `${twoLights}readings:\n  - { at: subject, of: [key], reads: f/5.6 } # first\n`,
    })
    const { code, out } = await call(folder, [
      ...[
        'meter',
        '--read',
        'key@hands=f/4',
        '--read',
        'all@backdrop=f/2',
        'more.yaml',
        '--read',
        'key+fill@subject=f/6.3',
      ],
    ])
    expect(code).toBe(0)
    expect(out.match(/^wrote /gm)).toHaveLength(3)
    expect(readings('more.yaml')).toMatch(
      /# first\n {2}- \{ at: hands, of: \[key\].*\n {2}- \{ at: backdrop, of: all.*\n {2}- \{ at: subject, of: \[key, fill\].*\n$/,
    )
    expect((await call(folder, ['check', '--format', 'lines', 'more.yaml'])).out).not.toContain('error')
  })

  it('says which way the dome was taken to face and what the reading taught', async () => {
    put(folder, { 'taught.yaml': twoLights })
    const words = ['meter', 'taught.yaml', '--read']
    const light = await call(folder, [...words, 'fill@subject=f/4'])
    expect(light.out.replace(/\s+/g, ' ')).toMatch(
      /dome turned to fill; --faces camera where .* fill at subject: f\/\S+( \+ 0\.\d)? ± 1\.\d before, f\/4 ± 0\.\d now $/,
    )
    const camera = await call(folder, [...words, 'fill@subject=f/4', '--faces', 'camera'])
    expect(camera.out).not.toContain('taken as metered')
    expect(readings('taught.yaml')).toContain('reads: f/4, faces: camera, iso: 100')
    const slip = await call(folder, [...words, 'key@subject=f/64'])
    expect(slip.out).toMatch(/that is \d\.\d stops more than all else in the plan tells: a slip\?/)
  })

  it('puts a reading of the same in place of the one before', async () => {
    put(folder, { 'again.yaml': twoLights })
    const read = (...words: string[]) => call(folder, ['meter', 'again.yaml', '--read', ...words])
    await read('fill@subject=f/64', '--read', 'key+fill@subject=f/9')
    const { out } = await read('fill@subject=f/4')
    expect(out).toContain(' in place of f/64\n')
    await read('fill+key@subject=f/8')
    const kept = readings('again.yaml')
      .split('\n')
      .filter((line) => line.includes('reads:'))
    expect(kept.map((line) => /reads: (f\/\d+)/.exec(line)![1])).toEqual(['f/4', 'f/8'])
    // Another facing, and another setting, are other readings.
    await read('fill@subject=f/4', '--faces', 'camera')
    put(folder, { 'again.yaml': readings('again.yaml').replace('m, power: 1/8', 'm, power: 1/4') })
    await read('fill@subject=f/5.6')
    expect(readings('again.yaml').match(/reads:/g)).toHaveLength(4)
  })

  it('sets a line of readings that grows too long one a line, and leaves what it cannot', async () => {
    const short = 'readings: [{ at: subject, of: [key], reads: f/5.6 }]'
    put(folder, {
      'short.yaml': `${twoLights}${short} # mine\n`,
      'lines.yaml': `${twoLights}${short.replace('[{', '[ # mine\n    {').replace('}]', '}\n  ]')}\n`,
    })
    for (const name of ['short.yaml', 'lines.yaml']) {
      await call(folder, ['meter', name, '--read', 'fill@subject=f/4'])
      expect((await call(folder, ['check', '--format', 'lines', name])).out).not.toContain('error')
    }
    expect(readings('short.yaml')).toMatch(
      /readings:\n {2}- \{ at: subject, of: \[key\], reads: f\/5\.6 \}\n {2}- \{ .*\} # mine\n$/,
    )
    expect(readings('lines.yaml')).toMatch(/readings: \[ # mine\n {4}\{ .* \}, \{ .* \}\n {2}\]\n$/)
  })

  it.each([
    ['key@subject=f8.5', /f8\.5 is no mark .* f\/8 \+ 0\.5\? Write that, or f\/9/],
    ['key@subject=f/65', /write the nearest, f\/64/],
    ['key@subject=f/4 --faces out', /subject lies on no surface/],
    ['all@subject=f/4 --faces light', /only a reading of one light/],
  ])('refuses %s', async (words, said) => {
    put(folder, { 'same.yaml': twoLights })
    const { code, err } = await call(folder, ['meter', 'same.yaml', '--read', ...words.split(' ')])
    expect(code).toBe(2)
    expect(err).toMatch(said)
    expect(readings('same.yaml')).toBe(twoLights)
  })

  it('takes --faces only with a reading', async () => {
    expect((await call(folder, ['meter', 'two.plan.yaml', '--faces', 'camera'])).code).toBe(2)
  })

  it.each([
    ['key@subject', /a reading is written key@subject=f\/5\.6, not key@subject/],
    ['kee@subject=f/4', /no light kee; did you mean key\?/],
    ['key@subjct=f/4', /no point subjct; did you mean subject\?/],
    ['key@subject=4', /f\/4/],
    ['key@subject=f/4 }, x: { y: 1', /f\/5\.6|aperture/],
  ])('refuses %s and writes nothing', async (reading, said) => {
    put(folder, { 'same.yaml': twoLights })
    const { code, err } = await call(folder, [
      'meter',
      'same.yaml',
      '--read',
      'key@subject=f/4',
      '--read',
      reading,
    ])
    expect(code).toBe(2)
    expect(err).toMatch(said)
    expect(readings('same.yaml')).toBe(twoLights)
  })

  it('refuses a light that is off', async () => {
    put(folder, { 'off.yaml': twoLights.replace('power: 1/8', 'power: 1/8, off: true') })
    const { code, err } = await call(folder, ['meter', 'off.yaml', '--read', 'fill@subject=f/4'])
    expect(code).toBe(2)
    expect(err).toContain('fill is off')
  })
})
