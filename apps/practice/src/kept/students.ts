/**
 * Who practises on this device. Each student has a history, takes and choices of their own; language, colours, foot
 * switches and the way of the sound are the device's.
 *
 * Conventions: the first student of a device has the empty id, so that what was kept before there were several is
 * theirs. Ids say nothing about a person; names stay on the device.
 */
import { shortNameOf } from '@shedbook/coach';
import { remember, remembered, rememberedNames } from '@shedbook/stand';

/** A student of this device. */
export interface Student {
  readonly id: string;
  /** Empty while nobody has given one. */
  readonly name: string;
}

const ALL = 'students';
const CURRENT = 'student';

function isStudent(value: unknown): value is Student {
  const { id, name } = (value ?? {}) as Partial<Student>;
  return typeof id === 'string' && typeof name === 'string';
}

/** Everybody who practises here, the first student first. */
export function students(): readonly Student[] {
  let kept: unknown = null;
  try {
    kept = JSON.parse(remembered(ALL) ?? 'null');
  } catch {
    kept = null;
  }
  const known = Array.isArray(kept) ? kept.filter(isStudent) : [];
  return known.some(({ id }) => id === '') ? known : [{ id: '', name: '' }, ...known];
}

/** Read once: whoever changes it opens the page anew, so that nothing of one student meets another. */
let current: string | null = null;

/** The id of the student who practises now. */
export function currentStudent(): string {
  current ??= students().find(({ id }) => id === remembered(CURRENT))?.id ?? '';
  return current;
}

function keepAll(all: readonly Student[]): void {
  remember(ALL, JSON.stringify(all));
}

/** Gives a student a name. */
export function nameStudent(id: string, name: string): void {
  keepAll(students().map((each) => (each.id === id ? { id, name } : each)));
}

/** Adds a student. @returns the id of the new one */
export function addStudent(name: string): string {
  const id = crypto.randomUUID().slice(0, 8);
  keepAll([...students(), { id, name }]);
  return id;
}

/** Takes a student off the list; what was kept of them is deleted by whoever calls this. */
export function forgetStudent(id: string): void {
  keepAll(students().filter((each) => each.id !== id || id === ''));
}

/** Lets another student practise: the page is opened anew. */
export function letPractise(id: string): void {
  remember(CURRENT, id);
  window.location.reload();
}

/**
 * Lets the student of a private link practise here, whoever did before: what they do is kept apart from everybody
 * else's on this device. Called before anything of a student is looked at.
 * @param lasting the student's lasting name, as their teacher's desk has it
 */
export function practiseAs({ id: lasting, name }: Student): void {
  const id = shortNameOf(lasting);
  const others = students().filter((each) => each.id !== id);
  keepAll([...others, { id, name }]);
  remember(CURRENT, id);
  current = id;
}

/** The name under which something of a student is kept, beside those of others. */
export function ownName(name: string, id = currentStudent()): string {
  return id === '' ? name : `${name} ${id}`;
}

/** Remembers a choice of the student who practises now. */
export function rememberOwn(name: string, value: string): void {
  remember(ownName(name), value);
}

/** What the student who practises now chose, or null. */
export function rememberedOwn(name: string): string | null {
  return remembered(ownName(name));
}

/** Names of what a student chooses; everything else is the device's. */
const OWN = /^(practice\..+|goal\..+|hearing|line-check|ears|plan\.(minutes|lessons)|week\..+)$/;

/** Whether something that is remembered is a student's own. */
export function isOwn(name: string): boolean {
  return OWN.test(name);
}

/** Everything that the student who practises now chose, by its name without whose it is. */
export function ownSettings(): Readonly<Record<string, string>> {
  const end = ownName('');
  const all: Record<string, string> = {};
  for (const name of rememberedNames()) {
    const own = end === '' ? name : name.endsWith(end) ? name.slice(0, -end.length) : '';
    const value = isOwn(own) && !/ [0-9a-f]{8}$/.test(own) ? remembered(name) : null;
    if (value !== null) all[own] = value;
  }
  return all;
}
