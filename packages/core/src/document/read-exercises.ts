/** Reading the vocabulary and the exercises of a lesson. */
import { isVoice, type Voice } from '../kit/voice.ts';
import { formNamed } from '../lesson/default-form.ts';
import { EXAMPLE_TIMES } from '../lesson/example.ts';
import type { Expression } from '../lesson/expression.ts';
import type { Hand, Hands } from '../lesson/hand.ts';
import { withHands } from '../lesson/hands.ts';
import { patternsName } from '../lesson/identity.ts';
import type { Example, Exercise, ExercisePart, Form, Origin, VocabularyCell } from '../lesson/lesson.ts';
import { didYouMean, quoted } from '../lesson/value-fact.ts';
import { cell, findLoneCellFault, isHeld, LONE_MARKS, rhythmKey, struckSlots } from '../rhythm/cell.ts';
import { CELL_NAMES } from '../rhythm/cell-names.data.ts';
import type { Meter } from '../rhythm/meter.ts';
import { formatPattern } from '../rhythm/pattern.ts';
import { writableSlots } from '../rhythm/slot-value.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import { nearest } from './nearest.ts';
import { readExpression } from './read-expression.ts';
import { readExerciseHow } from './read-how.ts';
import { type CheckMedium, readMedia } from './read-media.ts';
import { readPattern } from './read-pattern.ts';
import { readRepetition } from './read-repeats.ts';
import type { RawLesson } from './schema.ts';

type RawCell = NonNullable<NonNullable<RawLesson['vocabulary']>[number]>;
type RawExercise = Exclude<NonNullable<NonNullable<RawLesson['exercises']>[number]>, string>;

/** A cell by its marks or its name; `slots` is how many a beat may have. */
function readCell(
  raw: RawCell,
  slots: readonly number[],
  path: FieldPath,
  report: Report,
): VocabularyCell | null {
  const text = typeof raw === 'string' ? raw : raw.cell;
  const name = typeof raw === 'string' ? null : (raw.name ?? null);
  const named = CELL_NAMES[text.toLowerCase()];
  const marks = named ?? text;
  if (findLoneCellFault(marks) === null && slots.includes(marks.length)) {
    return { cell: cell(marks), name: named ? (name ?? text) : name };
  }
  const near = nearest(text, Object.keys(CELL_NAMES));
  report({
    code: 'cell',
    path: typeof raw === 'string' ? path : [...path, 'cell'],
    offset: findLoneCellFault(text)?.offset ?? 0,
    found: quoted(text),
    expected: { fact: 'marks-or-cell-name', slots: slots.map(String), marks: [...LONE_MARKS].join(' ') },
    repair: didYouMean(near),
  });
  return null;
}

/** Cells in order, which every beat of the meter can have; a cell given twice is reported as a warning and kept once. */
export function readVocabulary(
  raw: RawLesson['vocabulary'],
  meter: Meter | null,
  report: Report,
): readonly VocabularyCell[] {
  const slots = writableSlots(meter?.beats ?? []);
  const seen = new Map<string, number>();
  return (raw ?? []).flatMap((each, index) => {
    const read = each === undefined ? null : readCell(each, slots, ['vocabulary', index], report);
    if (!read) return [];
    const before = seen.get(read.cell.text);
    if (before === undefined) {
      seen.set(read.cell.text, index);
      return [read];
    }
    report({
      code: 'same-cell',
      severity: 'warning',
      path: ['vocabulary', index],
      found: { fact: 'text-again', text: read.cell.text },
      expected: { fact: 'each-cell-once', place: before + 1 },
    });
    return [];
  });
}

function readParts(
  raw: RawExercise,
  comping: Voice,
  meter: Meter | null,
  path: FieldPath,
  report: Report,
): readonly ExercisePart[] | null {
  const texts = typeof raw.pattern === 'string' ? { [comping]: raw.pattern } : raw.pattern;
  const written = Object.entries(texts).filter(([, text]) => text !== undefined) as [string, string][];
  if (written.length === 0) {
    report({
      code: 'missing',
      path,
      found: { fact: 'empty-map' },
      expected: { fact: 'patterns-by-playing-voice' },
    });
    return null;
  }
  const parts = written.flatMap(([voice, text]): ExercisePart[] => {
    if (!isVoice(voice)) return [];
    const at = typeof raw.pattern === 'string' ? path : [...path, voice];
    const pattern = readPattern(text, voice, meter, at, report);
    return pattern ? [{ voice, pattern }] : [];
  });
  if (parts.length < written.length) return null;
  const first = (part: ExercisePart) => (part.voice === comping ? 0 : 1);
  return sameLength(parts, path, report) ? parts.toSorted((a, b) => first(a) - first(b)) : null;
}

function sameLength(parts: readonly ExercisePart[], path: FieldPath, report: Report): boolean {
  const lengths = [...new Set(parts.map((part) => part.pattern.bars.length))];
  if (lengths.length === 1) return true;
  report({
    code: 'bars-differ',
    path,
    found: { fact: 'voices-of-bars', bars: lengths.map(String) },
    expected: { fact: 'same-bars' },
  });
  return false;
}

function readSticking(
  text: string | undefined,
  part: ExercisePart,
  path: FieldPath,
  report: Report,
): Hands | null {
  if (text === undefined) return null;
  const wrong = /[^RLB\s|]/.exec(text);
  const hands = [...text.matchAll(/[RLB]/g)].map((match) => match[0] as Hand);
  const strokes = part.pattern.bars.flat().reduce((sum, each) => sum + struckSlots(each).length, 0);
  if (!wrong && hands.length === strokes) return hands;
  report({
    code: 'sticking',
    path,
    offset: wrong?.index ?? 0,
    found: wrong ? quoted(wrong[0]) : { fact: 'hands-found', hands: hands.length },
    expected: wrong ? { fact: 'a-hand-each' } : { fact: 'hands-wanted', hands: strokes },
    repair: wrong && /[rlb]/.test(wrong[0]) ? { fact: 'write-mark', mark: wrong[0].toUpperCase() } : null,
  });
  return null;
}

/** The parts with their hands; a text is of the first of them. */
function readHands(
  raw: RawExercise['sticking'],
  parts: readonly ExercisePart[],
  path: FieldPath,
  report: Report,
): Pick<Exercise, 'parts' | 'sticking'> {
  const first = parts[0] as ExercisePart;
  if (raw === undefined || typeof raw === 'string') {
    return { parts, sticking: readSticking(raw, first, path, report) };
  }
  const plays = parts.map(({ voice }) => voice);
  for (const voice of Object.keys(raw)) {
    if (raw[voice as Voice] === undefined || plays.includes(voice as Voice)) continue;
    const expected = { fact: 'one-of', words: plays } as const;
    report({ code: 'sticking', path: [...path, voice], onKey: true, found: quoted(voice), expected });
  }
  const hands = parts.map((part) => readSticking(raw[part.voice], part, [...path, part.voice], report));
  return {
    parts: parts.map((part, index) => withHands(part, index === 0 ? null : (hands[index] ?? null))),
    sticking: hands[0] ?? null,
  };
}

/** How an exercise is shown, or null where it is not. */
function readExample(
  raw: RawExercise['example'],
  forms: readonly Form[],
  path: FieldPath,
  report: Report,
): Example | null {
  if (raw === undefined || raw === false) return null;
  const { times = EXAMPLE_TIMES.usual, form = null } =
    typeof raw === 'object' ? raw : { times: raw === true ? EXAMPLE_TIMES.usual : raw };
  if (form === null || formNamed({ forms }, form)) return { times, form };
  const names = forms.map(({ name }) => name);
  report({
    code: 'example-form',
    path: [...path, 'form'],
    found: quoted(form),
    expected: { fact: 'one-of', words: names },
    repair: didYouMean(nearest(form, names)),
  });
  return null;
}

/** What a copy is of: a lesson, and the exercise there that has its patterns unless another is named. */
function readOrigin(text: string, patterns: string, path: FieldPath, report: Report): Origin | null {
  const [lesson = '', ...rest] = text.split('/');
  const exercise = text.includes('/') ? rest.join('/').trim() : patterns;
  if (lesson.trim() !== '' && exercise !== '') return { lesson: lesson.trim(), exercise };
  report({ code: 'origin', path, found: quoted(text), expected: { fact: 'an-origin' } });
  return null;
}

/** The lasting name of an exercise and what it is a copy of, as far as they are written. */
function readNames(given: RawExercise, patterns: string, path: FieldPath, report: Report) {
  const from = given.from === undefined ? null : readOrigin(given.from, patterns, [...path, 'from'], report);
  return { ...(given.id === undefined ? {} : { id: given.id }), ...(from ? { from } : {}) };
}

/** Whether a beat belongs to an exercise's fill, which has its own cells; bars and beats from 0. */
function isInFill({ fill }: Expression, bar: number, beat: number): boolean {
  return fill !== undefined && (bar > fill.bar || (bar === fill.bar && beat >= fill.beat));
}

/** Warns of cells that the vocabulary does not have, once for each; a fill is not made of it. */
function createVocabularyCheck(vocabulary: readonly VocabularyCell[], report: Report) {
  const known = new Set(vocabulary.map((each) => rhythmKey(each.cell)));
  return (part: ExercisePart | undefined, said: Expression, path: FieldPath) => {
    if (vocabulary.length === 0 || !part) return;
    const own = part.pattern.bars.flatMap((bar, at) => bar.filter((_, beat) => !isInFill(said, at, beat)));
    // What is held stands in no vocabulary: it goes on from one beat into the next.
    const foreign = own.find((each) => !isHeld(each) && !known.has(rhythmKey(each)));
    if (!foreign) return;
    known.add(rhythmKey(foreign));
    report({
      code: 'not-in-vocabulary',
      severity: 'warning',
      path,
      offset: formatPattern(part.pattern).indexOf(foreign.text),
      found: { fact: 'cell-found', text: foreign.text },
      expected: { fact: 'cell-of-vocabulary', cells: vocabulary.map((each) => each.cell.text).join(' ') },
      repair: { fact: 'add-to-vocabulary' },
    });
  };
}

/** What exercises need to know of the rest of the lesson. */
export interface ExerciseContext {
  readonly comping: Voice;
  readonly meter: Meter | null;
  readonly vocabulary: readonly VocabularyCell[];
  readonly forms: readonly Form[];
  /** Number of the first exercise. */
  readonly first: number;
  readonly checkMedium: CheckMedium;
}

/** Exercises in order, numbered from `first` on; one with a fault is left out but keeps its number. */
export function readExercises(
  raw: RawLesson['exercises'],
  { comping, meter, vocabulary, forms, first: from, checkMedium }: ExerciseContext,
  report: Report,
): readonly Exercise[] {
  const seen = new Map<string, number>();
  const checkVocabulary = createVocabularyCheck(vocabulary, report);
  return (raw ?? []).flatMap((each, index): Exercise[] => {
    if (each === undefined) return [];
    const given: RawExercise = typeof each === 'string' ? { pattern: each } : each;
    const path: FieldPath = ['exercises', index];
    const inside = typeof each === 'string' ? path : [...path, 'pattern'];
    const played = readParts(given, comping, meter, inside, report);
    const first = played?.[0];
    if (!played || !first) return [];
    const { parts, sticking } = readHands(given.sticking, played, [...path, 'sticking'], report);
    const length = { bars: first.pattern.bars.length, beats: first.pattern.bars[0]?.length ?? 1 };
    const said = {
      ...readRepetition(given, parts, path, report),
      ...readExpression(given, length, path, report),
    };
    checkVocabulary(
      first.voice === comping ? first : undefined,
      said,
      played.length === 1 ? inside : [...inside, comping],
    );
    const key = patternsName({ parts, sticking, ...said });
    const before = seen.get(key);
    if (before !== undefined) {
      const found = { fact: 'same-pattern-again' } as const;
      const expected = { fact: 'each-pattern-once', exercise: before } as const;
      report({ code: 'same-exercise', severity: 'warning', path, found, expected });
    }
    const number = from + index;
    seen.set(key, before ?? number);
    const { name = null, notes = null } = given;
    const plays = parts.map((part) => part.voice);
    const how = readExerciseHow(given.how, plays, [...path, 'how'], report);
    const keep = given.keep === true ? { keep: true as const } : {};
    const example = readExample(given.example, forms, [...path, 'example'], report);
    return [
      {
        number,
        name,
        parts,
        sticking,
        notes,
        ...readMedia(given.media, [...path, 'media'], checkMedium),
        ...(how && Object.keys(how).length > 0 ? { how } : {}),
        ...(example ? { example } : {}),
        ...keep,
        ...said,
        ...readNames(given, key, path, report),
      },
    ];
  });
}
