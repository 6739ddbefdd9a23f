/** What changing the meter or the feel of a lesson does to what is written in it, as facts. */
import type { Fact } from '../fact.ts';
import type { Voice } from '../kit/voice.ts';

/** Exercises by their numbers, and how much of them it is about. */
interface InExercises extends Fact {
  readonly fact: 'strokes-without-place' | 'strokes-moved';
  readonly strokes: number;
  /** Numbers of the exercises. */
  readonly exercises: readonly string[];
}

/** What becomes of the groove. */
interface OfGroove extends Fact {
  readonly fact: 'groove-loses-beats' | 'groove-goes-on';
  readonly beats: number;
  readonly voices: readonly Voice[];
}

/** Strokes of the groove that one limb would have at the same moment as others. */
interface OfLimbs extends Fact {
  readonly fact: 'groove-loses-strokes';
  readonly strokes: number;
}

/** Beats that are written otherwise and sound as before, or nearly. */
interface OfBeats extends Fact {
  readonly fact: 'beats-in-three' | 'beats-in-two' | 'beats-stay-in-three' | 'silent-beats-added';
  readonly beats: number;
}

/** Exercises that would be another one's twin. */
interface OfTwins extends Fact {
  readonly fact: 'exercises-become-twins';
  /** Numbers of those that go. */
  readonly exercises: readonly string[];
}

/** What stands on a beat that there is no more. */
interface OfPlaces extends Fact {
  readonly fact: 'dynamics-without-place' | 'fill-on-last-beat';
  readonly exercises: readonly string[];
}

interface OfForm extends Fact {
  readonly fact: 'ending-on-last-beat';
  /** Name of the form. */
  readonly form: string;
}

/** What a change of meter or feel does to a lesson. */
export type ChangeFact = InExercises | OfGroove | OfLimbs | OfBeats | OfTwins | OfPlaces | OfForm;
