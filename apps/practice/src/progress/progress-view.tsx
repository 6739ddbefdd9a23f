/** Progress over weeks as pictures: the tempo that held, exercise by exercise, and how even each limb was. */
import { identityOf, isPart } from '@shedbook/coach';
import { countedTempo, exerciseKey, LIMBS, type PracticeLog, sectionOf, sideOf } from '@shedbook/core';
import { momentNow } from '@shedbook/stand';
import { useEffect, useMemo, useState } from 'react';
import { entriesByItem } from '../log/by-item.ts';
import { type EvenStretch, readEvens } from '../log/even-store.ts';
import { exerciseName } from '../page/exercise-name.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Folded } from '../ui/folded.tsx';
import styles from './progress-view.module.css';
import { WeekPicture } from './week-picture.tsx';
import { evennessByWeek, mondayOf, tempoByWeek, type WeekPoint, weekOf } from './weeks.ts';

/** Spread at the foot of a picture of evenness, in ms: wider is drawn there. */
const WIDEST_MS = 60;

function useSayWeek(): (week: number) => string {
  const { tag } = usePracticeLanguage();
  return (week) =>
    mondayOf(week).toLocaleDateString(tag, { day: 'numeric', month: 'short', timeZone: 'UTC' });
}

/** From the first week that anything is known of to this one. */
function weeksOf(all: readonly (readonly WeekPoint[])[]): readonly [number, number] {
  const now = weekOf(momentNow()) ?? 0;
  const known = all.flatMap((points) => points.map(({ week }) => week));
  return [Math.min(now, ...known), Math.max(now, ...known)];
}

function useTempi(log: PracticeLog) {
  const { pack } = usePracticeSession();
  const playedOf = useMemo(() => entriesByItem(log, identityOf([pack])), [log, pack]);
  return pack.lesson.exercises
    .map((exercise) => {
      const own = playedOf(pack.id, exerciseKey(exercise)).filter(({ form }) => !isPart(form));
      return { exercise, points: tempoByWeek(own) };
    })
    .filter(({ points }) => points.length > 0);
}

function useEvens(log: PracticeLog): readonly EvenStretch[] {
  const [evens, setEvens] = useState<readonly EvenStretch[]>([]);
  useEffect(() => void readEvens().then(setEvens), [log]);
  return evens;
}

/** The pictures. */
export function ProgressView({ log }: { readonly log: PracticeLog }) {
  const all = useHearingWords();
  const words = all.progress;
  const { limbs: limbWords } = usePracticeLanguage().words;
  const { pack, choice } = usePracticeSession();
  const sayWeek = useSayWeek();
  const tempi = useTempi(log);
  const evens = useEvens(log);
  const { startBpm, goalBpm } = pack.lesson.tempo;
  const limbs = LIMBS.map((limb) => ({ limb, points: evennessByWeek(evens, pack.lesson, limb) })).filter(
    ({ points }) => points.length > 0,
  );
  const weeks = weeksOf([...tempi, ...limbs].map(({ points }) => points));
  const told = (points: readonly WeekPoint[], unit: (value: number) => string) =>
    points.map(({ week, value }) => words.point({ week: sayWeek(week), value: unit(value) })).join('; ');
  return (
    <Folded title={words.title} part="progress">
      <p className="quiet">{tempi.length + limbs.length === 0 ? words.empty : words.lead}</p>
      <ul className={styles.pictures}>
        {tempi.map(({ exercise, points }) => {
          const name = exerciseName({ number: exercise.number, name: exercise.name }, all.plan);
          const { meter } = sectionOf(pack.lesson, exercise.number);
          const counted = (bpm: number) => countedTempo(meter, bpm);
          const fastest = Math.max(goalBpm, ...points.map(({ value }) => value));
          const slowest = Math.min(startBpm, ...points.map(({ value }) => value));
          return (
            <li key={exercise.number}>
              <h3>{words.tempo({ what: name })}</h3>
              <WeekPicture
                label={`${words.tempo({ what: name })}: ${told(points, (bpm) => all.plan.tempo({ bpm: counted(bpm) }))}`}
                {...{ points, weeks, sayWeek, foot: slowest, head: fastest }}
                lines={[
                  [startBpm, String(counted(startBpm))],
                  [goalBpm, String(counted(goalBpm))],
                ]}
              />
            </li>
          );
        })}
        {limbs.map(({ limb, points }) => {
          const name = words.even({ limb: limbWords[sideOf(limb, choice.setUp)] });
          return (
            <li key={limb}>
              <h3>{name}</h3>
              <WeekPicture
                label={`${name}: ${told(points, (ms) => words.spread({ ms: Math.round(ms) }))}`}
                {...{ points, weeks, sayWeek, foot: WIDEST_MS, head: 0 }}
                lines={[
                  [0, '0 ms'],
                  [WIDEST_MS / 2, `${WIDEST_MS / 2} ms`],
                ]}
              />
            </li>
          );
        })}
      </ul>
    </Folded>
  );
}
