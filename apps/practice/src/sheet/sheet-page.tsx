/** The sheet: everything on it, what to practise today, and what to take along. */
import { feelSaid, formatFeel, isFeelName, type Lesson, sectionOf, sectionsOf } from '@shedbook/core';
import { EXERCISES_IN_SIGHT, type Pack } from '@shedbook/pack';
import { buttonClass } from '@shedbook/stand';
import { type PracticeWords, tempoWords } from '@shedbook/words';
import { useEffect } from 'react';
import { KeepingLine } from '../history/keeping-line.tsx';
import { currentStudent, students } from '../kept/students.ts';
import { FREE_PLAY, hrefOf } from '../page/route.ts';
import { usePracticeWords } from '../page/words.tsx';
import { usePlan } from '../plan/index.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { TeacherText } from '../tiles/teacher-text.tsx';
import { Optional } from '../ui/optional.tsx';
import { Downloads } from './downloads.tsx';
import { ExerciseCard, TimeCard } from './exercise-card.tsx';
import { PageSettings } from './page-settings.tsx';
import styles from './sheet-page.module.css';

function feelWords(lesson: Lesson, words: PracticeWords): string | null {
  const said = feelSaid(lesson);
  if (said === null) return null;
  const feel = formatFeel(said);
  return isFeelName(feel) ? words.sheet.feels[feel] : words.sheet.swing({ ratio: feel });
}

/** The title, with meter, feel and tempo of the first section. */
function Heading({ lesson }: { readonly lesson: Lesson }) {
  const words = usePracticeWords();
  const first = sectionOf(lesson, null);
  const { startBpm, goalBpm } = first.tempo;
  const feel = feelWords(first, words);
  const student = students().find(({ id }) => id === currentStudent())?.name;
  return (
    <header className={styles.head}>
      <h1>{lesson.title}</h1>
      {student && <p data-part="student">{words.student.plays({ name: student })}</p>}
      {lesson.by && <p className={styles.by}>{words.sheet.by({ name: lesson.by })}</p>}
      <p className={styles.facts}>
        <span>{first.meter.text}</span>
        {feel && <span>{feel}</span>}
        {first.playedWith === 'brushes' && <span>{words.sheet.brushes}</span>}
        <span>{tempoWords(words.sheet, first.meter, { fromBpm: startBpm, toBpm: goalBpm })}</span>
      </p>
      <nav className={styles.ways} aria-label={words.sheet.ways}>
        <a className={buttonClass()} href="#exercises">
          {words.sheet.exercises}
        </a>
        <a className={buttonClass()} href="#downloads">
          {words.downloads.title}
        </a>
      </nav>
    </header>
  );
}

/** Every exercise, to be opened. */
function Exercises({ pack }: { readonly pack: Pack }) {
  const words = usePracticeWords();
  const { lesson } = pack;
  const tiles = new Map(pack.exercises.map((each) => [each.number, each.own]));
  const inSight = new Set(lesson.exercises.slice(0, EXERCISES_IN_SIGHT).map((each) => each.number));
  return (
    <section id="exercises" aria-labelledby="exercises-title">
      <h2 id="exercises-title">{words.sheet.exercises}</h2>
      {lesson.exercises.length === 0 && <p>{words.sheet.empty}</p>}
      <TimeCard bars={pack.groove} />
      <p>
        <a className={buttonClass()} href={hrefOf(FREE_PLAY)}>
          {words.stage.free}
        </a>
      </p>
      {sectionsOf(lesson).map((section) => (
        <div key={`${section.heading} ${section.exercises[0]?.number}`} data-part="section">
          {section.heading !== null && <h3 className={styles.heading}>{section.heading}</h3>}
          {section.before !== undefined && (
            <p data-part="before">{words.sheet.before({ heading: section.before })}</p>
          )}
          {section !== lesson && <TeacherText text={section.text} media={section.media} />}
          <ol className={styles.cards} data-part="exercises">
            {section.exercises.map((exercise) => (
              <ExerciseCard
                key={exercise.number}
                exercise={exercise}
                bars={tiles.get(exercise.number) ?? []}
                isInSight={inSight.has(exercise.number)}
              />
            ))}
          </ol>
        </div>
      ))}
    </section>
  );
}

/** The page. */
export function SheetPage() {
  const { pack } = usePracticeSession();
  const { lesson } = pack;
  const Plan = usePlan(lesson);
  useEffect(() => {
    document.title = lesson.title;
  }, [lesson.title]);
  return (
    <main className={styles.page}>
      <KeepingLine />
      <Heading lesson={lesson} />
      {Plan && (
        <>
          <TeacherText text={lesson.text} media={lesson.media} />
          <div className={styles.plan}>
            <Optional>{Plan !== 'none' && <Plan />}</Optional>
          </div>
          <Exercises pack={pack} />
          <Downloads />
          <PageSettings />
        </>
      )}
    </main>
  );
}
