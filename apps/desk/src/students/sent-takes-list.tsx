/** The takes that a student sent: heard, looked at, answered. */
import { countedTempo, defaultForm, exerciseKey, formNamed, sectionOf } from '@shedbook/core';
import { judgeTaken, type Level, numberToday } from '@shedbook/judge';
import type { SentTake } from '@shedbook/routes';
import { Button, Check, LongField, Problem, useSay } from '@shedbook/stand';
import { Suspense, useEffect, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { later, lazily } from '../loading/later.ts';
import { useLanguage, useWords } from '../words/students-words.tsx';
import { keepTake, readTake } from './api.ts';
import { BarMarks } from './bar-marks.tsx';
import type { OpenTake } from './open-take.ts';
import styles from './sent-takes-list.module.css';
import { SpokenNotes } from './spoken-notes.tsx';
import type { DeskShelf } from './take-in.ts';
import { useSentWords, useTakeWords } from './take-words.ts';
import type { Passed } from './use-pass.ts';
import { type SentTakes, useSentTakes } from './use-sent-takes.ts';

const loadOpening = later(() => import('./open-take.ts'));

const HeardReport = lazily(
  () => import('../takes/heard-report.tsx'),
  (module) => module.HeardReport,
);

const RoundBeside = lazily(
  () => import('./round-beside.tsx'),
  (module) => module.RoundBeside,
);

interface OpenedProps {
  readonly take: SentTake;
  readonly open: OpenTake;
  readonly shelf: readonly DeskShelf[];
  readonly level: Level;
}

/** The sound, and what the ear makes of it beside the lesson as it is now. */
function Opened({ take, open, shelf, level }: OpenedProps) {
  const words = useWords().inbox;
  const title = useTakeWords()(take.facts);
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (!open.sound) return undefined;
    const next = URL.createObjectURL(open.sound);
    setUrl(next);
    return () => URL.revokeObjectURL(next);
  }, [open]);
  const lesson = shelf.find(({ id }) => id === take.facts.lesson)?.lesson;
  const number = lesson && numberToday(lesson, open.taken);
  const section = lesson && number !== undefined ? sectionOf(lesson, number) : null;
  const form = section && (formNamed(section, take.facts.form) ?? defaultForm(section));
  const judgement = lesson && form ? judgeTaken(open.taken, lesson, form, level) : null;
  return (
    <>
      {/* biome-ignore lint/a11y/useMediaCaption: a drum set has no words */}
      {url && <audio controls src={url} aria-label={words.soundOf({ what: title })} />}
      {lesson && form && number !== undefined && open.played && (
        <Suspense>
          <RoundBeside {...{ lesson, form, number, judgement }} take={open.played} sound={open.sound} />
        </Suspense>
      )}
      {judgement && open.taken.report ? (
        <Suspense>
          <HeardReport report={open.taken.report} judgement={judgement} title={title} />
        </Suspense>
      ) : (
        <Problem>{lesson ? words.noReport : words.noLesson}</Problem>
      )}
    </>
  );
}

interface AnswerProps extends Pick<SentTakes, 'answer' | 'look'> {
  readonly take: SentTake;
}

interface PassTakeProps extends Pick<OpenedProps, 'take' | 'open' | 'shelf'> {
  readonly pass: (passed: Passed) => Promise<void>;
}

/** Passes what was played at the tempo that it was played at; nothing where its lesson is gone. */
function PassTake({ take, open, shelf, pass }: PassTakeProps) {
  const words = useWords().students;
  const { lesson: id, exercise, number } = take.facts;
  const lesson = shelf.find((each) => each.id === id)?.lesson;
  const bpm = open.taken.loops.at(-1)?.bpm;
  if (!lesson || bpm === undefined) return null;
  return (
    <Button onClick={() => void pass({ lesson: id, exercise, bpm })}>
      {words.pass({ bpm: countedTempo(sectionOf(lesson, number).meter, bpm) })}
    </Button>
  );
}

/** Bars of what was played; 0 where it is gone. */
function barsOf({ facts }: SentTake, shelf: readonly DeskShelf[]): number {
  const lesson = shelf.find(({ id }) => id === facts.lesson)?.lesson;
  const exercise = lesson?.exercises.find((each) => exerciseKey(each) === facts.exercise);
  const parts = facts.exercise === null ? lesson?.groove : exercise?.parts;
  return Math.max(0, ...(parts ?? []).map(({ pattern }) => pattern.bars.length));
}

/** A line for the student, words on single bars, and a spoken note. */
function Answer({ take, answer, look, bars }: AnswerProps & { readonly bars: number }) {
  const words = useWords();
  const say = useSay();
  const [text, setText] = useState(take.answer ?? '');
  const [marks, setMarks] = useState(take.marks);
  const line = text.trim();
  const isNothing = line === '' && marks.length === 0;
  const send = async () => {
    if (await answer(take, { isHeard: true, answer: line === '' ? null : line, marks }))
      say(isNothing ? words.inbox.heard : words.inbox.answered);
  };
  return (
    <>
      <LongField
        label={words.inbox.answer}
        value={text}
        maxLength={4000}
        onChange={(event) => setText(event.target.value)}
      />
      {bars > 0 && <BarMarks marks={marks} bars={bars} onChange={setMarks} />}
      <Button dress="strong" onClick={() => void send()}>
        {isNothing ? words.inbox.isHeard : words.inbox.send}
      </Button>
      <SpokenNotes take={take} bars={bars} onChange={look} />
    </>
  );
}

/** How long it stays, where takes are erased for their age. */
function KeepTake({ take, look }: Pick<AnswerProps, 'take' | 'look'>) {
  const { words, tag } = useLanguage();
  const say = useSay();
  const { goesAt, isKept } = take;
  if (goesAt === null && !isKept) return null;
  const keep = (next: boolean) =>
    keepTake(take, next).then(look, (error: unknown) => say(wordsFor(error, words)));
  const day = goesAt && new Date(goesAt).toLocaleDateString(tag, { dateStyle: 'long' });
  return (
    <Check checked={isKept} onChange={(next) => void keep(next)}>
      {words.keeping.keepThis} {day && <span className="quiet">{words.keeping.goes({ day })}</span>}
    </Check>
  );
}

type RowProps = Omit<OpenedProps, 'open'> & AnswerProps & Pick<PassTakeProps, 'pass'>;

function Row({ take, answer, look, pass, ...rest }: RowProps) {
  const words = useWords();
  const say = useSay();
  const takeWords = useTakeWords();
  const sentWords = useSentWords();
  const [open, setOpen] = useState<OpenTake | null>(null);
  const { facts, sentAt, isHeard } = take;
  const hear = async () => {
    try {
      const bytes = new Uint8Array(await (await readTake(take)).arrayBuffer());
      const { openTake } = await loadOpening();
      setOpen(openTake(bytes, facts));
    } catch (error) {
      say(wordsFor(error, words));
    }
  };
  return (
    <li className={styles.take} data-part="sent-take" data-heard={isHeard}>
      <p>
        <strong>{takeWords(facts)}</strong> <span className="quiet">{sentWords(sentAt)}</span>{' '}
        {take.asks && !isHeard && <em>{words.inbox.asks}</em>}
      </p>
      <KeepTake take={take} look={look} />
      {take.answer !== null && <p>{words.inbox.said({ answer: take.answer })}</p>}
      {!open && take.marks.map((mark) => <p key={`${mark.bar} ${mark.text}`}>{words.answer.mark(mark)}</p>)}
      {open ? (
        <>
          <Opened take={take} open={open} {...rest} />
          <PassTake {...{ take, open, pass }} shelf={rest.shelf} />
          <Answer {...{ take, answer, look }} bars={barsOf(take, rest.shelf)} />
        </>
      ) : (
        <Button onClick={() => void hear()}>{words.inbox.hear}</Button>
      )}
    </li>
  );
}

interface SentTakesListProps {
  readonly student: string;
  readonly shelf: readonly DeskShelf[];
  readonly level: Level;
  readonly pass: (passed: Passed) => Promise<void>;
}

/** The list; nothing where none was sent. */
export function SentTakesList({ student, shelf, level, pass }: SentTakesListProps) {
  const words = useWords().inbox;
  const { takes, answer, look } = useSentTakes(student);
  if (takes.length === 0) return null;
  return (
    <section className={styles.takes} aria-label={words.takes} data-part="sent-takes">
      <h3>{words.takes}</h3>
      <ul>
        {takes.map((take) => (
          <Row key={take.facts.id} {...{ take, answer, look, shelf, level, pass }} />
        ))}
      </ul>
    </section>
  );
}
