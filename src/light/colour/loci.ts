/**
 * The two curves on which white light lies: black bodies, and daylight.
 *
 * Black bodies by Kang, Moon, Hong, Lee, Cho and Kim (J. Korean Phys. Soc. 41, 2002), 1667 to 25000 K; beyond, its
 * polynomials in 1/T run on to 40000 K. Below 1667 K by Krystek (Color Res. Appl. 10, 1985), moved by the 0.0004 by which
 * the two differ where they meet. Daylight by CIE 15, 4000 to 25000 K; its polynomials run on a little to either side.
 */
import { type Uv, uvOfXy, type Xy } from './chromaticity.js'

const kangFrom = 1667
/** The two halves of Kang's x differ by 0.00007 (0.2 mired) where they meet: between these, kelvin, one runs into the other. */
const joined = { from: 3800, to: 4200, middle: 4000 }

/** Chromaticity of a black body as published, 1667 K and over. */
export const kangXy = (kelvin: number): Xy => (kelvin <= joined.middle ? kangWarm(kelvin) : kangCold(kelvin))

const kangWarm = (kelvin: number): Xy => {
  const i = 1e3 / kelvin
  const x = ((-0.2661239 * i - 0.2343589) * i + 0.8776956) * i + 0.17991
  const y =
    kelvin <= 2222
      ? ((-1.1063814 * x - 1.3481102) * x + 2.18555832) * x - 0.20219683
      : ((-0.9549476 * x - 1.37418593) * x + 2.09137015) * x - 0.16748867
  return { x, y }
}

const kangCold = (kelvin: number): Xy => {
  const i = 1e3 / kelvin
  const x = ((-3.0258469 * i + 2.1070379) * i + 0.2226347) * i + 0.24039
  return { x, y: ((3.081758 * x - 5.8733867) * x + 3.75112997) * x - 0.37001483 }
}

/** Chromaticity of a black body, 1000 to 15000 K. */
export const krystekUv = (t: number): Uv => ({
  u:
    (0.860117757 + 1.54118254e-4 * t + 1.28641212e-7 * t * t) /
    (1 + 8.42420235e-4 * t + 7.08145163e-7 * t * t),
  v:
    (0.317398726 + 4.22806245e-5 * t + 4.20481691e-8 * t * t) /
    (1 - 2.89741816e-5 * t + 1.61456053e-7 * t * t),
})

const meet = { kang: uvOfXy(kangXy(kangFrom)), krystek: krystekUv(kangFrom) }

/** Chromaticity of a black body, 1000 to 40000 K, without a step anywhere. */
export const planckianUv = (kelvin: number): Uv => {
  if (kelvin < kangFrom) {
    const { u, v } = krystekUv(kelvin)
    return { u: u + meet.kang.u - meet.krystek.u, v: v + meet.kang.v - meet.krystek.v }
  }
  if (kelvin <= joined.from || kelvin >= joined.to) return uvOfXy(kangXy(kelvin))
  const share = smooth((kelvin - joined.from) / (joined.to - joined.from))
  const [warm, cold] = [kangWarm(kelvin), kangCold(kelvin)]
  return uvOfXy({ x: warm.x + share * (cold.x - warm.x), y: warm.y + share * (cold.y - warm.y) })
}

/** From 0 to 1 with level ends. */
export const smooth = (share: number): number => {
  const t = Math.min(1, Math.max(0, share))
  return t * t * (3 - 2 * t)
}

/** Chromaticity of daylight of this nominal colour temperature: CIE D. */
export const daylightXy = (kelvin: number): Xy => {
  const i = 1e3 / kelvin
  const x =
    kelvin <= 7000
      ? ((-4.607 * i + 2.9678) * i + 0.09911) * i + 0.244063
      : ((-2.0064 * i + 1.9018) * i + 0.24748) * i + 0.23704
  return { x, y: (-3 * x + 2.87) * x - 0.275 }
}
