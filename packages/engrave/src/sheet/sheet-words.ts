/**
 * The words that a sheet prints and that its pages are read out with. Engraving knows no language: whoever asks for a
 * sheet hands them over.
 */
import type { Beater, Form, HowWord, MediumKind, Syllable, Voice, WrittenArticulation } from '@shedbook/core';
import type { Rhythm } from './rhythm.ts';

/** Ways of striking that have a name. */
export type Manner = Exclude<WrittenArticulation, 'normal'> | 'accent' | 'ghost';

/** Words in the reader's language. */
export interface SheetWords {
  /** The language, as BCP 47 names it. */
  readonly language: string;
  readonly voices: Readonly<Record<Voice, string>>;
  /** How a limb plays. */
  readonly how: Readonly<Record<HowWord, string>>;
  /** What the key calls it. */
  readonly howKey: Readonly<Record<HowWord, string>>;
  /** What is counted inside a beat. */
  readonly syllables: Readonly<Record<Syllable, string>>;
  /** The heading over the groove. */
  readonly groove: string;
  /** The heading over the stages in which it is built up. */
  readonly buildUp: string;
  /** The section that a student must have first. */
  readonly before: (values: { readonly heading: string }) => string;
  /** A file of the teacher's own that is not printed, by its kind. */
  readonly media: Readonly<Record<MediumKind, (values: { readonly file: string }) => string>>;
  /** What a code beside it is for. */
  readonly scan: Readonly<Record<'sound' | 'video', string>>;
  /** A bass drum that one hardly hears. */
  readonly feathered: string;
  /** A voice of the groove, and how loud it is. */
  readonly part: (values: { readonly voice: string; readonly loudness: string }) => string;
  /** A part, and how it is played. */
  readonly partPlayed: (values: { readonly part: string; readonly how: string }) => string;
  /** What the exercise plays, and how loud it is. */
  readonly exercisePart: (values: { readonly loudness: string }) => string;
  /** A form's name; of one that a teacher has made up, the name that it has. */
  readonly formName: (name: string) => string;
  /** A form in a sentence. */
  readonly form: (form: Form) => string;
  /** The tempo to arrive at, in the notes that the first one counts. */
  readonly goal: (values: { readonly bpm: number }) => string;
  readonly straight: string;
  readonly swing: string;
  readonly swingByTempo: string;
  /** A swing of a ratio long : short. */
  readonly swingOf: (values: {
    /** Long : short. */
    readonly ratio: number;
  }) => string;
  /** The same on sixteenths. */
  readonly swingOfSixteenths: (values: {
    /** Long : short. */
    readonly ratio: number;
  }) => string;
  readonly leftHanded: string;
  /** What the hands hold. */
  readonly playedWith: Readonly<Record<Beater, string>>;
  /** What the key calls a way of striking. */
  readonly key: Readonly<Record<Manner, string>>;
  /** What the key calls the sign of an example. */
  readonly example: string;
  /** Read out: an exercise that is shown first. */
  readonly exampleSaid: string;
  /** Where the groove stops for a fill. */
  readonly fill: string;
  /** The same, where only some voices stop. */
  readonly fillWithout: (values: { readonly voices: string }) => string;
  /** Voices of the groove that are silent under an exercise. */
  readonly without: (values: { readonly voices: string }) => string;
  /** The heading over a book's table of contents. */
  readonly contents: string;
  /** The heading over a book's key. */
  readonly keyToNotation: string;
  /** The heading over a book's index. */
  readonly index: string;
  /** What the index calls rhythms. */
  readonly rhythms: Readonly<Record<Rhythm, string>>;
  /** Over bars that are played more than twice. */
  readonly playTimes: (values: {
    /** How often. */
    readonly times: number;
  }) => string;
  /** Read out: bars that are repeated. */
  readonly repeated: (values: {
    readonly bars: string;
    /** How often they are played. */
    readonly times: number;
  }) => string;
  /** Read out: what ends some of the times. */
  readonly ending: (values: { readonly times: string; readonly bars: string }) => string;
  /** In the key: the voice that the one line of the exercises stands for. */
  readonly inExercises: (values: { readonly voice: string }) => string;
  /** In the key: a voice of which nothing is heard, since a hand that is printed with it keeps it shut. */
  readonly notHeard: (values: { readonly voice: string }) => string;
  /** In the key: the letters of the hands. */
  readonly hands: string;
  /** How a stroke is called when a pattern is read out. */
  readonly manner: Readonly<Record<Manner, string>>;
  /** In the key: what a tie says. */
  readonly tie: string;
  /** Read out: what goes on and is not struck again; `to` says how far. */
  readonly held: (values: { readonly to: string }) => string;
  /** The same of what goes on from the bar before. */
  readonly heldInto: (values: { readonly to: string }) => string;
  /** How far it is held: to a count, to the bar line, or over it. */
  readonly heldTo: (values: { readonly place: string }) => string;
  readonly heldToBarLine: string;
  readonly heldOver: string;
  readonly nothingPlayed: string;
  /** What is read out of one bar of several. */
  readonly bar: (values: {
    /** Number of the bar, from 1. */
    readonly bar: number;
    readonly text: string;
  }) => string;
  readonly exercise: (values: {
    /** Number of the exercise. */
    readonly number: number;
  }) => string;
  readonly exerciseNamed: (values: {
    /** Number of the exercise. */
    readonly number: number;
    readonly name: string;
  }) => string;
  /** A line of an exercise that does not begin with its first bar. */
  readonly fromBar: (values: {
    readonly exercise: string;
    /** Number of the bar, from 1. */
    readonly bar: number;
  }) => string;
  /** What a page is called. */
  readonly page: (values: {
    readonly title: string;
    /** Number of the page, from 1. */
    readonly page: number;
    /** Number of pages. */
    readonly pages: number;
  }) => string;
}

/** What an exercise is called. */
export function exerciseTitle(
  words: SheetWords,
  { number, name }: { readonly number: number; readonly name: string | null },
): string {
  return name ? words.exerciseNamed({ number, name }) : words.exercise({ number });
}
