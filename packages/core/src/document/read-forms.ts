/** Reading phrase forms of a lesson. */
import { strikeOf } from '../kit/strike.ts';
import { isVoice, VOICES, type Voice } from '../kit/voice.ts';
import { defaultEndingCell } from '../lesson/defaults.ts';
import type { Ending, Form, FormSection } from '../lesson/lesson.ts';
import { didYouMean, valueFact } from '../lesson/value-fact.ts';
import { type Cell, cell, findLoneCellFault, isStruck } from '../rhythm/cell.ts';
import type { Fraction } from '../rhythm/fraction.ts';
import { writableSlots } from '../rhythm/slot-value.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import { nearest } from './nearest.ts';
import type { RawLesson } from './schema.ts';

type RawForm = NonNullable<NonNullable<RawLesson['forms']>[string]>;
type RawSection = NonNullable<RawForm['sections'][number]>;
type RawEnding = NonNullable<RawSection['ending']>;

/** What forms need to know of the rest of the lesson. */
export interface FormContext {
  /** Lengths of the beats of a bar, in whole notes. */
  readonly beats: readonly Fraction[];
  /** Slots that the lesson divides a beat (from 1) in. */
  readonly slotsOf: (beat: number) => number;
}

/** Reads voices joined by `+`. */
function readVoices(text: string, path: FieldPath, report: Report): readonly Voice[] {
  const names = [...text.matchAll(/[^+]+/g)].map((match) => ({
    name: match[0].trim(),
    offset: match.index + match[0].length - match[0].trimStart().length,
  }));
  return names.flatMap(({ name, offset }) => {
    if (isVoice(name)) return [name];
    const near = nearest(name, VOICES);
    report({
      code: 'unknown-voice',
      path,
      offset,
      found: valueFact(name),
      expected: { fact: 'voices-joined', voices: VOICES },
      repair: didYouMean(near),
    });
    return [];
  });
}

/** A cell that all the voices can play in a beat of a length (in whole notes). */
function readCell(
  text: string,
  voices: readonly Voice[],
  length: Fraction,
  path: FieldPath,
  report: Report,
): Cell | null {
  const fault = findLoneCellFault(text);
  const slots = writableSlots([length]);
  const fits = slots.some((each) => each === text.length);
  const playable =
    !fault && voices.every((voice) => cell(text).marks.every((m) => !isStruck(m) || strikeOf(voice, m)));
  if (fits && playable && cell(text).marks.some(isStruck)) return cell(text);
  const isFine = !fault && !fits;
  report({
    code: 'ending-cell',
    path,
    offset: fault?.offset ?? 0,
    found: isFine ? { fact: 'slots-in-beat', slots: text.length, text } : valueFact(text),
    expected: isFine ? { fact: 'slots-a-beat', slots: slots.map(String) } : { fact: 'playable-ending-cell' },
  });
  return null;
}

function readEnding(raw: RawEnding, path: FieldPath, context: FormContext, report: Report): Ending | null {
  const given: Exclude<RawEnding, string> = typeof raw === 'string' ? { voices: raw } : raw;
  const inside = (key: string) => (typeof raw === 'string' ? path : [...path, key]);
  const voices = readVoices(given.voices, inside('voices'), report);
  const beat = given.beat ?? context.beats.length;
  const length = context.beats[beat - 1];
  if (!length) {
    const expected = { fact: 'beat-up-to', most: context.beats.length } as const;
    report({ code: 'no-such-beat', path: inside('beat'), found: { fact: 'beat-found', beat }, expected });
    return null;
  }
  const struck =
    given.cell === undefined
      ? defaultEndingCell(context.slotsOf(beat))
      : readCell(given.cell, voices, length, inside('cell'), report);
  return struck && voices.length > 0 ? { beat, cell: struck, voices } : null;
}

/** Beats that click, from 1, in order; null where nothing is said of it. */
function readClick(
  raw: RawSection['click'],
  path: FieldPath,
  { beats }: FormContext,
  report: Report,
): readonly number[] | null {
  if (raw === undefined) return null;
  if (raw === 'all') return beats.map((_, beat) => beat + 1);
  if (raw === 'none') return [];
  const asked = typeof raw === 'number' ? [raw] : [...new Set(raw)].toSorted((a, b) => a - b);
  const wrong = asked.find((beat) => beat > beats.length);
  if (wrong === undefined) return asked;
  const expected = { fact: 'beat-up-to', most: beats.length } as const;
  report({ code: 'no-such-beat', path, found: { fact: 'beat-found', beat: wrong }, expected });
  return null;
}

function readSection(
  raw: RawSection,
  path: FieldPath,
  context: FormContext,
  report: Report,
): FormSection | null {
  const plays = (['pattern', 'time', 'rest'] as const).filter((play) => raw[play] !== undefined);
  const [play] = plays;
  if (!play || plays.length > 1) {
    report({
      code: 'section',
      path,
      found: play ? { fact: 'section-plays', plays } : { fact: 'section-without-bars' },
      expected: { fact: 'one-section-key' },
      repair: play ? { fact: 'section-of-each' } : null,
    });
    return null;
  }
  const bars = raw[play] ?? 1;
  const click = readClick(raw.click, [...path, 'click'], context, report);
  const said = { play, bars, ...(click ? { click } : {}) };
  if (raw.ending === undefined) return { ...said, ending: null };
  const ending = readEnding(raw.ending, [...path, 'ending'], context, report);
  return ending && { ...said, ending };
}

/** Reads the lesson's own forms, in order; a form with a fault is left out. */
export function readForms(raw: RawLesson['forms'], context: FormContext, report: Report): readonly Form[] {
  return Object.entries(raw ?? {}).flatMap(([name, form]) => {
    if (!form) return [];
    const sections = form.sections.map((section, index) =>
      section ? readSection(section, ['forms', name, 'sections', index], context, report) : null,
    );
    const whole = sections.filter((section) => section !== null);
    if (whole.length < sections.length) return [];
    return [{ name, sections: whole, repeat: form.repeat ?? 1, countInBars: form.countIn ?? 1 }];
  });
}
