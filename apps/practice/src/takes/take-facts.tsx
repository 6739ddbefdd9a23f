/** What a take is, in a line. */
import { countedTempo, sectionOf } from '@shedbook/core';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import type { Take } from './take.ts';

/** The line. */
export function TakeFacts({ take }: { readonly take: Take }) {
  const words = useHearingWords().takes;
  const { tag } = usePracticeLanguage();
  const { pack } = usePracticeSession();
  const when = new Date(take.startedAt).toLocaleString(tag, { dateStyle: 'medium', timeStyle: 'short' });
  const clean = take.verdicts.filter((each) => each.verdict === 'clean').length;
  return (
    <p>
      <strong>{take.number === null ? words.timeAlone : words.exercise({ n: take.number })}</strong>{' '}
      <span>
        {words.about({
          when,
          bpm: countedTempo(sectionOf(pack.lesson, take.number).meter, take.loops[0]?.bpm ?? 0),
          seconds: Math.round(take.durationSeconds),
        })}
      </span>{' '}
      <span className="quiet">
        {take.verdicts.length === 0 ? words.unheard : words.rounds({ clean, all: take.verdicts.length })}
      </span>
    </p>
  );
}
