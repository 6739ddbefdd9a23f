/**
 * MusicXML to exercises: our own files and other programs' drum parts.
 *
 * Conventions: every part is read and joined, as a drum set may be spread over several. Rehearsal marks begin
 * exercises; without any, the score is one exercise. What cannot be read is reported at its line and column and
 * left out; nothing is lost in silence.
 * Source: MusicXML 4.0 (W3C Community Group Final Report, June 2021).
 */
import {
  assembleParts,
  type Beater,
  type Bpm,
  childOf,
  childrenOf,
  compare,
  descend,
  type Exercise,
  type ExercisePart,
  type Feel,
  type Hands,
  homeOf,
  type InputProblem,
  type Meter,
  meter,
  readExerciseLabel,
  withHands,
  type XmlElement,
} from '@shedbook/core';
import { LESSON_FIELD, lessonInside, sumOf } from '../lesson/inside.ts';
import { readXmlDocument } from '../xml/read-xml.ts';
import { SAID_STYLE } from './directions.ts';
import type { MusicXmlFact } from './musicxml-fact.ts';
import { ProblemList } from './problems.ts';
import { beaterOf, creatorOf, feelOf, tempoOf, titleOf } from './read-header.ts';
import { readInstruments } from './read-instruments.ts';
import { PartReader, type ReadPart, type ScoreStroke } from './read-part.ts';
import { readRepetition } from './read-repeats.ts';
import { writeMusicXml } from './write.ts';

/** What a score has. */
export interface MusicXmlReading {
  /** An error among them means that something could not be understood. */
  readonly problems: readonly InputProblem<MusicXmlFact>[];
  readonly title: string | null;
  readonly by: string | null;
  readonly meter: Meter | null;
  /** Quarter notes a minute, or null where the score does not say. */
  readonly bpm: Bpm | null;
  /** Null where the score does not say. */
  readonly feel: Feel | null;
  /** What the hands hold where the score begins, or null where it says nothing. */
  readonly playedWith: Beater | null;
  readonly exercises: readonly Exercise[];
  /** The text of the lesson that the score was made from, where its notes are still those; null otherwise. */
  readonly lessonText: string | null;
  /** Every stroke, with levels and places in the text. */
  readonly strokes: readonly ScoreStroke[];
}

/** A reading of a file that could not be read. */
export function nothingRead(problems: readonly InputProblem<MusicXmlFact>[]): MusicXmlReading {
  const nothing = {
    title: null,
    by: null,
    meter: null,
    bpm: null,
    feel: null,
    playedWith: null,
    lessonText: null,
  };
  return { ...nothing, exercises: [], strokes: [], problems };
}

interface Start {
  readonly bar: number;
  readonly mark: string | null;
  readonly name: string | null;
}

function directionsOf(measure: XmlElement): readonly XmlElement[] {
  const types = childrenOf(measure, 'direction').flatMap((each) => childrenOf(each, 'direction-type'));
  return types.flatMap((type) => type.children);
}

function isName({ name, attributes }: XmlElement): boolean {
  return name === 'words' && attributes['font-style'] !== SAID_STYLE;
}

/** Where exercises begin. */
function startsOf(part: ReadPart): readonly Start[] {
  const marked = part.bars.flatMap(({ measure }, bar) => {
    const directions = directionsOf(measure);
    const at = directions.findIndex(({ name }) => name === 'rehearsal');
    if (at < 0) return [];
    // A heading stands before the number, and what is said of the playing is in italics.
    const name = directions.slice(at).find(isName)?.text ?? null;
    return [{ bar, mark: directions[at]?.text ?? '', name }];
  });
  return marked[0]?.bar === 0 ? marked : [{ bar: 0, mark: null, name: null }, ...marked];
}

/** The numbers in the boxes where they are all different numbers, otherwise 1, 2, 3, … */
function numbersOf(starts: readonly Start[]): readonly number[] {
  const marks = starts.map(({ mark }) => readExerciseLabel(mark ?? ''));
  const usable = marks.every((mark) => mark !== null) && new Set(marks).size === marks.length;
  return starts.map((_, i) => (usable ? (marks[i] as number) : i + 1));
}

function isWrittenIn(part: ExercisePart, { voice }: ScoreStroke): boolean {
  return part.voice === voice || part.voice === homeOf(voice);
}

function scoreOrder(a: ScoreStroke, b: ScoreStroke): number {
  return a.bar - b.bar || compare(a.inBar, b.inBar);
}

/** The hands of a part, where every stroke of it has one. */
function handsIn(part: ExercisePart, strokes: readonly ScoreStroke[]): Hands | null {
  const mine = strokes.filter((stroke) => isWrittenIn(part, stroke)).sort(scoreOrder);
  const hands = mine.map((stroke) => stroke.sticking).filter((hand) => hand !== null);
  return hands.length > 0 && hands.length === mine.length ? hands : null;
}

/** Puts the first part whose every stroke has a hand first; others keep theirs. */
function withSticking(
  parts: readonly ExercisePart[],
  strokes: readonly ScoreStroke[],
): Pick<Exercise, 'parts' | 'sticking'> {
  const handed = parts.map((part) => ({ part, hands: handsIn(part, strokes) }));
  const first = handed.find(({ hands }) => hands !== null);
  if (!first) return { parts, sticking: null };
  const others = handed.filter((each) => each !== first).map(({ part, hands }) => withHands(part, hands));
  return { parts: [first.part, ...others], sticking: first.hands };
}

function readExercises(
  parts: readonly ReadPart[],
  strokes: readonly ScoreStroke[],
  of: Meter,
  problems: ProblemList,
): readonly Exercise[] {
  const first = parts[0];
  if (!first) return [];
  const starts = startsOf(first);
  const numbers = numbersOf(starts);
  return starts.flatMap(({ bar, name }, i): Exercise[] => {
    const end = starts[i + 1]?.bar ?? Math.max(...parts.map((part) => part.bars.length));
    const mine = strokes
      .filter((stroke) => stroke.bar >= bar && stroke.bar < end)
      .map((stroke) => ({ ...stroke, bar: stroke.bar - bar }));
    const assembled = assembleParts(mine, of, end - bar);
    for (const misfit of assembled.misfits) {
      problems.add(misfit, {
        code: 'musicxml-misfit',
        path: `measure ${bar + misfit.bar + 1}`,
        found: {
          fact: 'musicxml-misfit',
          voice: misfit.voice,
          place: `${misfit.inBar.num}/${misfit.inBar.den}`,
        },
        expected: { fact: 'musicxml-one-stroke' },
        repair: { fact: 'musicxml-it-left-out' },
      });
    }
    if (assembled.parts.length === 0) return [];
    const repetition = readRepetition(first.bars.slice(bar, end).map(({ measure }) => measure));
    const number = numbers[i] as number;
    return [{ number, name, notes: null, ...withSticking(assembled.parts, mine), ...repetition }];
  });
}

/** Strokes up to the first bar of another meter, which is reported. */
function oneMeter(parts: readonly ReadPart[], of: Meter, problems: ProblemList): readonly ScoreStroke[] {
  const changes = parts.flatMap((part) => {
    const bar = part.bars.findIndex((each) => each.meter !== null && each.meter.text !== of.text);
    return bar < 0 ? [] : [{ bar, ...(part.bars[bar] as ReadPart['bars'][number]) }];
  });
  const change = changes.toSorted((a, b) => a.bar - b.bar)[0];
  const strokes = parts.flatMap((part) => part.strokes);
  if (!change) return strokes;
  problems.add(change.measure, {
    code: 'musicxml-meter',
    path: `measure ${change.bar + 1}`,
    found: { fact: 'change-of-meter', meter: change.meter?.text ?? '' },
    expected: { fact: 'meter-throughout', meter: of.text },
    repair: { fact: 'musicxml-bars-left-out' },
  });
  return strokes.filter((stroke) => stroke.bar < change.bar);
}

function rootProblem(root: XmlElement, problems: ProblemList): boolean {
  if (root.name === 'score-partwise') return false;
  const timewise = root.name === 'score-timewise';
  problems.add(root, {
    code: 'musicxml-root',
    severity: 'error',
    found: { fact: 'musicxml-root', element: root.name },
    expected: { fact: 'musicxml-partwise' },
    repair: { fact: timewise ? 'musicxml-save-partwise' : 'musicxml-other-file' },
  });
  return true;
}

/** The parts of a score. */
function partsOf(root: XmlElement, problems: ProblemList): readonly ReadPart[] {
  const instruments = readInstruments(root);
  return childrenOf(root, 'part').map((part) =>
    new PartReader(`part ${part.attributes['id'] ?? ''}`, instruments, problems).read(part),
  );
}

/** A stroke as it is written, without its level, which is rounded, and its place in the text. */
function written({ bar, inBar, voice, articulation, accent, ghost, sticking, held }: ScoreStroke): string {
  return JSON.stringify([bar, inBar.num, inBar.den, voice, articulation, accent, ghost, sticking, held]);
}

/** The field with the text of the lesson. */
function fieldOf(root: XmlElement): XmlElement | null {
  const fields = childrenOf(descend(root, 'identification', 'miscellaneous'), 'miscellaneous-field');
  return fields.find(({ attributes }) => attributes['name'] === LESSON_FIELD) ?? null;
}

/** The text inside, where the score that it makes has the same strokes; where not, that is said. */
function lessonTextOf(
  root: XmlElement,
  strokes: readonly ScoreStroke[],
  problems: ProblemList,
): string | null {
  const field = fieldOf(root);
  const lesson = field && lessonInside(field.text);
  if (!field || !lesson) return null;
  const again = readXmlDocument(writeMusicXml(lesson, { lessonText: null }), LESSON_FIELD).root;
  const own = again ? partsOf(again, new ProblemList(LESSON_FIELD)).flatMap((part) => part.strokes) : [];
  if (sumOf(own.map(written)) === sumOf(strokes.map(written))) return field.text;
  problems.add(field, {
    code: 'musicxml-lesson',
    found: { fact: 'musicxml-other-notes' },
    expected: { fact: 'musicxml-notes-of-lesson' },
    repair: { fact: 'musicxml-notes-hold' },
  });
  return null;
}

/** Reads a score; `file` names it in problems. */
export function readMusicXml(text: string, file = 'score.musicxml'): MusicXmlReading {
  const { root, problems: syntax } = readXmlDocument(text, file);
  if (!root) return nothingRead(syntax);
  const problems = new ProblemList(file);
  if (rootProblem(root, problems)) return nothingRead(problems.all);
  const parts = partsOf(root, problems);
  const of =
    parts.flatMap((part) => part.bars.map((bar) => bar.meter)).find((each) => each !== null) ?? meter('4/4');
  const strokes = oneMeter(parts, of, problems);
  const sounds = childrenOf(childOf(root, 'part'), 'measure')
    .flatMap((measure) => measure.children)
    .filter((element) => element.name === 'direction' || element.name === 'sound');
  return {
    title: titleOf(root),
    by: creatorOf(root),
    meter: of,
    bpm: sounds.map(tempoOf).find((bpm) => bpm !== null) ?? null,
    feel: sounds.map(feelOf).find((feel) => feel !== null) ?? null,
    playedWith: sounds.map(beaterOf).find((beater) => beater !== null) ?? null,
    lessonText: lessonTextOf(
      root,
      parts.flatMap((part) => part.strokes),
      problems,
    ),
    exercises: readExercises(parts, strokes, of, problems),
    strokes,
    problems: problems.all,
  };
}
