/** Quantities as definitions: the grammar is that of the quantity's reader, so that an editor refuses what it refuses. */
import { type QuantityName, quantities } from '../../units/quantities.js'
import type { Schema } from './build.js'

export const quantityDefinitions: Readonly<Record<string, Schema>> = Object.fromEntries(
  (Object.keys(quantities) as QuantityName[]).map((name) => [
    name,
    {
      type: 'string',
      pattern: quantities[name].pattern,
      description: quantities[name].describe,
      examples: quantities[name].examples,
      'x-quantity': name,
    },
  ]),
)
