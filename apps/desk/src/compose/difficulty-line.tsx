/** How hard each bar is, as a line along the page; a bar can be chosen to hear why. */
import type { KeyboardEvent, PointerEvent } from 'react';
import { useSay, useWords } from '../words/words.tsx';
import type { BarGrade } from './composer-messages.ts';
import styles from './difficulty-line.module.css';

interface DifficultyLineProps {
  readonly grades: readonly BarGrade[];
  /** Number of the first bar: those of a later section count on. */
  readonly first: number;
  /** The bar whose reasons are shown, from 0. */
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

const WIDTH = 100;
const HEIGHT = 30;

function pointsOf(grades: readonly BarGrade[]): readonly (readonly [number, number])[] {
  const most = Math.max(1, ...grades.map((grade) => grade.points));
  return grades.map((grade, index) => [
    ((index + 0.5) / grades.length) * WIDTH,
    HEIGHT - 3 - (grade.points / most) * (HEIGHT - 6),
  ]);
}

function Reasons({ grade, number }: { readonly grade: BarGrade; readonly number: number }) {
  const words = useWords();
  const say = useSay();
  return (
    <section
      className={styles.reasons}
      data-part="reasons"
      aria-live="polite"
      aria-label={words.compose.why({ n: number })}
    >
      <h3>
        {words.page.exercise({ n: number })}: {words.compose.points({ points: grade.points })}
      </h3>
      <ul>
        {grade.reasons.map((reason) => (
          <li key={reason.part}>
            <strong>{words.compose.more({ points: reason.points })}</strong>
            <span>{say(reason.why)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -4,
  PageUp: 4,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

/** Pressing or drawing along the line, and its keys, choose a bar. */
function useChoosing(bars: number, index: number, onChoose: (index: number) => void) {
  const within = (wanted: number) => Math.min(bars - 1, Math.max(0, wanted));
  const choosePlace = (event: PointerEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    onChoose(within(Math.floor(((event.clientX - box.left) / box.width) * bars)));
  };
  return {
    onPointerDown: choosePlace,
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      if (event.buttons === 1) choosePlace(event);
    },
    onKeyDown: (event: KeyboardEvent) => {
      const step = STEPS[event.key];
      if (step === undefined) return;
      event.preventDefault();
      onChoose(within(index + step));
    },
  };
}

/** The line. */
export function DifficultyLine({ grades, first, chosen, onChoose }: DifficultyLineProps) {
  const words = useWords();
  const points = pointsOf(grades);
  const index = Math.min(chosen, grades.length - 1);
  const grade = grades[index];
  const choosing = useChoosing(grades.length, index, onChoose);
  return (
    <section className={styles.difficulty}>
      <h3>{words.compose.difficulty}</h3>
      <div
        className={styles.line}
        role="slider"
        tabIndex={0}
        aria-label={words.compose.difficulty}
        aria-valuemin={1}
        aria-valuemax={grades.length}
        aria-valuenow={index + 1}
        aria-valuetext={`${words.page.exercise({ n: index + first })}: ${words.compose.points({ points: grade?.points ?? 0 })}`}
        {...choosing}
      >
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
          <polyline
            points={points.map(([x, y]) => `${x},${y}`).join(' ')}
            vectorEffect="non-scaling-stroke"
          />
        </svg>
        {points.map(([x, y], i) => (
          <span
            key={i}
            className={styles.bar}
            data-chosen={i === index || undefined}
            style={{ insetInlineStart: `${x - 50 / points.length}%`, inlineSize: `${100 / points.length}%` }}
          >
            <span className={styles.dot} style={{ insetBlockStart: `${(y / HEIGHT) * 100}%` }} />
          </span>
        ))}
      </div>
      {grade && <Reasons grade={grade} number={index + first} />}
    </section>
  );
}
