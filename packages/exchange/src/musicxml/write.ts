/**
 * Exercises of a lesson as MusicXML 4.0: one percussion part, the groove and the exercise together.
 *
 * Conventions: a sheet is all its exercises one after another, each with its number in a box on a new system and
 * closed by a double bar. Nothing in the file depends on when or where it is written.
 * Source: MusicXML 4.0 (W3C Community Group Final Report, June 2021).
 */
import {
  ACCENT_DB,
  type Bpm,
  beatStarts,
  type Exercise,
  exerciseOf,
  type Fraction,
  formatHow,
  GHOST_DB,
  homeOf,
  howOf,
  LeadDb,
  type Lesson,
  loudnessOf,
  type NotatedBar,
  type NotatedHead,
  printLesson,
  sectionOf,
  toNumber,
  VOICES,
} from '@shedbook/core';
import { LESSON_FIELD } from '../lesson/inside.ts';
import { printXml, type XmlNode, xml } from '../xml/write-xml.ts';
import {
  beaterDirection,
  closingWedge,
  dynamicDirections,
  howDirection,
  nameDirection,
  numberDirection,
  tempoDirection,
  wordsDirection,
} from './directions.ts';
import { instrumentId, instrumentNodes } from './instruments.ts';
import { lessonBars } from './lesson-bars.ts';
import { attributesNode, barNodes, divisionsFor, timeNode } from './measure.ts';
import { leftBarline, measureRepeats, rightBarline } from './repeats.ts';

/** What to write of a lesson. */
export interface WriteMusicXmlOptions {
  /** Numbers of the exercises, all when left out; a lesson without any is written as its groove alone. */
  readonly exercises?: readonly number[];
  /** Whether the groove is written under the exercises; it is when left out. */
  readonly groove?: boolean;
  /** Quarter notes a minute; the lesson's start tempo when left out. */
  readonly bpm?: Bpm;
  /**
   * Text of the lesson to keep inside; what `printLesson` prints where left out. Only a file of every exercise over the
   * groove has it; null for none.
   */
  readonly lessonText?: string | null;
  /** Date of encoding as yyyy-mm-dd; none when left out. */
  readonly date?: string;
}

/** What stands under one number: an exercise, in the section that it stands in. */
interface Entry {
  readonly exercise: Exercise | null;
  readonly section: Lesson;
  readonly bars: readonly NotatedBar[];
}

const DOCTYPE =
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">';

const SUPPORTED = ['accidental', 'beam', 'stem'];

function entriesOf(lesson: Lesson, options: WriteMusicXmlOptions): readonly Entry[] {
  const withGroove = options.groove ?? true;
  const numbers = options.exercises ?? lesson.exercises.map((exercise) => exercise.number);
  const chosen = numbers.length > 0 ? numbers.map((number) => exerciseOf(lesson, number)) : [null];
  return chosen.map((exercise) => {
    const section = sectionOf(lesson, exercise?.number ?? null);
    return { exercise, section, bars: lessonBars(section, exercise, withGroove || exercise === null) };
  });
}

/** The text to keep inside: a part of a lesson would come back as the whole. */
function textInside(
  lesson: Lesson,
  { exercises, groove = true, lessonText }: WriteMusicXmlOptions,
): string | null {
  if (exercises !== undefined || !groove) return null;
  return lessonText === undefined ? printLesson(lesson) : lessonText;
}

function identification(lesson: Lesson, options: WriteMusicXmlOptions): XmlNode {
  const { date } = options;
  const inside = textInside(lesson, options);
  return xml('identification', {}, [
    lesson.by ? xml('creator', { type: 'composer' }, lesson.by) : null,
    xml('encoding', {}, [
      xml('software', {}, 'Shedbook'),
      date ? xml('encoding-date', {}, date) : null,
      ...SUPPORTED.map((element) =>
        xml('supports', { element, type: element === 'accidental' ? 'no' : 'yes' }),
      ),
    ]),
    inside === null
      ? null
      : xml('miscellaneous', {}, [xml('miscellaneous-field', { name: LESSON_FIELD }, inside)]),
  ]);
}

function headsOf(bars: readonly NotatedBar[]): readonly NotatedHead[] {
  return bars.flatMap((bar) =>
    bar.layers.flatMap((layer) =>
      layer.groups.flatMap((group) => group.events.flatMap((event) => event.heads)),
    ),
  );
}

function partList(bars: readonly NotatedBar[]): XmlNode {
  const used = new Set(headsOf(bars).map((head) => instrumentId(head.voice, head.articulation)));
  return xml('part-list', {}, [
    xml('score-part', { id: 'P1' }, [xml('part-name', {}, 'Drum set'), ...instrumentNodes(used)]),
  ]);
}

/** Tempo and feel at the first entry, and where another section begins that changes them. */
function tempoNode({ section }: Entry, before: Entry | undefined, bpm: Bpm | undefined): XmlNode | null {
  const mark = ({ meter, feel, tempo }: Lesson) => tempoDirection(meter, feel, bpm ?? tempo.startBpm);
  const now = mark(section);
  const isSame = before && JSON.stringify(mark(before.section)) === JSON.stringify(now);
  return isSame ? null : now;
}

/** How the voices of an entry are played, where the entry before does not say the same. */
function howNodes({ exercise, section, bars }: Entry, before: Entry | undefined): readonly XmlNode[] {
  const voices = new Set(headsOf(bars).map((head) => homeOf(head.voice) ?? head.voice));
  return VOICES.flatMap((voice) => {
    const how = howOf(section, exercise, voice);
    const last = before ? howOf(before.section, before.exercise, voice) : [];
    const isNew = voices.has(voice) && how.length > 0 && formatHow(how) !== formatHow(last);
    return isNew ? [howDirection(voice, how)] : [];
  });
}

/** What stands before the notes of an entry's first bar: what is new in it, its heading, its number, its name. */
function headNodes(
  entry: Entry,
  before: Entry | undefined,
  { divisions, bpm }: { readonly divisions: number; readonly bpm: Bpm | undefined },
): readonly (XmlNode | null)[] {
  const { exercise, section } = entry;
  const { meter, heading } = section;
  const attributes = before
    ? before.section.meter.text === meter.text
      ? null
      : xml('attributes', {}, [timeNode(meter)])
    : attributesNode(meter, divisions);
  return [
    before ? xml('print', { 'new-system': 'yes' }) : null,
    attributes,
    tempoNode(entry, before, bpm),
    (before?.section.playedWith ?? 'sticks') === section.playedWith
      ? null
      : beaterDirection(section.playedWith),
    heading !== null && before?.section !== section ? nameDirection(heading) : null,
    exercise ? numberDirection(exercise.number) : null,
    exercise?.name ? nameDirection(exercise.name) : null,
    ...howNodes(entry, before),
  ];
}

/** The level of a head in a bar (from 0): a voice that the exercise plays has its level in exercises, and its dynamics. */
function levelsOf(lesson: Lesson, exercise: Exercise | null) {
  const own = new Set(exercise?.parts.map((part) => part.voice));
  const addedDb = exercise ? loudnessOf(lesson, exercise) : () => 0;
  return (bar: number) =>
    ({ voice, accent, ghost }: NotatedHead, start: Fraction): LeadDb => {
      const plays = own.has(voice) || own.has(homeOf(voice) ?? voice);
      const plainDb = plays ? lesson.exerciseBalance[voice] + addedDb(bar, start) : lesson.balance[voice];
      return LeadDb(plainDb + (accent ? ACCENT_DB : ghost ? GHOST_DB : 0));
    };
}

/** What is said of a bar (from 0) of an exercise beside its notes: texts, dynamics, hairpins. */
function saidNodes(
  { exercise, section, bars }: Entry,
  bar: number,
  divisions: number,
): readonly (XmlNode | null)[] {
  const { above, below, dynamics = [] } = exercise ?? {};
  const starts = beatStarts(section.meter);
  const inDivisions = (length: Fraction) => toNumber(length) * 4 * divisions;
  const divisionsOf = (beat: number) => inDivisions(starts[beat] as Fraction);
  const last = dynamics.findLast((each) => each.bar < bar)?.hairpin;
  const before = last === 'louder' || last === 'softer';
  const own = dynamics.filter((each) => each.bar === bar);
  const said = dynamicDirections(own, before, divisionsOf);
  const closes = said.isOpen && bar === bars.length - 1;
  return [
    above?.[bar] ? wordsDirection(above[bar]) : null,
    below?.[bar] ? wordsDirection(below[bar], 'below') : null,
    ...said.nodes,
    closes ? closingWedge(inDivisions(section.meter.bar)) : null,
  ];
}

/**
 * The text of a MusicXML file.
 * @throws RangeError when the lesson has no exercise with a number that is asked for.
 */
export function writeMusicXml(lesson: Lesson, options: WriteMusicXmlOptions = {}): string {
  const entries = entriesOf(lesson, options);
  const bars = entries.flatMap((entry) => entry.bars);
  const divisions = divisionsFor(bars);
  const measures: XmlNode[] = [];
  entries.forEach((entry, e) => {
    const levelDb = levelsOf(entry.section, entry.exercise);
    entry.bars.forEach((bar, b) => {
      const style = e === entries.length - 1 ? 'light-heavy' : 'light-light';
      measures.push(
        xml('measure', { number: measures.length + 1 }, [
          leftBarline(entry, b),
          ...(b === 0 ? headNodes(entry, entries[e - 1], { divisions, bpm: options.bpm }) : []),
          measureRepeats(entry, b),
          ...saidNodes(entry, b, divisions),
          ...barNodes(bar, { divisions, levelDb: levelDb(b) }),
          rightBarline(entry, b, style),
        ]),
      );
    });
  });
  const root = xml('score-partwise', { version: '4.0' }, [
    xml('work', {}, [xml('work-title', {}, lesson.title)]),
    identification(lesson, options),
    partList(bars),
    xml('part', { id: 'P1' }, measures),
  ]);
  return printXml(root, DOCTYPE);
}
