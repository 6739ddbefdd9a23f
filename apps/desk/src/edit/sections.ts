/**
 * Dividing a lesson: sections are made, moved, named and taken out; comments go with what they stand at.
 *
 * Conventions: a section is its number among `sectionsOf` the lesson, from 0; exercises outside of a section are the
 * first one.
 */
import {
  type Cell,
  cell,
  divideOpening,
  editLesson,
  formatPattern,
  type Lesson,
  sectionPath,
  silentLike,
} from '@shedbook/core';
import { isMap, isSeq, parseDocument, YAMLSeq } from 'yaml';

/** The list of sections as it is written; empty where there is none. */
function listOf(text: string): YAMLSeq {
  const list = parseDocument(text).get('sections');
  return isSeq(list) ? list : new YAMLSeq();
}

/** Number of a section in the list as it is written, or -1 for exercises outside of one. */
function placeIn(text: string, section: number): number {
  const path = sectionPath(text, section);
  return path.length === 0 ? -1 : Number(path[1]);
}

function withList(text: string, list: YAMLSeq): string {
  return editLesson(text, ['sections'], list.items.length === 0 ? undefined : list);
}

/** A silent bar, divided as the first exercise of a section is. */
function silentBar(lesson: Lesson): readonly Cell[] {
  const like = lesson.exercises[0]?.parts[0]?.pattern.bars[0];
  return lesson.meter.beats.map((_, beat) =>
    silentLike(like?.[beat] ?? cell(lesson.meter.compound ? '...' : '..')),
  );
}

/** The text with a section more at the end, with a heading and a silent bar to write in. */
export function addSection(text: string, lesson: Lesson, heading: string): string {
  const list = listOf(text);
  const bar = formatPattern({ bars: [silentBar(lesson)] });
  list.add(parseDocument('').createNode({ heading, exercises: [bar] }));
  return withList(text, list);
}

/** Whether two headings are the same to whoever reads them. */
function isSame(one: string | null, other: string): boolean {
  return one?.trim().toLowerCase() === other.trim().toLowerCase();
}

/** The text with what sections name to come first mended: under its new heading, and none where it no longer stands above. */
function withBefores(text: string, renamed: { readonly from: string; readonly to: string } | null): string {
  const { items } = listOf(text);
  const saidOf = (item: unknown, key: string): string | null =>
    isMap(item) && item.has(key) ? String(item.get(key)) : null;
  return items.reduce((written: string, item, index) => {
    const before = saidOf(item, 'before');
    if (before === null) return written;
    const next = renamed && isSame(renamed.from, before) ? renamed.to : before;
    const isAbove = items.slice(0, index).some((above) => isSame(saidOf(above, 'heading'), next));
    if (next === before && isAbove) return written;
    return editLesson(written, ['sections', index, 'before'], isAbove ? next : undefined);
  }, text);
}

/** The text with a key of a section; exercises outside of a section become one where they are told of. */
export function setSection(text: string, section: number, key: 'heading' | 'text', value: string): string {
  const said = value.trim() === '' ? undefined : value.trim();
  const path = [...sectionPath(text, section), key];
  if (placeIn(text, section) >= 0) {
    const from = key === 'heading' ? parseDocument(text).getIn(path) : undefined;
    const written = editLesson(text, path, said);
    return from === undefined ? written : withBefores(written, { from: String(from), to: said ?? '' });
  }
  if (said === undefined) return text;
  return editLesson(divideOpening(text), ['sections', 0, key], said);
}

/** The text with a section one place earlier or later. */
export function moveSection(text: string, section: number, by: -1 | 1): string {
  const divided = placeIn(text, section) < 0 || placeIn(text, section + by) < 0 ? divideOpening(text) : text;
  const list = listOf(divided);
  const moved = list.items[section];
  if (!moved || section + by < 0 || section + by >= list.items.length) return text;
  list.items = list.items.toSpliced(section, 1).toSpliced(section + by, 0, moved);
  return withBefores(withList(divided, list), null);
}

/** The text without a section and its exercises; exercises outside of a section go as one does. */
export function removeSection(text: string, section: number): string {
  const place = placeIn(text, section);
  if (place < 0) return editLesson(text, ['exercises'], undefined);
  const list = listOf(text);
  list.items = list.items.toSpliced(place, 1);
  return withBefores(withList(text, list), null);
}

/** Whether a section says something of how it is played that it could take from the lesson. */
export function saysItself(text: string, section: number): readonly string[] {
  const map = parseDocument(text).getIn(sectionPath(text, section), true);
  if (placeIn(text, section) < 0 || !isMap(map)) return [];
  return map.items.map((pair) => String(pair.key)).filter((key) => ['meter', 'tempo', 'feel'].includes(key));
}
