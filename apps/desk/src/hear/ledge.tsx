/** The ledge of the music stand: play, what plays, how fast, and more where it is wanted. */

import { bringWithin, countedTempo, isWithin, type Meter, PLAYED_TEMPI, quarterTempo } from '@shedbook/core';
import { Button, buttonClass, Icon } from '@shedbook/stand';
import { PopForm } from '../shared/pop-over.tsx';
import { useWords } from '../words/words.tsx';
import styles from './ledge.module.css';
import { LedgeCount } from './ledge-count.tsx';
import { useSound } from './sound-context.tsx';
import { SoundForm } from './sound-form.tsx';
import { useLedgeKeys } from './use-ledge-keys.ts';

/** Beats a minute that a press of a button adds. */
const STEP = 4;

/** The tempo in beats of a meter. */
function Tempo({ meter }: { readonly meter: Meter }) {
  const words = useWords();
  const { choice, choose } = useSound();
  const step = quarterTempo(meter, STEP);
  const set = (bpm: number) => choose({ bpm: bringWithin(PLAYED_TEMPI, bpm) });
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div className={styles.tempo} role="group" aria-label={words.sound.tempo}>
      <Button aria-label={words.sound.slower} onClick={() => set(choice.bpm - step)}>
        <Icon name="minus" />
      </Button>
      <label>
        <span className="hidden-words">{words.sound.tempo}</span>
        <input
          type="number"
          inputMode="numeric"
          min={countedTempo(meter, PLAYED_TEMPI.least)}
          max={countedTempo(meter, PLAYED_TEMPI.most)}
          value={countedTempo(meter, choice.bpm)}
          onChange={(event) => {
            const bpm = quarterTempo(meter, event.target.valueAsNumber);
            if (isWithin(PLAYED_TEMPI, bpm)) choose({ bpm });
          }}
        />
        <span aria-hidden="true">bpm</span>
      </label>
      <Button aria-label={words.sound.faster} onClick={() => set(choice.bpm + step)}>
        <Icon name="plus" />
      </Button>
    </div>
  );
}

/** The ledge. */
export function Ledge() {
  const words = useWords();
  const sound = useSound();
  const { status, choice, choose, toggle, lesson, side, compare } = sound;
  useLedgeKeys(sound);
  if (!lesson) return null;
  const sounding = status === 'playing' || status === 'loading';
  const what = choice.exercise === null ? words.sound.timeOnly : words.sound.exercise({ n: choice.exercise });
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
        <span>{choice.bar === null ? what : words.sound.barOf({ what, n: choice.bar + 1 })}</span>
        {status === 'loading' || status === 'failed' ? (
          <span className={styles.note} role="status">
            {words.sound[status]}
          </span>
        ) : (
          <LedgeCount />
        )}
      </div>
      <Tempo meter={lesson.meter} />
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
        <SoundForm lesson={lesson} />
      </PopForm>
    </section>
  );
}
