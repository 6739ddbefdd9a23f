/** Why there is no report of a take, and what one cannot tell, in English. */
import type { UnheardFact } from '@shedbook/core';
import type { ListenFact } from '@shedbook/listen';
import { sentences } from '../../facts/sentences.ts';

/** Sentences on what was listened to. */
export const listening = sentences<ListenFact | UnheardFact>()({
  // No report.
  'no-sound': 'The recording holds no sound at all.',
  'silent-recording': 'The recording is silent. Was the right microphone chosen, and was it unmuted?',
  'no-drum-notes': 'The file holds no strokes of the drum set.',
  'no-taps': 'No taps were found in this recording.',
  'only-the-loudspeaker': 'Only what the loudspeaker played was heard; nobody played with it.',
  'nothing-played': 'Nothing was played here.',
  'nothing-asked': 'Nothing was asked, so nothing was heard.',
  'no-drums-followed':
    'No drum strokes were found that could be followed. Is this a recording of a drum set?',
  'no-pulse-followed': 'The strokes of this file do not follow any pulse of this exercise.',
  'no-beat-followed':
    'No beat could be followed through this take: it is too short, or too free. A tempo helps where one is known.',
  'sound-of-no-exercise':
    'What is heard does not follow this exercise. Is this a recording of a drum set playing it? On a pad or a table, say so first.',
  'notes-of-no-exercise':
    'What was played does not follow this exercise. Is it another lesson, or another form or meter?',
  // A report that cannot tell everything.
  'not-heard': '{$voice :the at=start} was not heard at all: not played, or too soft for this microphone.',
  'not-listened-for':
    '{$voice :the at=start} is not listened for yet: its strokes are neither counted nor missed. An electronic kit sends them.',
  'hard-to-tell':
    '{$voice :the at=start} is hard to tell from the other voices in this recording; its strokes are a guess.',
  'from-loudspeaker':
    '.input {$count :integer} .match $count one {{{$count} stroke of {$voice :the} cannot be told from what the loudspeaker played; with headphones it can.}} * {{{$count} strokes of {$voice :the} cannot be told from what the loudspeaker played; with headphones they can.}}',
  'under-others':
    '.input {$count :integer} .match $count one {{{$count} stroke of {$voice :the} lies under a louder one and cannot be told: played or left out, it sounds the same.}} * {{{$count} strokes of {$voice :the} lie under louder ones and cannot be told: played or left out, they sound the same.}}',
  'brush-drawn':
    '.input {$count :integer} .match $count one {{{$count} sweep of the brush is not judged: it begins at no moment that could be heard.}} * {{{$count} sweeps of the brush are not judged: they begin at no moment that could be heard.}}',
  'written-as-elsewhere':
    '.input {$count :integer} .match $count one {{{$count} stroke of {$voice :the} lies under {$under :the} and could not be heard; it is written as in the other beats.}} * {{{$count} strokes of {$voice :the} lie under {$under :the} and could not be heard; they are written as in the other beats.}}',
  'as-other-exercises':
    'What is heard is as much exercise {$exercises :exercises type=or}: it cannot be told which was played.',
  'other-tempo': 'It was played at {$bpm :integer} beats a minute, not at {$askedBpm :integer}.',
  'heard-with-line-check': 'Heard with the line check “{$name}” of this kit.',
  'partly-recognised': 'Only part of the exercise was recognised; read the figures with care.',
});
