/** The types of what authors write, made from the definitions. */
import { compile, type JSONSchema } from 'json-schema-to-typescript'
import type { Schema } from '../language/schema/build.js'
import { definitionsForTypes } from '../language/schema/language.js'

const banner = `/**
 * What authors write, as plain data: a plan with its base merged in, a kit, a room, a studio's settings.
 * Quantities are still text. Generated from the definitions in ../schema by \`npm run generate\`.
 */`

/** Names that would say too little, or that stand for a whole file. */
const renamed: Readonly<Record<string, string>> = { base: 'plan-file', settings: 'settings-file' }

const isConstraint = (schema: Schema): boolean =>
  schema.type === undefined && schema.$ref === undefined && schema.enum === undefined

/** Unions that are told apart by `if` become plain unions, and what types cannot say is left out. */
const forTypes = (schema: Schema | boolean): JSONSchema => {
  if (typeof schema === 'boolean') return {}
  const { description } = schema
  const noted = description === undefined ? {} : { description }
  if (schema.$ref !== undefined) {
    const name = schema.$ref.slice('#/definitions/'.length)
    return { $ref: `#/definitions/${renamed[name] ?? name}` }
  }
  if (schema.if !== undefined && schema.then !== undefined && schema.else !== undefined) {
    const types = schema.type === undefined ? [] : [schema.type].flat()
    const tag = schema.if.type
    const then =
      tag === undefined ? schema.then : { ...(schema.then.$ref ? {} : { type: tag }), ...schema.then }
    const rest = types.filter((type) => type !== tag)
    const other: Schema =
      schema.else.$ref !== undefined || schema.else.if !== undefined || rest.length !== 1
        ? schema.else
        : { type: rest[0]!, ...schema.else }
    return {
      ...noted,
      anyOf: [forTypes(then), forTypes(other)].flatMap((one) =>
        one.anyOf && !one.description ? one.anyOf : [one],
      ),
    }
  }
  const members = (schema.allOf ?? []).filter((one) => !isConstraint(one))
  if (members.length === 1) return { ...noted, allOf: members.map(forTypes) }
  const required = [...(schema.required ?? []), ...(schema['x-whole']?.required ?? [])]
  return {
    ...noted,
    ...(schema.type === undefined ? {} : { type: schema.type as JSONSchema['type'] }),
    ...(schema.const === undefined ? {} : { const: schema.const }),
    ...(schema.enum === undefined ? {} : { enum: schema.enum as string[] }),
    ...(schema.items === undefined ? {} : { items: forTypes(schema.items) }),
    ...(schema.type !== 'object'
      ? {}
      : {
          required,
          properties: Object.fromEntries(
            Object.entries(schema.properties ?? {}).map(([key, value]) => [key, forTypes(value)]),
          ),
          additionalProperties:
            typeof schema.additionalProperties === 'object' ? forTypes(schema.additionalProperties) : false,
        }),
  }
}

export const writtenTypes = async (): Promise<string> => {
  const schema: JSONSchema = {
    title: 'written',
    type: 'object',
    additionalProperties: false,
    definitions: Object.fromEntries(
      Object.entries(definitionsForTypes).map(([name, one]) => [renamed[name] ?? name, forTypes(one)]),
    ),
  }
  const text = await compile(schema, 'Written', {
    bannerComment: banner,
    unreachableDefinitions: true,
    ignoreMinAndMaxItems: true,
    style: { semi: false, singleQuote: true, printWidth: 110, trailingComma: 'all' },
  })
  return (
    text
      // The compiler's notes on where a type came from, and the type that only holds the others.
      .replace(/(?: \*\n)? \* This interface was referenced by [^\n]*\n \* via the [^\n]*\n/g, '')
      .replace(/\/\*\*\n \*\/\n/g, '')
      .replace(/export interface Written \{\}\n/, '')
  )
}
