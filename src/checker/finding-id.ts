/** Offset and prime of the 64-bit FNV-1a hash (Fowler, Noll, Vo; IETF draft-eastlake-fnv). */
const offset = 0xcbf29ce484222325n
const prime = 0x100000001b3n
const mask = 0xffffffffffffffffn

/** 64-bit FNV-1a of a text's UTF-8 bytes, as 16 hexadecimal digits. */
export const fnv1a64 = (text: string): string => {
  let hash = offset
  for (const byte of new TextEncoder().encode(text)) hash = ((hash ^ BigInt(byte)) * prime) & mask
  return hash.toString(16).padStart(16, '0')
}

/**
 * What a finding is known by from one run to the next: its rule and what it points at, wherever lines move. The names
 * of lights and panels are in the pointer. Of several alike, all but the first are numbered in order of the file.
 */
export const findingId = (rule: string, pointer: string, before: number): string =>
  fnv1a64(before === 0 ? `${rule}\n${pointer}` : `${rule}\n${pointer}\n${before}`)
