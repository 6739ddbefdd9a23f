/** Composing: what may happen inside a beat, how many bars and which page; the page is written as one watches. */

import type { Lesson } from '@shedbook/core';
import { Button, Check, Range } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { useState } from 'react';
import type { DocumentState } from '../document/lesson-document.ts';
import { setCount, setHeadings, setIdiom, setMost, setSeed, toggleCell } from '../edit/compose-settings.ts';
import { ExerciseDrawing } from '../notation/exercise-drawing.tsx';
import { PressOver } from '../notation/press-over.tsx';
import { Paper, ViewHead } from '../shared/paper.tsx';
import { useLive } from '../shared/use-live.ts';
import { useSay, useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import { DifficultyLine } from './difficulty-line.tsx';
import { type Composer, useComposer } from './use-composer.ts';
import { Vocabulary } from './vocabulary.tsx';

interface ComposeViewProps {
  readonly state: DocumentState;
  readonly lesson: Lesson;
}

/** Fewest and most bars that the desk asks for. */
const COUNT = { least: 4, most: 48 } as const;

const PERCENT = 100;

interface LimitRangeProps {
  readonly label: string;
  readonly kept: number | null;
  readonly most: number;
  readonly onKeep: (most: number | null) => void;
}

/** A limit on a line; its right end is none. */
function LimitRange({ label, kept, most, onKeep }: LimitRangeProps) {
  const words = useWords().compose;
  const [value, setValue] = useLive(kept ?? most + 1);
  return (
    <Range
      label={label}
      says={value > most ? words.noLimit : String(value)}
      value={value}
      min={1}
      max={most + 1}
      step={1}
      onChange={setValue}
      onChangeEnd={(next) => onKeep(next > most ? null : next)}
    />
  );
}

interface IdiomProps {
  readonly kept: number;
  readonly onKeep: (idiom: number) => void;
}

/** From every move to idiom, on one line. */
function Idiom({ kept, onKeep }: IdiomProps) {
  const words = useWords().compose;
  const [value, setValue] = useLive(Math.round(kept * PERCENT));
  const between = value === PERCENT ? words.themes : words.idiomShare({ percent: value });
  return (
    <Range
      label={words.idiom}
      says={value === 0 ? words.everyMove : between}
      value={value}
      min={0}
      max={PERCENT}
      step={10}
      onChange={setValue}
      onChangeEnd={(next) => onKeep(next / PERCENT)}
    />
  );
}

function Settings({ lesson, composer }: { readonly lesson: Lesson; readonly composer: Composer }) {
  const words = useWords().compose;
  const { limits, seed, idiom, headings } = lesson.compose;
  const [count, setLiveCount] = useLive(Math.min(COUNT.most, Math.max(COUNT.least, lesson.compose.count)));
  const beats = lesson.meter.beats.length;
  const page = typeof seed === 'number' ? seed : 0;
  const { recompose } = composer;
  return (
    <section className={styles.settings} aria-label={words.title}>
      <Vocabulary lesson={lesson} onToggle={(cell) => recompose((text) => toggleCell(text, lesson, cell))} />
      <div className={styles.ranges}>
        <Range
          label={words.count}
          says={String(count)}
          value={count}
          min={COUNT.least}
          max={COUNT.most}
          step={1}
          onChange={setLiveCount}
          onChangeEnd={(next) => recompose((text) => setCount(text, next))}
        />
        <LimitRange
          label={words.strokesMost}
          kept={limits.strokes.most}
          most={beats * 3}
          onKeep={(most) => recompose((text) => setMost(text, 'strokes', most))}
        />
        <LimitRange
          label={words.silenceMost}
          kept={limits.rests.most}
          most={beats}
          onKeep={(most) => recompose((text) => setMost(text, 'rests', most))}
        />
        <Idiom kept={idiom} onKeep={(next) => recompose((text) => setIdiom(text, next))} />
      </div>
      <div className={styles.seed}>
        <Button dress="strong" onClick={() => recompose((text) => setSeed(text, page + 1))}>
          {words.another}
        </Button>
        <span>
          {words.seed} <strong>{seed}</strong>
        </span>
        <Check checked={headings} onChange={(on) => recompose((text) => setHeadings(text, on))}>
          {words.headings}
        </Check>
      </div>
    </section>
  );
}

interface ComposedPageProps {
  readonly lesson: Lesson;
  readonly kept: readonly number[];
  readonly onKeep: (kept: readonly number[]) => void;
  /** The bar whose reasons are shown, from 0. */
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

function ComposedPage({ lesson, kept, onKeep, chosen, onChoose }: ComposedPageProps) {
  const words = useWords();
  return (
    <ol className={styles.composed}>
      {lesson.exercises.map((exercise) => {
        const { number } = exercise;
        const isKept = kept.includes(number);
        return (
          <li key={number} data-kept={isKept || undefined} data-chosen={chosen === number - 1 || undefined}>
            {exercise.name !== null && <h3 className={styles.heading}>{exercise.name}</h3>}
            <span className={styles.number}>{number}</span>
            <PressOver
              className={styles.drawing}
              label={`${words.compose.why({ n: number })} (${sayExercise(exercise, words)})`}
              onPress={() => onChoose(number - 1)}
            >
              <ExerciseDrawing exercise={exercise} meter={lesson.meter} />
            </PressOver>
            <Check
              checked={isKept}
              onChange={(on) => onKeep(on ? [...kept, number] : kept.filter((each) => each !== number))}
            >
              <span className={styles.keepWords}>{words.compose.keep}</span>
              <span className="hidden-words">{words.page.exercise({ n: number })}</span>
            </Check>
          </li>
        );
      })}
    </ol>
  );
}

/** The view. */
export function ComposeView({ state, lesson }: ComposeViewProps) {
  const words = useWords().compose;
  const say = useSay();
  const [kept, setKept] = useState<readonly number[]>([]);
  const [chosen, setChosen] = useState(0);
  const composer = useComposer(lesson, state.text, kept);
  return (
    <Paper>
      <ViewHead title={words.title} lead={words.lead} />
      <Settings lesson={lesson} composer={composer} />
      <p className={styles.status} role="status">
        {composer.working && words.working}
        {!composer.working && composer.notes.map(say).join(' ')}
      </p>
      {composer.grades.length > 0 && (
        <DifficultyLine grades={composer.grades} chosen={chosen} onChoose={setChosen} />
      )}
      <ComposedPage lesson={lesson} kept={kept} onKeep={setKept} chosen={chosen} onChoose={setChosen} />
    </Paper>
  );
}
