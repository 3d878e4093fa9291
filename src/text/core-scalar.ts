/** What a plain scalar means: YAML 1.2.2, 10.3, core schema. */

const integer = /^[-+]?[0-9]+$/
const octal = /^0o[0-7]+$/
const hexadecimal = /^0x[0-9a-fA-F]+$/
const float = /^[-+]?(?:\.[0-9]+|[0-9]+(?:\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?$/
const infinity = /^[-+]?\.(?:inf|Inf|INF)$/
const notANumber = /^\.(?:nan|NaN|NAN)$/

/** The value of an unquoted scalar; whatever is neither null, a truth value nor a number is a string. */
export const coreValue = (source: string): string | number | boolean | null => {
  switch (source) {
    case '':
    case '~':
    case 'null':
    case 'Null':
    case 'NULL':
      return null
    case 'true':
    case 'True':
    case 'TRUE':
      return true
    case 'false':
    case 'False':
    case 'FALSE':
      return false
  }
  // Most scalars are words: a glance at the first character spares them the expressions.
  const first = source.charCodeAt(0)
  if (!((first >= 48 && first <= 57) || first === 43 || first === 45 || first === 46)) return source
  if (integer.test(source) || float.test(source) || octal.test(source) || hexadecimal.test(source))
    return Number(source)
  if (infinity.test(source)) return source.startsWith('-') ? -Infinity : Infinity
  return notANumber.test(source) ? Number.NaN : source
}

/**
 * True of an unquoted word that YAML 1.1 readers take for something else than the string it is: truth values, clock
 * times, dates, numbers with underscores or in base 2 or 8. From the type repository of YAML 1.1 (from memory).
 */
export const misreadByYaml11 = (source: string): boolean =>
  /^(?:[yYnN]|yes|Yes|YES|no|No|NO|on|On|ON|off|Off|OFF|=|<<)$/.test(source) ||
  /^[-+]?[0-9][0-9_]*(?::[0-5]?[0-9])+(?:\.[0-9_]*)?$/.test(source) ||
  /^[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}/.test(source) ||
  // Some take a number without its digits, as in `.` and `e0`, for one.
  /^[-+]?(?:[0-9][0-9_]*)?(?:\.[0-9._]*)?(?:[eE][-+]?[0-9]+)?$/.test(source) ||
  /^[-+]?(?:0b[01_]+|0x[0-9a-fA-F_]+)$/.test(source)
