/** The ledge of the music stand: play, what plays, how fast, and more where it is wanted. */

import { bringWithin, countedTempo, isWithin, PLAYED_TEMPI, quarterTempo } from '@shedbook/core';
import { Button, buttonClass, Icon, useSay, useSoundNote } from '@shedbook/stand';
import { Suspense } from 'react';
import { lazily } from '../loading/later.ts';
import { PopForm } from '../shared/pop-over.tsx';
import { useDraft } from '../shared/use-draft.ts';
import { useWords } from '../words/words.tsx';
import { type Heard, insteadOf } from './heard.ts';
import styles from './ledge.module.css';
import { LedgeCount } from './ledge-count.tsx';
import { useSound } from './sound-context.tsx';
import { useLedgeKeys } from './use-ledge-keys.ts';

const SoundForm = lazily(
  () => import('./sound-form.tsx'),
  (module) => module.SoundForm,
);

/** Beats a minute that a press of a button adds. */
const STEP = 4;

/** The tempo in beats of the meter that is heard; one that cannot be played is said to be none. */
function Tempo({ heard }: { readonly heard: Heard }) {
  const words = useWords();
  const say = useSay();
  const { choose } = useSound();
  const { meter } = heard.section;
  const step = quarterTempo(meter, STEP);
  const [least, most] = [PLAYED_TEMPI.least, PLAYED_TEMPI.most].map((bpm) => countedTempo(meter, bpm)) as [
    number,
    number,
  ];
  const set = (bpm: number) => choose(insteadOf(heard, { bpm: bringWithin(PLAYED_TEMPI, bpm) }));
  const { field } = useDraft(String(countedTempo(meter, heard.bpm)), (text) => {
    const bpm = quarterTempo(meter, Number(text));
    if (text.trim() === '' || !isWithin(PLAYED_TEMPI, bpm)) say(words.sound.tempoRange({ least, most }));
    if (Number.isFinite(bpm) && text.trim() !== '') set(bpm);
  });
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div className={styles.tempo} role="group" aria-label={words.sound.tempo}>
      <Button aria-label={words.sound.slower} onClick={() => set(heard.bpm - step)}>
        <Icon name="minus" />
      </Button>
      <label>
        <span className="hidden-words">{words.sound.tempo}</span>
        <input
          type="number"
          inputMode="numeric"
          min={least}
          max={most}
          {...field}
          onChange={(event) => {
            field.onChange(event);
            const bpm = quarterTempo(meter, event.target.valueAsNumber);
            if (isWithin(PLAYED_TEMPI, bpm)) set(bpm);
          }}
        />
        <span aria-hidden="true">bpm</span>
      </label>
      <Button aria-label={words.sound.faster} onClick={() => set(heard.bpm + step)}>
        <Icon name="plus" />
      </Button>
    </div>
  );
}

/** The ledge. */
export function Ledge() {
  const words = useWords();
  const sound = useSound();
  const { status, choice, choose, toggle, lesson, heard, side, compare } = sound;
  const note = useSoundNote(sound.player, words.soundStart);
  useLedgeKeys(sound);
  if (!lesson || !heard) return null;
  const sounding = status === 'playing' || status === 'loading';
  const what = heard.exercise === null ? words.sound.timeOnly : words.sound.exercise({ n: heard.exercise });
  return (
    <section className={styles.ledge} data-part="ledge" aria-label={words.sound.ledge}>
      <Button
        className={styles.play}
        onClick={toggle}
        aria-label={sounding ? words.sound.stop : words.sound.play}
      >
        <Icon name={sounding ? 'stop' : 'play'} />
      </Button>
      <div className={styles.what}>
        <span>{heard.bar === null ? what : words.sound.barOf({ what, n: heard.bar + 1 })}</span>
        {(status === 'silent' || status === 'playing') && <LedgeCount />}
        {note !== null && (
          <span className={styles.note} role="status">
            {note}
          </span>
        )}
      </div>
      <Tempo heard={heard} />
      <Button
        className={styles.click}
        aria-pressed={choice.click}
        onClick={() => choose({ click: !choice.click })}
      >
        {words.sound.click}
      </Button>
      <Button className={styles.compare} aria-label={words.sound.compare({ side })} onClick={compare}>
        <span data-heard={side === 'A' || undefined}>A</span>{' '}
        <span data-heard={side === 'B' || undefined}>B</span>
      </Button>
      <PopForm
        label={words.sound.settings}
        buttonLabel={words.sound.settings}
        className={buttonClass('plain', styles.more)}
        opens={<Icon name="tune" />}
        placement="top end"
      >
        <Suspense>
          <SoundForm lesson={lesson} heard={heard} />
        </Suspense>
      </PopForm>
    </section>
  );
}
