/** Kinds of file, and the definition that each must meet. */
export const kinds = {
  plan: 'plan',
  base: 'base',
  kit: 'kit-file',
  room: 'room-file',
  settings: 'settings',
} as const

export type Kind = keyof typeof kinds
