/** What a what-if or a mend may turn. A change names a knob and its new value; the plan is changed as the author would. */
export type Knob =
  /** A light's strength in stops against today's: its power, or what it is to meter. */
  | { readonly knob: 'strength'; readonly light: string }
  /** Tape from the face to the front, in metres, along the same bearing and with the same height. */
  | { readonly knob: 'light-distance'; readonly light: string }
  /** A backdrop light's distance before the backdrop, in metres. */
  | { readonly knob: 'before-backdrop'; readonly light: string }
  /** A light's height over the floor, metres; by tape it keeps its tape, else its place on the floor. */
  | { readonly knob: 'light-height'; readonly light: string }
  /** How far up a light stands as seen from the subject, radians, where that is stated in place of its height. */
  | { readonly knob: 'light-up'; readonly light: string }
  /** A light's bearing from the subject, radians left of the camera's end, where it is placed by one. */
  | { readonly knob: 'light-angle'; readonly light: string }
  /** How far camera-right of the centre line a light stands, metres, where it is placed so. */
  | { readonly knob: 'light-right'; readonly light: string }
  /** How far camera-right of the centre line a panel stands, metres, where it is placed so. */
  | { readonly knob: 'panel-right'; readonly panel: string }
  /** Height of a panel's middle over the floor, metres; a v-flat stands on the floor and has none. */
  | { readonly knob: 'panel-height'; readonly panel: string }
  /** Zoom of a head, metres of focal length. */
  | { readonly knob: 'zoom'; readonly light: string }
  /** Camera settings: exact f-number, seconds, ISO, stops of neutral density, metres of focal length. */
  | { readonly knob: 'aperture' | 'shutter' | 'iso' | 'filter' | 'lens' }
  /** Camera to subject along the floor, metres. */
  | { readonly knob: 'camera-distance' }
  /** How far camera-right of the centre line the camera stands, metres; negative is camera-left. */
  | { readonly knob: 'camera-aside' }
  /** Subject to backdrop, metres; backdrop lights keep their place before the backdrop. */
  | { readonly knob: 'behind' }
  | { readonly knob: 'backdrop-width' }

export interface Change {
  readonly knob: Knob
  readonly to: number
}
