/** What `thirdstop start` writes: a first plan, a kit and the settings, each explaining itself. */

export interface StartFile {
  /** Relative to the folder that is asked for. */
  readonly path: string
  readonly text: string
}

export const startFiles = (): readonly StartFile[] => [
  { path: 'first.plan.yaml', text: plan },
  { path: 'kits/my.kit.yaml', text: kit },
  { path: 'thirdstop.yaml', text: settings },
]

const plan = `# A first plan: a portrait on grey paper, with two lights.
# Check it with:   thirdstop check first.plan.yaml
# Meter card:      thirdstop meter first.plan.yaml
#
# It is fine as it stands. Change one value and check again, to see what happens:
#   behind: 4 m      aperture: f/8      lens: 35 mm
plan: 1
title: First portrait
kit: kits/my.kit.yaml # what gear there is; without it, built-in guesses stand in

camera:
  body: main # a camera of the kit
  lens: 85 mm
  at: { distance: 2.5 m } # along the floor, from the person
  aperture: f/5.6
  shutter: 1/125
  iso: 100

subject: { kind: person } # standing, 1.72 m, unless you say otherwise

backdrop:
  surface: grey paper
  behind: 2 m # from the person to the paper

# Every light has a name. Lengths always carry their unit: 1.3 m, 130 cm, 4 ft 3 in.
lights:
  key:
    unit: flash
    modifier: softbox 60 x 90 cm
    meters: f/5.6 # what it is to read at the face, the dome toward it; or power: 1/4
    # By tape from the face to the front cloth; left and right as seen from the camera.
    at: { angle: 40 deg left, distance: 1.3 m, height: 2 m }
  rim:
    unit: flash
    modifier: strip 30 x 120 cm
    grid: 40 deg
    meters: f/4
    at: { angle: 140 deg right, distance: 1.5 m, height: 2.2 m }

# What the picture is to look like. thirdstop holds the light against this.
wanted:
  backdrop: grey
  framing: head and shoulders

# When you have metered, write down what you read; from then on the figures follow your meter:
#   thirdstop meter first.plan.yaml --read key@subject=f/5.6
`

const kit = `# Your gear. One kit serves every plan; take out what you do not have.
# A figure from your own meter is worth more than one from a box: see measured, below.
kit: 1
title: My kit

units:
  flash:
    guide-number: 36 m at 35 mm # in metres at ISO 100, and the zoom that it holds for
    power: { from: 1/128, to: full, step: 1/3 stop }
    zoom: 24..105 mm
    count: 2

cameras:
  main: { sensor: full frame, sync: 1/200 } # the fastest shutter speed that works with flash

# Metered once, straight ahead. This beats every rating:
# measured:
#   - { unit: flash, modifier: softbox 60 x 90 cm, zoom: 35 mm, power: 1/2, distance: 1.3 m, reads: f/5.6, iso: 100 }
`

const settings = `# Settings of this folder and all below it.
thirdstop: 1

# The level from which thirdstop check ends with exit code 1: error, warning or note.
fail-on: warning

# A rule at another level, or off:
# levels:
#   power-off-step: 'off'

# A limit of your own; thirdstop explain RULE shows their names:
# limits:
#   backdrop-uneven: { warning: 2/3 stop }
`
