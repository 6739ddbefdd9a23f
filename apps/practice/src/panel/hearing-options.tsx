/** How strict the ear is, and whether practice goes on by itself. */
import { STUDENT_LEVELS } from '@shedbook/coach';
import { useHearingWords } from '../page/hearing-words.ts';
import { takeUpList, useList } from '../session/course.ts';
import { type HearingSettings, LOOP_CHOICES } from '../session/hearing-settings.ts';
import { Pick, Tick } from '../ui/controls.tsx';
import type { HearingView } from './use-hearing.ts';

interface OptionsProps {
  readonly settings: HearingSettings;
  readonly change: (next: Partial<HearingSettings>) => void;
  readonly view: HearingView;
}

/** The options. */
export function HearingOptions({ settings, change, view }: OptionsProps) {
  const words = useHearingWords().hearing;
  const list = useList();
  return (
    <div className="hearing-options">
      <Pick
        label={words.level}
        value={settings.level}
        choices={STUDENT_LEVELS.map((level) => [level, words.strictness[level]] as const)}
        onChange={(level) => change({ level })}
      />
      <Tick checked={settings.handsFree} onChange={(handsFree) => change({ handsFree })}>
        {words.handsFree}
        <span className="quiet tick-hint"> {words.handsFreeHint(settings.comfortableLoops)}</span>
      </Tick>
      {settings.handsFree && list && (
        <p className="list-line">
          {words.list(list.join(' · '))}
          <button type="button" className="button" onClick={() => takeUpList(null)}>
            {words.bySheet}
          </button>
        </p>
      )}
      {settings.handsFree && (
        <div className="row">
          <label className="field loops-pick">
            <span className="label">{words.loops}</span>
            <select
              value={settings.comfortableLoops}
              onChange={(event) => change({ comfortableLoops: Number(event.target.value) })}
            >
              {LOOP_CHOICES.map((each) => (
                <option key={each} value={each}>
                  {each}
                </option>
              ))}
            </select>
          </label>
          <button type="button" className="button" onClick={view.isStaying ? view.goOn : view.stay}>
            {view.isStaying ? words.goOn : words.stay}
          </button>
        </div>
      )}
    </div>
  );
}
