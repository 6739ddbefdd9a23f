/** Composing: what may happen inside a beat, how many bars and which page; the page is written as one watches. */

import { answeringVoices } from '@shedbook/composer';
import { barsOf, exerciseLabel, type Lesson, sectionOf, sectionsOf, type Voice } from '@shedbook/core';
import { Button, Check, Choices, Range } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { useState } from 'react';
import type { DocumentState } from '../document/lesson-document.ts';
import { useDocument } from '../document/use-document.ts';
import {
  setCount,
  setHeadings,
  setIdiom,
  setMost,
  setPhrase,
  setSeed,
  toggleCell,
} from '../edit/compose-settings.ts';
import { setKept } from '../edit/exercises.ts';
import { ExerciseDrawing } from '../notation/exercise-drawing.tsx';
import { PressOver } from '../notation/press-over.tsx';
import { Guide } from '../shared/guide.tsx';
import { Paper, ViewHead } from '../shared/paper.tsx';
import { SectionChoice } from '../shared/section-choice.tsx';
import { useLive } from '../shared/use-live.ts';
import { useSay, useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import { DifficultyLine } from './difficulty-line.tsx';
import { FromExercise } from './from-exercise.tsx';
import { OneMove } from './one-move.tsx';
import { PhraseChoice } from './phrase-choice.tsx';
import { PlayedDifficulty } from './played-difficulty.tsx';
import { ProposalView } from './proposal-view.tsx';
import { ReviewChoice } from './review-choice.tsx';
import { SecondPass } from './second-pass.tsx';
import { TermChoice } from './term-choice.tsx';
import { type Composer, useComposer } from './use-composer.ts';
import { Vocabulary } from './vocabulary.tsx';

interface ComposeViewProps {
  readonly state: DocumentState;
  readonly lesson: Lesson;
}

/** Fewest and most bars that the desk asks for. */
const COUNT = { least: 4, most: 48 } as const;

const PERCENT = 100;

/** Bars of an exercise that still stands beside another. */
const SIDE_BY_SIDE = 2;

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

interface ComposerProps {
  readonly lesson: Lesson;
  readonly composer: Composer;
}

/** The voice that answers the comping voice, if one does. */
function Answering({ lesson, composer }: ComposerProps) {
  const words = useWords();
  const voices = answeringVoices(lesson);
  const asked = composer.ask?.ask === 'page' ? composer.ask.answering : null;
  const choices = [
    ['none', words.compose.alone] as const,
    ...voices.map((voice) => [voice, words.voices[voice]] as const),
  ];
  return (
    <Choices<Voice | 'none'>
      label={words.compose.answering}
      value={asked ?? 'none'}
      choices={choices}
      onChange={(voice) => composer.propose({ ask: 'page', answering: voice === 'none' ? null : voice })}
    />
  );
}

/** Asks for a page, and for another one. */
function Proposing({ lesson, composer }: ComposerProps) {
  const words = useWords().compose;
  const { seed } = lesson.compose;
  const isOpen = composer.ask?.ask === 'page';
  const press = () => {
    if (isOpen) composer.change((text) => setSeed(text, typeof seed === 'number' ? seed + 1 : 1));
    else composer.propose({ ask: 'page', answering: null });
  };
  return (
    <Button dress="strong" onClick={press}>
      {isOpen ? words.another : words.propose}
    </Button>
  );
}

function Settings({ lesson, composer }: ComposerProps) {
  const words = useWords().compose;
  const { limits, idiom, headings, phrase, bars } = lesson.compose;
  const [count, setLiveCount] = useLive(Math.min(COUNT.most, Math.max(COUNT.least, lesson.compose.count)));
  const beats = lesson.meter.beats.length;
  const { change } = composer;
  return (
    <section className={styles.settings} aria-label={words.title}>
      <Vocabulary lesson={lesson} onToggle={(cell) => change((text) => toggleCell(text, lesson, cell))} />
      <div className={styles.ranges}>
        <PhraseChoice
          phrase={phrase}
          bars={bars}
          onChange={(form, length) => change((text) => setPhrase(text, form, length))}
        />
        <Range
          label={words.count}
          says={String(count)}
          value={count}
          min={COUNT.least}
          max={COUNT.most}
          step={1}
          onChange={setLiveCount}
          onChangeEnd={(next) => change((text) => setCount(text, next))}
        />
        <LimitRange
          label={words.strokesMost}
          kept={limits.strokes.most}
          most={beats * 3}
          onKeep={(most) => change((text) => setMost(text, 'strokes', most))}
        />
        <LimitRange
          label={words.silenceMost}
          kept={limits.rests.most}
          most={beats}
          onKeep={(most) => change((text) => setMost(text, 'rests', most))}
        />
        <Idiom kept={idiom} onKeep={(next) => change((text) => setIdiom(text, next))} />
      </div>
      <Answering lesson={lesson} composer={composer} />
      <div className={styles.seed}>
        <Proposing lesson={lesson} composer={composer} />
        <Check checked={headings} onChange={(on) => change((text) => setHeadings(text, on))}>
          {words.headings}
        </Check>
      </div>
    </section>
  );
}

interface WrittenPageProps {
  readonly lesson: Lesson;
  /** Number of the section that the lesson is, from 0. */
  readonly section: number;
  /** The bar whose reasons are shown, from 0. */
  readonly chosen: number;
  readonly onChoose: (index: number) => void;
}

function WrittenPage({ lesson, section, chosen, onChoose }: WrittenPageProps) {
  const words = useWords();
  const document = useDocument();
  const keep = (number: number, on: boolean) =>
    document.edit(setKept(document.state().text, lesson, number, on, section));
  return (
    <ol className={styles.composed}>
      {lesson.exercises.map((exercise, index) => {
        const { number } = exercise;
        const isKept = exercise.keep === true;
        return (
          <li
            key={number}
            data-kept={isKept || undefined}
            data-chosen={chosen === index || undefined}
            data-long={barsOf(exercise) > SIDE_BY_SIDE || undefined}
          >
            {exercise.name !== null && <h3 className={styles.heading}>{exercise.name}</h3>}
            <span className={styles.number}>{exerciseLabel(number)}</span>
            <PressOver
              className={styles.drawing}
              label={`${words.compose.why({ n: number })} (${sayExercise(exercise, words)})`}
              onPress={() => onChoose(index)}
            >
              <ExerciseDrawing exercise={exercise} meter={lesson.meter} />
            </PressOver>
            <Check checked={isKept} onChange={(on) => keep(number, on)}>
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
export function ComposeView({ state, lesson: whole }: ComposeViewProps) {
  const words = useWords().compose;
  const say = useSay();
  const sections = sectionsOf(whole);
  // What is clapped before the rest is not composed.
  const first = Math.max(0, sections.indexOf(sectionOf(whole, null)));
  const [wanted, setWanted] = useState<number | null>(null);
  const section = Math.min(wanted ?? first, sections.length - 1);
  const lesson = sections[section] ?? whole;
  const [chosen, setChosen] = useState(0);
  const composer = useComposer(state.text, section);
  const { grades, proposal, working } = composer;
  const number = (lesson.exercises[chosen] ?? lesson.exercises.at(-1))?.number;
  const goTo = (next: number | null) => {
    composer.propose(null);
    setChosen(0);
    setWanted(next);
  };
  return (
    <Paper>
      <Guide at="cells" />
      <ViewHead title={words.title} lead={words.lead} />
      <SectionChoice lesson={whole} section={section} onSection={goTo} hasWhole={false} />
      <Settings lesson={lesson} composer={composer} />
      <TermChoice lesson={whole} composer={composer} />
      <OneMove lesson={lesson} composer={composer} />
      <ReviewChoice lesson={lesson} composer={composer} />
      {number !== undefined && (
        <>
          <FromExercise shelf={{ id: state.id, lesson: whole }} composer={composer} chosen={number} />
          <SecondPass lesson={lesson} composer={composer} chosen={number} />
        </>
      )}
      <PlayedDifficulty id={state.id} text={state.text} />
      <p className={styles.status} role="status">
        {working && composer.ask && words.working}
        {!working && proposal?.notes.map(say).join(' ')}
      </p>
      <ProposalView lesson={lesson} composer={composer} />
      <h3 className={styles.written}>{words.written}</h3>
      {grades.length > 0 && (
        <DifficultyLine
          grades={grades}
          first={lesson.exercises[0]?.number ?? 1}
          chosen={chosen}
          onChoose={setChosen}
        />
      )}
      <WrittenPage lesson={lesson} section={section} chosen={chosen} onChoose={setChosen} />
    </Paper>
  );
}
