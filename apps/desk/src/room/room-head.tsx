/**
 * The head of the lesson room: number, tempo and beat as large as they are read at two metres. On a desk's screen and on
 * a tablet their digits subtend 20 minutes of arc there (ISO 9241-303); a phone lies nearer.
 */
import { countedTempo, type Exercise, exerciseLabel, type Lesson, noteSign, tempoBeat } from '@shedbook/core';
import { Button, ExampleSign, Icon } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { HeardBeat } from '../hear/heard-beat.tsx';
import { useSound } from '../hear/sound-context.tsx';
import { useWords } from '../words/words.tsx';
import styles from './room-head.module.css';

interface RoomHeadProps {
  readonly exercise: Exercise;
  readonly section: Lesson;
  /** Its place among those of the lesson, from 1. */
  readonly place: number;
  /** How many exercises the lesson has. */
  readonly all: number;
  readonly onLeave: () => void;
}

/** The tempo that is heard, or would be. */
function Tempo({ meter }: Pick<Lesson, 'meter'>) {
  const { heard } = useSound();
  if (!heard) return null;
  return (
    <p className={styles.tempo} data-part="room-tempo" aria-hidden="true">
      <span>{noteSign(tempoBeat(meter))} = </span>
      <strong>{Math.round(countedTempo(meter, heard.bpm))}</strong>
    </p>
  );
}

/** The head. */
export function RoomHead({ exercise, section, place, all, onLeave }: RoomHeadProps) {
  const words = useWords();
  return (
    <div className={styles.head}>
      <p className={styles.number} data-part="room-number" aria-live="polite">
        <strong>{exerciseLabel(exercise.number)}</strong>
        {exercise.example && <ExampleSign says={words.page.example} />}
        <span className="hidden-words">{sayExercise(exercise, words)}</span>
      </p>
      <p className={styles.name}>
        {exercise.name ?? section.heading ?? words.room.of({ n: place, all })}
        <span className={styles.hint}>{words.room.hint}</span>
      </p>
      <HeardBeat part="room-beat" className={styles.beat} says={({ beat }) => String(beat)} />
      <Tempo meter={section.meter} />
      <Button className={styles.leave} onClick={onLeave} aria-label={words.room.leave}>
        <Icon name="close" />
        <span>{words.room.leave}</span>
      </Button>
    </div>
  );
}
