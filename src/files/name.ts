import { isAbsolute, relative, resolve, sep } from 'node:path'

/** A file's name as people and reports see it: relative to the working folder, with `/`. */
export const nameOf = (path: string, workingFolder: string): string => {
  const name = relative(workingFolder, resolve(workingFolder, path))
  return (name === '' ? '.' : name).split(sep).join('/')
}

/** True where `path` is `folder` or lies in it. Both are real paths: links are followed before, not here. */
export const liesIn = (path: string, folder: string): boolean => {
  const rest = relative(folder, path)
  return rest === '' || !(rest === '..' || rest.startsWith(`..${sep}`) || isAbsolute(rest))
}
