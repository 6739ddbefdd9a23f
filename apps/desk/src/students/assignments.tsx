/** What the teacher set: pinned or not, with a note for the student, in the teacher's order. */

import { findExercise, identityOf, itemKey } from '@shedbook/coach';
import { countedTempo, exerciseKey, exerciseLabel } from '@shedbook/core';
import type { StoredAssignment, StudentContent } from '@shedbook/routes';
import { Button, Check, Icon } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { ExerciseDrawing } from '../notation/exercise-drawing.tsx';
import { KeptField } from '../shared/kept-field.tsx';
import { TurnButtons, type TurnButtonsProps } from '../shared/turn-buttons.tsx';
import { withTurn } from '../shared/with-turn.ts';
import { useWords } from '../words/students-words.tsx';
import styles from './assignments.module.css';
import { ExercisePicker } from './exercise-picker.tsx';
import { ExerciseGrid, StandingName } from './standing-list.tsx';
import type { DeskShelf } from './take-in.ts';
import { writtenTempo } from './written-tempo.ts';

interface AssignmentsProps {
  readonly shelf: readonly DeskShelf[];
  readonly assignments: readonly StoredAssignment[];
  readonly onChange: (change: (content: StudentContent) => StudentContent) => void;
  readonly onMakeLesson: () => void;
}

function keyOf({ lesson, exercise }: StoredAssignment): string {
  return itemKey(lesson, exercise);
}

/** The content with one more assignment, where neither it nor a copy of it is set already. */
function assign(
  content: StudentContent,
  shelf: readonly DeskShelf[],
  lesson: string,
  exercise: string,
): StudentContent {
  const { itemOf } = identityOf(shelf);
  const there = content.assignments.some(
    (each) => itemOf(each.lesson, each.exercise) === itemOf(lesson, exercise),
  );
  if (there) return content;
  return {
    ...content,
    assignments: [
      ...content.assignments,
      { lesson, exercise, pinned: false, note: null, toBpm: null, by: null },
    ],
  };
}

interface AssignedProps extends Pick<TurnButtonsProps, 'at' | 'of' | 'onTurn'> {
  readonly assignment: StoredAssignment;
  readonly shelf: readonly DeskShelf[];
  readonly onChange: (change: Partial<StoredAssignment> | null) => void;
}

function Assigned({ assignment, shelf, onChange, ...turn }: AssignedProps) {
  const words = useWords();
  const { lesson, exercise } = findExercise(shelf, assignment.lesson, assignment.exercise) ?? {};
  const name = lesson && exercise ? `${lesson.title} ${exerciseLabel(exercise.number)}` : words.students.gone;
  return (
    <li className={styles.assigned} data-part="assigned">
      <StandingName>{name}</StandingName>
      {lesson && exercise && (
        <div role="img" aria-label={sayExercise(exercise, words)}>
          <ExerciseDrawing exercise={exercise} meter={lesson.meter} />
        </div>
      )}
      <KeptField
        label={words.students.note}
        value={assignment.note ?? ''}
        onKeep={(note) => onChange({ note: note.trim() || null })}
      />
      {lesson && (
        <KeptField
          type="number"
          label={words.hours.upTo}
          value={assignment.toBpm === null ? '' : String(countedTempo(lesson.meter, assignment.toBpm))}
          onKeep={(text) => onChange({ toBpm: writtenTempo(lesson.meter, text) })}
        />
      )}
      <KeptField
        type="date"
        label={words.hours.by}
        value={assignment.by ?? ''}
        onKeep={(by) => onChange({ by: by || null })}
      />
      <div className={styles.foot}>
        <Check checked={assignment.pinned} onChange={(pinned) => onChange({ pinned })}>
          {words.students.pinned}
          <span className="hidden-words">: {name}</span>
        </Check>
        <span className={styles.tools}>
          <TurnButtons name={name} {...turn} />
          <Button dress="bare" aria-label={words.students.takeOut({ name })} onClick={() => onChange(null)}>
            <Icon name="close" />
          </Button>
        </span>
      </div>
    </li>
  );
}

/** The list, and a way to set any exercise of the desk. */
export function Assignments({ shelf, assignments, onChange, onMakeLesson }: AssignmentsProps) {
  const words = useWords().students;
  const changeOne = (assignment: StoredAssignment, change: Partial<StoredAssignment> | null) =>
    onChange((content) => ({
      ...content,
      assignments: content.assignments.flatMap((each) => {
        if (keyOf(each) !== keyOf(assignment)) return [each];
        return change ? [{ ...each, ...change }] : [];
      }),
    }));
  const turnOne = (assignment: StoredAssignment, by: -1 | 1) =>
    onChange((content) => {
      const at = content.assignments.findIndex((each) => keyOf(each) === keyOf(assignment));
      return { ...content, assignments: withTurn(content.assignments, at, by) };
    });
  return (
    <section aria-label={words.set}>
      <h3>{words.set}</h3>
      {assignments.length === 0 && <p className="quiet">{words.nothingSet}</p>}
      <ExerciseGrid>
        {assignments.map((assignment, at) => (
          <Assigned
            key={keyOf(assignment)}
            assignment={assignment}
            shelf={shelf}
            at={at}
            of={assignments.length}
            onTurn={(by) => turnOne(assignment, by)}
            onChange={(change) => changeOne(assignment, change)}
          />
        ))}
      </ExerciseGrid>
      <ExercisePicker
        shelf={shelf}
        action={words.setThis}
        onPick={(each, exercise) =>
          onChange((content) => assign(content, shelf, each.id, exerciseKey(exercise)))
        }
      />
      {assignments.length > 0 && (
        <Button className={styles.makeLesson} onClick={onMakeLesson}>
          <Icon name="print" />
          {words.makeLesson}
        </Button>
      )}
    </section>
  );
}
