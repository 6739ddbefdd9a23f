/** The whole lesson as text, the same document as everywhere else; problems stand where they are. */

import type { Lesson, LessonProblem } from '@shedbook/core';
import { hintWords } from '@shedbook/words';
import { type RefObject, useEffect, useRef, useState } from 'react';
import type { DocumentState } from '../document/lesson-document.ts';
import { useNamesInUse } from '../document/names-in-use.ts';
import { useDocument } from '../document/use-document.ts';
import { withNamesKept } from '../edit/keep-names.ts';
import { Paper, ViewHead } from '../shared/paper.tsx';
import { useSay, useWords } from '../words/words.tsx';
import { offsetOf } from './places.ts';
import styles from './text-view.module.css';

/** Milliseconds after the last letter until the text is kept as one step. */
const PAUSE_MS = 350;

interface KeptText {
  readonly text: string;
  readonly setText: (text: string) => void;
  /** Somebody begins to write. */
  readonly enter: () => void;
  /** Somebody is done: exercises that were written anew keep the names that something refers to. */
  readonly keep: () => void;
}

function useKeptText(state: DocumentState): KeptText {
  const document = useDocument();
  const [text, setText] = useState(state.text);
  useEffect(() => setText(state.text), [state.text]);
  const inUse = useNamesInUse(document.id);
  const before = useRef<Lesson | null>(null);
  const enter = () => {
    before.current = state.lesson;
  };
  const keep = () => document.edit(before.current ? withNamesKept(text, before.current, inUse) : text);
  useEffect(() => {
    if (text === state.text) return;
    const timer = setTimeout(() => document.edit(text), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [text, state.text, document]);
  return { text, setText, enter, keep };
}

interface ProblemListProps {
  readonly problems: readonly LessonProblem[];
  readonly onGo: (problem: LessonProblem) => void;
}

function ProblemList({ problems, onGo }: ProblemListProps) {
  const words = useWords();
  const say = useSay();
  return (
    <section className={styles.problems} aria-label={words.text.problems({ n: problems.length })}>
      <h3>
        <span role="status">
          {problems.length === 0 ? words.text.fine : words.text.problems({ n: problems.length })}
        </span>
      </h3>
      <ul>
        {problems.map((problem) => (
          <li key={`${problem.line} ${problem.column} ${problem.code} ${problem.path}`}>
            <button type="button" data-severity={problem.severity} onClick={() => onGo(problem)}>
              <strong>
                {words.text[problem.severity]}:{' '}
                {words.text.at({ line: problem.line, column: problem.column })}
              </strong>
              <span>
                {words.page.found({ found: say(problem.found), expected: say(problem.expected) })}
                {problem.repair && ` ${hintWords(words.page, say(problem.repair))}`}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

interface NumberedTextProps {
  readonly text: string;
  readonly problems: readonly LessonProblem[];
  readonly area: RefObject<HTMLTextAreaElement | null>;
  readonly onChange: (text: string) => void;
  readonly onEnter: () => void;
  readonly onLeave: () => void;
}

/**
 * The text with its lines numbered; a line with a problem is marked. Under the field the same text stands unseen,
 * line by line: a long line is broken there as it is in the field, so numbers stay beside their lines.
 */
function NumberedText({ text, problems, area, onChange, onEnter, onLeave }: NumberedTextProps) {
  const words = useWords().text;
  const marked = new Map(problems.map((problem) => [problem.line, problem.severity]));
  return (
    <div className={styles.numbered}>
      <div aria-hidden="true">
        {text.split('\n').map((line, index) => (
          <div key={index} className={styles.line} data-part="line" data-severity={marked.get(index + 1)}>
            <span className={styles.number} data-part="line-number">
              {index + 1}
            </span>
            <span className={styles.text} data-part="line-text">
              {line}
            </span>
          </div>
        ))}
      </div>
      <textarea
        ref={area}
        aria-label={words.title}
        value={text}
        spellCheck={false}
        autoCapitalize="off"
        onChange={(event) => onChange(event.target.value)}
        onFocus={onEnter}
        onBlur={onLeave}
      />
    </div>
  );
}

/** The view. */
export function TextView({ state }: { readonly state: DocumentState }) {
  const words = useWords().text;
  const area = useRef<HTMLTextAreaElement>(null);
  const { text, setText, enter, keep } = useKeptText(state);
  const { problems } = state.reading;
  const goTo = (problem: LessonProblem) => {
    const offset = offsetOf(text, problem.line, problem.column);
    area.current?.focus();
    area.current?.setSelectionRange(offset, offset + 1);
  };
  return (
    <Paper>
      <ViewHead title={words.title} />
      <div className={styles.columns}>
        <NumberedText {...{ text, problems, area }} onChange={setText} onEnter={enter} onLeave={keep} />
        <ProblemList problems={problems} onGo={goTo} />
      </div>
    </Paper>
  );
}
