/**
 * Shape problems: from what the schema refuses to located problems, and the lesson with the refused parts taken
 * out, so that the rest can still be looked at.
 */
import type * as z from 'zod/mini';
import { expectedBy } from '../lesson/expecting.ts';
import type { LessonFact } from '../lesson/lesson-fact.ts';
import { didYouMean, valueFact } from '../lesson/value-fact.ts';
import type { FieldPath } from './field-path.ts';
import { nearest } from './nearest.ts';
import { MOST_PROBLEMS } from './problem.ts';
import { lessonSchema, type RawLesson } from './schema.ts';

type Issue = z.core.$ZodIssue;

/** What the schema refuses, before it is located. */
export interface ShapeFault {
  readonly code: string;
  readonly path: FieldPath;
  /** Whether it is about the key itself rather than its value. */
  readonly onKey: boolean;
  readonly found: LessonFact;
  readonly expected: LessonFact;
  readonly repair: LessonFact | null;
}

function valueAt(root: unknown, path: FieldPath): unknown {
  return path.reduce<unknown>(
    (value, key) => (value === null || value === undefined ? undefined : (value as never)[key]),
    root,
  );
}

/** Of a union's branches, the one that accepts the kind of value found and complains about what is inside it. */
function branchInside(issue: Extract<Issue, { code: 'invalid_union' }>): readonly Issue[] | null {
  const inside = issue.errors.filter((branch) =>
    branch.every((each) => each.path.length > 0 || !['invalid_type', 'invalid_value'].includes(each.code)),
  );
  return inside[0] ?? null;
}

/** Issues with unions opened up as far as the value found tells which branch was meant. */
function flatten(issue: Issue, prefix: FieldPath): readonly Issue[] {
  const path = [...prefix, ...(issue.path as FieldPath)];
  if (issue.code === 'invalid_union') {
    const inside = branchInside(issue);
    if (inside) return inside.flatMap((each) => flatten(each, path));
  }
  return [{ ...issue, path: [...path] }];
}

/** The keys that are known at a path, from the schema. */
function knownKeys(schema: unknown, path: FieldPath): readonly string[] {
  let at: unknown = schema;
  for (const key of path) {
    const candidates = objectsIn(at).map((object) => object.shape[String(key)]);
    const elements = elementsIn(at);
    at = candidates.find((each) => each !== undefined) ?? elements[0];
  }
  return objectsIn(at).flatMap((object) => Object.keys(object.shape));
}

interface SchemaDef {
  readonly type: string;
  readonly innerType?: unknown;
  readonly in?: unknown;
  readonly options?: readonly unknown[];
  readonly element?: unknown;
  readonly valueType?: unknown;
}

function defOf(schema: unknown): SchemaDef | null {
  return (schema as { readonly def?: SchemaDef } | undefined)?.def ?? null;
}

function unwrap(schema: unknown): readonly unknown[] {
  const def = defOf(schema);
  if (!def) return [];
  if (def.innerType) return unwrap(def.innerType);
  if (def.type === 'pipe') return unwrap(def.in);
  if (def.options) return def.options.flatMap(unwrap);
  return [schema];
}

function objectsIn(schema: unknown): readonly { readonly shape: Record<string, unknown> }[] {
  return unwrap(schema).filter((each) => defOf(each)?.type === 'object') as never[];
}

function elementsIn(schema: unknown): readonly unknown[] {
  return unwrap(schema).flatMap((each) => {
    const def = defOf(each);
    const inside = def?.type === 'array' ? def.element : def?.type === 'record' ? def.valueType : null;
    return inside ? [inside] : [];
  });
}

function unknownKeyFault(schema: unknown, path: FieldPath, key: string): ShapeFault {
  const known = knownKeys(schema, path);
  const near = nearest(key, known);
  return {
    code: 'unknown-key',
    path: [...path, key],
    onKey: true,
    found: { fact: 'unknown-key', key },
    expected: { fact: 'one-of', words: known },
    repair: didYouMean(near),
  };
}

/** What to call a fault of a value. */
function codeOf(issue: Issue, value: unknown): string {
  if (value === undefined) return 'missing';
  if (issue.code === 'too_small' || issue.code === 'too_big') return 'out-of-range';
  if (issue.code === 'invalid_value') return 'unknown-word';
  return 'wrong-value';
}

/** How scores begin that other programs write. Source: XML 1.0, section 2.8; Standard MIDI Files 1.0. */
const SCORE = /^(<|MThd)/;

function suggestion(issue: Issue, value: unknown): LessonFact | null {
  if (issue.path.length === 0 && typeof value === 'string' && SCORE.test(value))
    return { fact: 'import-score' };
  if (issue.code === 'invalid_type' && issue.expected === 'boolean' && typeof value === 'string') {
    const word = /^(yes|on|y)$/i.test(value) ? 'true' : /^(no|off|n)$/i.test(value) ? 'false' : null;
    return word && { fact: 'write-word', word };
  }
  if (issue.code !== 'invalid_value' || typeof value !== 'string') return null;
  return didYouMean(nearest(value, issue.values.map(String)));
}

function faultsOf(schema: unknown, raw: unknown, issue: Issue, most: number): readonly ShapeFault[] {
  const path = issue.path as FieldPath;
  if (issue.code === 'unrecognized_keys')
    return issue.keys.slice(0, most).map((key) => unknownKeyFault(schema, path, key));
  const value = valueAt(raw, path);
  const fault = {
    code: codeOf(issue, value),
    path,
    onKey: false,
    found: valueFact(value),
    expected: expectedBy(issue),
    repair: suggestion(issue, value),
  };
  return [fault];
}

/** Where a value is of the wrong kind, nothing else is said of it: an empty list for a text is not also too short. */
function saidOnce(issues: readonly Issue[]): readonly Issue[] {
  const at = ({ path }: Issue) => path.join('\n');
  const wrongKind = new Set(issues.filter(({ code }) => code === 'invalid_type').map(at));
  return issues.filter((issue) => issue.code === 'invalid_type' || !wrongKind.has(at(issue)));
}

/** What is taken out of a value: all of it, or what lies under some of its keys. */
interface Cut {
  isWhole: boolean;
  readonly under: Map<string, Cut>;
}

/** All cuts as one, so that a value is copied once however many there are. */
function cutsAt(paths: readonly FieldPath[]): Cut {
  const root: Cut = { isWhole: false, under: new Map() };
  for (const path of paths) {
    let at = root;
    for (const key of path.map(String)) {
      const next: Cut = at.under.get(key) ?? { isWhole: false, under: new Map() };
      at.under.set(key, next);
      at = next;
    }
    at.isWhole = true;
  }
  return root;
}

/** A copy of `value` without what is cut out of it; items cut out of lists leave `undefined`. */
function without(value: unknown, cut: Cut | undefined): unknown {
  if (!cut) return value;
  if (cut.isWhole || value === null || typeof value !== 'object') return undefined;
  if (Array.isArray(value)) return value.map((each, index) => without(each, cut.under.get(String(index))));
  const entries = Object.entries(value).map(
    ([key, each]) => [key, without(each, cut.under.get(key))] as const,
  );
  return Object.fromEntries(entries.filter(([, each]) => each !== undefined));
}

/** A section of a form makes sense only whole: a fault inside it takes it out. */
function partOf(path: FieldPath): FieldPath {
  const forms = path.indexOf('forms');
  return forms >= 0 && path[forms + 2] === 'sections' ? path.slice(0, forms + 4) : path;
}

/** What has to go for an issue to be gone: the value it is about, or what lacks that value. */
function cutsOf(raw: unknown, issue: Issue): readonly FieldPath[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => [...(issue.path as FieldPath), key]);
  }
  const path = partOf(issue.path as FieldPath);
  if (valueAt(raw, path) !== undefined || path.length === 0) return [path];
  return path.length === 1 ? [] : [path.slice(0, -1)];
}

/** A lesson whose shape has been checked. */
export interface Shaped {
  readonly faults: readonly ShapeFault[];
  /** What is left when the faults are taken out; items taken out of lists leave `undefined`. */
  readonly lesson: RawLesson;
}

type WithGroove = Pick<RawLesson, 'groove'>;

/** The schema gives voices in its own order: a groove is in the order of the file, since its first voice leads. */
function grooveAsWritten<T extends WithGroove>(part: T, written: unknown): T {
  const { groove } = part;
  if (!groove) return part;
  const order = Object.keys((written as { readonly groove: object }).groove);
  const entries = Object.entries(groove).toSorted(([a], [b]) => order.indexOf(a) - order.indexOf(b));
  return { ...part, groove: Object.fromEntries(entries) as typeof groove };
}

/** The grooves of a lesson and of its sections in the order of the file. */
function inWrittenOrder(lesson: RawLesson, written: unknown): RawLesson {
  const whole = grooveAsWritten(lesson, written);
  if (!whole.sections) return whole;
  const inside = (written as { readonly sections: readonly unknown[] }).sections;
  const sections = whole.sections.map((each, index) => each && grooveAsWritten(each, inside[index]));
  return { ...whole, sections };
}

/**
 * Checks the shape of what a person wrote and takes out what is wrong with it.
 * @param blank what makes an empty document one that the schema accepts
 */
export function shape<S extends z.ZodMiniType>(
  schema: S,
  raw: unknown,
  blank: object,
): { readonly faults: readonly ShapeFault[]; readonly data: z.output<S>; readonly left: unknown } {
  const faults: ShapeFault[] = [];
  let left = raw;
  for (let round = 0; ; round += 1) {
    const result = schema.safeParse(left);
    if (result.success) return { faults, data: result.data, left };
    const issues = result.error.issues.flatMap((issue) => flatten(issue, []));
    if (round === 0)
      for (const issue of saidOnce(issues)) {
        if (faults.length >= MOST_PROBLEMS) break;
        faults.push(...faultsOf(schema, raw, issue, MOST_PROBLEMS - faults.length));
      }
    const pruned = without(left, cutsAt(issues.flatMap((issue) => cutsOf(left, issue))));
    left = { ...blank, ...(pruned as object | undefined) };
  }
}

/** Checks a lesson's shape and takes out what is wrong with it. */
export function shapeLesson(raw: unknown): Shaped {
  const { faults, data, left } = shape(lessonSchema, raw, { title: 'untitled' });
  return { faults, lesson: inWrittenOrder(data, left) };
}
