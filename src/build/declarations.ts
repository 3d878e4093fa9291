import { execFile } from 'node:child_process'
import { join, resolve } from 'node:path'
import { promisify } from 'node:util'

const root = resolve(import.meta.dirname, '../..')

/** Declarations of what the library exports, by the compiler of the project. */
export const writeDeclarations = async (dist: string): Promise<void> => {
  const compiler = join(root, 'node_modules/typescript/bin/tsc')
  const config = join(import.meta.dirname, 'tsconfig.json')
  try {
    await promisify(execFile)(process.execPath, [compiler, '-p', config, '--outDir', join(dist, 'types')])
  } catch (error) {
    // The compiler tells its errors on standard output.
    throw new Error((error as { stdout?: string }).stdout || String(error))
  }
}
