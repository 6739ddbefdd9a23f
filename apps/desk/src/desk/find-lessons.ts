/** Which lessons of the list are looked at, and in what order. */
import { folded, type LessonSummary, type RosterName, wordsSought } from '@shedbook/routes';

/** Orders of the list. */
export const ORDERS = ['changed', 'title', 'created'] as const;

/** An order of the list. */
export type Order = (typeof ORDERS)[number];

/** A shelf that somebody looks at. */
export type ShelfChoice =
  | { readonly kind: 'all' }
  | { readonly kind: 'alike' }
  | { readonly kind: 'archive' }
  | { readonly kind: 'style'; readonly style: string }
  | { readonly kind: 'level'; readonly level: string }
  | { readonly kind: 'own'; readonly name: string }
  | { readonly kind: 'student'; readonly student: RosterName };

/** What is looked for. */
export interface Search {
  readonly text: string;
  readonly shelf: ShelfChoice;
  readonly order: Order;
  /** Language in whose order titles stand. */
  readonly language: string;
}

const found = new WeakMap<LessonSummary, string>();

/** Everything of a lesson that a search may find. */
function findable(lesson: LessonSummary): string {
  const known = found.get(lesson);
  if (known !== undefined) return known;
  const text = folded([lesson.title, lesson.by, lesson.finds, ...lesson.shelves].join('\n'));
  found.set(lesson, text);
  return text;
}

/** Lessons that play the same as another one that is not put away. */
function alike(lessons: readonly LessonSummary[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { plays } of lessons) if (plays !== null) counts.set(plays, (counts.get(plays) ?? 0) + 1);
  return new Map([...counts].filter(([, count]) => count > 1));
}

/** How many lessons play the same as another one. */
export function countAlike(lessons: readonly LessonSummary[]): number {
  const present = lessons.filter(({ isArchived }) => !isArchived);
  return [...alike(present).values()].reduce((sum, count) => sum + count, 0);
}

function isOnShelf(lesson: LessonSummary, shelf: ShelfChoice, twins: ReadonlyMap<string, number>): boolean {
  if (lesson.isArchived !== (shelf.kind === 'archive')) return false;
  switch (shelf.kind) {
    case 'all':
    case 'archive':
      return true;
    case 'alike':
      return lesson.plays !== null && twins.has(lesson.plays);
    case 'style':
      return lesson.style === shelf.style;
    case 'level':
      return lesson.level === shelf.level;
    case 'own':
      return lesson.shelves.includes(shelf.name);
    case 'student': {
      const { name, lessons } = shelf.student;
      return lesson.shelves.includes(name) || lessons.includes(lesson.id);
    }
    default:
      return shelf satisfies never;
  }
}

function inOrder({ order, language, shelf }: Search): (a: LessonSummary, b: LessonSummary) => number {
  const { compare } = new Intl.Collator(language, { numeric: true });
  const byTitle = (a: LessonSummary, b: LessonSummary) => compare(a.title ?? '', b.title ?? '');
  const orders: Readonly<Record<Order, (a: LessonSummary, b: LessonSummary) => number>> = {
    changed: (a, b) => compareTexts(b.updatedAt, a.updatedAt),
    created: (a, b) => compareTexts(b.createdAt, a.createdAt),
    title: byTitle,
  };
  // What is alike stands side by side.
  if (shelf.kind !== 'alike') return orders[order];
  return (a, b) => compareTexts(a.plays ?? '', b.plays ?? '') || orders[order](a, b);
}

function compareTexts(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}

/** The lessons that are looked for, in order: those on the shelf that have every word of the text. */
export function findLessons(lessons: readonly LessonSummary[], search: Search): readonly LessonSummary[] {
  const words = wordsSought(search.text);
  const twins = search.shelf.kind === 'alike' ? alike(lessons.filter((each) => !each.isArchived)) : new Map();
  return lessons
    .filter((each) => isOnShelf(each, search.shelf, twins))
    .filter((each) => words.every((word) => findable(each).includes(word)))
    .toSorted(inOrder(search));
}

/** Names of the teacher's own shelves, in the order of a language. */
export function shelfNames(lessons: readonly LessonSummary[], language: string): readonly string[] {
  const names = new Set(lessons.flatMap(({ shelves }) => shelves));
  return [...names].toSorted(new Intl.Collator(language, { numeric: true }).compare);
}
