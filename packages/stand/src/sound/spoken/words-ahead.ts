/**
 * Which words of a count fall in the next moments: one on every click, the number on a beat, a syllable inside it.
 *
 * Conventions: seconds of the audio context; bars and passes as the sequencer counts them.
 */
import type { ProgramStroke } from '@shedbook/playing';
import { type CountWord, clicksIn, countWordOf } from '@shedbook/sound';
import type { Heard } from '../player.ts';
import type { LiveSettings } from '../sequencer.ts';

/** A word and when it falls. */
export interface CountedWord {
  /** Which click it falls on, the same whenever it is asked for. */
  readonly click: string;
  readonly word: CountWord;
  readonly atSeconds: number;
}

/** A click of a pass, and its place in the form as that pass is heard. */
interface PassedClick {
  readonly stroke: ProgramStroke;
  readonly pass: number;
  readonly place: number;
}

/** The clicks of the pass that is heard, its count-in and those that its form asks for with them, and of the one after it. */
function clicksOf(
  { program, pass, fromPlace }: Heard,
  isOn: (stroke: ProgramStroke, pass: number) => boolean,
) {
  const countIn = program.strokes
    .filter(({ role }) => role === 'count-in')
    .map((stroke): PassedClick => ({ stroke, pass, place: stroke.place + fromPlace }));
  const ofForm = program.strokes.filter(({ role }) => role === 'click');
  const on = (passed: number) => [...program.clicks.filter((stroke) => isOn(stroke, passed)), ...ofForm];
  const here = on(pass)
    .filter(({ place }) => place >= fromPlace)
    .map((stroke): PassedClick => ({ stroke, pass, place: stroke.place }));
  const next = on(pass + 1).map(
    (stroke): PassedClick => ({ stroke, pass: pass + 1, place: program.end + stroke.place }),
  );
  return [...countIn, ...here, ...next];
}

/** The words that fall from one moment up to another, in order; two passes ahead at most. */
export function wordsAhead(
  heard: Heard,
  { click, gap }: Pick<LiveSettings, 'click' | 'gap'>,
  fromSeconds: number,
  untilSeconds: number,
): readonly CountedWord[] {
  const bars = heard.program.bars.length;
  const isOn = ({ written }: ProgramStroke, pass: number) =>
    click && clicksIn(pass * bars + written.bar, gap);
  return clicksOf(heard, isOn).flatMap(({ stroke, pass, place }): CountedWord[] => {
    const word = countWordOf(stroke);
    const atSeconds = heard.secondsOf(place);
    if (word === null || atSeconds < fromSeconds || atSeconds >= untilSeconds) return [];
    const { bar, beat, slot } = stroke.written;
    return [{ click: `${pass} ${bar} ${beat} ${slot}`, word, atSeconds }];
  });
}
