/** Writes the log while one practises: each stretch of one exercise is an entry, with the loops that were judged. */

import { exerciseKey } from '@shedbook/coach';
import { type LoopRecord, type PracticeEntry, Seconds } from '@shedbook/core';
import { recordRound } from '@shedbook/judge';
import { momentFrom } from '@shedbook/stand';
import { useEffect, useRef } from 'react';
import type { Hearing } from '../ear/hearing.ts';
import { deviceName, newId } from '../kept/device-name.ts';
import { type PracticeSession, usePracticeSession } from '../session/practice-session.tsx';
import { keepEntry } from './log-store.ts';

/** A shorter stretch without a judged loop is nobody's practice. */
const SHORTEST_SECONDS = 5;

interface Open {
  readonly id: string;
  readonly started: Date;
  readonly lesson: string;
  readonly exercise: string | null;
  readonly form: string;
  readonly loops: LoopRecord[];
  heardBy: 'ear' | 'student';
  ended: Date | null;
}

function open(session: PracticeSession, number: number | null): Open {
  const exercise = session.lesson.exercises.find((each) => each.number === number);
  return {
    id: newId(),
    started: new Date(),
    lesson: session.pack.id,
    exercise: exercise ? exerciseKey(exercise) : null,
    form: session.form.name,
    loops: [],
    heardBy: 'student',
    ended: null,
  };
}

function entryOf({ id, started, ended, lesson, exercise, form, loops, heardBy }: Open): PracticeEntry {
  const durationSeconds = Seconds(Math.round(((ended ?? new Date()).getTime() - started.getTime()) / 1000));
  return {
    ...{ id, lesson, exercise, form, heardBy, durationSeconds },
    device: deviceName(),
    startedAt: momentFrom(started),
    loops: [...loops],
  };
}

function write(stretch: Open): void {
  const entry = entryOf(stretch);
  if (entry.loops.length === 0 && entry.durationSeconds < SHORTEST_SECONDS) return;
  void keepEntry(entry).catch(() => undefined);
}

/** Keeps the log. */
export function useLogKeeper(hearing: Hearing): void {
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
      const now = stretch.current;
      now.loops.push(loop);
      if (by === 'ear') now.heardBy = 'ear';
      write(now);
    };
    const unlisten = latest.current.listen((event) => {
      if (event.kind === 'started') stretch.current = open(latest.current, event.program.exercise);
      if (event.kind === 'judged' && event.by === 'student') {
        add({ bpm: event.bpm, verdict: event.verdict, faults: [] }, 'student');
      }
      if (event.kind !== 'stopped' || !stretch.current) return;
      stretch.current.ended = new Date();
      write(stretch.current);
    });
    const unhear = hearing.listen((event) => {
      if (event.kind === 'judged')
        add(recordRound({ bpm: event.judged.loop.bpm, verdict: event.judged.judgement.verdict }), 'ear');
    });
    return () => {
      unlisten();
      unhear();
    };
  }, [hearing]);
}
