/** Reading phrase forms of a lesson. */
import { strikeOf } from '../kit/strike.ts';
import { isVoice, VOICES, type Voice } from '../kit/voice.ts';
import { defaultEndingCell } from '../lesson/defaults.ts';
import type { Ending, Form, FormSection } from '../lesson/lesson.ts';
import { didYouMean, valueFact } from '../lesson/value-fact.ts';
import { type Cell, cell, findCellFault, isStruck } from '../rhythm/cell.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import { nearest } from './nearest.ts';
import type { RawLesson } from './schema.ts';

type RawForm = NonNullable<NonNullable<RawLesson['forms']>[string]>;
type RawSection = NonNullable<RawForm['sections'][number]>;
type RawEnding = NonNullable<RawSection['ending']>;

/** What forms need to know of the rest of the lesson. */
export interface FormContext {
  /** Beats in a bar. */
  readonly beats: number;
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

function readCell(text: string, voices: readonly Voice[], path: FieldPath, report: Report): Cell | null {
  const fault = findCellFault(text);
  const playable =
    !fault && voices.every((voice) => cell(text).marks.every((m) => !isStruck(m) || strikeOf(voice, m)));
  if (!fault && playable && cell(text).marks.some(isStruck)) return cell(text);
  report({
    code: 'ending-cell',
    path,
    offset: fault?.offset ?? 0,
    found: valueFact(text),
    expected: { fact: 'playable-ending-cell' },
  });
  return null;
}

function readEnding(raw: RawEnding, path: FieldPath, context: FormContext, report: Report): Ending | null {
  const given: Exclude<RawEnding, string> = typeof raw === 'string' ? { voices: raw } : raw;
  const inside = (key: string) => (typeof raw === 'string' ? path : [...path, key]);
  const voices = readVoices(given.voices, inside('voices'), report);
  const beat = given.beat ?? context.beats;
  if (beat > context.beats) {
    const expected = { fact: 'beat-up-to', most: context.beats } as const;
    report({ code: 'no-such-beat', path: inside('beat'), found: { fact: 'beat-found', beat }, expected });
    return null;
  }
  const struck =
    given.cell === undefined
      ? defaultEndingCell(context.slotsOf(beat))
      : readCell(given.cell, voices, inside('cell'), report);
  return struck && voices.length > 0 ? { beat, cell: struck, voices } : null;
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
  if (raw.ending === undefined) return { play, bars, ending: null };
  const ending = readEnding(raw.ending, [...path, 'ending'], context, report);
  return ending && { play, bars, ending };
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
