/** Verdicts in English: what to do, in words of sound and movement, the figures behind it, and praise. */
import type { PlaceFact } from '@shedbook/core';
import type { VerdictFact } from '@shedbook/judge';
import { sentences } from '../../facts/sentences.ts';

/** What to do about a loudspeaker, wherever it is read; “More” and “I play” are the practice page's. */
const QUIETEN =
  'Wear headphones, or let it leave out what you play yourself (on the practice page: “More”, “I play”).';

/** Sentences on what was played. */
export const verdicts = sentences<VerdictFact, PlaceFact>()({
  // One thing to do.
  'do-play-what-is-asked': 'That was another exercise. Look at the page, sing it once, then play it.',
  'do-play-the-asked':
    'That was exercise {$exercise :exercise}. Look at the page, sing the one asked, then play it.',
  'do-swing':
    'Let the off-beats swing: the last triplet falls late, close to the next beat. They came straight, in the middle.',
  'do-swing-voice':
    'Let the off-beats of {$voice :the} swing: the last triplet falls late, close to the next beat. They came straight, in the middle.',
  'do-swing-sixteenths':
    'Let the sixteenths swing: every second one falls late, close to the next eighth. They came straight, in the middle.',
  'do-swing-voice-sixteenths':
    'Let the sixteenths of {$voice :the} swing: every second one falls late, close to the next eighth. They came straight, in the middle.',
  'do-straighten':
    'Play the eighths straight: each off-beat in the middle, between two beats. They came late, as in a shuffle.',
  'do-straighten-voice':
    'Play the eighths of {$voice :the} straight: each off-beat in the middle, between two beats. They came late, as in a shuffle.',
  'do-straighten-sixteenths':
    'Play the sixteenths straight: every second one in the middle, between two eighths. They came late, as in a shuffle.',
  'do-straighten-voice-sixteenths':
    'Play the sixteenths of {$voice :the} straight: every second one in the middle, between two eighths. They came late, as in a shuffle.',
  'do-breathe': 'Breathe, and give each beat its full length: the tempo runs away.',
  'do-keep-moving': 'Keep moving, and think of the next beat already: the tempo sinks.',
  'do-join-in': 'Nobody was heard playing. Listen as long as you like, and join in when you are ready.',
  'do-quieten-loudspeaker': `Only the loudspeaker was heard. ${QUIETEN}`,
  'do-come-nearer':
    'Too little was heard to judge. Bring the microphone nearer to the drums, and keep the room quiet.',
  'do-bring-in': 'Bring in {$voice :the}: it stayed out.',
  'do-fill-in': 'Play every written stroke of {$voice :the}: some were missing.',
  'do-leave-out': 'Leave out what is not written for {$voice :the}: let it rest there.',
  'do-lay-back': 'Lay {$voice :the} back a little: let each stroke drop, and do not push it.',
  'do-push': 'Lead with {$voice :the}: start each stroke a little sooner.',
  'do-even-out':
    'Play {$voice :the} evenly: small moves, the same height each time, and listen to the gaps between the strokes.',
  'do-speak-up': 'Let {$voice :the} speak: start the stroke from higher up.',
  'do-tell-from-loudspeaker': `{$voice :the at=start} cannot be told from the loudspeaker. ${QUIETEN}`,
  'do-let-be-heard':
    '{$voice :the at=start} could not be heard well enough to judge. Move the microphone towards it.',
  'do-fill-in-at': 'Let {$voice :the} sound on {$place :say}: it is missing there.',
  'do-put-where-written':
    '{$voice :the at=start} fell elsewhere: look where it is written, and let it sound on {$place :say}.',
  'do-leave-out-near': 'Let {$voice :the} rest near {$place :say}: nothing is written for it there.',
  'do-wait-at': 'Let {$voice :the} fall later on {$place :say}: hold it back for a moment.',
  'do-sooner-at': 'Start the move to {$place :say} sooner: {$voice :the} comes late there.',
  'do-wait-for-last-triplet':
    'Let {$voice :the} fall later on {$place :say}: the last triplet lies close to the next beat.',
  'do-wait-for': 'Wait for {$lead :the} with {$voice :the}: let both sound as one.',
  'do-sooner-than': 'Start {$voice :the} sooner: let it sound as one with {$lead :the}.',
  'do-ghost-softer':
    'Keep the soft strokes of {$voice :the} soft: let them fall from just above the head, so that the accents stand out.',
  'do-play-bar': 'Bar {$bar} was left out: play every bar, one after the other.',
  'do-play-bars': 'Bars {$bars :list} were left out: play every bar, one after the other.',
  'do-play-in-order':
    'The bars came in another order, {$bars :list}: play them as they are written, one after the other.',
  'do-softer-under': 'Play {$voice :the} softer, from lower down, so that it lies under {$lead :the}.',
  'do-move-to': 'The rhythm is right: play it on {$voice :the}, not on {$instead :the}.',
  'do-come-in-sooner':
    '.input {$beats :integer} .match $beats one {{Come in {$beats} beat sooner: the whole rhythm lies {$beats} beat late.}} * {{Come in {$beats} beats sooner: the whole rhythm lies {$beats} beats late.}}',
  'do-come-in-later':
    '.input {$beats :integer} .match $beats one {{Come in {$beats} beat later: the whole rhythm lies {$beats} beat early.}} * {{Come in {$beats} beats later: the whole rhythm lies {$beats} beats early.}}',
  'do-play-slower': 'Take the tempo that is asked: this was {$bpm :integer}, and too fast.',
  'do-play-faster': 'Take the tempo that is asked: this was {$bpm :integer}, and too slow.',
  // The figures behind it.
  'figure-bars-missing': 'Bars left out: {$times :integer} of {$of :integer}.',
  'figure-bars-missing-or':
    'Bars left out: {$times :integer} of {$of :integer}. What was played is all of exercise {$exercise :exercise}, so perhaps that one was meant.',
  'figure-missing':
    '.input {$of :integer} .match $of one {{{$limb :side at=start} ({$voice :voice}): the only stroke is missing.}} * {{{$limb :side at=start} ({$voice :voice}): {$times :integer} of {$of} strokes missing.}}',
  'figure-missing-at':
    '{$limb :side at=start} ({$voice :voice}): {$times :integer} of {$of :integer} strokes missing, {$where :say}.',
  'figure-extra':
    '.input {$times :integer} .match $times one {{{$limb :side at=start} ({$voice :voice}): {$times} stroke too many.}} * {{{$limb :side at=start} ({$voice :voice}): {$times} strokes too many.}}',
  'figure-extra-near':
    '.input {$times :integer} .match $times one {{{$limb :side at=start} ({$voice :voice}): {$times} stroke too many, near {$places :list}.}} * {{{$limb :side at=start} ({$voice :voice}): {$times} strokes too many, near {$places :list}.}}',
  'figure-early': '{$limb :side at=start} ({$voice :voice}): about {$ms :integer} ms early throughout.',
  'figure-late': '{$limb :side at=start} ({$voice :voice}): about {$ms :integer} ms late throughout.',
  'figure-uneven':
    '{$limb :side at=start} ({$voice :voice}): strokes lie ±{$ms :integer} ms around their place.',
  'figure-early-at': '{$limb :side at=start} ({$voice :voice}): about {$ms :integer} ms early {$where :say}.',
  'figure-late-at': '{$limb :side at=start} ({$voice :voice}): about {$ms :integer} ms late {$where :say}.',
  'on-places': 'on {$places :list}',
  'in-parts': 'in {$parts :list}',
  'part-bar': 'bar {$bar :integer}',
  'part-round': 'round {$round :integer}',
  'part-bar-of-round': 'bar {$bar :integer} of round {$round :integer}',
  'figure-loud':
    '{$limb :side at=start} ({$voice :voice}): about {$db :integer} dB too loud against {$lead :the}.',
  'figure-soft':
    '{$limb :side at=start} ({$voice :voice}): about {$db :integer} dB too soft against {$lead :the}.',
  'figure-rushing': 'The tempo rises by about {$percent :number maximumFractionDigits=1} percent.',
  'figure-dragging': 'The tempo falls by about {$percent :number maximumFractionDigits=1} percent.',
  'figure-slow': 'Slower than asked by about {$percent :integer} percent.',
  'figure-fast': 'Faster than asked by about {$percent :integer} percent.',
  'figure-ahead':
    'Everything came about {$ms :integer} ms early, evenly: that may be the devices, and is no fault.',
  'figure-behind':
    'Everything came about {$ms :integer} ms late, evenly: that may be the devices, and is no fault.',
  // Praise.
  'praise-all-there': 'All {$count :integer} strokes are there, and no others.',
  'praise-tempo-holds': 'The tempo holds at {$bpm :integer}.',
  'praise-steady':
    '{$voice :the at=start} is steady: half of its strokes lie within {$ms :integer} ms of their place.',
  'praise-clean': 'That was clean.',
  'time-played': 'The groove alone was played.',
  'time-most-like': 'It is most like the groove alone.',
  'exercise-played': 'Exercise {$exercise :exercise} was played.',
  'exercise-most-like': 'It is most like exercise {$exercise :exercise}.',
  'clean-in-form': 'In the form “{$form}” nothing is wrong with it: was that one meant?',
});
