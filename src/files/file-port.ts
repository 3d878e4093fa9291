/** How the language reads what a plan names: base, kit and room files, never outside the root. */
import { realpathSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import type { FilePort } from '../language/port.js'
import { liesIn, nameOf } from './name.js'
import { readFile, type Text, whyUnreadable } from './read-file.js'
import { type Ground, realFolder, rootFinder, rootName } from './root.js'

/** Several plans name the same kit: each file is read once a run. */
export const filePort = (ground: Ground): FilePort => {
  const rootOf = rootFinder(ground)
  const texts = new Map<string, Text>()
  const readOnce = (real: string, latin: boolean): Text => {
    const name = `${latin ? 'latin' : 'utf-8'} ${real}`
    const text = texts.get(name) ?? readFile(real, latin)
    texts.set(name, text)
    return text
  }

  return {
    read(path, from, kind) {
      if (/^[a-z][a-z0-9+.-]+:\/\//i.test(path)) {
        return refuse(`${path} is an address; only files are read, nothing is fetched`)
      }
      const root = rootOf(from)
      const named = resolve(ground.workingFolder, dirname(from), path)
      let real: string
      try {
        real = realpathSync(named)
      } catch (error) {
        // Whether a file exists outside the root is nobody's business: say the same of both.
        return liesIn(realFolder(dirname(named)), root)
          ? refuse(`${path} ${whyUnreadable(error)}`)
          : outside(path, rootName(root, ground))
      }
      if (!liesIn(real, root)) return outside(path, rootName(root, ground))
      const text = readOnce(real, kind === 'photometric')
      return text.ok
        ? { ok: true, file: nameOf(named, ground.workingFolder), text: text.text }
        : refuse(`${path} ${text.says}`)
    },
  }
}

const refuse = (says: string) => ({ ok: false, says }) as const

const outside = (path: string, root: string) =>
  refuse(`${path} leads outside ${root}; keep it inside, or name a wider folder with --root`)
