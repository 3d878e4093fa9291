/** The colour of the light at one place: every light's own, and what it took on from the surfaces that threw it there. */
import type { Plan } from '../language/plan.js'
import { addXyz, scaledXyz, type Xyz } from '../light/colour/chromaticity.js'
import { ambientColour, type LightColour, lampColour, lightColour } from '../light/colour/light-colour.js'
import { type Mix, mixOf } from '../light/colour/mix.js'
import { type Rgb, rgbOfXyz, xyzOfRgb } from '../light/colour/rgb.js'
import type { ColourHow } from './computed-set.js'
import type { StrengthOf } from './prior-strengths.js'
import { ambientName, modellingOf, type Probe } from './transport.js'

/** Of a light by its name in the set, modelling lamps and the ambient too; undefined where nothing tells it. */
export const colourOf = (plan: Plan, name: string): LightColour | undefined => {
  if (name === ambientName) return ambientColour(plan)
  const lamp = modellingOf(plan, name)
  if (lamp !== undefined) return lampColour(lamp)
  const light = plan.lights.get(name)
  return light && lightColour(light)
}

/** @param shaded lights of which nothing straight arrives */
export const mixedAt = (
  probe: Probe,
  lights: readonly string[],
  strengthOf: StrengthOf,
  colours: (light: string) => LightColour | undefined,
  shaded: readonly string[],
  { grey }: ColourHow,
): Mix | undefined => {
  let [known, unknown] = [0, 0]
  const parts = lights.flatMap((light) => {
    const strength = strengthOf(light)?.candelaSeconds ?? 0
    if (strength === 0) return []
    const colour = colours(light)
    const direct = shaded.includes(light) ? 0 : probe.direct(light)
    const { room, panels, backdrop } = probe.bounce(light)
    const back = room + panels + backdrop
    if (colour === undefined) {
      unknown += strength * (direct + back)
      return []
    }
    known += strength * (direct + back)
    const thrown =
      grey === true || back === 0
        ? scaledXyz(colour.xyz, back)
        : ofLuminance(tinted(colour.xyz, probe.tint(light)), back)
    return [{ light, colour, xyz: scaledXyz(addXyz([scaledXyz(colour.xyz, direct), thrown]), strength) }]
  })
  return mixOf(parts, unknown === 0 ? 0 : unknown / (known + unknown))
}

const tinted = (xyz: Xyz, by: Rgb): Xyz => {
  const rgb = rgbOfXyz(xyz)
  return xyzOfRgb([rgb[0] * by[0], rgb[1] * by[1], rgb[2] * by[2]])
}

/**
 * The channels tell the colour of thrown light alone; how much of it there is is what a meter is taken to read, by
 * reflectances for white light. Red light among red walls is more than that, by a stop and a half where nothing but bounce
 * arrives; in rooms that people work in by under a tenth.
 */
const ofLuminance = (xyz: Xyz, luminance: number): Xyz =>
  xyz[1] > 0 ? scaledXyz(xyz, luminance / xyz[1]) : scaledXyz(xyz, 0)
