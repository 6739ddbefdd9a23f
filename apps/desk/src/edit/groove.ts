/**
 * Changing the groove of a lesson or of one of its sections: voices, what they play, how loud they are, who plays
 * them, and in which order they join. A section that took the lesson's groove gets one of its own as it is changed.
 *
 * Conventions: a section is its number among all, from 0; null is the lesson itself.
 */
import {
  cell,
  type Exercise,
  editLesson,
  type FieldPath,
  formatHow,
  formatPattern,
  type How,
  type Layer,
  type Lesson,
  type Limb,
  markFor,
  type Pattern,
  released,
  sectionsOf,
  setExercises,
  silentLike,
  VOICE_FACTS,
  type Voice,
} from '@shedbook/core';
import { isMap, parseDocument } from 'yaml';
import { withTurn } from '../shared/with-turn.ts';
import { partPath } from './played.ts';

/** A lesson, or a section of it, whose groove is changed. */
export interface GroovePlace {
  readonly lesson: Lesson;
  /** Number of the section among all, from 0; null for the lesson itself. */
  readonly section: number | null;
}

function isWritten(text: string, path: FieldPath): boolean {
  return parseDocument(text).hasIn(path);
}

/** Whether a lesson or a section has a groove of its own in the text. */
export function hasOwnGroove(text: string, section: number | null): boolean {
  return isWritten(text, [...partPath(text, section), 'groove']);
}

/** The text with a change to one voice of the groove; a level written beside it stays. */
export function changeVoice(text: string, place: GroovePlace, voice: Voice, pattern: Pattern): string {
  const own = writeGroove(text, place);
  const at = [...partPath(own, place.section), 'groove', voice];
  const isFull = isWritten(own, [...at, 'pattern']);
  return editLesson(own, isFull ? [...at, 'pattern'] : at, formatPattern(pattern));
}

/** The text with the groove that is heard written out where it was left to the default, or to the lesson. */
function writeGroove(text: string, { lesson, section }: GroovePlace): string {
  const path = partPath(text, section);
  if (isWritten(text, [...path, 'groove'])) return text;
  const groove = Object.fromEntries(lesson.groove.map((part) => [part.voice, formatPattern(part.pattern)]));
  const written = editLesson(text, [...path, 'groove'], groove);
  if (path.length === 0 || isWritten(text, [...path, 'lead'])) return written;
  return editLesson(written, [...path, 'lead'], lesson.lead);
}

/** The text of a section that takes the groove of the lesson again. */
export function takeLessonGroove(text: string, section: number): string {
  const path = partPath(text, section);
  return ['groove', 'lead', 'layers'].reduce(
    (written, key) =>
      isWritten(written, [...path, key]) ? editLesson(written, [...path, key], undefined) : written,
    text,
  );
}

/** The text with one more voice in the groove, silent at first. */
export function addVoice(text: string, place: GroovePlace, voice: Voice): string {
  const { lesson } = place;
  const first = lesson.groove[0]?.pattern.bars[0];
  const bar = lesson.meter.beats.map((_, beat) => silentLike(first?.[beat]));
  return changeVoice(text, place, voice, { bars: [bar] });
}

/** The text without a voice of the groove, its lead and its layers. */
export function removeVoice(text: string, place: GroovePlace, voice: Voice): string {
  const own = writeGroove(text, place);
  const path = partPath(own, place.section);
  const without = editLesson(own, [...path, 'groove', voice], undefined);
  const led = parseDocument(without).getIn([...path, 'lead']) === voice;
  const next = led ? editLesson(without, [...path, 'lead'], undefined) : without;
  if (!isWritten(next, [...path, 'layers'])) return next;
  const layers = place.lesson.layers.map(({ joins }) => joins.filter((join) => join !== voice));
  return setLayers(
    next,
    place,
    layers.filter((joins) => joins.length > 0),
  );
}

/** The text with a level for a voice of the groove, in dB relative to the lead voice. */
export function setLevel(text: string, { section }: GroovePlace, voice: Voice, levelDb: number): string {
  return editLesson(text, [...partPath(text, section), 'balance', voice], levelDb);
}

/** The text with a level for a voice where an exercise plays it, in dB relative to the lead voice. */
export function setExerciseLevelOf(
  text: string,
  { section }: GroovePlace,
  voice: Voice,
  levelDb: number,
): string {
  return editLesson(text, [...partPath(text, section), 'exerciseBalance', voice], levelDb);
}

/**
 * The text with other words for how a voice is played: where they are written already, else by voice. None are taken
 * out wherever this part of the lesson has them; a section then takes those of its lesson.
 */
export function setHow(text: string, { section }: GroovePlace, voice: Voice, how: How): string {
  const path = partPath(text, section);
  const places: readonly FieldPath[] = [
    [...path, 'how', voice],
    [...path, 'groove', voice, 'how'],
  ];
  const written = places.filter((place) => isWritten(text, place));
  if (how.length > 0) return editLesson(text, written[0] ?? (places[0] as FieldPath), formatHow(how));
  const without = written.reduce((left, place) => editLesson(left, place, undefined), text);
  const rest = parseDocument(without).getIn([...path, 'how']);
  return isMap(rest) && rest.items.length === 0 ? editLesson(without, [...path, 'how'], undefined) : without;
}

/** The text with another limb for a voice. */
export function setLimb(text: string, { section }: GroovePlace, voice: Voice, limb: Limb): string {
  const isUsual = section === null && VOICE_FACTS[voice].limb === limb;
  const path = partPath(text, section);
  if (isUsual && !isWritten(text, [...path, 'limbs', voice])) return text;
  return editLesson(text, [...path, 'limbs', voice], isUsual ? undefined : limb);
}

/** The text with another lead voice. */
export function setLead(text: string, place: GroovePlace, voice: Voice): string {
  return editLesson(writeGroove(text, place), [...partPath(text, place.section), 'lead'], voice);
}

/** The text with the layers in an order of one's own. */
export function setLayers(text: string, { section }: GroovePlace, layers: readonly Layer['joins'][]): string {
  const data = layers.map((joins) => (joins.length === 1 ? joins[0] : joins));
  return editLesson(text, [...partPath(text, section), 'layers'], data);
}

/** Layers with one earlier or later by one. */
export function moveLayer(layers: readonly Layer[], from: number, by: -1 | 1): readonly Layer['joins'][] {
  return withTurn(
    layers.map((layer) => layer.joins),
    from,
    by,
  );
}

/** Layers with one joined to the one before it, or taken apart again where several join at once. */
export function joinLayer(layers: readonly Layer[], at: number): readonly Layer['joins'][] {
  const joins = layers.map((layer) => layer.joins);
  const [here, before] = [joins[at], joins[at - 1]];
  if (here && here.length > 1) return joins.toSpliced(at, 1, ...here.map((each) => [each]));
  return here && before ? joins.toSpliced(at - 1, 2, [...before, ...here]) : joins;
}

function onVoice(exercise: Exercise, from: Voice, to: Voice): Exercise {
  if (exercise.parts.some((part) => part.voice === to)) return exercise;
  const parts = exercise.parts.map((part) => {
    if (part.voice !== from) return part;
    const bars = part.pattern.bars.map((bar) =>
      bar.map(({ marks }) => cell(marks.map((mark) => markFor(to, mark)).join(''))),
    );
    return { voice: to, pattern: { bars: released(bars) } };
  });
  return { ...exercise, parts };
}

/**
 * The text with another voice for the exercises: what the old one played in them the new one plays, with the marks
 * that it knows.
 */
export function setComping(
  text: string,
  whole: Lesson,
  { lesson, section }: GroovePlace,
  voice: Voice,
): string {
  const before = lesson.comping;
  const named = editLesson(text, [...partPath(text, section), 'comping'], voice);
  const follows = (index: number) =>
    section === null ? !isWritten(text, [...ownPath(text, index), 'comping']) : index === section;
  return sectionsOf(whole).reduce((written, part, index) => {
    if (!follows(index) || part.exercises.length === 0) return written;
    return setExercises(
      written,
      part.exercises.map((each) => onVoice(each, before, voice)),
      voice,
      index,
    );
  }, named);
}

/** Where a section itself says something; nowhere for one that is the lesson. */
function ownPath(text: string, index: number): FieldPath {
  const path = partPath(text, index);
  return path.length === 0 ? ['sections', -1] : path;
}
