/** A round of a take beside its model: the page with the ball in the take's own time, and each stroke where it fell. */
import { countedTempo, type Exercise, type Form, type Lesson, sectionOf } from '@shedbook/core';
import { asJudged, type Judgement } from '@shedbook/judge';
import { createProgram, type Program, shownAt } from '@shedbook/playing';
import { Button, type FlightClock, Select, useFlight } from '@shedbook/stand';
import { RoundHearing } from '@shedbook/stand/round-hearing';
import { type PlayedTake, SPEEDS, useRound } from '@shedbook/stand/takes';
import { type RefObject, useMemo, useRef, useState } from 'react';
import { sharedPlayer } from '../hear/shared-player.ts';
import { ballAt, placeBalls } from '../hear/use-ball.ts';
import { useWidth } from '../line/use-width.ts';
import { ExerciseRows, staffOf } from '../notation/exercise-drawing.tsx';
import { GrooveDrawing } from '../notation/groove-drawing.tsx';
import { useWords } from '../words/students-words.tsx';
import { HeardMarks } from './heard-marks.tsx';
import { heardPlaces } from './heard-places.ts';
import styles from './round-beside.module.css';

/** Width that a bar takes at most, in rem. */
const BAR_REM = 22;

/** Width that a bar takes at least, in CSS pixels. */
const BAR_PX = 230;

interface Pictures {
  readonly program: Program;
  /** Bars of each picture; 0 where it is not shown. */
  readonly sizes: { readonly exercise: number; readonly groove: number };
}

/** Lets the ball ride the picture that shows what is heard. */
function useBallOn(
  clock: FlightClock,
  section: Lesson,
  { sizes }: Pictures,
  root: RefObject<HTMLElement | null>,
): void {
  useFlight(clock, (moment) => {
    const balls = (within: string) =>
      root.current?.querySelectorAll<SVGElement>(`${within} [data-ball]`) ?? [];
    placeBalls(balls(''), null, null);
    if (!moment) return;
    const where = shownAt(moment.program, moment.flight.from, sizes);
    if (where)
      placeBalls(
        balls(`[data-on="${where.on}"]`),
        where.index,
        ballAt(moment.flight, section.meter, moment.isStill),
      );
  });
}

/** What is shown while a form is played: the exercise, and its groove where time is played alone. */
function picturesOf(section: Lesson, exercise: Exercise | null, program: Program): Pictures {
  const isTime = exercise === null || program.bars.some(({ play }) => play === 'time');
  const bars = (parts: Lesson['groove']) => Math.max(1, ...parts.map(({ pattern }) => pattern.bars.length));
  return {
    program,
    sizes: {
      exercise: exercise ? bars(exercise.parts) : 0,
      groove: isTime ? bars(section.groove) : 0,
    },
  };
}

interface RoundBesideProps {
  readonly lesson: Lesson;
  readonly form: Form;
  /** The take's exercise by its number today; null for the groove alone. */
  readonly number: number | null;
  readonly take: PlayedTake;
  readonly judgement: Judgement | null;
  readonly sound: Blob | null;
}

/** The take with its strokes where they were judged to belong. */
function asTold(take: PlayedTake, judgement: Judgement | null): PlayedTake {
  return take.report && judgement ? { ...take, report: asJudged(take.report, judgement) } : take;
}

/** Which round, what is heard of it and how fast. */
export function RoundBeside({ lesson, form: whole, number, take, judgement, sound }: RoundBesideProps) {
  const words = useWords().beside;
  const [round, setRound] = useState(0);
  const [percent, setPercent] = useState<number>(SPEEDS.most);
  const form = useMemo(() => ({ ...whole, repeat: 1, countInBars: 0 }), [whole]);
  const section = useMemo(() => sectionOf(lesson, number), [lesson, number]);
  const exercise = lesson.exercises.find((each) => each.number === number) ?? null;
  const loop = take.loops[round];
  const pictures = useMemo(() => {
    const bpm = loop?.bpm ?? section.tempo.startBpm;
    const program = createProgram(lesson, { exercise: number, form, layers: take.layers, bpm });
    return picturesOf(section, exercise, program);
  }, [lesson, number, form, take.layers, loop, section, exercise]);
  const context = () => {
    sharedPlayer().stop();
    return sharedPlayer().context();
  };
  const slow = { round, speed: percent / 100 };
  const replay = useRound({ lesson, form, number, take, slow }, { context, audioOf: async () => sound });
  const root = useRef<HTMLDivElement>(null);
  const width = useWidth(root);
  useBallOn(replay.clock, section, pictures, root);
  const places = useMemo(
    () => (loop ? heardPlaces(asTold(take, judgement), loop, pictures.program, section.meter) : []),
    [take, judgement, loop, pictures, section],
  );
  const isPlaying = replay.state === 'playing';
  return (
    <div className={styles.beside} data-part="beside" data-state={replay.state} ref={root}>
      {exercise && (
        <div
          data-on="exercise"
          role="img"
          aria-label={words.page({ n: exercise.number })}
          style={{ maxInlineSize: `${pictures.sizes.exercise * BAR_REM}rem` }}
        >
          <ExerciseRows
            exercise={exercise}
            meter={section.meter}
            abreast={Math.min(4, Math.max(1, Math.floor(width / BAR_PX)))}
            over={(bar) => (
              <HeardMarks places={places.filter((each) => each.bar === bar)} staff={staffOf(exercise)} />
            )}
          />
        </div>
      )}
      {pictures.sizes.groove > 0 && (
        <div data-on="groove" role="img" aria-label={words.groove}>
          <GrooveDrawing lesson={section} />
        </div>
      )}
      {places.length > 0 && <p className="quiet">{words.legend}</p>}
      <div className={styles.acts}>
        <Button
          dress="strong"
          disabled={replay.state === 'preparing'}
          onClick={isPlaying ? replay.stop : replay.play}
        >
          {isPlaying ? words.stop : words.play}
        </Button>
        {take.loops.length > 1 && (
          <Select label={words.round} value={round} onChange={({ target }) => setRound(Number(target.value))}>
            {take.loops.map(({ startSeconds, bpm }, index) => (
              <option key={startSeconds} value={index}>
                {words.roundAt({ n: index + 1, bpm: countedTempo(section.meter, bpm) })}
              </option>
            ))}
          </Select>
        )}
      </div>
      <RoundHearing words={words} replay={replay} percent={percent} onPercent={setPercent} />
    </div>
  );
}
