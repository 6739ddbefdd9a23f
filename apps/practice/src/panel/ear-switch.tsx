/** Turning hearing on and off: what it does is said before anything is asked for. */

import { isClapped, SURFACES } from '@shedbook/core';
import { Button, Choices, classes } from '@shedbook/stand';
import type { EarState, Input } from '../ear/ear.ts';
import type { Hearing } from '../ear/hearing.ts';
import { useHearingWords } from '../page/hearing-words.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { LevelMeter } from '../ui/level-meter.tsx';
import { levelName } from '../ui/level-name.ts';
import inRow from '../ui/row.module.css';
import styles from './ear-switch.module.css';

function Listening({ ear, hearing }: { readonly ear: EarState; readonly hearing: Hearing }) {
  const words = useHearingWords().hearing;
  const { playing } = usePracticeSession();
  return (
    <div className={styles.on}>
      <p>
        <strong>{words.on[ear.input as Input]}</strong> {!playing && words.waiting}
      </p>
      {ear.caution && (
        <p className="quiet" data-part="caution">
          {words.cautions[ear.caution]}
        </p>
      )}
      {ear.oldLineCheck !== null && (
        <p className="quiet" data-part="old-line-check">
          {words.oldLineCheck({ name: ear.oldLineCheck })}
        </p>
      )}
      {ear.levelDb !== null && (
        <p className={classes('quiet', styles.level)} data-level={levelName(ear.levelDb)}>
          <LevelMeter levelDb={ear.levelDb} />
        </p>
      )}
      <Button onClick={() => hearing.close()}>{words.stop}</Button>
    </div>
  );
}

/** The switch. */
export function EarSwitch({ ear, hearing }: { readonly ear: EarState; readonly hearing: Hearing }) {
  const words = useHearingWords().hearing;
  const all = useHearingWords();
  const { choose, choice, exercise, lesson } = usePracticeSession();
  const isPad = choice.surface === 'pad' && exercise !== null;
  const on = lesson.exercises.find(({ number }) => number === exercise);
  const isClapping = on !== undefined && isClapped(on);
  const open = (input: Input) => {
    // Every limb is drawn, so that every stroke that is heard has its place; on a pad there is one.
    choose({ staff: isPad ? 'own' : 'full' });
    void hearing.open(input);
  };
  if (ear.phase === 'on') return <Listening ear={ear} hearing={hearing} />;
  return (
    <div className={styles.off}>
      {exercise !== null && !isClapping && (
        <Choices
          label={all.pad.surface}
          value={choice.surface}
          choices={SURFACES.map((each) => [each, all.pad.surfaces[each]] as const)}
          onChange={(surface) => choose({ surface })}
        />
      )}
      <p>{isClapping ? all.pad.clapLead : isPad ? all.pad.lead : words.lead}</p>
      <p className="quiet">
        {words.privacy} {words.headphones}
      </p>
      <p role="status" className={styles.refusal} data-part="refusal">
        {ear.phase === 'opening' && words.opening[ear.input as Input]}
        {ear.refusal && `${words.refusals[ear.input as Input][ear.refusal]} ${words.goesOn}`}
      </p>
      <div className={inRow.row}>
        <Button dress="strong" disabled={ear.phase === 'opening'} onClick={() => open('microphone')}>
          {words.microphone}
        </Button>
        <Button disabled={ear.phase === 'opening'} onClick={() => open('kit')}>
          {isPad ? all.pad.midi : words.kit}
        </Button>
      </div>
    </div>
  );
}
