/**
 * Strokes in bars: what each voice has in each bar, and what of it is groove.
 *
 * Conventions: bars count from 0; a bar of a voice is a list of cells, one a beat. What repeats in every bar is groove;
 * the voice that changes from bar to bar is the comping voice. Where all repeat, the comping voice is the snare's hand,
 * unless it has the back beat alone: then it is the bass drum.
 */
import { type Cell, cell, type ExercisePart, type Mark, struckSlots, type Voice } from '@shedbook/core';

/** In so many of the bars a voice must have the same to be groove. */
const SHARE = 0.6;
const HANDS: readonly Voice[] = ['snare', 'sidestick', 'rimshot'];

type Bar = readonly Cell[];

/** A bar by its places alone: two bars that are struck at the same places are the same. */
export function keyOf(bar: Bar): string {
  return bar
    .map((cell) =>
      struckSlots(cell)
        .map((slot) => (slot * 12) / cell.marks.length)
        .join(','),
    )
    .join(' ');
}

/** The bar that others with strokes at the same places are, each stroke as it is struck most often. */
export function mostly(bars: readonly Bar[]): Bar {
  return bars[0]!.map((first, beat) =>
    cell(
      first.marks
        .map((mark, slot) => {
          const counts = new Map<Mark, number>();
          for (const bar of bars) {
            const { marks } = bar[beat]!;
            const same = marks[(slot * marks.length) / first.marks.length] ?? mark;
            counts.set(same, (counts.get(same) ?? 0) + 1);
          }
          return [...counts].reduce((most, one) => (one[1] > most[1] ? one : most))[0];
        })
        .join(''),
    ),
  );
}

/** What a voice has most often. */
interface Usual {
  readonly voice: Voice;
  readonly bars: readonly Bar[];
  readonly bar: Bar;
  readonly key: string;
  /** Share of all bars that have it. */
  readonly share: number;
}

function usualOf({ voice, pattern: { bars } }: ExercisePart): Usual {
  const keys = bars.map(keyOf);
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  const [key = '', count = 0] = [...counts].reduce((most, one) => (one[1] > most[1] ? one : most));
  return {
    voice,
    bars,
    key,
    bar: mostly(bars.filter((_, i) => keys[i] === key)),
    share: count / bars.length,
  };
}

function isSilent({ key }: Usual): boolean {
  return key.replaceAll(' ', '') === '';
}

/** Whether a voice has the back beat and nothing else. */
function isBackBeat({ bar }: Usual): boolean {
  return bar.every((cell, beat) => {
    const struck = struckSlots(cell);
    return beat % 2 === 1 ? struck.length > 0 && struck.every((slot) => slot === 0) : struck.length === 0;
  });
}

/** The voice that is comping where every voice repeats, or null where it is all groove. */
function compingOf(repeating: readonly Usual[]): Voice | null {
  const hands = repeating.filter(({ voice }) => HANDS.includes(voice));
  const speaking = hands.find((one) => !isBackBeat(one)) ?? repeating.find(({ voice }) => voice === 'bass');
  return (speaking ?? hands[0])?.voice ?? null;
}

/** What was told apart. */
export interface Parted {
  readonly groove: readonly Usual[];
  /** The voices of the exercises, the comping voice first. */
  readonly comping: readonly Voice[];
}

/** The groove, and the voices that are none of it. */
export function partGroove(parts: readonly ExercisePart[]): Parted {
  const usual = parts.map(usualOf);
  const repeating = usual.filter((one) => one.share >= SHARE && !isSilent(one));
  const changing = usual.filter((one) => !repeating.includes(one));
  const hands = changing.filter(({ voice }) => HANDS.includes(voice));
  const others = changing.filter(({ voice }) => !HANDS.includes(voice));
  const changingVoices = [...hands, ...others].map(({ voice }) => voice);
  const speaks = changing.some((one) => one.voice === 'bass' || HANDS.includes(one.voice));
  const all = speaks ? null : compingOf(repeating);
  const comping = all === null ? changingVoices : [all, ...changingVoices];
  return { groove: repeating.filter(({ voice }) => !comping.includes(voice)), comping };
}
