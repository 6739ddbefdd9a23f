/** One exercise on the stand, so large that it can be read from the throne, and practised without a hand. */
import { exerciseLabel, sectionOf } from '@shedbook/core';
import type { Pack } from '@shedbook/pack';
import { useAwake, usePedal } from '@shedbook/stand';
import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import type { Followed } from '../demonstration/use-demonstration.ts';
import { KeepingLine } from '../history/keeping-line.tsx';
import { usePracticeWords } from '../page/words.tsx';
import { HearingPanel } from '../panel/index.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { BarsView } from '../tiles/bars-view.tsx';
import { TeacherText } from '../tiles/teacher-text.tsx';
import { usePictures } from '../tiles/use-pictures.ts';
import { useRidingBall } from '../tiles/use-riding-ball.ts';
import { Folded } from '../ui/folded.tsx';
import { Optional } from '../ui/optional.tsx';
import { BarCounter } from './bar-counter.tsx';
import { LadderStrip } from './ladder-strip.tsx';
import { Ledge } from './ledge.tsx';
import { RunPanel } from './run-panel.tsx';
import { StageHead } from './stage-head.tsx';
import styles from './stage-page.module.css';
import { useStageActions } from './use-stage-actions.ts';
import { useStageKeys } from './use-stage-keys.ts';

/** What the teacher said of single bars: loaded after the page itself. */
const TeacherMarks = lazy(() => import('../takes/teacher-marks.tsx'));

/** How the teacher plays it: loaded only where the pack says so. */
const DemonstrationPanel = lazy(() => import('../demonstration/demonstration-panel.tsx'));

/** Whether the pack shows how an exercise is played. */
function isShown({ demonstrations = [], downloads }: Pack, exercise: number | null): boolean {
  if (exercise === null) return false;
  const films = downloads.filter(({ kind }) => kind === 'film');
  return [...demonstrations, ...films].some((each) => each.exercise === exercise);
}

/** The page. */
export function StagePage() {
  const { pack, lesson, exercise, player, playing } = usePracticeSession();
  const words = usePracticeWords();
  const actions = useStageActions();
  const notation = useRef<HTMLDivElement>(null);
  const [followed, follow] = useState<Followed | null>(null);
  const clock = followed?.clock ?? player;
  const pictures = usePictures(followed?.form);
  const on = lesson.exercises.find((each) => each.number === exercise) ?? null;
  useAwake();
  useStageKeys(actions);
  const pedal = usePedal({ next: actions.right, previous: actions.left, toggle: actions.toggle });
  useRidingBall(clock, pictures, notation);
  // The list and the sheet are left wherever they were scrolled to, and whoever plays wants the notes in sight.
  useEffect(() => {
    window.scrollTo(0, 0);
  }, [exercise]);
  useEffect(() => {
    if (playing || followed) window.scrollTo(0, 0);
  }, [playing, followed]);
  useEffect(() => {
    document.title = `${on ? exerciseLabel(on.number) : words.sheet.timeOnly} · ${lesson.title}`;
  }, [on, lesson.title, words]);
  const about = sectionOf(lesson, exercise);
  return (
    <div className={styles.stage}>
      <main className={styles.page}>
        <KeepingLine />
        <Optional>
          <RunPanel />
        </Optional>
        <StageHead actions={actions} />
        <BarCounter clock={clock} />
        <div className={styles.notation} ref={notation}>
          {on && <BarsView bars={pictures.exercise} on="exercise" exercise={on} />}
          {pictures.groove.length > 0 && (
            <div className={on ? styles.groove : undefined}>
              {on && <p className="quiet">{words.stage.groove}</p>}
              <BarsView bars={pictures.groove} on="groove" exercise={null} />
            </div>
          )}
          {pack.isPrivate && on && (
            <Optional>
              <Suspense fallback={null}>
                <TeacherMarks />
              </Suspense>
            </Optional>
          )}
        </div>
        {isShown(pack, exercise) && (
          <Optional>
            <Suspense fallback={null}>
              <DemonstrationPanel follow={follow} />
            </Suspense>
          </Optional>
        )}
        {(on?.notes || on?.media) && (
          <div className={styles.notes} data-part="beside">
            {on.notes && <p>{on.notes}</p>}
            <TeacherText media={on.media} />
          </div>
        )}
        {(about.text !== null || about.media) && (
          <Folded title={about.heading ?? lesson.title} part="about">
            <TeacherText text={about.text} media={about.media} />
          </Folded>
        )}
        <LadderStrip actions={actions} />
        <Optional>
          <HearingPanel />
        </Optional>
      </main>
      <Ledge actions={actions} pedal={pedal} />
    </div>
  );
}
