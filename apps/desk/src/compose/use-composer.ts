/** The composer for the open lesson: every change of what it goes by writes the page anew, as one step of history. */
import { type NoteFact, withHeadings } from '@shedbook/composer';
import { type Lesson, parseLesson } from '@shedbook/core';
import { useCallback, useEffect, useRef, useState } from 'react';
import { useDocument } from '../document/use-document.ts';
import { withExercises } from '../edit/exercises.ts';
import { useSay } from '../words/words.tsx';
import ComposerWorker from './composer.worker.ts?worker';
import type { BarGrade, ComposeAnswer, ComposeOrder } from './composer-messages.ts';

/** What the composer has said last. */
export interface ComposerState {
  readonly grades: readonly BarGrade[];
  readonly notes: readonly NoteFact[];
  readonly working: boolean;
}

/** The composer. */
export interface Composer extends ComposerState {
  /** Changes the text of the lesson and composes by what it then says. */
  readonly recompose: (change: (text: string) => string) => void;
}

const NOTHING: ComposerState = { grades: [], notes: [], working: false };

function useWorker(onAnswer: (answer: ComposeAnswer) => void): (order: ComposeOrder) => void {
  const worker = useRef<Worker | null>(null);
  const listener = useRef(onAnswer);
  listener.current = onAnswer;
  useEffect(() => {
    const made = new ComposerWorker();
    made.onmessage = ({ data }: MessageEvent<ComposeAnswer>) => listener.current(data);
    worker.current = made;
    return () => made.terminate();
  }, []);
  return useCallback((order) => worker.current?.postMessage(order), []);
}

/** The composer of a lesson; `keep` lists numbers of exercises that stay. */
export function useComposer(lesson: Lesson, text: string, keep: readonly number[]): Composer {
  const document = useDocument();
  const say = useSay();
  const [state, setState] = useState<ComposerState>(NOTHING);
  const latest = useRef({ id: 0, text: '' });
  const send = useWorker((answer) => {
    if (answer.id !== latest.current.id) return;
    setState({ grades: answer.grades, notes: answer.notes, working: false });
    if (!answer.exercises) return;
    const settings = parseLesson(latest.current.text, 'lesson').lesson;
    if (answer.exercises.length === 0 || !settings) {
      document.edit(latest.current.text);
      return;
    }
    const { headings } = settings.compose;
    const exercises = headings ? withHeadings(answer.exercises, answer.blocks, say) : answer.exercises;
    document.edit(withExercises(latest.current.text, settings, exercises));
  });
  const order = useCallback(
    (next: string, kept: readonly number[] | null) => {
      latest.current = { id: latest.current.id + 1, text: next };
      setState((before) => ({ ...before, working: true }));
      send({ id: latest.current.id, text: next, keep: kept });
    },
    [send],
  );
  useEffect(() => order(text, null), [order, text]);
  const inRange = keep.filter((number) => number <= lesson.exercises.length);
  return { ...state, recompose: (change) => order(change(document.state().text), inRange) };
}
