/** Says whether the teacher has what was played, and lets the student decide whether they shall. */
import { Check } from '@shedbook/stand';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { isWanted, useSending, wantSending } from './sending.ts';

function Line() {
  const words = useHearingWords().week;
  const sending = useSending();
  const isOn = sending ? sending.state !== 'off' : isWanted();
  return (
    <div data-part="sending" data-state={sending?.state}>
      <Check checked={isOn} onChange={wantSending}>
        {words.want}
      </Check>
      <p className="quiet" role="status">
        {sending && words.states[sending.state]({ n: sending.left })}
      </p>
    </div>
  );
}

/** The line; nothing where the page was not opened by a private link. */
export function SendingLine() {
  const { pack } = usePracticeSession();
  return pack.isPrivate ? <Line /> : null;
}
