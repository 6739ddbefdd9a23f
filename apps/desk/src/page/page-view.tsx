/** The page: the lesson's heading and its exercises, written where they stand. */

import { canBePrepared, type Exercise, type Lesson, sectionOf, sectionsOf } from '@shedbook/core';
import { Button, Icon, KeyList, SheetButton } from '@shedbook/stand';
import { Fragment, Suspense, useEffect } from 'react';
import type { LessonDocument } from '../document/lesson-document.ts';
import { useDocument } from '../document/use-document.ts';
import { useSound } from '../hear/sound-context.tsx';
import { useBall } from '../hear/use-ball.ts';
import { TAIL } from '../line/line-editor.tsx';
import { barsAbreast } from '../line/rows.ts';
import { useWidth } from '../line/use-width.ts';
import { useDocked, WithTools } from '../line/with-tools.tsx';
import { later, lazily } from '../loading/later.ts';
import { Guide } from '../shared/guide.tsx';
import { Paper } from '../shared/paper.tsx';
import { useWords } from '../words/words.tsx';
import { ExerciseRow } from './exercise-row.tsx';
import { LessonHeading } from './lesson-heading.tsx';
import styles from './page-view.module.css';
import { PencilBox } from './pencil-box.tsx';
import { usePreparing } from './prepare.ts';
import { useDrag } from './use-drag.ts';
import { useExercises } from './use-exercises.ts';

const DictationSheet = lazily(
  () => import('../dictation/dictation-sheet.tsx'),
  (module) => module.DictationSheet,
);

const SectionHead = lazily(
  () => import('./section-head.tsx'),
  (module) => module.SectionHead,
);

const FormEditor = lazily(
  () => import('../form/form-editor.tsx'),
  (module) => module.FormEditor,
);

interface PageViewProps {
  readonly lesson: Lesson;
}

/** Width of the margin in which numbers stand, in CSS pixels. */
const NUMBER_PX = 36;

/** The view. */
export function PageView({ lesson }: PageViewProps) {
  const allWords = useWords();
  const words = allWords.page;
  const document = useDocument();
  const work = useExercises(lesson);
  const prepare = usePreparing();
  const { list, drag, grab } = useDrag(work.move);
  const docked = useDocked();
  const lineWidth = useWidth(list) - NUMBER_PX;
  const sound = useSound();
  const { choice } = work;
  const chosen = lesson.exercises[choice.index];
  const playing = sound.status === 'playing' ? sound.choice.exercise : null;
  useBall(sound.player, lesson, list);
  const { choose } = sound;
  const number = chosen?.number;
  const places = new Map(lesson.exercises.map((each, index) => [each.number, index]));
  useEffect(() => {
    if (number !== undefined) choose({ exercise: number });
  }, [number, choose]);
  const box = chosen && (
    <PencilBox
      lesson={sectionOf(lesson, chosen.number)}
      exercise={chosen}
      part={choice.part}
      place={choice.place}
      onPart={work.setPart}
      onChange={(exercise) => work.change(chosen.number, exercise)}
      onAction={work.act}
      docked={docked}
      rearranging={work.rearranging}
    />
  );
  const row = (exercise: Exercise, index: number) => (
    <ExerciseItem
      key={exercise.number}
      isLong={(exercise.parts[0]?.pattern.bars.length ?? 1) > 1}
      dropBefore={drag?.before === index}
      dropAfter={drag?.before === lesson.exercises.length && index === lesson.exercises.length - 1}
    >
      <ExerciseRow
        exercise={exercise}
        meter={sectionOf(lesson, exercise.number).meter}
        chosen={index === choice.index}
        selected={work.rearranging.selected.has(exercise.number)}
        playing={playing === exercise.number}
        active={choice.place}
        part={choice.part}
        abreast={barsAbreast(
          exercise.parts[0]?.pattern.bars ?? [],
          sectionOf(lesson, exercise.number).meter,
          lineWidth,
          TAIL,
        )}
        takesFocus={index === choice.index && choice.focus}
        onChoose={work.press}
        onActive={work.setPlace}
        onChange={work.change}
        onKey={work.onKey}
        onGrab={grab}
      />
    </ExerciseItem>
  );
  return (
    <WithTools tools={box}>
      <Paper>
        <Guide at={sound.status === 'playing' ? 'hear' : 'write'} />
        <LessonHeading lesson={lesson} />
        {lesson.exercises.length === 0 && <p className={styles.empty}>{words.empty}</p>}
        <ol className={styles.exercises} data-part="exercises" ref={list} aria-label={words.exercises}>
          {sectionsOf(lesson).map((section, at) => (
            <Fragment key={at}>
              {lesson.sections.length > 0 && (
                <li className={styles.sectionHead}>
                  <Suspense>
                    <SectionHead section={section} index={at} all={lesson.sections.length} />
                  </Suspense>
                  {section.exercises.length === 0 && <EmptySection onAdd={() => work.addTo(section, at)} />}
                </li>
              )}
              {section.exercises.map((exercise) => row(exercise, places.get(exercise.number) ?? 0))}
            </Fragment>
          ))}
        </ol>
        <div className={styles.foot}>
          <Button onClick={() => work.act('add')}>
            <Icon name="plus" />
            {words.add}
          </Button>
          <Button onClick={() => void addSection(document, lesson, words.newSection)}>
            <Icon name="plus" />
            {words.addSection}
          </Button>
          {lesson.sections.length === 0 && canBePrepared(lesson) && (
            <Button onClick={() => void prepare(lesson, 0)}>
              <Icon name="plus" />
              {words.prepare}
            </Button>
          )}
          <SheetButton
            title={allWords.dictation.title}
            done={allWords.heading.close}
            opens={allWords.dictation.opens}
          >
            <Suspense>
              <DictationSheet lesson={sectionOf(lesson, number ?? null)} onKeep={work.keepHeard} />
            </Suspense>
          </SheetButton>
          <SheetButton
            title={allWords.forms.title}
            done={allWords.heading.close}
            opens={allWords.forms.opens}
          >
            <Suspense>
              <FormEditor lesson={sectionOf(lesson, number ?? null)} />
            </Suspense>
          </SheetButton>
          <SheetButton
            dress="bare"
            title={words.keysTitle}
            done={allWords.heading.close}
            opens={
              <>
                <Icon name="keys" />
                {words.keys}
              </>
            }
          >
            <KeyList keys={words.keyList} />
          </SheetButton>
        </div>
      </Paper>
    </WithTools>
  );
}

const loadSections = later(() => import('../edit/sections.ts'));

/** Puts a section at the end of the lesson. */
async function addSection(document: LessonDocument, lesson: Lesson, heading: string): Promise<void> {
  const sections = await loadSections();
  document.edit(sections.addSection(document.state().text, lesson, heading));
}

/** What stands in a section without exercises. */
function EmptySection({ onAdd }: { readonly onAdd: () => void }) {
  const words = useWords().page;
  return (
    <div className={styles.foot}>
      <p className={styles.empty}>{words.sectionEmpty}</p>
      <Button onClick={onAdd}>
        <Icon name="plus" />
        {words.add}
      </Button>
    </div>
  );
}

interface ExerciseItemProps {
  /** Takes the whole width of the page. */
  readonly isLong: boolean;
  readonly dropBefore: boolean;
  readonly dropAfter: boolean;
  readonly children: React.ReactNode;
}

function ExerciseItem({ isLong, dropBefore, dropAfter, children }: ExerciseItemProps) {
  const drop = dropBefore ? 'before' : dropAfter ? 'after' : undefined;
  return (
    <li className={styles.item} data-long={isLong || undefined} data-drop={drop}>
      {children}
    </li>
  );
}
