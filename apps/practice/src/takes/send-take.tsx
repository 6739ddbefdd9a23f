/** Sending a take to the teacher, and what came of it. */
import { Button, Check, useSay } from '@shedbook/stand';
import { useState } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeLanguage } from '../page/words.tsx';
import inRow from '../ui/row.module.css';
import { sendTake, takeBack, useSentTakes } from './sent-takes.ts';

/** The line under a take. */
export function SendTake({ id }: { readonly id: string }) {
  const words = useHearingWords().week;
  const { tag } = usePracticeLanguage();
  const say = useSay();
  const { wanted, sent, refused } = useSentTakes();
  const [asks, setAsks] = useState(true);
  const taken = sent.get(id);
  const waits = wanted[id] !== undefined;
  const back = async () => {
    if (!(await takeBack(id))) say(words.notBack);
  };
  const dayOf = (moment: string) => new Date(moment).toLocaleDateString(tag, { dateStyle: 'long' });
  const when =
    taken && new Date(taken.sentAt).toLocaleString(tag, { dateStyle: 'medium', timeStyle: 'short' });
  return (
    <div data-part="send-take" data-state={waits ? 'waits' : taken ? 'sent' : 'here'}>
      <p role="status">
        {waits && words.takeWaits}
        {!waits && refused.has(id) && words.takeRefused}
        {!waits && when && words.takeSent({ when })} {taken?.isHeard && words.takeHeard}
      </p>
      {taken?.goesAt && <p className="quiet">{words.keptUntil({ day: dayOf(taken.goesAt) })}</p>}
      {taken?.answer && <p>{words.answer({ answer: taken.answer })}</p>}
      {!waits && !taken && (
        <Check checked={asks} onChange={setAsks}>
          {words.ask}
        </Check>
      )}
      <div className={inRow.row}>
        {waits || taken ? (
          <Button dress="bare" onClick={() => void back()}>
            {words.back}
          </Button>
        ) : (
          <Button onClick={() => sendTake(id, asks)}>{words.sendTake}</Button>
        )}
      </div>
    </div>
  );
}
