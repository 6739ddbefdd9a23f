/**
 * A grammar of phrases: which bars may follow which, so that several bars say one thing.
 *
 * Conventions: bars as cells by index into the vocabulary, one a beat; the motif of a bar is its first half, rounded
 * down. A bar ends open when its last beat is struck off the beat, and comes to rest when its last beat is silent, or,
 * where silence may not stand there, as nearly silent as can be. Every phrase ends in a breath: its last bar rests.
 * Source: call and answer, a a b a and sentence (an idea, the idea again, its motif alone in shorter units, a close) as
 * common practice has them; for the last see Schoenberg, Fundamentals of Musical Composition (1967), chapter 5, from
 * memory. How far a bar may stray is ours: b is a displaced by beats with at most one beat changed.
 */
import { type Cell, isStruck, type PhraseForm, struckSlots } from '@shedbook/core';
import { newBeats } from './memory.ts';
import { beatsApart, stepsFrom } from './theme.ts';

/** The cells of one bar. */
export type Bar = Uint16Array;

/** What a grammar is spoken in. */
export interface PhraseTongue {
  readonly cells: readonly Cell[];
  /** Beats in a bar. */
  readonly beats: number;
  /** Whether a cell may stand on a beat of any bar, from 0. */
  readonly allows: (beat: number, cell: number) => boolean;
  /** A few of a list. */
  readonly some: <T>(list: readonly T[], most: number) => readonly T[];
}

/** Numbers of bars that a form has, the shortest first. */
export const PHRASE_BARS: Readonly<Record<PhraseForm, readonly number[]>> = {
  'call-and-answer': [2, 4, 8],
  aaba: [4, 8],
  sentence: [4, 8],
};

/** Beats on which an answer differs from its call, at least. */
const ANSWERS_APART = 2;

/** Beats on which b differs from a, at least, where it stands. */
const CONTRAST = 2;

/** Strokes in a motif of several beats, at least: one is a place, two are a figure. */
const MOTIF_STROKES = 2;

/** Bars that are tried on each place of a phrase. */
const TRIED = 4;

function strokesIn(tongue: PhraseTongue, bar: ArrayLike<number>, beats: number): number {
  let sum = 0;
  for (let beat = 0; beat < beats; beat += 1)
    sum += struckSlots(tongue.cells[bar[beat] as number] as Cell).length;
  return sum;
}

function motifBeats({ beats }: PhraseTongue): number {
  return Math.max(1, Math.floor(beats / 2));
}

function endsOpen(tongue: PhraseTongue, bar: Bar): boolean {
  const last = tongue.cells[bar.at(-1) as number] as Cell;
  return struckSlots(last).some((slot) => slot > 0);
}

/** How far a cell is from silence: strokes, and far more for each one off the beat. */
function unrest(cell: Cell): number {
  return cell.marks.reduce((sum, mark, slot) => sum + (isStruck(mark) ? (slot > 0 ? 10 : 1) : 0), 0);
}

/** The most restful cells that may stand on a beat. */
function restful(tongue: PhraseTongue, beat: number): readonly number[] {
  const allowed = tongue.cells.flatMap((cell, index) =>
    tongue.allows(beat, index) ? [{ index, unrest: unrest(cell) }] : [],
  );
  const least = Math.min(...allowed.map((each) => each.unrest));
  return allowed.filter((each) => each.unrest === least).map((each) => each.index);
}

function rests(tongue: PhraseTongue, bar: Bar): boolean {
  return restful(tongue, tongue.beats - 1).includes(bar.at(-1) as number);
}

/** Every way to go on after a motif. */
function tails(tongue: PhraseTongue, motif: Bar): readonly Bar[] {
  let grown: readonly Bar[] = [motif];
  for (let beat = motif.length; beat < tongue.beats; beat += 1) {
    grown = grown.flatMap((start) =>
      tongue.cells.flatMap((_, cell) =>
        tongue.allows(beat, cell) ? [Uint16Array.from([...start, cell])] : [],
      ),
    );
  }
  return grown;
}

/** Answers to a call: the same motif, another way on, to rest. */
function answers(tongue: PhraseTongue, call: Bar): readonly Bar[] {
  const motif = call.slice(0, motifBeats(tongue));
  const apart = Math.min(ANSWERS_APART, tongue.beats - motif.length);
  return tails(tongue, motif).filter((bar) => rests(tongue, bar) && beatsApart(bar, call) >= apart);
}

/** What grows out of a bar: the bar displaced, with at most one beat changed. */
function grown(tongue: PhraseTongue, bar: Bar): readonly Bar[] {
  return stepsFrom(bar, tongue.cells.length).filter((other) => beatsApart(other, bar) > 0);
}

/** A bar with one beat after its motif changed. */
function turned(tongue: PhraseTongue, bar: Bar): readonly Bar[] {
  const from = motifBeats(tongue);
  return Array.from(bar.subarray(from)).flatMap((own, i) =>
    tongue.cells.flatMap((_, cell) => (cell === own ? [] : [bar.with(from + i, cell)])),
  );
}

/** The motif over and over, to the end of the bar. */
function fragments(tongue: PhraseTongue, bar: Bar): Bar {
  const motif = motifBeats(tongue);
  return bar.map((_, beat) => bar[beat % motif] as number);
}

/** The motif, and silence. */
function close(tongue: PhraseTongue, bar: Bar): Bar {
  const motif = motifBeats(tongue);
  return bar.map((own, beat) => (beat < motif ? own : (restful(tongue, beat)[0] ?? own)));
}

/** Whether the motif of a bar sounds; a motif of one beat does with one stroke. */
function sounds(tongue: PhraseTongue, bar: Bar): boolean {
  const motif = motifBeats(tongue);
  return strokesIn(tongue, bar, motif) >= Math.min(MOTIF_STROKES, motif);
}

type Spell = (tongue: PhraseTongue, first: Bar) => readonly (readonly Bar[])[];

function callAndAnswer(bars: number): Spell {
  return (tongue, first) => {
    const { some } = tongue;
    const open = (list: readonly Bar[]) => list.filter((bar) => endsOpen(tongue, bar));
    if (bars === 2) {
      return endsOpen(tongue, first) ? some(answers(tongue, first), TRIED).map((to) => [first, to]) : [];
    }
    return some(open(grown(tongue, first)), TRIED).flatMap((call) => {
      if (bars === 4) return some(answers(tongue, call), TRIED).map((to) => [first, call, first, to]);
      return some(open(turned(tongue, call)), TRIED).flatMap((again) =>
        some(answers(tongue, again), 1).map((to) => [first, call, first, again, first, call, first, to]),
      );
    });
  };
}

function contrasts(tongue: PhraseTongue, first: Bar): readonly Bar[] {
  return grown(tongue, first).filter((bar) => beatsApart(bar, first) >= Math.min(CONTRAST, first.length));
}

function aaba(bars: number): Spell {
  return (tongue, first) => {
    const { some } = tongue;
    if (bars === 4) {
      if (!rests(tongue, first)) return [];
      const others = contrasts(tongue, first).filter((bar) => endsOpen(tongue, bar));
      return some(others, TRIED).map((other) => [first, first, other, first]);
    }
    if (!endsOpen(tongue, first)) return [];
    return some(answers(tongue, first), TRIED).flatMap((answer) =>
      some(contrasts(tongue, first), TRIED).flatMap((other) =>
        some(
          turned(tongue, other).filter((bar) => endsOpen(tongue, bar)),
          1,
        ).map((last) => [first, answer, first, answer, other, last, first, answer]),
      ),
    );
  };
}

function sentence(bars: number): Spell {
  return (tongue, first) => {
    const { some } = tongue;
    const shorter = fragments(tongue, first);
    const last = close(tongue, first);
    if (beatsApart(first, shorter) === 0 || beatsApart(first, last) === 0) return [];
    if (bars === 4) return some(turned(tongue, first), TRIED).map((again) => [first, again, shorter, last]);
    return some(grown(tongue, first), TRIED).flatMap((second) =>
      some(turned(tongue, second), 1).map((again) => [
        first,
        second,
        first,
        again,
        shorter,
        fragments(tongue, second),
        first,
        last,
      ]),
    );
  };
}

const SPELLINGS: Readonly<Record<PhraseForm, (bars: number) => Spell>> = {
  'call-and-answer': callAndAnswer,
  aaba,
  sentence,
};

/** Phrases of a form that begin with one of some bars, each as the cells of all its bars. */
export function spellPhrases(
  tongue: PhraseTongue,
  form: PhraseForm,
  bars: number,
  firsts: readonly Bar[],
): readonly Uint16Array[] {
  const spell = SPELLINGS[form](bars);
  return firsts
    .filter((first) => sounds(tongue, first))
    .flatMap((first) => spell(tongue, first))
    .map((phrase) => Uint16Array.from(phrase.flatMap((bar) => [...bar])))
    .filter((phrase) => newBeats(phrase, tongue.beats) > 0);
}
