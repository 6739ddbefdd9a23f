/** The draft of what a student is set next: taken, changed or left; one press sets it. */
import { type DraftItem, draftNext, nameOf, type StudentFile } from '@shedbook/coach';
import { countedTempo } from '@shedbook/core';
import type { StoredAssignment } from '@shedbook/routes';
import { Button, Check, Field } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { useMemo, useState } from 'react';
import { ExerciseDrawing } from '../notation/exercise-drawing.tsx';
import { KeptField } from '../shared/kept-field.tsx';
import { useSay, useWords } from '../words/words.tsx';
import styles from './next-lesson.module.css';
import { ExerciseGrid } from './standing-list.tsx';
import { writtenTempo } from './written-tempo.ts';

/** What the teacher makes of an item of the draft. */
type Change = Partial<Pick<DraftItem, 'isTaken' | 'toBpm' | 'note'>>;

interface ItemProps {
  readonly item: DraftItem;
  readonly onChange: (change: Change) => void;
}

function Item({ item, onChange }: ItemProps) {
  const all = useWords();
  const words = all.nextLesson;
  const say = useSay();
  const { exercise: standing, toBpm, note, why, isTaken } = item;
  const { exercise, lesson } = standing;
  const named = { exercise: nameOf(standing) };
  return (
    <li className={styles.item} data-part="draft" data-taken={isTaken}>
      <Check checked={isTaken} onChange={(next) => onChange({ isTaken: next })}>
        {words.take(named)}
      </Check>
      <div role="img" aria-label={sayExercise(exercise, all)}>
        <ExerciseDrawing exercise={exercise} meter={lesson.meter} />
      </div>
      <p>{say(why)}</p>
      {isTaken && (
        <>
          <KeptField
            type="number"
            label={words.upTo(named)}
            value={String(countedTempo(lesson.meter, toBpm))}
            onKeep={(text) => onChange({ toBpm: writtenTempo(lesson.meter, text) ?? toBpm })}
          />
          <KeptField
            label={words.note(named)}
            value={note ?? ''}
            onKeep={(text) => onChange({ note: text.trim() || null })}
          />
        </>
      )}
    </li>
  );
}

interface NextLessonProps {
  readonly student: StudentFile;
  /** A moment. */
  readonly now: string;
  /** The day of the next lesson as far as it is known, ISO 8601 without a time. */
  readonly nextDay: string;
  readonly onSet: (assignments: readonly StoredAssignment[]) => void;
}

/** The draft, and setting it. */
export function NextLesson({ student, now, nextDay, onSet }: NextLessonProps) {
  const words = useWords().nextLesson;
  const { name } = student;
  const [changes, setChanges] = useState<Readonly<Record<string, Change>>>({});
  const [chosenDay, setDay] = useState<string | null>(null);
  const drafted = useMemo(() => draftNext(student, now), [student, now]);
  const day = chosenDay ?? nextDay;
  const draft = drafted.map((item) => ({ ...item, ...changes[item.exercise.item] }));
  const taken = draft.filter(({ isTaken }) => isTaken);
  const set = () => {
    onSet(
      taken.map(({ lesson, key, pinned, note, toBpm }) => {
        return { lesson, exercise: key, pinned, note, toBpm, by: day === '' ? null : day };
      }),
    );
    setChanges({});
  };
  return (
    <section aria-label={words.title} data-part="next-lesson">
      <h3>{words.title}</h3>
      <p className="quiet">{draft.length === 0 ? words.nothing : words.lead}</p>
      {draft.length > 0 && (
        <>
          <ExerciseGrid>
            {draft.map((item) => (
              <Item
                key={item.exercise.item}
                item={item}
                onChange={(change) =>
                  setChanges((before) => ({
                    ...before,
                    [item.exercise.item]: { ...before[item.exercise.item], ...change },
                  }))
                }
              />
            ))}
          </ExerciseGrid>
          <div className={styles.foot}>
            <Field
              label={words.on}
              type="date"
              value={day}
              onChange={(event) => setDay(event.target.value)}
            />
            <Button dress="strong" onClick={set}>
              {words.set({ n: taken.length, name })}
            </Button>
          </div>
        </>
      )}
    </section>
  );
}
