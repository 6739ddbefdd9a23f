/** How strict the ear is, and whether practice goes on by itself. */
import { LEVELS } from '@shedbook/judge';
import { Button, Check, Choices, Select } from '@shedbook/stand';
import { useHearingWords } from '../page/hearing-words.ts';
import { type HearingSettings, LOOP_CHOICES } from '../session/hearing-settings.ts';
import inRow from '../ui/row.module.css';
import styles from './hearing-options.module.css';
import type { HearingView } from './use-hearing.ts';

interface OptionsProps {
  readonly settings: HearingSettings;
  readonly change: (next: Partial<HearingSettings>) => void;
  readonly view: HearingView;
}

/** The options. */
export function HearingOptions({ settings, change, view }: OptionsProps) {
  const words = useHearingWords().hearing;
  return (
    <div className={styles.options}>
      <Choices
        label={words.level}
        value={settings.level}
        choices={LEVELS.map((level) => [level, words.strictness[level]] as const)}
        onChange={(level) => change({ level })}
      />
      <Check checked={settings.handsFree} onChange={(handsFree) => change({ handsFree })}>
        <span>
          {words.handsFree}
          <span className="quiet"> {words.handsFreeHint({ loops: settings.comfortableLoops })}</span>
        </span>
      </Check>
      {settings.handsFree && (
        <div className={inRow.row}>
          <Select
            label={words.loops}
            value={settings.comfortableLoops}
            onChange={(event) => change({ comfortableLoops: Number(event.target.value) })}
          >
            {LOOP_CHOICES.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </Select>
          <Button onClick={view.isStaying ? view.goOn : view.stay}>
            {view.isStaying ? words.goOn : words.stay}
          </Button>
        </div>
      )}
    </div>
  );
}
