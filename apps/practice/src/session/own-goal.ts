/**
 * The student's own goal on a sheet: words, and a tempo that takes the place of the teacher's.
 *
 * Conventions: quarter notes a minute.
 */
import { type Bpm, PLAYED_TEMPI } from '@shedbook/core';
import type { Pack } from '@shedbook/pack';
import { useMemo, useState } from 'react';
import { rememberedOwn, rememberOwn } from '../kept/students.ts';
import { withinRange } from './choice.ts';

/** The goal. */
export interface OwnGoal {
  /** What the student wants to be able to do; empty where nothing was said. */
  readonly words: string;
  /** Null: the teacher's. */
  readonly bpm: Bpm | null;
}

const NONE: OwnGoal = { words: '', bpm: null };

/** Longest text that is kept, in characters. */
const MOST_CHARACTERS = 120;

/** The name that the goal on a lesson is kept under. */
export function goalName(lessonId: string): string {
  return `goal.${lessonId}`;
}

/** A goal as it was kept. */
export function readGoal(text: string | null): OwnGoal {
  try {
    const { words, bpm } = (JSON.parse(text ?? 'null') ?? NONE) as { words?: unknown; bpm?: unknown };
    const isTempo = typeof bpm === 'number' && bpm >= PLAYED_TEMPI.least && bpm <= PLAYED_TEMPI.most;
    return {
      words: typeof words === 'string' ? words.slice(0, MOST_CHARACTERS) : '',
      bpm: isTempo ? withinRange(bpm) : null,
    };
  } catch {
    return NONE;
  }
}

/** The pack with the student's goal in it; a goal under the start tempo lets the start down to it. */
export function withGoal(pack: Pack, { bpm }: OwnGoal): Pack {
  if (bpm === null) return pack;
  const { tempo } = pack.lesson;
  const startBpm = tempo.startBpm < bpm ? tempo.startBpm : bpm;
  return { ...pack, lesson: { ...pack.lesson, tempo: { ...tempo, startBpm, goalBpm: bpm } } };
}

/** The pack as the student practises it, the goal, and how to change it. */
export function useOwnGoal(given: Pack) {
  const [goal, set] = useState(() => readGoal(rememberedOwn(goalName(given.id))));
  const setGoal = (next: OwnGoal) => {
    const text = JSON.stringify(next);
    rememberOwn(goalName(given.id), text);
    set(readGoal(text));
  };
  const pack = useMemo(() => withGoal(given, goal), [given, goal]);
  return { pack, goal, setGoal };
}
