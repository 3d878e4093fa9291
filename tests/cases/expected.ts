/**
 * What each reported situation should get. The plans restate fifty situations that photographers described (set,
 * symptom, diagnosis); in each plan what was stated and what had to be assumed is marked.
 *
 * `now`: rules that exist, asserted with their level. `later`: rules that the situation is also about, by the part of
 * the program that will answer them. `control`: a set that works; nothing at warning or above may be said of it.
 * `judged`: where the level or rule differs from what the report of the situation suggests, and why.
 */
import type { Level } from '../../src/rules/rule.js'

export interface Case {
  readonly id: string
  readonly control?: true
  readonly now: readonly { readonly rule: string; readonly level: Level }[]
  readonly later: readonly Later[]
  readonly judged?: string
}

export interface Later {
  readonly rule: string
  readonly part: 'mains and rigging' | 'no rule in the design'
}

const warning = (rule: string) => ({ rule, level: 'warning' as const })
const error = (rule: string) => ({ rule, level: 'error' as const })
const note = (rule: string) => ({ rule, level: 'note' as const })
const rigging = (rule: string): Later => ({ rule, part: 'mains and rigging' })
const none = (rule: string): Later => ({ rule, part: 'no rule in the design' })

export const cases: readonly Case[] = [
  { id: 'W01', now: [warning('backdrop-not-black')], later: [] },
  {
    id: 'W03',
    now: [
      warning('backdrop-above-limit'),
      note('aperture-off-key'),
      note('two-nose-shadows'),
      warning('edge-wrap'),
    ],
    later: [],
    judged:
      'the photographer wants no ratio, so none is judged; that key and fill stand at 2:1 or 3:1 is a figure of the meter card',
  },
  { id: 'W05', now: [warning('backdrop-above-limit'), warning('edge-wrap')], later: [] },
  { id: 'W07', now: [warning('backdrop-uneven')], later: [] },
  {
    id: 'W09',
    now: [warning('backdrop-above-limit')],
    later: [],
    judged:
      'the acrylic sheet that is narrower than the children move is not in the language; over the area the light changes by 0.6 stop, just inside the two thirds of leaves-the-light',
  },
  {
    id: 'W11',
    control: true,
    now: [],
    later: [],
    judged:
      'that a key at full power recycles slowly was asked for; the photographer states no pace, and recycle-slow holds recycling against one',
  },
  {
    id: 'W13',
    now: [note('backdrop-not-black')],
    later: [],
    judged:
      'a warning was asked for; black cloth two stops under the key records sRGB 25, and the rule table keeps its warning for over 30',
  },
  { id: 'W15', now: [warning('backdrop-colour-washed')], later: [] },
  { id: 'W17', now: [note('backdrop-colour-washed')], later: [] },
  { id: 'W19', control: true, now: [], later: [] },
  {
    id: 'W21',
    now: [note('edge-merges')],
    later: [],
    judged: 'a warning was asked for; the rule table gives edge-merges as a note',
  },
  { id: 'W23', now: [warning('shadow-in-frame')], later: [] },
  { id: 'W25', control: true, now: [], later: [] },
  { id: 'W27', now: [error('ceiling-low')], later: [] },
  { id: 'W29', now: [warning('frame-past-backdrop')], later: [] },
  { id: 'W31', now: [warning('glasses-mirror-light')], later: [] },
  { id: 'W33', now: [note('rim-hot')], later: [] },
  { id: 'W35', now: [note('edge-wrap'), warning('light-in-frame')], later: [] },
  { id: 'W37', now: [error('shutter-beyond-sync')], later: [] },
  {
    id: 'W39',
    now: [warning('trigger-margin')],
    later: [],
    judged:
      'with a basic radio the margin of 0.68 stop is just over the two thirds that the rule asks for; the chain reported was slower, so it is written as the slowest kind of trigger',
  },
  {
    id: 'W41',
    now: [warning('trigger-margin')],
    later: [],
  },
  { id: 'W43', now: [warning('high-speed-short')], later: [] },
  { id: 'W45', control: true, now: [], later: [] },
  {
    id: 'W47',
    now: [warning('ambient-in-exposure'), warning('flicker-bands'), warning('colour-mixed')],
    later: [],
  },
  { id: 'W49', now: [note('colour-mixed')], later: [] },
  { id: 'W51', now: [error('power-beyond-range')], later: [] },
  { id: 'W53', now: [error('automatic-exposure')], later: [] },
  { id: 'W55', now: [warning('unit-too-weak')], later: [] },
  {
    id: 'W57',
    now: [warning('readings-disagree')],
    later: [],
    judged: 'the report calls it information; the rule table’s level for readings at odds is a warning',
  },
  { id: 'W59', control: true, now: [], later: [] },
  {
    id: 'W61',
    now: [error('unit-too-weak'), warning('ambient-in-exposure')],
    later: [rigging('circuit-overload')],
  },
  {
    id: 'W63',
    control: true,
    now: [],
    later: [],
    judged: 'sixty people are over the language’s limit of forty; forty stand in the plan at the same depth',
  },
  { id: 'W65', now: [warning('group-uneven'), note('source-small')], later: [] },
  {
    id: 'W67',
    now: [warning('depth-short')],
    later: [],
    judged:
      'an error was asked for; the rule table gives depth-short as a warning, for a soft row is still a picture',
  },
  {
    id: 'W69',
    now: [warning('group-uneven')],
    later: [],
    judged: 'an error was asked for; the rule table’s highest level for uneven light on a group is a warning',
  },
  {
    id: 'W71',
    now: [note('power-off-step'), note('ratio-off')],
    later: [],
    judged: 'a warning was asked for; 0.4 stop in place of one is 0.6 off, under the two thirds of a warning',
  },
  {
    id: 'W73',
    now: [],
    later: [none('offset of meter and camera')],
    judged:
      'a third between meter and test frame is less than twice what a test frame is uncertain by (0.3): no reading shows it, only bracketing does',
  },
  { id: 'W75', now: [warning('readings-disagree')], later: [] },
  { id: 'W77', now: [note('diffraction')], later: [] },
  { id: 'W79', control: true, now: [], later: [] },
  {
    id: 'W81',
    now: [error('power-beyond-range')],
    later: [],
    judged: 'a warning was asked for; what cannot be set is an error by the rule table',
  },
  { id: 'W83', now: [warning('motion-blur')], later: [] },
  { id: 'W85', now: [], later: [rigging('light-too-near'), rigging('boom-over-person')] },
  {
    id: 'W87',
    now: [],
    later: [none('live view')],
    judged:
      'the finder’s preview is no part of a lighting plan; the ambient is nine stops down and rightly not reported',
  },
  {
    id: 'W89',
    now: [
      warning('backdrop-uneven'),
      warning('beam-short'),
      warning('leaves-the-light'),
      warning('recycle-slow'),
    ],
    later: [],
  },
  { id: 'W91', now: [], later: [rigging('circuit-overload')] },
  {
    id: 'W93',
    now: [],
    later: [none('shared radio channel'), none('flashes of guests')],
    judged:
      'what sets the plain optical slave off are flashes of guests, and the other photographer is on the same channel: neither is in a plan. No flash of this set gives a pre-flash, so slave-false-start is rightly silent',
  },
  { id: 'W95', now: [], later: [rigging('stand-tips')] },
  {
    id: 'W97',
    now: [warning('backdrop-below-white'), warning('subject-cropped'), error('room-short')],
    later: [],
    judged:
      'the wrap that was asked for is that of a white wall 60 cm behind; as the plan stands the wall records mid grey and throws back little',
  },
  {
    id: 'W99',
    now: [warning('subject-cropped'), error('room-short'), note('ceiling-low')],
    later: [],
    judged: 'a warning was asked for the room over the hair light; the rule table has comfort as a note',
  },
]
