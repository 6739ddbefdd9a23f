/**
 * Changing a lesson file and nothing else in it: the text outside the changed top-level key stays as it was,
 * letter by letter; comments and order inside it are kept.
 */
import { type Document, isMap, isScalar, isSeq, type Node, type Pair, parseDocument } from 'yaml';
import type { Voice } from '../kit/voice.ts';
import type { Exercise } from '../lesson/lesson.ts';
import type { FieldPath } from './field-path.ts';
import { exerciseToData, PRINT } from './print.ts';

function keyOf(pair: Pair): string {
  return String(isScalar(pair.key) ? pair.key.value : pair.key);
}

function topPairs(document: Document): readonly Pair[] {
  return isMap(document.contents) ? document.contents.items : [];
}

/** Offset of the line that the pair at `index` starts on, its own comments above it included. */
function startOf(document: Document, index: number): number {
  const pair = topPairs(document)[index];
  return (pair?.key as { range?: [number, number, number] } | undefined)?.range?.[0] ?? 0;
}

/** Text of one top-level pair, without the comments that stand above it. */
function printPair(document: Document, key: string): string {
  const pair = topPairs(document).find((each) => keyOf(each) === key);
  if (!pair) return '';
  const alone = document.clone() as Document;
  if (!isMap(alone.contents)) return '';
  alone.commentBefore = null;
  alone.comment = null;
  alone.contents.items = alone.contents.items.filter((each) => keyOf(each as Pair) === key);
  for (const each of alone.contents.items) {
    const { key: node } = each as Pair;
    if (isScalar(node)) Object.assign(node, { commentBefore: null, spaceBefore: false });
  }
  alone.contents.commentBefore = null;
  return alone.toString(PRINT);
}

/** End of a pair in the text: where its last line with content ends. */
function endOf(text: string, start: number, limit: number): number {
  const lines = text.slice(start, limit).split('\n');
  while (lines.length > 1 && /^\s*(#.*)?$/.test(lines.at(-1) ?? '')) lines.pop();
  return start + lines.join('\n').length;
}

/**
 * Sets (or with `undefined` removes) the field at `path`.
 * @returns the new text; the text of every other top-level key is unchanged.
 * @throws SyntaxError when the text is not YAML: check it first.
 */
export function editLesson(text: string, path: FieldPath, value: unknown): string {
  const document = parseDocument(text);
  if (document.errors.length > 0) throw new SyntaxError(document.errors[0]?.message);
  const key = String(path[0]);
  const index = topPairs(document).findIndex((pair) => keyOf(pair) === key);
  if (value === undefined) document.deleteIn(path);
  else document.setIn(path, document.createNode(value));
  const printed = printPair(document, key).trimEnd();
  if (index < 0) return `${text}${text === '' || text.endsWith('\n') ? '' : '\n'}${printed}\n`;
  const before = parseDocument(text);
  const start = startOf(before, index);
  const limit = index + 1 < topPairs(before).length ? startOf(before, index + 1) : text.length;
  const end = endOf(text, start, limit);
  return text.slice(0, start) + printed + text.slice(end);
}

/** Items of the list at `exercises` by their data, so that those that stay keep their comments. */
function itemsByData(document: Document): ReadonlyMap<string, unknown> {
  const list = document.get('exercises');
  if (!isSeq(list)) return new Map();
  return new Map(list.items.map((item) => [JSON.stringify((item as Node).toJS(document)), item]));
}

/**
 * Writes the exercises into a lesson file's text, in place of those it has; comments of exercises that stay are
 * kept.
 * @throws SyntaxError when the text is not YAML: check it first.
 */
export function setExercises(
  text: string,
  exercises: readonly Omit<Exercise, 'number'>[],
  comping: Voice,
): string {
  const document = parseDocument(text);
  const kept = itemsByData(document);
  const data = exercises.map((exercise) => exerciseToData(exercise, comping));
  const list = document.createNode(data);
  const before = document.get('exercises');
  if (isSeq(before)) list.commentBefore = before.commentBefore ?? null;
  list.items = data.map((each, i) => (kept.get(JSON.stringify(each)) ?? list.items[i]) as never);
  return editLesson(text, ['exercises'], list);
}
