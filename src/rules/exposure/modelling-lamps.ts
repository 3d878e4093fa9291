import { modellingName } from '../../set/transport.js'
import type { RuleContext } from '../rule.js'

/** Lights whose modelling lamp burns and is known, with the name under which the set counts the lamp as a light. */
export const modellingLamps = ({
  set,
  plan,
}: RuleContext): readonly { readonly light: string; readonly lamp: string }[] =>
  [...plan.lights.values()].flatMap((light) => {
    const lamp = modellingName(light.name)
    return light.on && light.modelling && set.strength(lamp) !== undefined
      ? [{ light: light.name, lamp }]
      : []
  })
