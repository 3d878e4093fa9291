/**
 * What a plan must say once its base is merged in. The definitions leave everything out that a base could give; where
 * no base is named, the plan must meet besides what stands in their `x-whole`.
 */
import { ref, type Schema, when, written } from './build.js'

/** A plan: all that a base may say, and if it names no base, whole. */
export const planDefinition: Schema = {
  description: 'A lighting plan: one set, its light, and the picture that is wanted.',
  allOf: [{ $ref: '#/definitions/base' }, { properties: { plan: { const: 1 } }, required: ['plan'] }],
  ...when(written('base'), {}, ref('whole')),
}

/** The requirements as one schema, gathered from the plan's definition down. */
export const wholeDefinitions = (definitions: Readonly<Record<string, Schema>>): Record<string, Schema> => {
  const gather = (schema: Schema): Schema | undefined => {
    const target = schema.$ref ?? (schema.allOf?.length === 1 ? schema.allOf[0]!.$ref : undefined)
    if (target !== undefined) return gather(definitions[target.slice('#/definitions/'.length)]!)
    // In `either` and the like only the map can have requirements.
    if (schema.if?.type === 'object') return gather(schema.then!)
    // A light or panel that a base takes away is gone once it is merged.
    if (schema.if?.type === 'null') return { type: 'object', ...gather(schema.else!) }
    const properties = Object.entries(schema.properties ?? {}).flatMap(([key, value]) => {
      const inner = typeof value === 'boolean' ? undefined : gather(value)
      return inner === undefined ? [] : [[key, inner] as const]
    })
    const each =
      typeof schema.additionalProperties === 'object' ? gather(schema.additionalProperties) : undefined
    if (schema['x-whole'] === undefined && properties.length === 0 && each === undefined) return undefined
    return {
      ...schema['x-whole'],
      ...(properties.length === 0 ? {} : { properties: Object.fromEntries(properties) }),
      ...(each === undefined ? {} : { additionalProperties: each }),
    }
  }
  return { whole: gather(definitions.base!)! }
}
