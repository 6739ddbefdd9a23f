/** What is wrong with a lesson file and what would be right, as facts. */
import type { Fact } from '../fact.ts';
import type { Limb, SoundingVoice, Voice } from '../kit/voice.ts';
import type { PatternFact } from '../rhythm/pattern-fact.ts';
import type { ValueFact, WordFact } from './value-fact.ts';

/** What a field of the lesson should hold, where no value is to be named. */
export interface FieldFact extends Fact {
  readonly fact:
    | 'a-lesson'
    | 'a-lesson-section'
    | 'lesson-sections'
    | 'a-heading'
    | 'a-groove-in-this-meter'
    | 'a-title'
    | 'a-name'
    | 'a-text'
    | 'a-number'
    | 'a-whole-number'
    | 'a-version-number'
    | 'true-or-false'
    | 'a-web-address'
    | 'a-medium'
    | 'media'
    | 'a-file-name'
    | 'a-path-inside'
    | 'a-file-there'
    | 'a-file-as-it-ends'
    | 'a-picture-alone'
    | 'a-lesson-name'
    | 'dynamic-signs'
    | 'how-words'
    | 'how-by-voice'
    | 'limbs-and-voices'
    | 'a-fill'
    | 'a-book'
    | 'chapters'
    | 'a-chapter'
    | 'a-lesson-file'
    | 'section-names'
    | 'a-section-name'
    | 'lesson-without-sections'
    | 'a-section-above'
    | 'a-repeat'
    | 'endings-of-repeat'
    | 'some-bars'
    | 'one-or-two-bars'
    | 'an-origin'
    | 'a-meter'
    | 'a-feel'
    | 'a-feel-in-range'
    | 'a-tempo'
    | 'tempo-keys'
    | 'a-pattern-text'
    | 'a-groove-part'
    | 'patterns-by-voice'
    | 'patterns-by-playing-voice'
    | 'levels-by-voice'
    | 'limbs-by-voice'
    | 'an-exercise'
    | 'an-exercise-pattern'
    | 'pattern-texts'
    | 'hands'
    | 'hands-by-voice'
    | 'a-hand-each'
    | 'a-cell'
    | 'a-cell-or-name'
    | 'a-cell-with-name'
    | 'cells'
    | 'an-ending'
    | 'ending-voices'
    | 'ending-cell'
    | 'playable-ending-cell'
    | 'section-keys'
    | 'click-beats'
    | 'one-section-key'
    | 'sections'
    | 'at-least-one-section'
    | 'form-keys'
    | 'forms-by-name'
    | 'a-form-name'
    | 'an-example'
    | 'a-layer'
    | 'a-layer-voice'
    | 'layers'
    | 'at-least-one-voice'
    | 'sheet-settings'
    | 'a-beat-number'
    | 'most-no-smaller'
    | 'another-value'
    | 'same-bars'
    | 'one-stroke-a-limb'
    | 'foot-on-free-hihat';
}

/** A number between two bounds. */
export interface RangeFact extends Fact {
  readonly fact:
    | 'bars-in-range'
    | 'bar-in-range'
    | 'section-in-range'
    | 'times-in-range'
    | 'beat-in-range'
    | 'level-in-range'
    | 'bpm-in-range'
    | 'scale-in-range'
    | 'exercises-in-range';
  /** In bars, times, beats, dB, quarter notes a minute, exercises, or a ratio, as the fact says. */
  readonly least: number;
  /** In the unit of `least`, e.g. bars. */
  readonly most: number;
}

/** A level of a voice, as a number of dB or as a word. */
interface LevelFact extends Fact {
  readonly fact: 'a-level';
  readonly leastDb: number;
  readonly mostDb: number;
  readonly words: readonly string[];
}

/** More of something than a lesson takes: characters of a text, items of a list, megabytes of a file. */
interface LengthFact extends Fact {
  readonly fact: 'characters-up-to' | 'items-up-to' | 'megabytes-up-to';
  readonly most: number;
}

/** One bound of a number. */
interface BoundFact extends Fact {
  readonly fact: 'at-least' | 'more-than' | 'at-most' | 'less-than';
  readonly bound: number;
}

/** What is found or wanted of exercises and cells. */
type ExerciseFaultFact =
  | (Fact & { readonly fact: 'same-pattern-again' })
  | (Fact & { readonly fact: 'each-pattern-once'; readonly exercise: number })
  | (Fact & { readonly fact: 'each-name-once'; readonly exercise: number })
  | (Fact & { readonly fact: 'text-again'; readonly text: string })
  | (Fact & { readonly fact: 'each-cell-once' /** Its place in the list, from 1. */; readonly place: number })
  | (Fact & {
      readonly fact: 'marks-or-cell-name';
      readonly slots: readonly string[];
      readonly marks: string;
    })
  | (Fact & { readonly fact: 'cell-found'; readonly text: string })
  | (Fact & {
      readonly fact: 'cell-of-vocabulary' /** Cells with a space between. */;
      readonly cells: string;
    })
  | (Fact & { readonly fact: 'mark-on-voice'; readonly mark: string; readonly voice: string })
  | (Fact & {
      readonly fact: 'how-of-voices';
      readonly voices: readonly Voice[];
      readonly words: readonly string[];
    })
  | (Fact & { readonly fact: 'how-once'; readonly word: string })
  | (Fact & { readonly fact: 'voices-of-bars'; readonly bars: readonly string[] })
  | (Fact & { readonly fact: 'hands-found'; readonly hands: number })
  | (Fact & { readonly fact: 'hands-wanted'; readonly hands: number });

/** What is found or wanted of forms, groove and tempo. */
type FormFaultFact =
  | (Fact & { readonly fact: 'section-plays'; readonly plays: readonly string[] })
  | (Fact & { readonly fact: 'section-without-bars' })
  | (Fact & { readonly fact: 'beat-found'; readonly beat: number })
  | (Fact & { readonly fact: 'beat-up-to'; readonly most: number })
  | (Fact & { readonly fact: 'bar-found'; readonly bar: number })
  | (Fact & { readonly fact: 'bar-up-to'; readonly most: number })
  | (Fact & { readonly fact: 'texts-for-bars'; readonly bars: number })
  | (Fact & { readonly fact: 'endings-found'; readonly endings: number })
  | (Fact & { readonly fact: 'endings-up-to'; readonly most: number })
  | (Fact & { readonly fact: 'ending-at-bar'; readonly bar: number })
  | (Fact & { readonly fact: 'repeat-after-bar'; readonly bar: number })
  | (Fact & { readonly fact: 'another-bar'; readonly bar: number })
  | (Fact & { readonly fact: 'held-each-time' })
  | (Fact & { readonly fact: 'same-as-bars-before'; readonly bars: number })
  | (Fact & { readonly fact: 'voices-joined'; readonly voices: readonly string[] })
  | (Fact & { readonly fact: 'voice-of-groove'; readonly voices: readonly string[] })
  | (Fact & { readonly fact: 'goal-found'; readonly bpm: number })
  | (Fact & { readonly fact: 'goal-no-slower'; readonly bpm: number });

/** One limb with two strokes at the same moment; bar, beat and slot from 1. */
interface LimbConflictFact extends Fact {
  readonly fact: 'limb-conflict';
  readonly voices: readonly SoundingVoice[];
  readonly limb: Limb;
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
}

/** A stroke of the hi-hat foot where the hand strikes the same plates closed; bar, beat and slot from 1. */
interface ShutFootFact extends Fact {
  readonly fact: 'shut-foot';
  readonly bar: number;
  readonly beat: number;
  readonly slot: number;
}

/** What is found in the YAML of a file, or expected of it. */
interface YamlFact extends Fact {
  readonly fact:
    | 'yaml-tab'
    | 'yaml-spaces'
    | 'yaml-key-again'
    | 'yaml-colon-in-text'
    | 'yaml-one-colon'
    | 'yaml-no-colon'
    | 'yaml-key-and-value'
    | 'yaml-indent'
    | 'yaml-aligned-keys'
    | 'yaml-not-closed'
    | 'yaml-closing'
    | 'yaml-alias'
    | 'yaml-no-aliases'
    | 'yaml-file'
    | 'yaml-backslash'
    | 'yaml-plain-backslash'
    | 'yaml-mark'
    | 'yaml-no-marks'
    | 'yaml-documents'
    | 'yaml-one-document'
    | 'yaml-out-of-place';
}

/** What would probably repair a lesson. */
type RepairFact =
  | (Fact & { readonly fact: 'write-word'; readonly word: string })
  | (Fact & {
      readonly fact:
        | 'add-to-vocabulary'
        | 'section-of-each'
        | 'exchange-start-and-goal'
        | 'later-version'
        | 'import-score'
        | 'sticking-or-limb'
        | 'quote-text'
        | 'quote-asterisk';
    });

/** What a field of a lesson should hold. */
export type ExpectedFact = ValueFact | FieldFact | RangeFact | LevelFact | LengthFact | BoundFact | WordFact;

/** What is found in a lesson file, expected of it, or likely to repair it. */
export type LessonFact =
  | ValueFact
  | WordFact
  | PatternFact
  | ExpectedFact
  | ExerciseFaultFact
  | FormFaultFact
  | LimbConflictFact
  | ShutFootFact
  | YamlFact
  | RepairFact;
