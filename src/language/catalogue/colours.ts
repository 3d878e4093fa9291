/**
 * Colours by name, for backdrops and gels: sRGB. Plain words only; what a colour of that name looks like is from
 * memory, what the codes mean is IEC 61966-2-1.
 */
export const colourTable: Readonly<Record<string, string>> = {
  red: '#d02030',
  orange: '#f08020',
  amber: '#f0a830',
  yellow: '#f0d020',
  green: '#20a050',
  teal: '#108080',
  cyan: '#20b8d0',
  blue: '#2050d0',
  purple: '#7030a0',
  magenta: '#d02090',
  pink: '#f090b0',
  brown: '#7a5a40',
  white: '#f4f4f4',
  grey: '#777777',
  black: '#101010',
}

export const colourNames: readonly string[] = Object.keys(colourTable)

/** sRGB of `#rgb`, `#rrggbb` or a name, each 0 to 1; undefined for anything else. */
export const readColour = (text: string): readonly [number, number, number] | undefined => {
  const hex = Object.hasOwn(colourTable, text) ? colourTable[text]! : text
  const code = /^#([0-9a-f]{3}|[0-9a-f]{6})$/i.exec(hex)?.[1]
  if (code === undefined) return undefined
  const part = (i: number): number =>
    code.length === 3
      ? Number.parseInt(code[i]! + code[i]!, 16) / 255
      : Number.parseInt(code.slice(2 * i, 2 * i + 2), 16) / 255
  return [part(0), part(1), part(2)]
}
