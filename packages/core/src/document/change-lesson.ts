/**
 * A lesson, or a section of it, in another meter or feel: what fits stays, and what does not is told before anything
 * changes. The text outside of what changes stays as it is.
 */

import { parseDocument } from 'yaml';
import { isVoice, type Voice } from '../kit/voice.ts';
import { defaultGroove } from '../lesson/defaults.ts';
import type { GroovePart, Lesson, Tempo } from '../lesson/lesson.ts';
import { exerciseLabel } from '../lesson/numbering.ts';
import { sectionsOf } from '../lesson/section.ts';
import { bringWithin, LESSON_TEMPI } from '../lesson/tempo-range.ts';
import { type Cell, cell, findCellFault, rhythmKey } from '../rhythm/cell.ts';
import { cellInThree, cellInTwo, isBeatByBeat } from '../rhythm/change-meter.ts';
import { divide, toNumber } from '../rhythm/fraction.ts';
import { type Meter, parseMeter, tempoBeat } from '../rhythm/meter.ts';
import { formatPattern } from '../rhythm/pattern.ts';
import {
  type ChangedExercise,
  changeExercise,
  type Rewriting,
  rewriteCell,
  withoutTwins,
} from './change-exercises.ts';
import type { ChangeFact } from './change-fact.ts';
import { changeGroove, freeHands } from './change-limbs.ts';
import { editLesson, setExercises } from './edit.ts';
import type { FieldPath } from './field-path.ts';
import { parseLesson } from './parse.ts';

/** What is to change. */
export interface LessonChange {
  /** Number of the section among `sectionsOf` the lesson, from 0; null for the lesson and all that take it over. */
  readonly section: number | null;
  readonly meter?: string;
  /** Text of a feel. */
  readonly feel?: string;
  /** Whether beats of three with nothing in their middle are written in two, as even eighths and sixteenths are. */
  readonly inTwo?: boolean;
  /** Lasting names of exercises that something refers to: they are kept. */
  readonly inUse?: readonly string[];
}

/** A lesson after a change. */
export interface ChangedLesson {
  readonly text: string;
  /** What becomes of what was written; empty where all of it stays as it is. */
  readonly tells: readonly ChangeFact[];
}

/** The lesson or a section of it, with what its own map says. */
interface Part {
  readonly path: FieldPath;
  /** Number among `sectionsOf` the lesson of the section whose exercises it has; null for none. */
  readonly index: number | null;
  readonly lesson: Lesson;
  readonly written: Readonly<Record<string, unknown>>;
}

/** The change and the lesson that it is made in. */
interface Whole {
  readonly change: LessonChange;
  readonly root: Part;
}

type Edit = readonly [FieldPath, unknown];

function partsOf(text: string, lesson: Lesson): readonly Part[] {
  const data = parseDocument(text).toJS() as Readonly<Record<string, unknown>>;
  const sections = (data.sections ?? []) as readonly Part['written'][];
  const root = { path: [], lesson, written: data };
  if (lesson.sections.length === 0) return [{ ...root, index: 0 }];
  const openings = lesson.sections.length - sections.length;
  const inside = sections.map((written, i): Part => {
    const index = openings + i;
    return { path: ['sections', i], index, lesson: lesson.sections[index] as Lesson, written };
  });
  return [{ ...root, index: openings === 0 ? null : 0 }, ...inside];
}

/** Parts that a change of a key reaches: the one it is written in and all that take it over from there. */
function reached(parts: readonly Part[], change: LessonChange, key: 'meter' | 'feel'): readonly Part[] {
  if (change[key] === undefined) return [];
  const one = parts.find(({ index, path }) => path.length > 0 && index === change.section);
  if (one) return [one];
  return parts.filter(({ path, written }) => path.length === 0 || written[key] === undefined);
}

function rewritingOf(
  part: Part,
  change: LessonChange,
  byMeter: readonly Part[],
  byFeel: readonly Part[],
): Rewriting {
  const to = byMeter.includes(part) ? parseMeter(change.meter ?? '') : null;
  const from = part.lesson.meter;
  const meter = to && to.text !== from.text ? { from, to } : null;
  const inThree = (meter?.to ?? from).compound;
  return { meter, inTwo: byFeel.includes(part) && change.inTwo === true && !inThree };
}

/** A cell that stands alone, as in a vocabulary. */
function changeCell(of: Cell, how: Rewriting): Cell {
  const { meter } = how;
  const inThree = meter && isBeatByBeat(meter) && meter.to.compound ? cellInThree(of) : of;
  return rewriteCell(inThree, how);
}

function isChanged(how: Rewriting): boolean {
  return how.meter !== null || how.inTwo;
}

function grooveData(groove: readonly GroovePart[]) {
  return Object.fromEntries(groove.map((part) => [part.voice, formatPattern(part.pattern)]));
}

function isSameGroove(a: readonly GroovePart[], b: readonly GroovePart[]): boolean {
  return JSON.stringify(grooveData(a)) === JSON.stringify(grooveData(b));
}

/** Writes the groove of a part where it has one, or where it would otherwise get another than it had. */
function grooveEdits(part: Part, how: Rewriting, { change, root }: Whole): readonly Edit[] {
  const { path, written, lesson } = part;
  const after = changeGroove(lesson, how).groove;
  if (written.groove === undefined) {
    const takesOver = path.length > 0 && root.written.groove !== undefined;
    if (path.length > 0 && change.section === null) return [];
    if (!takesOver && isSameGroove(after, defaultGroove(how.meter?.to ?? lesson.meter))) return [];
    return path.length > 0 ? ownGroove(part, after) : [[['groove'], grooveData(after)]];
  }
  const voices = Object.entries(written.groove as Readonly<Record<string, unknown>>);
  return voices.flatMap(([voice, value]): readonly Edit[] => {
    const found = after.find((each) => each.voice === voice);
    if (!found) return [];
    const at = [...path, 'groove', voice];
    return [[typeof value === 'string' ? at : [...at, 'pattern'], formatPattern(found.pattern)]];
  });
}

/** A groove for a section that had none of its own, with what goes by the groove. */
function ownGroove({ path, lesson, written }: Part, groove: readonly GroovePart[]): readonly Edit[] {
  const own: readonly Edit[] = [[[...path, 'groove'], grooveData(groove)]];
  const lead: readonly Edit[] = written.lead === undefined ? [[[...path, 'lead'], lesson.lead]] : [];
  const layers = lesson.layers.map((layer) => layer.joins);
  return [...own, ...lead, ...(written.layers === undefined ? [[[...path, 'layers'], layers] as Edit] : [])];
}

/** Quarter notes a minute at which the beat of the new meter is as fast as that of the old one. */
function changeTempo(
  { startBpm, goalBpm, stepBpm }: Tempo,
  { from, to }: { readonly from: Meter; readonly to: Meter },
) {
  const ratio = toNumber(divide(tempoBeat(to), tempoBeat(from)));
  const bpm = (of: number) => Number(bringWithin(LESSON_TEMPI, of * ratio).toFixed(2));
  return {
    start: bpm(startBpm),
    goal: bpm(goalBpm),
    step: Number(Math.min(60, Math.max(1, stepBpm * ratio)).toFixed(2)),
  };
}

function tempoEdits({ path, written, lesson }: Part, { meter }: Rewriting): readonly Edit[] {
  const isOwn = written.tempo !== undefined || written.meter !== undefined || path.length === 0;
  if (!meter || !isOwn || !isBeatByBeat(meter)) return [];
  const after = changeTempo(lesson.tempo, meter);
  return after.start === lesson.tempo.startBpm ? [] : [[[...path, 'tempo'], after]];
}

/** Cells of a vocabulary and of limits, where they are written. */
function cellEdits(part: Part, how: Rewriting, exercises: readonly ChangedExercise[]): readonly Edit[] {
  const { path, written, lesson } = part;
  if (!Array.isArray(written.vocabulary)) return [];
  const kept = lesson.vocabulary.map((each) => ({ ...each, cell: changeCell(each.cell, how) }));
  const own = new Map(kept.map((each) => [each.cell.text, each]));
  const before = new Set(lesson.vocabulary.map((each) => rhythmKey(each.cell)));
  const known = new Set([...own.values()].map((each) => rhythmKey(each.cell)));
  for (const { before: was, exercise } of exercises) {
    const mine = (of: typeof exercise) =>
      of.parts.find((each) => each.voice === lesson.comping)?.pattern.bars.flat() ?? [];
    if (mine(was).some((each) => !before.has(rhythmKey(each)))) continue;
    for (const each of mine(exercise)) {
      if (known.has(rhythmKey(each))) continue;
      known.add(rhythmKey(each));
      own.set(each.text, { cell: each, name: null });
    }
  }
  const data = [...own.values()].map(({ cell: { text }, name }) =>
    name === null ? text : { cell: text, name },
  );
  return [[[...path, 'vocabulary'], data]];
}

/** Cells that a page may start with and the like. */
function limitEdits({ path, written }: Part, how: Rewriting): readonly Edit[] {
  const limits = (written.compose as { readonly limits?: Readonly<Record<string, unknown>> } | undefined)
    ?.limits;
  const changed = (texts: unknown) =>
    Array.isArray(texts)
      ? [
          ...new Set(
            texts.map((text) =>
              findCellFault(String(text)) ? text : changeCell(cell(String(text)), how).text,
            ),
          ),
        ]
      : texts;
  const at = (key: string): FieldPath => [...path, 'compose', 'limits', key];
  const lists = ['start', 'neverStart'].flatMap((key): readonly Edit[] =>
    Array.isArray(limits?.[key]) ? [[at(key), changed(limits[key])]] : [],
  );
  const beats = limits?.beats as Readonly<Record<string, unknown>> | undefined;
  if (!beats) return lists;
  const most = how.meter?.to.beats.length ?? Number.POSITIVE_INFINITY;
  const left = Object.entries(beats).filter(([beat]) => Number(beat) <= most);
  return [...lists, [at('beats'), Object.fromEntries(left.map(([beat, texts]) => [beat, changed(texts)]))]];
}

interface RawForm {
  readonly sections?: readonly { readonly ending?: { readonly beat?: unknown } }[];
}

/** Endings on a beat that there is no more come on the last one. */
function formEdits({ path, written }: Part, { meter }: Rewriting): readonly Edit[] {
  const forms = Object.entries((written.forms ?? {}) as Readonly<Record<string, RawForm>>);
  return forms.flatMap(([name, form]) =>
    (form.sections ?? []).flatMap((section, index): readonly Edit[] => {
      const beat = Number(section?.ending?.beat);
      if (!meter || !(beat > meter.to.beats.length)) return [];
      return [[[...path, 'forms', name, 'sections', index, 'ending', 'beat'], meter.to.beats.length]];
    }),
  );
}

/** What a part loses and how it is rewritten. */
interface PartChange {
  readonly part: Part;
  readonly how: Rewriting;
  readonly edits: readonly Edit[];
  readonly kept: readonly ChangedExercise[];
  readonly twins: readonly ChangedExercise[];
}

function changePart(part: Part, how: Rewriting, whole: Whole): PartChange {
  const own = part.index === null ? [] : (sectionsOf(whole.root.lesson)[part.index]?.exercises ?? []);
  const lesson = { ...part.lesson, groove: changeGroove(part.lesson, how).groove };
  const changed = own.map((each) => {
    const after = changeExercise(each, how);
    const before = { lesson: part.lesson, exercise: each };
    return { ...after, exercise: freeHands(before, lesson, after.exercise) };
  });
  const { kept, twins } = withoutTwins(changed, whole.change.inUse ?? []);
  const edits = [
    ...grooveEdits(part, how, whole),
    ...tempoEdits(part, how),
    ...cellEdits(part, how, kept),
    ...limitEdits(part, how),
    ...formEdits(part, how),
  ];
  return { part, how, edits, kept, twins };
}

/** What a section that stays as it is has to say itself, since the lesson will say otherwise. */
function standingEdits(
  { path, written, lesson }: Part,
  { root }: Whole,
  ofRoot: readonly Edit[],
): readonly Edit[] {
  const isEdited = (key: string) => ofRoot.some(([at]) => at[0] === key);
  const hasGroove =
    written.groove !== undefined || !(root.written.groove !== undefined || isEdited('groove'));
  const { startBpm, goalBpm, stepBpm } = lesson.tempo;
  const tempo: Edit = [[...path, 'tempo'], { start: startBpm, goal: goalBpm, step: stepBpm }];
  return [
    ...(hasGroove ? [] : ownGroove({ path, written, lesson, index: null }, lesson.groove)),
    ...(isEdited('tempo') && written.tempo === undefined ? [tempo] : []),
  ];
}

function numbersOf(all: readonly ChangedExercise[]): readonly string[] {
  return all.map(({ before }) => exerciseLabel(before.number));
}

function tellOfExercises(
  kept: readonly ChangedExercise[],
  twins: readonly ChangedExercise[],
): readonly ChangeFact[] {
  const counted = (
    fact: 'strokes-without-place' | 'strokes-moved',
    of: 'lost' | 'moved',
  ): readonly ChangeFact[] => {
    const all = kept.filter((each) => each[of] > 0);
    const strokes = all.reduce((sum, each) => sum + each[of], 0);
    return strokes === 0 ? [] : [{ fact, strokes, exercises: numbersOf(all) }];
  };
  const named = (fact: 'dynamics-without-place' | 'fill-on-last-beat', of: 'losesDynamics' | 'movesFill') => {
    const exercises = numbersOf(kept.filter((each) => each[of]));
    return exercises.length === 0 ? [] : [{ fact, exercises } as const];
  };
  return [
    ...counted('strokes-without-place', 'lost'),
    ...counted('strokes-moved', 'moved'),
    ...(twins.length === 0 ? [] : [{ fact: 'exercises-become-twins', exercises: numbersOf(twins) } as const]),
    ...named('dynamics-without-place', 'losesDynamics'),
    ...named('fill-on-last-beat', 'movesFill'),
  ];
}

/** How many beats a bar of the new meter has more than there was something for; below 0: fewer. */
function beatsMore({ from, to }: { readonly from: Meter; readonly to: Meter }): number {
  return to.beats.length - from.beats.length;
}

/** Strokes of a groove that found their limb busy. */
function tellOfLimbs({ part, how, edits }: PartChange): readonly ChangeFact[] {
  const { lost } = changeGroove(part.lesson, how);
  const isWritten = edits.some(([path]) => path.includes('groove'));
  return isWritten && lost > 0 ? [{ fact: 'groove-loses-strokes', strokes: lost }] : [];
}

function tellOfGroove({ part, how: { meter }, edits }: PartChange): readonly ChangeFact[] {
  const isWritten = edits.some(([path]) => path.includes('groove'));
  const more =
    meter && isBeatByBeat(meter) === (meter.from.compound !== meter.to.compound) ? beatsMore(meter) : 0;
  if (!isWritten || more === 0) return [];
  const voices: readonly Voice[] = part.lesson.groove.map((each) => each.voice).filter(isVoice);
  return [{ fact: more > 0 ? 'groove-goes-on' : 'groove-loses-beats', beats: Math.abs(more), voices }];
}

/** Beats of exercises and grooves that are written otherwise, or stay in three where others do not. */
function tellOfBeats(changes: readonly PartChange[]): readonly ChangeFact[] {
  const cells = changes.flatMap(({ part, how, kept, edits }) => {
    const groove = edits.some(([path]) => path.includes('groove')) ? part.lesson.groove : [];
    const all = [...groove, ...kept.flatMap((each) => each.before.parts)].flatMap((each) =>
      each.pattern.bars.flat(),
    );
    return all.map((each) => ({ each, how }));
  });
  const count = (is: (each: Cell, how: Rewriting) => boolean) =>
    cells.filter(({ each, how }) => is(each, how)).length;
  const toThree = (how: Rewriting) => how.meter?.to.compound === true && isBeatByBeat(how.meter);
  const inThree = count((each, how) => toThree(how) && cellInThree(each) !== each);
  const inTwo = count((each, how) => how.inTwo && cellInTwo(each) !== null && cellInTwo(each) !== each);
  const staying = count((each, how) => how.inTwo && cellInTwo(each) === null);
  const tell = (fact: 'beats-in-three' | 'beats-in-two' | 'beats-stay-in-three', beats: number) =>
    beats === 0 ? [] : [{ fact, beats }];
  return [
    ...tell('beats-in-three', inThree),
    ...tell('beats-in-two', inTwo),
    ...tell('beats-stay-in-three', staying),
  ];
}

function tellOfForms(changes: readonly PartChange[]): readonly ChangeFact[] {
  const forms = changes.flatMap(({ edits }) =>
    edits.flatMap(([path]) => (path.at(-1) === 'beat' ? [String(path.at(-5))] : [])),
  );
  return [...new Set(forms)].map((form) => ({ fact: 'ending-on-last-beat', form }));
}

function tellOfSilence(changes: readonly PartChange[]): readonly ChangeFact[] {
  const more = changes.flatMap(({ how, kept }) =>
    how.meter && kept.length > 0 ? [beatsMore(how.meter)] : [],
  );
  const beats = Math.max(0, ...more);
  return beats === 0 ? [] : [{ fact: 'silent-beats-added', beats }];
}

/** Where the key itself is written. */
function keyEdits(parts: readonly Part[], change: LessonChange): readonly Edit[] {
  const one = parts.find(({ index, path }) => path.length > 0 && index === change.section);
  const at = one?.path ?? [];
  return (['meter', 'feel'] as const).flatMap((key): readonly Edit[] =>
    change[key] === undefined ? [] : [[[...at, key], change[key]]],
  );
}

/**
 * The lesson with another meter or feel, and what becomes of what is written in it.
 * @returns the text as it is where it has problems, or where the meter is none: both are told elsewhere
 */
export function changeLesson(text: string, change: LessonChange): ChangedLesson {
  const { lesson } = parseLesson(text, 'lesson');
  if (!lesson || (change.meter !== undefined && !parseMeter(change.meter))) return { text, tells: [] };
  const parts = partsOf(text, lesson);
  const root = parts[0] as Part;
  const [byMeter, byFeel] = [reached(parts, change, 'meter'), reached(parts, change, 'feel')];
  const ways = parts.map((part) => ({ part, how: rewritingOf(part, change, byMeter, byFeel) }));
  const whole = { change, root };
  const changes = ways
    .filter(({ how }) => isChanged(how))
    .map(({ part, how }) => changePart(part, how, whole));
  const ofRoot = changes.find(({ part }) => part === root)?.edits ?? [];
  const standing = ways
    .filter(({ part, how }) => part !== root && !isChanged(how))
    .flatMap(({ part }) => standingEdits(part, whole, ofRoot));
  const edits = [...standing, ...changes.flatMap((each) => each.edits), ...keyEdits(parts, change)];
  const edited = edits.reduce((before, [path, value]) => editLesson(before, path, value), text);
  const after = changes.reduce((before, { part, kept }) => {
    if (part.index === null || kept.length === 0) return before;
    return setExercises(
      before,
      kept.map((each) => each.exercise),
      part.lesson.comping,
      part.index,
    );
  }, edited);
  return {
    text: after,
    tells: [
      ...changes.flatMap((each) => tellOfExercises(each.kept, each.twins)),
      ...changes.flatMap(tellOfGroove),
      ...changes.flatMap(tellOfLimbs),
      ...tellOfSilence(changes),
      ...tellOfBeats(changes),
      ...tellOfForms(changes),
    ],
  };
}
