/** The ledge of the music stand: play, what plays, how fast, and more where it is wanted. */

import { Icon } from '@shedbook/stand';
import { Button, Dialog, DialogTrigger, Popover, ToggleButton } from 'react-aria-components';
import { useWords } from '../words/words.tsx';
import { LedgeCount } from './ledge-count.tsx';
import { useSound } from './sound-context.tsx';
import { SoundForm } from './sound-form.tsx';
import { useLedgeKeys } from './use-ledge-keys.ts';
import './ledge.css';

/** Slowest and fastest that the ledge plays, in quarter notes a minute. */
export const TEMPO_RANGE = { least: 30, most: 300 } as const;

function Tempo() {
  const words = useWords();
  const { choice, choose } = useSound();
  const set = (bpm: number) => choose({ bpm: Math.min(TEMPO_RANGE.most, Math.max(TEMPO_RANGE.least, bpm)) });
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div className="ledge-tempo" role="group" aria-label={words.sound.tempo}>
      <Button className="button" aria-label={words.sound.slower} onPress={() => set(choice.bpm - 4)}>
        <Icon name="minus" />
      </Button>
      <label>
        <span className="hidden-words">{words.sound.tempo}</span>
        <input
          type="number"
          inputMode="numeric"
          min={TEMPO_RANGE.least}
          max={TEMPO_RANGE.most}
          value={choice.bpm}
          onChange={(event) => {
            const bpm = event.target.valueAsNumber;
            if (bpm >= TEMPO_RANGE.least && bpm <= TEMPO_RANGE.most) choose({ bpm });
          }}
        />
        <span aria-hidden="true">bpm</span>
      </label>
      <Button className="button" aria-label={words.sound.faster} onPress={() => set(choice.bpm + 4)}>
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
  const what = choice.exercise === null ? words.sound.timeOnly : words.sound.exercise(choice.exercise);
  return (
    <section className="ledge" aria-label={words.sound.ledge}>
      <Button
        className="button play"
        onPress={toggle}
        aria-label={sounding ? words.sound.stop : words.sound.play}
      >
        <Icon name={sounding ? 'stop' : 'play'} />
      </Button>
      <div className="ledge-what">
        <span>{choice.bar === null ? what : words.sound.barOf(what, choice.bar + 1)}</span>
        {status === 'loading' || status === 'failed' ? (
          <span className="ledge-note" role="status">
            {words.sound[status]}
          </span>
        ) : (
          <LedgeCount />
        )}
      </div>
      <Tempo />
      <ToggleButton
        className="button click"
        isSelected={choice.click}
        onChange={(click) => choose({ click })}
      >
        {words.sound.click}
      </ToggleButton>
      <Button className="button compare" aria-label={words.sound.compare(side)} onPress={compare}>
        <span data-heard={side === 'A' || undefined}>A</span>{' '}
        <span data-heard={side === 'B' || undefined}>B</span>
      </Button>
      <DialogTrigger>
        <Button className="button more" aria-label={words.sound.settings}>
          <Icon name="tune" />
        </Button>
        <Popover className="popover" placement="top end">
          <Dialog className="sound-dialog" aria-label={words.sound.settings}>
            <SoundForm lesson={lesson} />
          </Dialog>
        </Popover>
      </DialogTrigger>
    </section>
  );
}
