/** What stands over the list of lessons: a search, the shelves, the order, and how many are shown. */
import { LESSON_STYLES } from '@shedbook/core';
import type { LessonSummary, RosterName } from '@shedbook/routes';
import { Button, Field, remember, remembered, Select } from '@shedbook/stand';
import { useDeferredValue, useMemo, useState } from 'react';
import { useLanguage, useWords } from '../words/words.tsx';
import {
  countAlike,
  findLessons,
  ORDERS,
  type Order,
  type Search,
  type ShelfChoice,
  shelfNames,
} from './find-lessons.ts';
import styles from './list-bar.module.css';

const ORDER_KEY = 'order';

/** What is looked for; the list follows as soon as there is time to draw it. */
export function useSearch(language: string): {
  readonly search: Search;
  readonly deferred: Search;
  readonly setSearch: (change: Partial<Search>) => void;
} {
  const [asked, setAsked] = useState<Omit<Search, 'language'>>(() => ({
    text: '',
    shelf: { kind: 'all' },
    order: ORDERS.find((each) => each === remembered(ORDER_KEY)) ?? 'changed',
  }));
  const search = useMemo(() => ({ ...asked, language }), [asked, language]);
  const setSearch = (change: Partial<Search>) => {
    if (change.order) remember(ORDER_KEY, change.order);
    setAsked((before) => ({ ...before, ...change }));
  };
  return { search, deferred: useDeferredValue(search), setSearch };
}

/** A shelf as the value of a list. */
function nameOf(shelf: ShelfChoice): string {
  switch (shelf.kind) {
    case 'style':
      return `style ${shelf.style}`;
    case 'level':
      return `level ${shelf.level}`;
    case 'own':
      return `own ${shelf.name}`;
    case 'student':
      return `student ${shelf.student.id}`;
    default:
      return shelf.kind;
  }
}

/** A shelf, and what it is called. */
type Entry = readonly [ShelfChoice, string];

interface Group {
  readonly label: string;
  readonly entries: readonly Entry[];
}

/** The shelves that anything stands on, in groups. */
function useGroups(
  lessons: readonly LessonSummary[],
  students: readonly RosterName[],
): { readonly whole: readonly Entry[]; readonly groups: readonly Group[] } {
  const { tag, words: all } = useLanguage();
  const words = all.desk;
  return useMemo(() => {
    const names = shelfNames(lessons, tag).filter((name) => !students.some((each) => each.name === name));
    const styleEntries = LESSON_STYLES.filter((style) => lessons.some((each) => each.style === style)).map(
      (style): Entry => [{ kind: 'style', style }, words.styles[style]],
    );
    const levels = Object.entries(all.levels).filter(([level]) =>
      lessons.some((each) => each.level === level),
    );
    const same = countAlike(lessons);
    const archived = lessons.filter(({ isArchived }) => isArchived).length;
    const whole: readonly Entry[] = [
      [{ kind: 'all' }, words.allLessons],
      ...(same > 0 ? [[{ kind: 'alike' }, words.alike({ n: same })] as const] : []),
      ...(archived > 0 ? [[{ kind: 'archive' }, words.archiveShelf({ n: archived })] as const] : []),
    ];
    const groups: readonly Group[] = [
      {
        label: words.byStudent,
        entries: students.map((student): Entry => [{ kind: 'student', student }, student.name]),
      },
      { label: words.byStyle, entries: styleEntries },
      {
        label: words.byLevel,
        entries: levels.map(([level, name]): Entry => [{ kind: 'level', level }, name]),
      },
      { label: words.ownShelves, entries: names.map((name): Entry => [{ kind: 'own', name }, name]) },
    ];
    return { whole, groups: groups.filter(({ entries }) => entries.length > 0) };
  }, [lessons, students, tag, words, all]);
}

interface ListBarProps {
  readonly lessons: readonly LessonSummary[];
  readonly students: readonly RosterName[];
  readonly search: Search;
  /** How many lessons are shown. */
  readonly shown: number;
  readonly onSearch: (change: Partial<Search>) => void;
}

function ShelfSelect({ lessons, students, search, onSearch }: Omit<ListBarProps, 'shown'>) {
  const words = useWords().desk;
  const { whole, groups } = useGroups(lessons, students);
  const all = [...whole, ...groups.flatMap(({ entries }) => entries)];
  const option = ([shelf, label]: Entry) => (
    <option key={nameOf(shelf)} value={nameOf(shelf)}>
      {label}
    </option>
  );
  return (
    <Select
      label={words.shelf}
      value={nameOf(search.shelf)}
      onChange={(event) => {
        const [shelf] = all.find(([each]) => nameOf(each) === event.target.value) ?? [
          { kind: 'all' } as const,
        ];
        onSearch({ shelf });
      }}
    >
      {whole.map(option)}
      {groups.map(({ label, entries }) => (
        <optgroup key={label} label={label}>
          {entries.map(option)}
        </optgroup>
      ))}
    </Select>
  );
}

/** How many are shown, and where else there are some. */
function Shown({ lessons, search, shown, onSearch }: Omit<ListBarProps, 'students'>) {
  const words = useWords().desk;
  const isWhole = search.text.trim() === '' && search.shelf.kind === 'all';
  const put = search.shelf.kind === 'archive' ? 0 : inArchive(lessons, search);
  return (
    <div className={styles.shown}>
      <p className="quiet" role="status">
        {isWhole ? '' : shown === 0 ? words.nothingFound : words.shown({ n: shown, all: lessons.length })}
      </p>
      {!isWhole && put > 0 && (
        <Button dress="bare" onClick={() => onSearch({ shelf: { kind: 'archive' } })}>
          {words.moreInArchive({ n: put })}
        </Button>
      )}
      {!isWhole && (
        <Button
          dress="bare"
          onClick={({ currentTarget }) => {
            // The button goes with what it undid: keys go on from the search.
            currentTarget.closest('search')?.querySelector('input')?.focus();
            onSearch({ text: '', shelf: { kind: 'all' } });
          }}
        >
          {words.showAll}
        </Button>
      )}
    </div>
  );
}

function inArchive(lessons: readonly LessonSummary[], search: Search): number {
  if (search.text.trim() === '') return 0;
  return findLessons(lessons, { ...search, shelf: { kind: 'archive' } }).length;
}

/** The bar. */
export function ListBar(props: ListBarProps) {
  const { search, onSearch } = props;
  const words = useWords().desk;
  return (
    <search className={styles.bar} data-part="list-bar">
      <Field
        className={styles.text}
        type="search"
        label={words.search}
        value={search.text}
        onChange={(event) => onSearch({ text: event.target.value })}
        onKeyDown={(event) => event.key === 'Escape' && onSearch({ text: '' })}
      />
      <ShelfSelect {...props} />
      <Select
        label={words.order}
        value={search.order}
        onChange={(event) => onSearch({ order: event.target.value as Order })}
      >
        {ORDERS.map((order) => (
          <option key={order} value={order}>
            {words.orders[order]}
          </option>
        ))}
      </Select>
      <Shown {...props} />
    </search>
  );
}
