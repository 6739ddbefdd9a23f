/** What the teacher said about takes, the newest first. */
import type { SentTake } from '@shedbook/routes';
import { useEffect } from 'react';
import { daySaid } from '../log/day-said.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import { answeredTakes, useSentTakes } from './sent-takes.ts';
import { VoiceNote } from './voice-note.tsx';
import { keepVoices, notesOf } from './voice-notes.ts';

/** Answers that are shown. */
const MOST = 5;

function Answer({ take }: { readonly take: SentTake }) {
  const words = useHearingWords();
  const { tag } = usePracticeLanguage();
  const { facts, answer, marks = [] } = take;
  const what = `${facts.lessonTitle}, ${facts.number === null ? words.takes.timeAlone : words.takes.exercise({ n: facts.number })}`;
  const day = daySaid(facts.startedAt, tag, 'long');
  return (
    <li>
      <span className="quiet">{words.week.onTake({ what, day })}</span> {answer}
      {marks.map((mark) => (
        <p key={`${mark.bar} ${mark.text}`}>{words.week.onBar(mark)}</p>
      ))}
      {notesOf(take).map((note) => (
        <p key={note.bar}>
          {note.bar !== null && words.week.spokenBar({ bar: note.bar })}
          <VoiceNote
            {...{ take, note }}
            label={
              note.bar === null ? words.week.spoken({ what }) : words.week.spokenOn({ what, bar: note.bar })
            }
          />
        </p>
      ))}
    </li>
  );
}

/** The answers; nothing where there is none. */
export function Answers() {
  const words = useHearingWords();
  const { sent } = useSentTakes();
  useEffect(() => void keepVoices([...sent.values()]), [sent]);
  const answered = answeredTakes(sent);
  if (answered.length === 0) return null;
  return (
    <section data-part="answers" aria-label={words.week.answers}>
      <h3>{words.week.answers}</h3>
      <ul>
        {answered.slice(0, MOST).map((take) => (
          <Answer key={take.facts.id} take={take} />
        ))}
      </ul>
    </section>
  );
}
