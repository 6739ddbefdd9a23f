/** Where a lesson is filed: its level, and the shelves that it stands on. */
import { LEVELS } from '@shedbook/judge';
import { type LessonFiling, type LessonSummary, ROSTER_PAGE, type RosterName } from '@shedbook/routes';
import { Button, Check, Choices, closeSheet, Field, Sheet } from '@shedbook/stand';
import { type FormEvent, useState } from 'react';
import { useLanguage } from '../words/words.tsx';
import styles from './filing-sheet.module.css';
import { shelfNames } from './find-lessons.ts';

type LevelChoice = NonNullable<LessonFiling['level']> | 'none';

interface FilingSheetProps {
  readonly lesson: LessonSummary;
  /** Every lesson: their shelves are offered. */
  readonly lessons: readonly LessonSummary[];
  readonly students: readonly RosterName[];
  readonly onFile: (change: Partial<LessonFiling>) => void;
  readonly onClose: () => void;
}

function NewShelf({ onAdd }: { readonly onAdd: (name: string) => void }) {
  const { words } = useLanguage();
  const [name, setName] = useState('');
  const add = (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() !== '') onAdd(name.trim());
    setName('');
  };
  return (
    <form className={styles.add} onSubmit={add}>
      <Field
        label={words.desk.newShelf}
        value={name}
        maxLength={100}
        onChange={(event) => setName(event.target.value)}
      />
      <Button type="submit">{words.desk.addShelf}</Button>
    </form>
  );
}

/** The sheet; every choice is kept at once. */
export function FilingSheet({ lesson, lessons, students, onFile, onClose }: FilingSheetProps) {
  const { tag, words: all } = useLanguage();
  const words = all.desk;
  // Of many students only those who have the lesson; any other name can be written.
  const offered =
    students.length > ROSTER_PAGE ? students.filter((each) => each.lessons.includes(lesson.id)) : students;
  const names = new Set([...offered.map(({ name }) => name), ...shelfNames(lessons, tag)]);
  const put = (name: string, on: boolean) => {
    const others = lesson.shelves.filter((each) => each !== name);
    onFile({ shelves: on ? [...others, name] : others });
  };
  return (
    <Sheet
      title={words.fileTitle({ title: lesson.title ?? words.untitled })}
      onClose={onClose}
      actions={
        <Button dress="strong" onClick={closeSheet}>
          {all.heading.close}
        </Button>
      }
    >
      <div className={styles.sheet}>
        <Choices<LevelChoice>
          label={words.byLevel}
          value={lesson.level ?? 'none'}
          choices={[['none', words.noLevel], ...LEVELS.map((level) => [level, all.levels[level]] as const)]}
          onChange={(level) => onFile({ level: level === 'none' ? null : level })}
        />
        <fieldset className={styles.shelves}>
          <legend>{words.onShelves}</legend>
          {[...names].map((name) => (
            <Check key={name} checked={lesson.shelves.includes(name)} onChange={(on) => put(name, on)}>
              {name}
            </Check>
          ))}
          <NewShelf onAdd={(name) => put(name, true)} />
        </fieldset>
      </div>
    </Sheet>
  );
}
