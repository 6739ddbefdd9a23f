/** What the teacher pinned to bars of the exercise on the stand: a number over each bar, and the words under the notes. */
import { exerciseKey } from '@shedbook/core';
import { useEffect } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { usePictures } from '../tiles/use-pictures.ts';
import { answeredTakes, useSentTakes } from './sent-takes.ts';
import styles from './teacher-marks.module.css';

const SVG = 'http://www.w3.org/2000/svg';

/** A number at the top of the picture of a bar, which goes with what it explains. */
function pinOn(picture: SVGSVGElement, number: number): SVGElement {
  const pin = document.createElementNS(SVG, 'text');
  const { x, y } = picture.viewBox.baseVal;
  pin.setAttribute('class', styles.pin ?? '');
  pin.setAttribute('data-part', 'pin');
  pin.setAttribute('x', String(x + 1));
  pin.setAttribute('y', String(y + 4));
  pin.textContent = `${number}`;
  picture.append(pin);
  return pin;
}

/** The words; nothing where there are none. */
export default function TeacherMarks() {
  const words = useHearingWords().week;
  const { pack, lesson, exercise } = usePracticeSession();
  const pictures = usePictures();
  const { sent } = useSentTakes();
  const on = lesson.exercises.find((each) => each.number === exercise);
  const key = on ? exerciseKey(on) : null;
  const bars = on?.parts[0]?.pattern.bars.length ?? 1;
  const [latest] = answeredTakes(sent).filter(
    ({ facts, marks = [] }) => marks.length > 0 && facts.lesson === pack.id && facts.exercise === key,
  );
  const marks = latest?.marks;
  useEffect(() => {
    const shown = pictures.exercise.flatMap(({ bar }) =>
      (marks ?? []).flatMap((mark, index) => {
        const picture = document.querySelector<SVGSVGElement>(`svg[data-on="exercise"][data-bar="${bar}"]`);
        return picture && (bar - 1) % bars === mark.bar - 1 ? [pinOn(picture, index + 1)] : [];
      }),
    );
    return () => {
      for (const pin of shown) pin.remove();
    };
  }, [pictures, marks, bars]);
  if (!marks) return null;
  return (
    <section className={styles.marks} data-part="teacher-marks" aria-label={words.answers}>
      <h2>{words.answers}</h2>
      <ol>
        {marks.map((mark) => (
          <li key={`${mark.bar} ${mark.text}`}>{words.onBar(mark)}</li>
        ))}
      </ol>
    </section>
  );
}
