/** What both pages say of a foot switch, in English. */

/** Setting it up. */
export const footSwitch = {
  keys: 'A page-turning pedal that sends page or arrow keys works as it is.',
  midi: 'A MIDI foot switch, a sustain pedal or a pad has to be shown once: press “Learn”, then press it.',
  connect: 'Listen for MIDI',
  status: {
    off: 'MIDI is not heard yet. The browser asks whether it may.',
    asking: 'Waiting for the browser to allow it …',
    missing: 'This browser has no MIDI. Keys and touch work all the same.',
    refused: 'The browser was told not to allow MIDI. Keys and touch work all the same.',
  },
  hears: 'Hears {$devices}.',
  nothing: 'MIDI is allowed, but nothing is plugged in yet.',
  learn: 'Learn',
  cancel: 'Do not learn',
  forget: 'Forget',
  press: 'Press the switch now …',
  none: 'none',
  control: 'controller {$n :integer}, channel {$channel :integer}',
  note: 'note {$n :integer}, channel {$channel :integer}',
} as const;
