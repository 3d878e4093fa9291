/**
 * The whole language, version 1: every definition, and the kinds of file. The public schemas, the compiled validators
 * and the types of what is written are made from here.
 */

import type { Schema } from './build.js'
import { cameraDefinitions } from './camera.js'
import { documentDefinitions } from './documents.js'
import { gearDefinitions } from './gear.js'
import { kitDefinitions } from './kit.js'
import { lightDefinitions } from './light.js'
import { nameDefinitions } from './names.js'
import { panelDefinitions } from './panel.js'
import { placeDefinitions } from './place.js'
import { quantityDefinitions } from './quantities.js'
import { readingDefinitions } from './readings.js'
import { roomDefinitions } from './room.js'
import { settingsDefinitions } from './settings.js'
import { subjectDefinitions } from './subject.js'
import { surfaceDefinitions } from './surface.js'
import { wantedDefinitions } from './wanted.js'
import { planDefinition, wholeDefinitions } from './whole.js'

const written: Readonly<Record<string, Schema>> = {
  ...documentDefinitions,
  ...settingsDefinitions,
  ...cameraDefinitions,
  ...subjectDefinitions,
  ...surfaceDefinitions,
  ...roomDefinitions,
  ...lightDefinitions,
  ...gearDefinitions,
  ...panelDefinitions,
  ...placeDefinitions,
  ...wantedDefinitions,
  ...readingDefinitions,
  ...kitDefinitions,
  ...nameDefinitions,
  ...quantityDefinitions,
}

/** As the types are made from it: what a merged plan must say is required. */
export const definitionsForTypes: Readonly<Record<string, Schema>> = written

/** All definitions, by name. */
export const definitions: Readonly<Record<string, Schema>> = {
  plan: planDefinition,
  ...wholeDefinitions(written),
  ...written,
}
