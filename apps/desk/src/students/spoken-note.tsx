/** A note that the teacher speaks about a take: spoken, heard again, sent or taken back. */
import type { SentTake } from '@shedbook/routes';
import { Button, useSay } from '@shedbook/stand';
import { useEffect, useRef, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { later } from '../shared/later.ts';
import { useWords } from '../words/words.tsx';
import { hearVoice, sayVoice, unsayVoice } from './api.ts';
import { BarChoice } from './bar-marks.tsx';
import styles from './sent-takes-list.module.css';
import type { Speaking } from './voice-note.ts';

const loadSpeaking = later(() => import('./voice-note.ts'));

/** The address of a sound on this page; null where there is none. */
function useSound(sound: Blob | null): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (!sound) {
      setUrl(null);
      return undefined;
    }
    const next = URL.createObjectURL(sound);
    setUrl(next);
    return () => URL.revokeObjectURL(next);
  }, [sound]);
  return url;
}

/** `heard`: what was said before is heard again. */
type State = 'still' | 'speaking' | 'making' | 'spoken' | 'heard';

interface SpokenNoteProps {
  readonly take: SentTake;
  /** How many bars the exercise has; 0 where it is gone. */
  readonly bars: number;
  /** Something was said or taken back. */
  readonly onChange: () => void;
}

/** The note. */
export function SpokenNote({ take, bars, onChange }: SpokenNoteProps) {
  const words = useWords();
  const say = useSay();
  const [state, setState] = useState<State>('still');
  const [note, setNote] = useState<Blob | null>(null);
  const [bar, setBar] = useState<number | null>(null);
  const speaking = useRef<Speaking | null>(null);
  const url = useSound(note);
  useEffect(() => () => speaking.current?.stop(), []);
  const attempt = async (work: () => Promise<void>) => {
    try {
      await work();
    } catch (error) {
      setState((before) => (before === 'spoken' ? before : 'still'));
      say(error instanceof DOMException ? words.answer.noMicrophone : wordsFor(error, words));
    }
  };
  const begin = () =>
    attempt(async () => {
      const { speak } = await loadSpeaking();
      speaking.current = await speak();
      setState('speaking');
      const spoken = speaking.current.note;
      void attempt(async () => {
        const made = await spoken;
        setNote(made);
        setState(made ? 'spoken' : 'still');
        if (!made) say(words.answer.noMicrophone);
      });
    });
  const send = () =>
    attempt(async () => {
      if (!note) return;
      await sayVoice(take, bar, note);
      setNote(null);
      setState('still');
      say(words.answer.noteSent);
      onChange();
    });
  const takeBack = () =>
    attempt(async () => {
      await unsayVoice(take);
      setNote(null);
      setState('still');
      say(words.answer.noteGone);
      onChange();
    });
  const hear = () =>
    attempt(async () => {
      setNote(await hearVoice(take));
      setState('heard');
    });
  const isFree = state === 'still' || state === 'heard';
  return (
    <div className={styles.note} data-part="spoken-note" data-state={state}>
      {url && (
        // biome-ignore lint/a11y/useMediaCaption: the teacher's own words, which the line beside it may say too
        <audio controls src={url} aria-label={words.answer.note} />
      )}
      <div>
        {isFree && <Button onClick={() => void begin()}>{words.answer.speak}</Button>}
        {state === 'speaking' && (
          <Button
            dress="strong"
            onClick={() => {
              setState('making');
              speaking.current?.stop();
            }}
          >
            {words.answer.enough}
          </Button>
        )}
        {state === 'spoken' && (
          <>
            {bars > 1 && (
              <BarChoice
                label={words.answer.noteOn}
                bars={bars}
                bar={bar}
                all={words.answer.wholeTake}
                onChange={setBar}
              />
            )}
            <Button dress="strong" onClick={() => void send()}>
              {words.answer.sendNote}
            </Button>
            <Button
              onClick={() => {
                setNote(null);
                setState('still');
              }}
            >
              {words.answer.dropNote}
            </Button>
          </>
        )}
        {isFree && take.voiceAt !== null && (
          <>
            {take.voiceBar !== null && <span>{words.answer.noteBar({ bar: take.voiceBar })}</span>}
            {state === 'still' && <Button onClick={() => void hear()}>{words.answer.hearNote}</Button>}
            <Button onClick={() => void takeBack()}>{words.answer.takeBackNote}</Button>
          </>
        )}
      </div>
      <span role="status">
        {state === 'speaking' && words.answer.speaking}
        {state === 'making' && words.answer.making}
      </span>
    </div>
  );
}
