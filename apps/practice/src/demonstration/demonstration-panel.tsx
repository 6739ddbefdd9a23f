/** How the teacher plays the exercise on the stand: heard at full speed or slower, seen as a film. */
import { countedTempo, sectionOf } from '@shedbook/core';
import type { PackDemonstration } from '@shedbook/pack';
import { Button, Choices, Icon } from '@shedbook/stand';
import { useState } from 'react';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './demonstration-panel.module.css';
import { type Followed, useDemonstration } from './use-demonstration.ts';

/** Speeds that are offered, in percent of what was played. */
const SPEEDS = ['100', '75', '50'] as const;

interface PlayedProps {
  readonly shown: PackDemonstration;
  readonly follow: (followed: Followed | null) => void;
}

function Played({ shown, follow }: PlayedProps) {
  const words = useHearingWords().demonstration;
  const { pack } = usePracticeSession();
  const [percent, setPercent] = useState<(typeof SPEEDS)[number]>('100');
  const speed = Number(percent) / 100;
  const { state, play, stop } = useDemonstration(shown, speed, follow);
  const isOn = state === 'playing' || state === 'preparing';
  const bpm = Math.round(countedTempo(sectionOf(pack.lesson, shown.exercise).meter, shown.bpm * speed));
  return (
    <div className={styles.played} data-state={state}>
      <Button aria-pressed={isOn} onClick={isOn ? stop : play}>
        <Icon name={isOn ? 'stop' : 'play'} />
        {isOn ? words.stop : words.play}
      </Button>
      <Choices
        label={words.speed}
        value={percent}
        choices={SPEEDS.map((each) => [each, words.percent({ n: Number(each) })] as const)}
        onChange={setPercent}
      />
      <span className="quiet">{words.tempo({ bpm })}</span>
      <span role="status">
        {state === 'preparing' && words.preparing}
        {state === 'broken' && words.broken}
      </span>
    </div>
  );
}

function Film({ path }: { readonly path: string }) {
  const words = useHearingWords().demonstration;
  const { stop } = usePracticeSession();
  return (
    <details className={styles.film} data-part="film">
      <summary>{words.film}</summary>
      {/* biome-ignore lint/a11y/useMediaCaption: what is played is written in the picture, and nobody speaks */}
      <video src={path} controls playsInline preload="none" onPlay={stop} />
    </details>
  );
}

/** The panel; nothing where the pack has nothing of the kind. */
export default function DemonstrationPanel({ follow }: Pick<PlayedProps, 'follow'>) {
  const words = useHearingWords().demonstration;
  const { pack, exercise } = usePracticeSession();
  const shown = pack.demonstrations?.find((each) => each.exercise === exercise);
  const film = pack.downloads.find((file) => file.kind === 'film' && file.exercise === exercise);
  return (
    <>
      {shown && (
        <section className={styles.panel} data-part="demonstration" aria-label={words.title}>
          <Played key={shown.path} shown={shown} follow={follow} />
        </section>
      )}
      {film && <Film key={film.path} path={film.path} />}
    </>
  );
}
