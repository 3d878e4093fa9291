/** Calls the command line in this process, with a terminal made for it. */
import { main } from '../../src/command/main.js'

export interface Called {
  readonly code: number
  readonly out: string
  readonly err: string
}

export const call = async (
  workingFolder: string,
  words: readonly string[],
  more: {
    readonly environment?: Record<string, string>
    readonly terminal?: boolean
    readonly columns?: number
    readonly input?: string
    readonly launcher?: string
  } = {},
): Promise<Called> => {
  let out = ''
  let err = ''
  const code = await main(words, {
    workingFolder,
    environment: more.environment ?? {},
    isTerminal: more.terminal ?? false,
    columns: more.columns,
    out: (text) => {
      out += text
    },
    err: (text) => {
      err += text
    },
    input: () => Buffer.from(more.input ?? ''),
    launcher: more.launcher,
  })
  return { code, out, err }
}

/** A plan that nothing is found against at warning: the key meters what the camera is set to. */
export const goodPlan = `plan: 1
title: Good
camera: { lens: 85 mm, at: { distance: 2.5 m }, aperture: f/5.6, shutter: 1/125, iso: 100, sync: 1/200 }
subject: { kind: person }
backdrop: { surface: grey paper, behind: 1.5 m }
lights:
  key: { unit: head 400 Ws, modifier: octa 90 cm, meters: f/5.6, at: { angle: 35 deg left, distance: 1.5 m, height: 1.9 m } }
wanted: { backdrop: any, framing: head and shoulders }
`

/** The same with a backdrop that is wanted white and lies in the dark. */
export const darkPlan = goodPlan
  .replace('title: Good', 'title: Dark')
  .replace('backdrop: any', 'backdrop: white')
