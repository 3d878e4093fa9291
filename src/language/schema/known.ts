/** The words that a unit, modifier or surface is known by without a kit, offered by editors as completions. */
export const builtInUnits: readonly string[] = [
  'flashgun',
  'head 200 Ws',
  'head 400 Ws',
  'head 600 Ws',
  'led panel',
  'sun',
  'window',
]

export const builtInModifiers: readonly string[] = [
  'softbox 60 x 90 cm',
  'octa 90 cm',
  'strip 30 x 120 cm',
  'shoot-through umbrella 1 m',
  'white umbrella 1 m',
  'silver umbrella 1.5 m',
  'beauty dish 55 cm',
  'snoot',
  'standard reflector',
  'honeycomb 20 deg',
]

export const builtInSurfaces: readonly string[] = ['white paper', 'grey paper', 'black velvet', 'white paint']
