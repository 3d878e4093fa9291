/**
 * Compiled validators without what nothing reads. ajv's standalone code makes for each error an object with the path
 * in the schema, the pattern and the like, and keeps whole schemas for the sake of their keys; here an error is where, by
 * which keyword, and for which key. That is two thirds of the code, all of which would be loaded at every start.
 *
 * Rewrites ajv's own fixed phrases and throws where one is not as expected. A test holds the result against ajv itself.
 */

const helpers = `
const nothing = {};
function add(errors, path, keyword, key) {
  const error = path === undefined ? nothing : { path, keyword, key };
  if (errors === null) return [error];
  errors.push(error);
  return errors;
}
function isMap(data) {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}
function has(data, key) {
  return data[key] !== undefined && Object.hasOwn(data, key);
}
function joined(errors, more) {
  if (errors === null) return more;
  for (const error of more) errors.push(error);
  return errors;
}
`

/** The parameter of an error that names a key; all others can be looked up in the schema. */
const keyOf = (params: string): string =>
  /^(?:missingProperty|additionalProperty|propertyName): ?([^,]+)$/.exec(params)?.[1] ?? ''

/** The value at a property path in code: `.properties.walls["else"]`. */
const follow = (schema: unknown, path: string): unknown =>
  [...path.matchAll(/\.([\w$]+)|\["([^"]+)"\]|\[(\d+)\]/g)].reduce<unknown>(
    (value, [, a, b, c]) => (value as Record<string, unknown>)[(a ?? b ?? c)!],
    schema,
  )

export const shrunk = (code: string): string => {
  const schemas = new Map<string, unknown>()
  const sets = new Map<string, string>()
  const setOf = (keys: readonly string[]): string => {
    const text = JSON.stringify(keys)
    if (!sets.has(text)) sets.set(text, `keys${sets.size}`)
    return sets.get(text)!
  }

  const body = code
    .replace(/^"use strict";\n/, '')
    .replace(/^const (schema\d+) = (.*);\n/gm, (_, name: string, json: string) => {
      schemas.set(name, JSON.parse(json))
      return ''
    })
    .replace(/^const func\d+ = Object\.prototype\.hasOwnProperty;\n/gm, '')
    .replace(
      /const (err\d+) = \{instancePath(?::(.*?))?,schemaPath:.*?,keyword:"([^"]+)",params:\{(.*)\}(?:,propertyName:\w+)?\};\nif\(vErrors === null\)\{\nvErrors = \[\1\];\n\}\nelse \{\nvErrors\.push\(\1\);\n\}\n/g,
      (_, _name, path: string | undefined, keyword: string, params: string) => {
        const key = keyOf(params)
        return `vErrors = add(vErrors, ${path ?? 'instancePath'}, "${keyword}"${key === '' ? '' : `, ${key}`});\n`
      },
    )
    .replace(
      /const (err\d+) = \{\};\nif\(vErrors === null\)\{\nvErrors = \[\1\];\n\}\nelse \{\nvErrors\.push\(\1\);\n\}\n/g,
      'vErrors = add(vErrors);\n',
    )
    .replace(/\{instancePath="", parentData, parentDataProperty, rootData=data\}=\{\}/g, 'instancePath = ""')
    .replace(
      /(validate\d+)\((.+?), \{instancePath(?::(.*?))?,parentData(?::\w+)?,parentDataProperty(?::.*?)?,rootData\}\)/g,
      (_, name: string, data: string, path: string | undefined) =>
        `${name}(${data}, ${path ?? 'instancePath'})`,
    )
    .replace(
      /vErrors = vErrors === null \? (validate\d+)\.errors : vErrors\.concat\(\1\.errors\);/g,
      'vErrors = joined(vErrors, $1.errors);',
    )
    .replace(/func\d+\.call\((schema\d+)([^,]*), (\w+)\)/g, (_, name: string, path: string, key: string) => {
      return `${setOf(Object.keys(follow(schemas.get(name), path) as object))}.has(${key})`
    })
    .replace(/(data\d*) && typeof \1 == "object" && !Array\.isArray\(\1\)/g, 'isMap($1)')
    .replace(/(data\d*)[^\s=()]* !== undefined && func\d+\.call\(\1, ("[^"]+")\)/g, 'has($1, $2)')
    .replace(
      /\((data\d*)[^\s=()]* === undefined\) \|\| \(!\(func\d+\.call\(\1, ("[^"]+")\)\)\)/g,
      '!has($1, $2)',
    )

  const left = /\b(?:schema\d+|func\d+|require|parentData|rootData|err\d+)\b.*/.exec(body)
  if (left !== null) throw new Error(`not rewritten: ${left[0].slice(0, 200)}`)
  return `${helpers}${[...sets].map(([keys, name]) => `const ${name} = new Set(${keys});\n`).join('')}${body}`
}
