/** Whether the coach proposes anything to a student: the teacher may pause it or turn it off. */
import { isCoachSilent } from '@shedbook/coach';
import type { CoachSetting, StoredStudent } from '@shedbook/routes';
import { Choices, Field } from '@shedbook/stand';
import { useWords } from '../words/students-words.tsx';
import styles from './coach-switch.module.css';

interface CoachSwitchProps {
  readonly student: StoredStudent;
  /** A moment. */
  readonly now: string;
  readonly onSet: (setting: CoachSetting) => void;
}

const STATES = ['on', 'paused', 'off'] as const;

/** The switch, and what follows from how it stands. */
export function CoachSwitch({ student: { name, coach }, now, onSet }: CoachSwitchProps) {
  const words = useWords().coachSwitch;
  return (
    <section className={styles.coach} aria-label={words.title} data-part="coach-switch">
      <h3>{words.title}</h3>
      <Choices<CoachSetting['state']>
        label={words.label({ name })}
        value={coach.state}
        choices={STATES.map((each) => [each, words.states[each]])}
        onChange={(state) => onSet({ state, until: null })}
      />
      {coach.state === 'paused' && (
        <Field
          label={words.until}
          type="date"
          value={coach.until ?? ''}
          onChange={(event) => onSet({ state: 'paused', until: event.target.value || null })}
        />
      )}
      <p className="quiet">{isCoachSilent(coach, now) ? words.silent({ name }) : words.speaks({ name })}</p>
    </section>
  );
}
