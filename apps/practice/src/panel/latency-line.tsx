/** What is known of the way of the sound, and the guided check. */
import { Button, Field, SheetButton } from '@shedbook/stand';
import { type FormEvent, useState } from 'react';
import type { Ear, EarState } from '../ear/ear.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import inRow from '../ui/row.module.css';
import styles from './latency-line.module.css';
import { takeLatency, useCheck } from './use-check.ts';

/** Longest latency that is believed, in ms. */
const LONGEST_MS = 1000;

function ByHand({
  ear,
  state,
  onKept,
}: {
  readonly ear: Ear;
  readonly state: EarState;
  readonly onKept: () => void;
}) {
  const words = useHearingWords().latency;
  const [text, setText] = useState(String(Math.round(state.latencyMs)));
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const ms = Number(text);
    if (text.trim() === '' || !(Math.abs(ms) <= LONGEST_MS)) return;
    takeLatency(ear, ms, null);
    onKept();
  };
  return (
    <form className={inRow.row} onSubmit={keep}>
      <Field
        className={styles.hand}
        label={words.hand}
        type="number"
        inputMode="numeric"
        min={-LONGEST_MS}
        max={LONGEST_MS}
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <Button type="submit">{words.keep}</Button>
    </form>
  );
}

/** The line. */
export function LatencyLine({ ear, state }: { readonly ear: Ear; readonly state: EarState }) {
  const all = useHearingWords();
  const words = all.latency;
  const { check, setCheck, run } = useCheck(ear);
  const says =
    check.at === 'done'
      ? words.result({
          ms: Math.round(check.trip.medianMs),
          spread: Math.max(1, Math.round(check.trip.spreadMs)),
          heard: check.trip.heard,
          played: check.trip.played,
        })
      : { ready: '', running: words.running, failed: words.failed, kept: words.kept }[check.at];
  return (
    <div className={styles.line}>
      <p className="quiet">
        {state.isMeasured
          ? words.known({ ms: Math.round(state.latencyMs) })
          : state.isFromPlaying
            ? words.fromPlaying({ ms: Math.round(state.latencyMs) })
            : words.guessed}
      </p>
      <SheetButton
        title={words.title}
        opens={state.isMeasured ? words.again : words.check}
        done={all.close}
        onClose={() => setCheck({ at: 'ready' })}
      >
        <div className={styles.sheet}>
          <p>{state.input === 'kit' ? words.leadKit : words.leadMicrophone}</p>
          <p role="status" className={styles.says} data-part="check-says">
            {says}
          </p>
          <Button dress="strong" disabled={check.at === 'running'} onClick={() => void run()}>
            {check.at === 'ready' || check.at === 'running' ? words.start : words.again}
          </Button>
          <ByHand key={state.latencyMs} ear={ear} state={state} onKept={() => setCheck({ at: 'kept' })} />
        </div>
      </SheetButton>
    </div>
  );
}
