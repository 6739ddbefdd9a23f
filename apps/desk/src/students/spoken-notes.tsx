/** Notes that the teacher speaks about a take: one of it all, and one of each bar; spoken, heard again, sent, taken back. */
import type { SentTake, SpokenNote } from '@shedbook/routes';
import { Button, useSay } from '@shedbook/stand';
import { useEffect, useRef, useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { later } from '../loading/later.ts';
import { useWords } from '../words/students-words.tsx';
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

type State = 'still' | 'speaking' | 'making' | 'spoken';

interface SoundProps {
  readonly sound: Blob | null;
  readonly label: string;
}

/** A note to be heard; nothing where there is none. */
function Sound({ sound, label }: SoundProps) {
  const url = useSound(sound);
  // biome-ignore lint/a11y/useMediaCaption: the teacher's own words, which the line beside it may say too
  return url && <audio controls src={url} aria-label={label} />;
}

interface SentNoteProps {
  readonly take: SentTake;
  readonly note: SpokenNote;
  readonly onChange: () => void;
}

/** A note that was sent: heard again, or taken back. */
function SentNote({ take, note: { bar }, onChange }: SentNoteProps) {
  const words = useWords();
  const say = useSay();
  const [sound, setSound] = useState<Blob | null>(null);
  const about = bar === null ? words.answer.noteAll : words.answer.noteBar({ bar });
  const attempt = (work: Promise<void>) => work.catch((error: unknown) => say(wordsFor(error, words)));
  const takeBack = async () => {
    await unsayVoice(take, bar);
    say(words.answer.noteGone);
    onChange();
  };
  const hear = async () => setSound(await hearVoice(take, bar));
  return (
    <li data-part="sent-note" data-bar={bar ?? ''}>
      <span>{about}</span>
      {sound === null && (
        <Button aria-label={words.answer.hearThe({ about })} onClick={() => void attempt(hear())}>
          {words.answer.hearNote}
        </Button>
      )}
      <Sound sound={sound} label={words.answer.theNote({ about })} />
      <Button aria-label={words.answer.takeBackThe({ about })} onClick={() => void attempt(takeBack())}>
        {words.answer.takeBackNote}
      </Button>
    </li>
  );
}

interface SpokenNotesProps {
  readonly take: SentTake;
  /** How many bars the exercise has; 0 where it is gone. */
  readonly bars: number;
  /** Something was said or taken back. */
  readonly onChange: () => void;
}

/** The notes that were sent, and another one. */
export function SpokenNotes({ take, bars, onChange }: SpokenNotesProps) {
  const words = useWords();
  const say = useSay();
  const [state, setState] = useState<State>('still');
  const [note, setNote] = useState<Blob | null>(null);
  const [bar, setBar] = useState<number | null>(null);
  const speaking = useRef<Speaking | null>(null);
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
      setBar(null);
      setState('still');
      say(words.answer.noteSent);
      onChange();
    });
  const isAnew = take.notes.some((each) => each.bar === bar);
  return (
    <div className={styles.note} data-part="spoken-note" data-state={state}>
      {take.notes.length > 0 && (
        <ul className={styles.notes}>
          {take.notes.map((each) => (
            <SentNote key={`${each.bar} ${each.spokenAt}`} note={each} {...{ take, onChange }} />
          ))}
        </ul>
      )}
      <Sound sound={note} label={words.answer.note} />
      <div>
        {state === 'still' && (
          <Button onClick={() => void begin()}>
            {take.notes.length > 0 ? words.answer.speakMore : words.answer.speak}
          </Button>
        )}
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
              {isAnew ? words.answer.sendInstead : words.answer.sendNote}
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
      </div>
      <span role="status">
        {state === 'speaking' && words.answer.speaking}
        {state === 'making' && words.answer.making}
      </span>
    </div>
  );
}
