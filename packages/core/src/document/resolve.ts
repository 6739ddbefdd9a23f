/**
 * From a lesson as written to a lesson that can be computed with: texts read, defaults filled in, everything
 * that needs more than one field checked.
 */
import type { Voice } from '../kit/voice.ts';
import { DEFAULT_COMPOSE_SETTINGS } from '../lesson/compose-settings.ts';
import { formNamed } from '../lesson/default-form.ts';
import { builtInForms, DEFAULT_SHEET, fillTempo } from '../lesson/defaults.ts';
import type { GroovePart, Lesson, SheetSettings, Tempo, VocabularyCell } from '../lesson/lesson.ts';
import type { LookAtMedium } from '../lesson/media.ts';
import { firstNumbers } from '../lesson/numbering.ts';
import { sectionNamed } from '../lesson/section.ts';
import { didYouMean, quoted, valueFact } from '../lesson/value-fact.ts';
import { type Meter, meter, parseMeter } from '../rhythm/meter.ts';
import type { Report } from './fault.ts';
import type { FieldPath } from './field-path.ts';
import { checkGroove, inherit, reportIn } from './inherit.ts';
import { nameExercises } from './name-exercises.ts';
import { nearest } from './nearest.ts';
import { readExercises, readVocabulary } from './read-exercises.ts';
import { FEEL_NAMES, readFeel } from './read-feel.ts';
import { readForms } from './read-forms.ts';
import { readBalances, readGroove, readLayers, readLead, readLimbs } from './read-groove.ts';
import { readHow } from './read-how.ts';
import { checkMediaIn, createMediumCheck, readMedia } from './read-media.ts';
import { LESSON_VERSION, type RawLesson, type RawSection } from './schema.ts';

function resolveMeter(text: string | undefined, report: Report): Meter | null {
  if (text === undefined) return meter('4/4');
  const read = parseMeter(text);
  if (!read)
    report({ code: 'meter', path: ['meter'], found: valueFact(text), expected: { fact: 'a-meter' } });
  return read;
}

/** What a feel that does not read probably means: another word, a percentage, short : long. */
function meantFeel(text: string): string | null {
  if (/^(straight|none)$/i.test(text)) return 'even';
  if (/^(swing|shuffle|swung)$/i.test(text)) return 'triplet';
  const percent = /^(\d{2})\s*%$/.exec(text);
  const long = Number(percent?.[1]);
  if (percent && long >= 50 && long <= 80) return `${Number((long / (100 - long)).toFixed(1))}:1`;
  const [short, other] = text.split(':').map(Number);
  if (short && other && other > short && readFeel(`${other}:${short}`)) return `${other}:${short}`;
  return nearest(text, FEEL_NAMES);
}

function resolveFeel(text: string | undefined, report: Report): Lesson['feel'] {
  const read = readFeel(text ?? 'even');
  if (read) return read;
  const meant = meantFeel(text ?? '');
  report({
    code: 'feel',
    path: ['feel'],
    found: valueFact(text),
    expected: { fact: 'a-feel-in-range' },
    repair: didYouMean(meant),
  });
  return { kind: 'even' };
}

function resolveTempo(raw: RawLesson['tempo'], report: Report): Tempo {
  if (raw === undefined || typeof raw === 'number') return fillTempo(raw);
  const tempo = fillTempo(raw.start, raw.goal, raw.step);
  if (tempo.goalBpm < tempo.startBpm) {
    report({
      code: 'goal-below-start',
      path: ['tempo', 'goal'],
      found: { fact: 'goal-found', bpm: tempo.goalBpm },
      expected: { fact: 'goal-no-slower', bpm: tempo.startBpm },
      repair: { fact: 'exchange-start-and-goal' },
    });
  }
  return tempo;
}

function resolveSheet(raw: RawLesson['sheet']): SheetSettings {
  const given = Object.entries(raw ?? {}).filter(([, value]) => value !== undefined);
  return { ...DEFAULT_SHEET, ...(Object.fromEntries(given) as Partial<SheetSettings>) };
}

/** The finest division of a beat (from 1) by the lead voice, else by the vocabulary: where an ending falls. */
function slotsOfBeat(groove: readonly GroovePart[], lead: Voice, vocabulary: readonly VocabularyCell[]) {
  const most = (sizes: readonly number[]) => sizes.reduce((a, b) => Math.max(a, b), 1);
  const words = most(vocabulary.map((each) => each.cell.marks.length));
  const part = groove.find((each) => each.voice === lead);
  return (beat: number) => {
    const own = most((part?.pattern.bars ?? []).map((bar) => bar[beat - 1]?.marks.length ?? 1));
    if (own > 1) return own;
    return words > 1 ? words : most((part?.pattern.bars ?? []).flat().map((each) => each.marks.length));
  };
}

function checkVersion(version: number | undefined, report: Report): void {
  if (version === undefined || (version >= 1 && version <= LESSON_VERSION)) return;
  report({
    code: 'version',
    path: ['version'],
    found: { fact: 'version', version },
    expected: { fact: 'version', version: LESSON_VERSION },
    repair: version > LESSON_VERSION ? { fact: 'later-version' } : null,
  });
}

/** What is read of a lesson, or of a section as a lesson of its own. */
function resolvePart(
  raw: RawLesson,
  {
    heading,
    first,
    look,
  }: { readonly heading: string | null; readonly first: number; readonly look: LookAtMedium },
  report: Report,
): Lesson {
  const checkMedium = createMediumCheck(look, report);
  checkMediaIn(raw.text, ['text'], checkMedium);
  const read = resolveMeter(raw.meter, report);
  const groove = readGroove(raw.groove, read, report);
  const lead = readLead(raw, groove, report);
  const comping = raw.comping ?? 'snare';
  const vocabulary = readVocabulary(raw.vocabulary, read, report);
  const slotsOf = slotsOfBeat(groove, lead, vocabulary);
  const { beats } = read ?? meter('4/4');
  const forms = readForms(raw.forms, { beats, slotsOf }, report);
  const playedWith = raw.playedWith ?? 'sticks';
  const builtIn = builtInForms({
    beats: beats.length,
    endingSlots: slotsOf(beats.length),
    playedWith,
  }).filter(({ name }) => !formNamed({ forms }, name));
  return {
    version: LESSON_VERSION,
    id: raw.id ?? null,
    from: raw.from ?? null,
    title: raw.title,
    by: raw.by ?? null,
    heading,
    text: raw.text ?? null,
    ...readMedia(raw.media, ['media'], checkMedium),
    sections: [],
    meter: read ?? meter('4/4'),
    tempo: resolveTempo(raw.tempo, report),
    feel: resolveFeel(raw.feel, report),
    setUp: raw.setUp ?? 'right-handed',
    playedWith,
    groove,
    lead,
    comping,
    ...readBalances(raw, lead),
    limbs: readLimbs(raw),
    how: readHow(raw, report),
    vocabulary,
    exercises: readExercises(
      raw.exercises,
      { comping, meter: read, vocabulary, forms: [...forms, ...builtIn], first, checkMedium },
      report,
    ),
    forms: [...forms, ...builtIn],
    layers: readLayers(raw, groove, lead, report),
    sheet: resolveSheet(raw.sheet),
    compose: raw.compose ?? DEFAULT_COMPOSE_SETTINGS,
    practicePage: raw.practicePage ?? null,
  };
}

/** What a section needs first: a section above it, by its heading as it is written there; nothing where there is none. */
function readBefore(
  { before }: RawSection,
  above: readonly Lesson[],
  at: FieldPath,
  report: Report,
): Pick<Lesson, 'before'> {
  if (before === undefined) return {};
  const heading = sectionNamed(above, before)?.heading ?? null;
  if (heading !== null) return { before: heading };
  const words = above.flatMap((each) => each.heading ?? []);
  report({
    code: 'unknown-section',
    path: [...at, 'before'],
    found: quoted(before),
    expected: words.length === 0 ? { fact: 'a-section-above' } : { fact: 'one-of', words },
    repair: didYouMean(nearest(before, words)),
  });
  return {};
}

/** A lesson, and where each of its exercises is written. */
export interface Resolved {
  readonly lesson: Lesson;
  /** Path of the exercise with a number. */
  readonly pathOf: (exercise: number) => FieldPath;
  /** Every groove that is written, and where: the lesson's, and those that sections bring. */
  readonly grooves: readonly { readonly of: Lesson; readonly path: FieldPath }[];
}

/** One list of exercises in the file: where it is, and the number of its first. */
interface Listed {
  readonly at: FieldPath;
  readonly first: number;
}

/** The number of the first exercise outside of a section, and of each section's first. */
function firstsOf({ sheet, sections = [], exercises = [] }: RawLesson): readonly number[] {
  const counts = [exercises.length, ...sections.map((section) => section?.exercises?.length ?? 0)];
  return firstNumbers(counts, sections.length === 0 ? 'through' : (sheet?.numbering ?? 'through'));
}

/** Gives a lesson its meaning, reporting every fault, those of the files that it shows among them. Exercises outside of a section are the first section. */
export function resolveLesson(raw: RawLesson, look: LookAtMedium, report: Report): Resolved {
  checkVersion(raw.version, report);
  const [opens = 1, ...firsts] = firstsOf(raw);
  const whole = resolvePart(raw, { heading: null, first: opens, look }, report);
  const listed: Listed[] = [{ at: [], first: opens }];
  const inside: Lesson[] = [];
  const grooves: { of: Lesson; path: FieldPath }[] = raw.groove ? [{ of: whole, path: [] }] : [];
  (raw.sections ?? []).forEach((section, index) => {
    if (!section) return;
    const at = ['sections', index];
    checkGroove(raw, section, at, report);
    const first = firsts[index] ?? 1;
    listed.push({ at, first });
    const part = inherit(raw, section);
    const lesson = resolvePart(
      part,
      { heading: section.heading ?? null, first, look },
      reportIn(section, at, report),
    );
    inside.push({ ...lesson, ...readBefore(section, inside, at, report) });
    if (section.groove) grooves.push({ of: lesson, path: at });
  });
  const { media: _, ...bare } = whole;
  const opening = whole.exercises.length > 0 ? [{ ...bare, text: null }] : [];
  const divided = inside.length === 0 ? [] : [...opening, ...inside];
  const pathOf = (exercise: number): FieldPath => {
    const list = listed.findLast(({ first }) => first <= exercise) ?? { at: [], first: 1 };
    return [...list.at, 'exercises', exercise - list.first];
  };
  const [first = whole, ...others] = nameExercises(divided.length === 0 ? [whole] : divided, pathOf, report);
  const sections = divided.length === 0 ? [] : [first, ...others];
  const exercises = [first, ...others].flatMap((each) => each.exercises);
  return { lesson: { ...whole, exercises, sections }, pathOf, grooves };
}
