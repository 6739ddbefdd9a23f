/**
 * The composer for the open lesson: it grades what is written and proposes beside it. Nothing is written before a
 * person places it, and then as one step of history.
 */
import { answeringLevel, withHeadings, withTerm } from '@shedbook/composer';
import { type Exercise, parseLesson, sectionsOf, setExerciseLevel } from '@shedbook/core';
import { useSay as useNotice } from '@shedbook/stand';
import { useCallback, useEffect, useRef, useState } from 'react';
import { useDocument } from '../document/use-document.ts';
import { type Unnumbered, withExercises } from '../edit/exercises.ts';
import { type PlaceHow, placeExercises } from '../edit/place-proposal.ts';
import { useSay, useWords } from '../words/words.tsx';
import ComposerWorker from './composer.worker.ts?worker';
import type { Ask, BarGrade, ComposeAnswer, ComposeOrder, Proposal } from './composer-messages.ts';

/** What the composer has said last. */
export interface ComposerState {
  readonly grades: readonly BarGrade[];
  readonly proposal: Proposal | null;
  readonly working: boolean;
}

/** The composer. */
export interface Composer extends ComposerState {
  /** What is proposed, or null. */
  readonly ask: Ask | null;
  /** Proposes, or with null puts the proposal away. */
  readonly propose: (ask: Ask | null) => void;
  /** Changes what the composer goes by, and proposes a page by it. */
  readonly change: (change: (text: string) => string) => void;
  /** Puts exercises of the proposal, by their index in it, on the page. */
  readonly place: (how: PlaceHow, taken: ReadonlySet<number>) => void;
}

const NOTHING: ComposerState = { grades: [], proposal: null, working: false };

const PAGE: Ask = { ask: 'page', answering: null };

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

/** What the composer says of a text; answers to earlier texts and questions are dropped. */
function useAnswers(text: string, section: number, ask: Ask | null): ComposerState {
  const [state, setState] = useState<ComposerState>(NOTHING);
  const latest = useRef(0);
  const send = useWorker(({ id, grades, proposal }) => {
    if (id === latest.current) setState({ grades, proposal, working: false });
  });
  useEffect(() => {
    latest.current += 1;
    setState((before) => ({ ...before, proposal: ask && before.proposal, working: true }));
    send({ id: latest.current, text, section, ask });
  }, [send, text, section, ask]);
  return state;
}

/** The composer of a section (from 0) of a lesson's text; of a lesson that is not divided 0. */
export function useComposer(text: string, section: number): Composer {
  const document = useDocument();
  const say = useSay();
  const notice = useNotice();
  const words = useWords();
  const [ask, setAsk] = useState<Ask | null>(null);
  const state = useAnswers(text, section, ask);
  const change = (by: (text: string) => string) => {
    document.edit(by(document.state().text));
    if (ask?.ask !== 'page') setAsk(PAGE);
  };
  const named = ({ exercises, blocks }: Proposal, isNamed: boolean): readonly Exercise[] => {
    const plain = exercises.map(({ exercise }) => exercise);
    return isNamed ? withHeadings(plain, blocks, say) : plain;
  };
  const placed = (n: number) => {
    setAsk(null);
    notice(words.compose.placed({ n }), { label: words.desk.undo, run: () => void document.undo() });
  };
  const place = (how: PlaceHow, taken: ReadonlySet<number>) => {
    const { proposal } = state;
    const now = document.state().text;
    const { lesson: whole } = parseLesson(now, 'lesson');
    const lesson = whole && sectionsOf(whole)[section];
    if (!proposal || !lesson || state.working) return;
    if (proposal.term.length > 0) {
      document.edit(withTerm(now, lesson, proposal.term, say, how === 'behind' ? 'behind' : 'instead'));
      placed(proposal.exercises.length);
      return;
    }
    const exercises = named(proposal, lesson.compose.headings);
    const items = proposal.exercises.map(({ from, isKept }, i) => ({
      exercise: exercises[i] as Unnumbered,
      from,
      isKept,
      isTaken: taken.has(i),
    }));
    const answering = ask?.ask === 'page' ? ask.answering : null;
    const goal = ask?.ask === 'goal' ? ask.exercise : null;
    const levelDb = answering && answeringLevel(lesson, answering);
    const written = withExercises(now, lesson, placeExercises(lesson.exercises, items, how, goal), section);
    document.edit(
      answering && levelDb !== null ? setExerciseLevel(written, answering, levelDb, section) : written,
    );
    placed(items.filter(({ isTaken, isKept }) => isTaken && !isKept).length);
  };
  return { ...state, ask, propose: setAsk, change, place };
}
