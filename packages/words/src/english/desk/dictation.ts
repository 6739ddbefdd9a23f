/** Writing down what is played, in English. */

/** Words of `dictation`. */
export const dictation = {
  opens: 'Write down a take',
  title: 'Play it, and it is written',
  lead: 'Record a take, or take one from a file: sound or MIDI. It is written in the meter ({$meter}) and feel ({$feel}) of this lesson. Nothing leaves this device.',
  record: 'Record with the microphone',
  kit: 'Record an electronic kit',
  file: 'From a file',
  stop: 'That was it',
  recording: { microphone: 'Recording. Play a few bars.', kit: 'Listening to the kit. Play a few bars.' },
  writing: 'Writing it down …',
  failed: {
    microphone: 'There is no microphone here, or it may not be used.',
    kit: 'There is no electronic kit here, or it may not be used.',
    file: 'That could not be read: neither sound nor MIDI.',
  },
  found:
    '.input {$bars :integer} .match $bars one {{{$bars} bar of {$meter} at {$bpm :integer}, feel {$feel}.}} * {{{$bars} bars of {$meter} at {$bpm :integer}, feel {$feel}.}}',
  misfits:
    '.input {$strokes :integer} .match $strokes one {{{$strokes} stroke lies on no place of a beat and is left out.}} * {{{$strokes} strokes lie on no place of a beat and are left out.}}',
  groove: 'What repeats in every bar, as an exercise',
  exercise: 'Exercise {$n :exercise}',
  keep: '.input {$n :integer} .match $n 0 {{Keep}} one {{Keep {$n} exercise}} * {{Keep {$n} exercises}}',
  kept: '.input {$n :integer} .match $n one {{{$n} exercise is on the page.}} * {{{$n} exercises are on the page.}}',
} as const;
