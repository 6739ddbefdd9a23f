/** What the teacher pinned to bars of the exercise on the stand: their numbers over each bar, and what was written or spoken under the notes. */
import { exerciseKey } from '@shedbook/core';
import type { SentTake, SpokenNote } from '@shedbook/routes';
import { useEffect, useMemo } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { usePictures } from '../tiles/use-pictures.ts';
import { answeredTakes, useSentTakes } from './sent-takes.ts';
import styles from './teacher-marks.module.css';
import { VoiceNote } from './voice-note.tsx';

const SVG = 'http://www.w3.org/2000/svg';

/** The numbers of what is said of a bar, at the top of its picture; they go with what explains them. */
function pinOn(picture: SVGSVGElement, numbers: readonly number[]): SVGElement {
  const pin = document.createElementNS(SVG, 'text');
  const { x, y } = picture.viewBox.baseVal;
  pin.setAttribute('class', styles.pin ?? '');
  pin.setAttribute('data-part', 'pin');
  pin.setAttribute('x', String(x + 1));
  pin.setAttribute('y', String(y + 4));
  pin.textContent = numbers.join(' ');
  picture.append(pin);
  return pin;
}

/** What is said of one bar. */
interface Said {
  readonly bar: number;
  /** What is written, or spoken. */
  readonly what: string | SpokenNote;
}

/** What is said of single bars, in their order; what is spoken after what is written. */
function saidOf({ marks = [], notes = [] }: Partial<SentTake>): readonly Said[] {
  const written = marks.map(({ bar, text }) => ({ bar, what: text }));
  const spoken = notes.flatMap((note) => (note.bar === null ? [] : [{ bar: note.bar, what: note }]));
  return [...written, ...spoken].toSorted((a, b) => a.bar - b.bar);
}

/** What is said; nothing where there is nothing. */
export default function TeacherMarks() {
  const words = useHearingWords().week;
  const { pack, lesson, exercise } = usePracticeSession();
  const pictures = usePictures();
  const { sent } = useSentTakes();
  const on = lesson.exercises.find((each) => each.number === exercise);
  const key = on ? exerciseKey(on) : null;
  const bars = on?.parts[0]?.pattern.bars.length ?? 1;
  const [latest] = answeredTakes(sent).filter(
    (each) => saidOf(each).length > 0 && each.facts.lesson === pack.id && each.facts.exercise === key,
  );
  const said = useMemo(() => (latest ? saidOf(latest) : []), [latest]);
  useEffect(() => {
    const shown = pictures.exercise.flatMap(({ bar }) => {
      const numbers = said.flatMap((each, index) => ((bar - 1) % bars === each.bar - 1 ? [index + 1] : []));
      const picture = document.querySelector<SVGSVGElement>(`svg[data-on="exercise"][data-bar="${bar}"]`);
      return picture && numbers.length > 0 ? [pinOn(picture, numbers)] : [];
    });
    return () => {
      for (const pin of shown) pin.remove();
    };
  }, [pictures, said, bars]);
  if (!latest) return null;
  return (
    <section className={styles.marks} data-part="teacher-marks" aria-label={words.answers}>
      <h2>{words.answers}</h2>
      <ol>
        {said.map(({ bar, what }) => (
          <li key={`${bar} ${typeof what === 'string' ? what : what.spokenAt}`}>
            {typeof what === 'string' ? (
              words.onBar({ bar, text: what })
            ) : (
              <>
                {words.spokenBar({ bar })}{' '}
                <VoiceNote take={latest} note={what} label={words.spokenBar({ bar })} />
              </>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}
