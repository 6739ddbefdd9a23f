/** What was played, by exercise and tempo, and the log as a file. */

import { printPracticeLog, type ShelfLesson } from '@shedbook/coach';
import { countedTempo, sectionOf } from '@shedbook/core';
import { Button, buttonClass, Problem } from '@shedbook/stand';
import { durationWords, loadFacts, say } from '@shedbook/words';
import { type ChangeEvent, useState } from 'react';
import { download } from '../kept/download.ts';
import { exerciseName } from '../page/exercise-name.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import { Folded } from '../ui/folded.tsx';
import inRow from '../ui/row.module.css';
import { daySaid } from './day-said.ts';
import type { LogRead } from './log-read.ts';
import { type LogRow, logRows } from './log-rows.ts';
import { type KeptLog, takeIn } from './log-store.ts';
import styles from './log-view.module.css';
import { readBeside, takeApart } from './take-apart.ts';
import { UnreadableEntries } from './unreadable-entries.tsx';

type Came =
  | { readonly kind: 'reading' }
  | { readonly kind: 'too much'; readonly file: string }
  | { readonly kind: 'in'; readonly entries: number }
  /** `entries`: how many were added all the same; null where the whole file was refused. */
  | {
      readonly kind: 'refused';
      readonly file: string;
      readonly problems: readonly Told[];
      /** How many more there are. */
      readonly more: number;
      readonly entries: number | null;
    };

/** A problem of a file, in the reader's language. */
interface Told {
  readonly line: number;
  readonly column: number;
  readonly found: string;
  readonly expected: string;
}

function Row({ row }: { readonly row: LogRow }) {
  const all = useHearingWords();
  const { tag } = usePracticeLanguage();
  const words = all.log;
  const { pack } = usePracticeSession();
  const { meter } = sectionOf(pack.lesson, row.number);
  const day = daySaid(row.last, tag, 'short');
  const name = row.isFree ? all.plan.free : exerciseName(row, all.plan);
  const tempo = (bpm: number | null) =>
    bpm === null ? words.never : all.plan.tempo({ bpm: countedTempo(meter, bpm) });
  return (
    <tr>
      <th scope="row">
        {name}
        {row.passedBpm !== null && <small> {words.passed({ tempo: tempo(row.passedBpm) })}</small>}
      </th>
      <td>{durationWords(all.durations, row.seconds)}</td>
      <td>{tempo(row.heardBpm)}</td>
      <td>{tempo(row.saidBpm)}</td>
      <td>{day}</td>
    </tr>
  );
}

function Table({ rows }: { readonly rows: readonly LogRow[] }) {
  const words = useHearingWords().log;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by keys (WCAG 2.2, 2.1.1)
    // biome-ignore lint/a11y/useSemanticElements: a section without a heading is named the same way
    <div className={styles.scroll} tabIndex={0} role="region" aria-label={words.title}>
      <table className={styles.table} data-part="log">
        <thead>
          <tr>
            <th scope="col">{words.exercise}</th>
            <th scope="col">{words.time}</th>
            <th scope="col">{words.heard}</th>
            <th scope="col">{words.said}</th>
            <th scope="col">{words.last}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Row key={row.isFree ? 'free' : (row.number ?? 'time')} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Import() {
  const words = useHearingWords().log;
  const { tag } = usePracticeLanguage();
  const [came, setCame] = useState<Came | null>(null);
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    event.target.value = '';
    if (!file) return;
    setCame({ kind: 'reading' });
    const thread = new Worker(new URL('./read-log.worker.ts', import.meta.url), { type: 'module' });
    const read = await readBeside<LogRead>(thread, file).catch(() => null);
    if (!read) {
      setCame({ kind: 'too much', file: file.name });
      return;
    }
    const { problemCount, problems } = read;
    const log = await takeApart(read);
    const entries = log && (await takeIn(log));
    if (entries !== null && problemCount === 0) {
      setCame({ kind: 'in', entries });
      return;
    }
    const language = await loadFacts(tag);
    const told = problems.map(({ line, column, found, expected }) => {
      return { line, column, found: say(found, language), expected: say(expected, language) };
    });
    setCame({ kind: 'refused', file: file.name, problems: told, more: problemCount - told.length, entries });
  };
  return (
    <>
      <label className={buttonClass('plain', styles.file)} data-part="log-file">
        {words.import}
        <input type="file" accept=".json,application/json" className="hidden-words" onChange={take} />
      </label>
      <div role="status" className={styles.came} data-part="log-came">
        {came?.kind === 'reading' && <p>{words.reading}</p>}
        {came?.kind === 'too much' && <Problem>{words.tooMuch({ file: came.file })}</Problem>}
        {came?.kind === 'in' && <p>{words.imported({ n: came.entries })}</p>}
        {came?.kind === 'refused' && (
          <>
            <p>
              {came.entries === null
                ? words.refused({ file: came.file })
                : words.partly({ file: came.file, n: came.entries })}
            </p>
            <ul>
              {came.problems.map(({ line, column, found, expected }) => (
                <li key={`${line} ${column} ${found}`}>
                  <Problem>{words.problem({ line, column, found, expected })}</Problem>
                </li>
              ))}
            </ul>
            {came.more > 0 && <p>{words.more({ n: came.more })}</p>}
          </>
        )}
      </div>
    </>
  );
}

interface LogProps {
  readonly kept: KeptLog;
  readonly shelf: readonly ShelfLesson[];
}

/** The log. */
export function LogView({ kept: { log, unreadable }, shelf }: LogProps) {
  const words = useHearingWords().log;
  const rows = shelf.flatMap((each) => logRows(log, each));
  const save = () => download('practice-log.json', printPracticeLog(log), 'application/json');
  return (
    <Folded title={words.title} part="log-view">
      <p className="quiet">{words.lead}</p>
      {rows.length === 0 ? <p>{words.empty}</p> : <Table rows={rows} />}
      <UnreadableEntries unreadable={unreadable} />
      <div className={inRow.row}>
        <Button disabled={log.entries.length === 0} onClick={save}>
          {words.export}
        </Button>
        <Import />
      </div>
    </Folded>
  );
}
