/** What the composer proposes, beside what is written: looked through, taken or left, and placed. */
import { termFacts } from '@shedbook/composer';
import { barsOf, exerciseLabel, type Lesson } from '@shedbook/core';
import { Button, Check } from '@shedbook/stand';
import { sayExercise } from '@shedbook/words';
import { useState } from 'react';
import { isSilent } from '../edit/is-silent.ts';
import type { PlaceHow } from '../edit/place-proposal.ts';
import { ExerciseRows } from '../notation/exercise-drawing.tsx';
import { useSay, useWords } from '../words/words.tsx';
import styles from './compose-view.module.css';
import type { Proposal, Proposed } from './composer-messages.ts';
import type { Composer } from './use-composer.ts';

/** Bars that stand in one row. */
const ABREAST = 2;

interface ProposalViewProps {
  readonly lesson: Lesson;
  readonly composer: Composer;
}

/** The heading of a page, and what it brings. */
interface PageHead {
  readonly heading: string;
  readonly brings: string;
}

interface ProposedRowProps {
  readonly item: Proposed;
  readonly number: number;
  readonly heading: string | null;
  /** Where a page of a term begins: its heading, and what it brings. */
  readonly page: PageHead | null;
  readonly lesson: Lesson;
  readonly isTaken: boolean;
  /** Null where all of the proposal goes together. */
  readonly onTake: ((on: boolean) => void) | null;
}

function ProposedRow({ item, number, heading, page, lesson, isTaken, onTake }: ProposedRowProps) {
  const words = useWords();
  const say = useSay();
  const { exercise, from, isKept, said, notes } = item;
  const told = [said.map(say).join('. '), notes.map(say).join(' ')].filter((text) => text !== '').join('. ');
  return (
    <li data-kept={isKept || undefined}>
      {page && (
        <>
          <h4 className={styles.heading}>{page.heading}</h4>
          <p className={styles.brings}>{page.brings}</p>
        </>
      )}
      {heading !== null && <h4 className={styles.heading}>{heading}</h4>}
      <span className={styles.number}>{exerciseLabel(from ?? number)}</span>
      <div className={styles.drawing} role="img" aria-label={sayExercise(exercise, words)}>
        <ExerciseRows exercise={exercise} meter={lesson.meter} abreast={ABREAST} />
      </div>
      {isKept ? (
        <span className={styles.keepWords}>{words.compose.kept}</span>
      ) : onTake === null ? null : (
        <Check checked={isTaken} onChange={onTake}>
          <span className={styles.keepWords}>{words.compose.take}</span>
          <span className="hidden-words">{words.page.exercise({ n: from ?? number })}</span>
        </Check>
      )}
      {told !== '' && <p className={styles.told}>{told}</p>}
    </li>
  );
}

/** Which exercises of the proposal are taken: all of them, until a person leaves one. */
function useTaken(proposal: Proposal | null) {
  const [left, setLeft] = useState<ReadonlySet<number>>(new Set());
  const [of, setOf] = useState(proposal);
  if (of !== proposal) {
    setOf(proposal);
    setLeft(new Set());
  }
  const take = (index: number, on: boolean) => {
    const next = new Set(left);
    if (on) next.delete(index);
    else next.add(index);
    setLeft(next);
  };
  const all = proposal?.exercises ?? [];
  const taken = new Set(all.flatMap((_, index) => (left.has(index) ? [] : [index])));
  return { taken, take };
}

/** Where the proposal can go. */
function placesFor(proposal: Proposal, { exercises }: Lesson): readonly PlaceHow[] {
  const isTerm = proposal.of === 'term';
  if (exercises.every(isSilent)) return [isTerm ? 'instead' : 'behind'];
  if (isTerm && exercises.some(({ keep }) => keep === true)) return ['behind'];
  switch (proposal.of) {
    case 'page':
    case 'move':
    case 'review':
    case 'term':
      return ['behind', 'instead'];
    case 'passes':
      return ['behind', 'each after its own'];
    case 'near':
    case 'variations':
      return ['each after its own', 'in its stead', 'behind'];
    case 'goal':
      return ['before its goal', 'behind'];
  }
}

interface PlacingProps extends ProposalViewProps {
  readonly proposal: Proposal;
  readonly taken: ReadonlySet<number>;
}

function Placing({ lesson, composer, proposal, taken }: PlacingProps) {
  const words = useWords().compose;
  const fresh = proposal.exercises.filter(({ isKept }, index) => !isKept && taken.has(index)).length;
  const loose = lesson.exercises.filter(({ keep }) => keep !== true).length;
  const isBlank = lesson.exercises.every(isSilent);
  const label: Readonly<Record<PlaceHow, string>> = {
    behind: isBlank ? words.use : words.behind,
    'before its goal': words.beforeGoal,
    'each after its own':
      proposal.of === 'near' || proposal.of === 'variations' ? words.after : words.eachAfter,
    'in its stead': words.inStead,
    instead: isBlank ? words.use : words.instead({ n: loose }),
  };
  return (
    <div className={styles.placing}>
      {placesFor(proposal, lesson).map((how, index) => (
        <Button
          key={how}
          dress={index === 0 ? 'strong' : 'plain'}
          disabled={fresh === 0 || composer.working}
          onClick={() => composer.place(how, taken)}
        >
          {label[how]}
        </Button>
      ))}
      <Button dress="bare" onClick={() => composer.propose(null)}>
        {words.putAway}
      </Button>
    </div>
  );
}

/** The proposal, or nothing. */
export function ProposalView({ lesson, composer }: ProposalViewProps) {
  const words = useWords().compose;
  const say = useSay();
  const { proposal } = composer;
  const { taken, take } = useTaken(proposal);
  if (!proposal) return null;
  const isLong = proposal.exercises.some(({ exercise }) => barsOf(exercise) > ABREAST);
  const headings = new Map(
    lesson.compose.headings ? proposal.blocks.map(({ first, heading }) => [first, heading] as const) : [],
  );
  const pages = new Map<number, PageHead>();
  let first = 1;
  for (const page of proposal.term) {
    const heading = say({ fact: 'term-page', page: page.page });
    pages.set(first, { heading, brings: termFacts(page).map(say).join(' ') });
    first += page.exercises.length;
  }
  const headingAt = (number: number) => {
    const heading = headings.get(number);
    const name = proposal.of === 'review' ? proposal.exercises[number - 1]?.exercise.name : null;
    return heading ? say(heading) : (name ?? null);
  };
  return (
    <section className={styles.proposal} data-part="proposal" aria-label={words.proposed}>
      <h3>{words.proposed}</h3>
      <p>{proposal.exercises.length > 0 ? words.proposedLead : words.impossible}</p>
      {proposal.exercises.length > 0 && <Placing {...{ lesson, composer, proposal, taken }} />}
      <ol className={styles.composed} data-long={isLong || undefined}>
        {proposal.exercises.map((item, index) => (
          <ProposedRow
            key={index}
            item={item}
            number={index + 1}
            heading={headingAt(index + 1)}
            page={pages.get(index + 1) ?? null}
            lesson={lesson}
            isTaken={taken.has(index)}
            onTake={proposal.term.length > 0 ? null : (on) => take(index, on)}
          />
        ))}
      </ol>
    </section>
  );
}
