/** Reading what an exercise says beside its notes: dynamics, texts, fills and rests. */
import { DYNAMIC_MARKS, type DynamicMark } from '../kit/dynamics.ts';
import { LIMBS, VOICES } from '../kit/voice.ts';
import type { DynamicSign, Expression, Fill, Silent } from '../lesson/expression.ts';
import { didYouMean, quoted } from '../lesson/value-fact.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import { nearest } from './nearest.ts';
import type { RawLesson } from './schema.ts';

type RawExercise = Exclude<NonNullable<NonNullable<RawLesson['exercises']>[number]>, string>;

/** How long the exercise is. */
export interface Length {
  /** How many. */
  readonly bars: number;
  /** Beats in a bar. */
  readonly beats: number;
}

/** What a hairpin is written with. */
const HAIRPINS = { '<': 'louder', '>': 'softer', '!': 'end' } as const;

const SIGN = new RegExp(`^(${DYNAMIC_MARKS.toReversed().join('|')})?([<>!])?$`);

const SILENT: readonly Silent[] = [...LIMBS, ...VOICES];

interface Piece {
  readonly text: string;
  readonly offset: number;
}

/** Pieces of a text between bar lines, with the offset of each. */
function barsOf(text: string): readonly Piece[] {
  let from = 0;
  return text.split('|').map((bar) => {
    const offset = from;
    from += bar.length + 1;
    return { text: bar, offset };
  });
}

function tooManyBars(text: string, { bars }: Length, path: FieldPath, report: Report): boolean {
  const last = barsOf(text)[bars];
  if (!last) return false;
  const expected = { fact: 'texts-for-bars', bars } as const;
  report({ code: 'bars-differ', path, offset: last.offset, found: quoted(text), expected });
  return true;
}

function readSign(piece: Piece, bar: number, beat: number, path: FieldPath, report: Report) {
  if (piece.text === '.') return null;
  const match = SIGN.exec(piece.text);
  if (match) {
    const mark = (match[1] as DynamicMark | undefined) ?? null;
    const hairpin = match[2] ? HAIRPINS[match[2] as keyof typeof HAIRPINS] : null;
    return { bar, beat, mark, hairpin };
  }
  const expected = { fact: 'dynamic-signs' } as const;
  report({ code: 'dynamics', path, offset: piece.offset, found: quoted(piece.text), expected });
  return null;
}

/** Reads dynamics: a sign for each beat, bars by `|`; beats and bars at the end may be left out. */
function readDynamics(text: string, length: Length, path: FieldPath, report: Report): readonly DynamicSign[] {
  if (tooManyBars(text, length, path, report)) return [];
  return barsOf(text).flatMap((bar, index) => {
    const pieces = [...bar.text.matchAll(/\S+/g)].map((match) => {
      return { text: match[0], offset: bar.offset + match.index };
    });
    const surplus = pieces[length.beats];
    if (surplus) {
      const expected = { fact: 'beat-up-to', most: length.beats } as const;
      report({ code: 'no-such-beat', path, offset: surplus.offset, found: quoted(surplus.text), expected });
    }
    return pieces
      .slice(0, length.beats)
      .flatMap((piece, beat) => readSign(piece, index, beat, path, report) ?? []);
  });
}

/** Reads a text for each bar, bars by `|`; null where none of them says anything. */
function readTexts(text: string | undefined, length: Length, path: FieldPath, report: Report) {
  if (text === undefined || tooManyBars(text, length, path, report)) return null;
  const texts = barsOf(text).map((bar) => bar.text.trim() || null);
  const last = texts.findLastIndex((each) => each !== null);
  return last < 0 ? null : texts.slice(0, last + 1);
}

/** Reads limbs and voices joined by `+`. */
function readSilent(text: string, path: FieldPath, report: Report): readonly Silent[] {
  return text.split('+').flatMap((each) => {
    const name = each.trim();
    const found = SILENT.find((known) => known === name);
    if (found) return [found];
    const repair = didYouMean(nearest(name, SILENT));
    report({
      code: 'unknown-limb',
      path,
      offset: Math.max(0, text.indexOf(name)),
      found: quoted(name),
      expected: { fact: 'one-of', words: SILENT },
      repair,
    });
    return [];
  });
}

function readFill(raw: RawExercise['fill'], length: Length, path: FieldPath, report: Report): Fill | null {
  if (raw === undefined) return null;
  const given = typeof raw === 'number' ? { beat: raw } : raw;
  const { bar = length.bars, beat = 1 } = given;
  const inside = (key: string) => (typeof raw === 'number' ? path : [...path, key]);
  if (beat > length.beats) {
    const expected = { fact: 'beat-up-to', most: length.beats } as const;
    report({ code: 'no-such-beat', path: inside('beat'), found: { fact: 'beat-found', beat }, expected });
    return null;
  }
  if (bar > length.bars) {
    const expected = { fact: 'bar-up-to', most: length.bars } as const;
    report({ code: 'no-such-bar', path: inside('bar'), found: { fact: 'bar-found', bar }, expected });
    return null;
  }
  const silences =
    given.silences === undefined ? null : readSilent(given.silences, inside('silences'), report);
  return { bar: bar - 1, beat: beat - 1, silences };
}

/** Everything that an exercise says beside its notes. */
export function readExpression(
  raw: RawExercise,
  length: Length,
  path: FieldPath,
  report: Report,
): Expression {
  const at = (key: string) => [...path, key];
  const dynamics =
    raw.dynamics === undefined ? [] : readDynamics(raw.dynamics, length, at('dynamics'), report);
  const above = readTexts(raw.above, length, at('above'), report);
  const below = readTexts(raw.below, length, at('below'), report);
  const fill = readFill(raw.fill, length, at('fill'), report);
  const rests = raw.rests === undefined ? [] : readSilent(raw.rests, at('rests'), report);
  return {
    ...(dynamics.length > 0 ? { dynamics } : {}),
    ...(above ? { above } : {}),
    ...(below ? { below } : {}),
    ...(fill ? { fill } : {}),
    ...(rests.length > 0 ? { rests } : {}),
  };
}
