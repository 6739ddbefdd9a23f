/** The draft of what a student is set next: taken, changed or left; one press sets it. */
import { type DraftItem, draftNext, nameOf, type StudentFile } from '@shedbook/coach';
import { countedTempo } from '@shedbook/core';
import type { StoredAssignment } from '@shedbook/routes';
import { Button, Check, Field } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { useMemo, useState } from 'react';
import { ExerciseDrawing } from '../notation/exercise-drawing.tsx';
import { KeptField } from '../shared/kept-field.tsx';
import { TurnButtons, type TurnButtonsProps } from '../shared/turn-buttons.tsx';
import { withTurn } from '../shared/with-turn.ts';
import { useSay, useWords } from '../words/students-words.tsx';
import styles from './next-lesson.module.css';
import { ExerciseGrid } from './standing-list.tsx';
import { writtenTempo } from './written-tempo.ts';

type NextWords = ReturnType<typeof useWords>['nextLesson'];

/** What the teacher makes of an item of the draft. */
type Change = Partial<Pick<DraftItem, 'isTaken' | 'toBpm' | 'note'>>;

interface ItemProps extends Pick<TurnButtonsProps, 'at' | 'of' | 'onTurn'> {
  readonly item: DraftItem;
  readonly onChange: (change: Change) => void;
}

function Item({ item, onChange, ...turn }: ItemProps) {
  const all = useWords();
  const words = all.nextLesson;
  const say = useSay();
  const { exercise: standing, toBpm, note, why, isTaken } = item;
  const { exercise, lesson } = standing;
  const named = { exercise: nameOf(standing) };
  return (
    <li className={styles.item} data-part="draft" data-taken={isTaken}>
      <div className={styles.head}>
        <Check checked={isTaken} onChange={(next) => onChange({ isTaken: next })}>
          {words.take(named)}
        </Check>
        <span>
          <TurnButtons name={named.exercise} {...turn} />
        </span>
      </div>
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

function itemOf({ exercise }: DraftItem): string {
  return exercise.item;
}

/** A draft in the order that the teacher gave it; what is not in that order stays where it was, at the end. */
function inOrder(draft: readonly DraftItem[], order: readonly string[]): readonly DraftItem[] {
  const turn = new Map(order.map((item, at) => [item, at] as const));
  const turnOf = (item: DraftItem) => turn.get(itemOf(item)) ?? order.length;
  return draft.toSorted((a, b) => turnOf(a) - turnOf(b));
}

/** What is said where nothing is drafted: there is nothing on the desk, the coach is silent, or all of it holds. */
function emptyWords({ shelf, isSilent, name }: StudentFile, words: NextWords): string {
  if (shelf.length === 0) return words.nothing;
  return isSilent ? words.silent({ name }) : words.allHolds({ name });
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
  const [order, setOrder] = useState<readonly string[]>([]);
  const [chosenDay, setDay] = useState<string | null>(null);
  const drafted = useMemo(() => draftNext(student, now), [student, now]);
  const day = chosenDay ?? nextDay;
  const draft = inOrder(drafted, order).map((item) => ({ ...item, ...changes[item.exercise.item] }));
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
      <p className="quiet">{draft.length === 0 ? emptyWords(student, words) : words.lead}</p>
      {draft.length > 0 && (
        <>
          <ExerciseGrid>
            {draft.map((item, at) => (
              <Item
                key={item.exercise.item}
                item={item}
                at={at}
                of={draft.length}
                onTurn={(by) => setOrder(withTurn(draft.map(itemOf), at, by))}
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
