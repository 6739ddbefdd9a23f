/** Which exercises are selected, and what is done with them, with a bar or with a beat. */
import type { Lesson, Voice } from '@shedbook/core';
import { remembered, useSay } from '@shedbook/stand';
import { useCallback, useRef, useState } from 'react';
import { useDocument } from '../document/use-document.ts';
import type { InUse } from '../edit/exercises.ts';
import type { Unit } from '../edit/rearrange.ts';
import { later } from '../loading/later.ts';
import { useWords } from '../words/words.tsx';
import { type Chosen, COPIED_KEY, type Rearranging } from './rearranging.ts';
import type { Ground } from './rearranging-acts.ts';

/** What is selected, and what can be done with it. */
export interface Rearrangement {
  readonly unit: Unit;
  readonly setUnit: (unit: Unit) => void;
  /** Numbers of the exercises that are selected beside the chosen one. */
  readonly selected: ReadonlySet<number>;
  /** How many exercises that are, the chosen one among them. */
  readonly count: number;
  readonly isSelecting: boolean;
  readonly setSelecting: (on: boolean) => void;
  /** Selects an exercise, or no longer. */
  readonly toggle: (number: number) => void;
  /** Selects all exercises between two, by their numbers. */
  readonly selectTo: (from: number, to: number) => void;
  readonly clear: () => void;
  readonly canPaste: boolean;
  readonly run: (what: Rearranging) => void;
  readonly putOn: (voice: Voice) => void;
}

/** What can be done, loaded with the first press. */
const acts = later(() => import('./rearranging-acts.ts'));

interface Asked {
  readonly lesson: Lesson;
  readonly choice: Chosen;
  readonly inUse: InUse;
  /** Chooses the exercise at an index. */
  readonly onGo: (index: number) => void;
}

function range({ exercises }: Lesson, from: number, to: number): readonly number[] {
  const [first, last] = from < to ? [from, to] : [to, from];
  return exercises.flatMap(({ number }) => (number >= first && number <= last ? [number] : []));
}

/** The work. */
export function useRearranging({ lesson, choice, inUse, onGo }: Asked): Rearrangement {
  const document = useDocument();
  const words = useWords();
  const say = useSay();
  const [unit, setUnit] = useState<Unit>('exercise');
  const [selected, setSelected] = useState<ReadonlySet<number>>(new Set());
  const [isSelecting, setSelecting] = useState(false);
  const [canPaste, setCanPaste] = useState(() => remembered(COPIED_KEY) !== null);
  const numbers = lesson.exercises.flatMap(({ number }, index) =>
    index === choice.index || selected.has(number) ? [number] : [],
  );
  const ground: Ground = {
    ...{ document, lesson, inUse, chosen: choice, unit, numbers, words, say },
    onGo: (index) => {
      setSelected(new Set());
      onGo(index);
    },
  };
  // A second press while the first is on its way works on what the first has made.
  const latest = useRef(ground);
  latest.current = ground;
  return {
    ...{ unit, setUnit, selected, isSelecting, canPaste },
    count: numbers.length,
    run: (what) => {
      if (what === 'copy' || what === 'cut') setCanPaste(true);
      void acts().then(({ rearrange }) => rearrange(what, latest.current));
    },
    putOn: (voice) => void acts().then(({ putOnVoice }) => putOnVoice(voice, latest.current)),
    setSelecting: (on) => {
      setSelecting(on);
      if (on) setUnit('exercise');
      else setSelected(new Set());
    },
    toggle: useCallback((number) => {
      setUnit('exercise');
      setSelected((before) => {
        const next = new Set(before);
        if (!next.delete(number)) next.add(number);
        return next;
      });
    }, []),
    selectTo: (from, to) => {
      setUnit('exercise');
      setSelected((before) => new Set([...before, ...range(lesson, from, to)]));
    },
    clear: () => setSelected(new Set()),
  };
}
