/** How hard each bar is, as a line along the page; a bar can be chosen to hear why. */
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useLanguage } from '../words/words.tsx';
import type { BarGrade } from './composer-messages.ts';

interface DifficultyLineProps {
  readonly grades: readonly BarGrade[];
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
  const { words, tag } = useLanguage();
  return (
    <section className="reasons" aria-live="polite" aria-label={words.compose.why(number)}>
      <h3>
        {words.page.exercise(number)}: {words.compose.points(grade.points)}
      </h3>
      <ul>
        {grade.reasons.map((reason) => (
          <li key={reason.part}>
            <strong>{words.compose.points(reason.points)}</strong>
            <span>{tag === 'en' ? reason.text : (words.compose.parts[reason.part] ?? reason.part)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The line. */
export function DifficultyLine({ grades }: DifficultyLineProps) {
  const { words } = useLanguage();
  const [chosen, setChosen] = useState(0);
  const points = pointsOf(grades);
  const index = Math.min(chosen, grades.length - 1);
  const grade = grades[index];
  return (
    <section className="difficulty">
      <h3>{words.compose.difficulty}</h3>
      <div className="difficulty-line">
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
          <polyline
            points={points.map(([x, y]) => `${x},${y}`).join(' ')}
            vectorEffect="non-scaling-stroke"
          />
        </svg>
        {points.map(([x, y], i) => (
          <Button
            key={i}
            className="difficulty-bar"
            aria-label={`${words.compose.why(i + 1)}: ${words.compose.points(grades[i]?.points ?? 0)}`}
            aria-pressed={i === index}
            style={{ insetInlineStart: `${x - 50 / points.length}%`, inlineSize: `${100 / points.length}%` }}
            onPress={() => setChosen(i)}
          >
            <span className="dot" style={{ insetBlockStart: `${(y / HEIGHT) * 100}%` }} />
          </Button>
        ))}
      </div>
      {grade && <Reasons grade={grade} number={index + 1} />}
    </section>
  );
}
