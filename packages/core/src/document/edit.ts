/**
 * Changing a lesson file and nothing else in it: the text outside the changed key stays as it was, letter by letter;
 * comments and order inside it are kept. The key is one of the lesson, or one of a section.
 */
import { Document, isMap, isNode, isScalar, isSeq, type Node, type Pair, parseDocument, YAMLMap } from 'yaml';
import type { Voice } from '../kit/voice.ts';
import type { Exercise } from '../lesson/lesson.ts';
import type { FieldPath } from './field-path.ts';
import { exerciseToData, PRINT } from './print.ts';

function keyOf(pair: Pair): string {
  return String(isScalar(pair.key) ? pair.key.value : pair.key);
}

/** A map that stands in lines of its own, so that one of its keys can be written anew. */
interface Home {
  readonly pairs: readonly Pair[];
  /** How many steps of the path lead to it. */
  readonly depth: number;
  /** Offset in the text at which what belongs to it ends. */
  readonly limit: number;
}

/** The innermost map of its own lines that a path leads through: a section's, else the lesson's. */
function homeOf(document: Document, path: FieldPath, text: string): Home {
  const [key, index] = path;
  const section = key === 'sections' && path.length > 2 ? document.getIn([key, index], true) : null;
  if (isMap(section) && !section.flow && section.items.length > 0) {
    return { pairs: section.items, depth: 2, limit: section.range?.[2] ?? text.length };
  }
  const pairs = isMap(document.contents) ? document.contents.items : [];
  return { pairs, depth: 0, limit: text.length };
}

/** Offset of the line that a pair starts on, after the comments above it. */
function startOf(pair: Pair | undefined): number {
  return (pair?.key as { range?: [number, number, number] } | undefined)?.range?.[0] ?? 0;
}

/** How far in from the start of its line an offset lies. */
function columnOf(text: string, offset: number): number {
  return offset - (text.lastIndexOf('\n', offset - 1) + 1);
}

/** Text of one pair, without the comments that stand above it; lines after the first are set in. */
function printPair(pair: Pair | undefined, indent: number): string {
  if (!pair) return '';
  if (isScalar(pair.key)) Object.assign(pair.key, { commentBefore: null, spaceBefore: false });
  const alone = new Document<Node>();
  const map = new YAMLMap();
  map.items = [pair];
  alone.contents = map;
  const [first, ...others] = alone.toString(PRINT).trimEnd().split('\n');
  return [first, ...others.map((line) => (line === '' ? '' : ' '.repeat(indent) + line))].join('\n');
}

/** End of a pair in the text: where its last line with content ends. */
function endOf(text: string, start: number, limit: number): number {
  const lines = text.slice(start, limit).split('\n');
  while (lines.length > 1 && /^\s*(#.*)?$/.test(lines.at(-1) ?? '')) lines.pop();
  return start + lines.join('\n').length;
}

/** A value as a node; a comment behind the value that it replaces stays. */
function nodeOf(document: Document, path: FieldPath, value: unknown): Node {
  const node = document.createNode(value) as Node;
  const old = document.getIn(path, true);
  if (isScalar(old) && isScalar(node)) node.comment = old.comment ?? null;
  return node;
}

/**
 * Sets (or with `undefined` removes) the field at `path`.
 * @returns the new text; the text of every other key of the lesson, or of the section that the path leads into, is
 * unchanged.
 * @throws SyntaxError when the text is not YAML: check it first.
 */
export function editLesson(text: string, path: FieldPath, value: unknown): string {
  const document = parseDocument(text);
  if (document.errors.length > 0) throw new SyntaxError(document.errors[0]?.message);
  const { pairs, depth, limit } = homeOf(document, path, text);
  const key = String(path[depth]);
  const keys = pairs.map(keyOf);
  const starts = pairs.map(startOf);
  const index = keys.indexOf(key);
  if (value === undefined) document.deleteIn(path);
  else document.setIn(path, nodeOf(document, path, value));
  // What stands in braces has no lines of its own.
  if (isMap(document.contents) && document.contents.flow) return document.toString(PRINT);
  const indent = depth === 0 ? 0 : columnOf(text, starts[0] ?? 0);
  const changed = homeOf(document, path, text).pairs.find((pair) => keyOf(pair) === key);
  const printed = printPair(changed, indent);
  if (index < 0 && depth === 0) {
    return `${text}${text === '' || text.endsWith('\n') ? '' : '\n'}${printed}\n`;
  }
  if (index < 0) {
    const end = endOf(text, starts.at(-1) ?? 0, limit);
    return `${text.slice(0, end)}\n${' '.repeat(indent)}${printed}${text.slice(end)}`;
  }
  const start = starts[index] ?? 0;
  const end = endOf(text, start, starts[index + 1] ?? limit);
  // A key that goes takes its line with it.
  if (printed === '' && depth === 0) return text.slice(0, start) + text.slice(end).replace(/^\n/, '');
  return text.slice(0, start) + printed + text.slice(end);
}

/**
 * Where a section is written, as a path: its place among `sectionsOf` the lesson. Exercises outside of a section are
 * the first one, and so is a lesson that is not divided: the path is then empty.
 */
export function sectionPath(text: string, section: number): FieldPath {
  const document = parseDocument(text);
  const sections = document.get('sections');
  if (!isSeq(sections) || sections.items.length === 0) return [];
  const opening = document.get('exercises');
  const index = section - (isSeq(opening) && opening.items.length > 0 ? 1 : 0);
  return index < 0 ? [] : ['sections', index];
}

/** Items of a list of exercises by their data, so that those that stay keep their comments. */
function itemsByData(document: Document, list: unknown): ReadonlyMap<string, unknown> {
  if (!isSeq(list)) return new Map();
  return new Map(list.items.map((item) => [JSON.stringify((item as Node).toJS(document)), item]));
}

/** An item of a list as it is written anew, with the comments of the one that stood in its place. */
function withCommentsOf(item: Node, before: Node): Node {
  const beside = isScalar(item) ? before.comment : null;
  const over = [before.commentBefore, isScalar(item) ? null : before.comment].filter((each) => each != null);
  if (beside != null) item.comment = beside;
  if (over.length > 0) item.commentBefore = over.join('\n');
  return item;
}

/**
 * Writes the exercises of a section (the first, which is the whole of a lesson that is not divided, when left out)
 * into a lesson file's text, in place of those it has; comments of exercises that stay are kept, and where as
 * many are written as there were, those of exercises that changed.
 * @throws SyntaxError when the text is not YAML: check it first.
 */
export function setExercises(
  text: string,
  exercises: readonly Omit<Exercise, 'number'>[],
  comping: Voice,
  section = 0,
): string {
  const document = parseDocument(text);
  const path = [...sectionPath(text, section), 'exercises'];
  const before = document.getIn(path);
  const kept = itemsByData(document, before);
  const data = exercises.map((exercise) => exerciseToData(exercise, comping));
  const list = document.createNode(data);
  if (isSeq(before)) list.commentBefore = before.commentBefore ?? null;
  const staying = data.map((each) => kept.get(JSON.stringify(each)));
  const inPlace = (i: number) => {
    const old = isSeq(before) && before.items.length === data.length ? before.items[i] : undefined;
    return isNode(old) && !staying.includes(old) ? old : null;
  };
  list.items = data.map((_, i) => {
    const [item, old] = [list.items[i], inPlace(i)];
    return (staying[i] ?? (isNode(item) && old ? withCommentsOf(item, old) : item)) as never;
  });
  return editLesson(text, path, list);
}
