/**
 * Writes the log while one practises: each stretch of one exercise is an entry, with the loops that an ear judged, and
 * where the student said something of them another one beside it. It is written with every round and every few seconds,
 * and once more when the page is hidden, so that a page that is closed or loaded anew loses none.
 */

import { originOf } from '@shedbook/coach';
import { type LoopRecord, type PracticeEntry, Seconds } from '@shedbook/core';
import { recordRound } from '@shedbook/judge';
import { momentFrom } from '@shedbook/stand';
import { useEffect, useRef } from 'react';
import type { Hearing } from '../ear/hearing.ts';
import { deviceName, newId } from '../kept/device-name.ts';
import { FREE } from '../session/choice.ts';
import { type PracticeSession, usePracticeSession } from '../session/practice-session.tsx';
import { keepEntry } from './log-store.ts';
import { PlayedTime } from './played-time.ts';

/** A shorter stretch without a judged loop is nobody's practice. */
const SHORTEST_SECONDS = 5;

/** Milliseconds between two writings of a stretch that is being played. */
const WRITE_MS = 4000;

interface Open {
  readonly id: string;
  readonly started: Date;
  readonly lesson: string;
  readonly exercise: string | null;
  readonly form: string;
  readonly heard: LoopRecord[];
  readonly said: LoopRecord[];
  readonly time: PlayedTime;
  isPlaying: boolean;
}

function open(session: PracticeSession, number: number | null): Open {
  const exercise = session.pack.lesson.exercises.find((each) => each.number === number);
  return {
    id: newId(),
    started: new Date(),
    ...originOf(session.pack, exercise ?? null),
    form: session.isFree ? FREE : (session.part?.kind ?? session.form.name),
    heard: [],
    said: [],
    time: new PlayedTime(performance.now() / 1000),
    isPlaying: true,
  };
}

/** The entry of the ear, or of the student where there was no ear; and the student's own word beside the ear's. */
function entriesOf(stretch: Open): readonly PracticeEntry[] {
  const { id, started, lesson, exercise, form, heard, said, time } = stretch;
  const durationSeconds = Seconds(Math.round(time.seconds));
  const common = { lesson, exercise, form, device: deviceName(), startedAt: momentFrom(started) };
  const isHeard = heard.length > 0;
  const first: PracticeEntry = {
    ...common,
    ...{ id, durationSeconds },
    heardBy: isHeard ? 'ear' : 'student',
    loops: isHeard ? [...heard] : [...said],
  };
  if (!isHeard || said.length === 0) return [first];
  // The time was played once, so it is counted once.
  const beside = { ...common, id: `${id} said`, durationSeconds: Seconds(0) };
  return [first, { ...beside, heardBy: 'student', loops: [...said] }];
}

function write(stretch: Open): void {
  if (stretch.isPlaying) stretch.time.look(performance.now() / 1000);
  for (const entry of entriesOf(stretch)) {
    const isNothing = entry.loops.length === 0 && entry.durationSeconds < SHORTEST_SECONDS;
    if (!isNothing) void keepEntry(entry).catch(() => undefined);
  }
}

/** Keeps the log. @param hearing what hears the rounds; null where nothing is judged */
export function useLogKeeper(hearing: Hearing | null): void {
  const session = usePracticeSession();
  const latest = useRef(session);
  latest.current = session;
  const stretch = useRef<Open | null>(null);
  useEffect(() => {
    const begin = () => open(latest.current, latest.current.exercise);
    // Playing may have begun before this part of the page had come.
    if (latest.current.status === 'playing') stretch.current ??= begin();
    const add = (loop: LoopRecord, by: 'ear' | 'student') => {
      stretch.current ??= begin();
      (by === 'ear' ? stretch.current.heard : stretch.current.said).push(loop);
      write(stretch.current);
    };
    const unlisten = latest.current.listen((event) => {
      if (event.kind === 'started') stretch.current = open(latest.current, event.program.exercise);
      if (event.kind === 'judged' && event.by === 'student') {
        add({ bpm: event.bpm, verdict: event.verdict, faults: [] }, 'student');
      }
      if (!stretch.current) return;
      if (event.kind === 'stopped' || event.kind === 'loop') write(stretch.current);
      if (event.kind === 'stopped') stretch.current.isPlaying = false;
    });
    const unhear = hearing?.listen((event) => {
      if (event.kind === 'judged')
        add(recordRound({ bpm: event.judged.loop.bpm, verdict: event.judged.judgement.verdict }), 'ear');
    });
    const writeNow = () => {
      if (stretch.current?.isPlaying) write(stretch.current);
    };
    const timer = setInterval(writeNow, WRITE_MS);
    window.addEventListener('pagehide', writeNow);
    document.addEventListener('visibilitychange', writeNow);
    return () => {
      clearInterval(timer);
      window.removeEventListener('pagehide', writeNow);
      document.removeEventListener('visibilitychange', writeNow);
      unlisten();
      unhear?.();
    };
  }, [hearing]);
}
