/** How to practise: form, layers, limbs, click, gap bars, guide; in a sheet that opens over the stand. */

import type { Subdivision } from '@shedbook/core';
import type { PedalBoard } from '@shedbook/stand';
import { Check, Choices, classes, Icon, KeyList, SheetButton } from '@shedbook/stand';
import { nameIn } from '@shedbook/words';
import { usePracticeWords } from '../page/words.tsx';
import { type ClickChoice, clickBeats, formNames, isClicking } from '../session/choice.ts';
import { usePracticeSession } from '../session/practice-session.tsx';
import { formWords } from './form-words.ts';
import { ledgeKey } from './ledge-button.tsx';
import { LayersPick, MinePick } from './limbs-pick.tsx';
import { PedalFold } from './pedal-fold.tsx';
import styles from './setting-dialog.module.css';

const CLICKS: readonly ClickChoice[] = ['off', 'all', 'backbeat', 'bar'];
const GAPS = ['0/0', '1/1', '2/2', '3/1', '4/4'] as const;
const GUIDES: readonly Subdivision[] = [1, 2, 3, 4];

function FormPick() {
  const words = usePracticeWords();
  const { lesson, exercise, form, choice, choose } = usePracticeSession();
  const names = formNames(lesson, exercise);
  return (
    <Choices
      label={words.setting.form}
      value={names.includes(choice.form) ? choice.form : form.name}
      choices={names.map((name) => [name, formWords(name, words)] as const)}
      onChange={(form) => choose({ form })}
    />
  );
}

function ClickPicks() {
  const words = usePracticeWords().setting;
  const { lesson, form, choice, choose } = usePracticeSession();
  const backbeats = clickBeats(lesson, 'backbeat');
  const label = (click: ClickChoice) =>
    click === 'backbeat' ? words.clickOn({ beats: backbeats.join(` ${words.and} `) }) : words.clicks[click];
  const offered = CLICKS.filter((click) => click !== 'backbeat' || backbeats.length > 0);
  const gap = choice.gap ? `${choice.gap.soundingBars}/${choice.gap.silentBars}` : GAPS[0];
  return (
    <>
      <Choices
        label={words.click}
        value={choice.click}
        choices={offered.map((click) => [click, label(click)] as const)}
        onChange={(click) => choose({ click })}
      />
      <Check
        checked={choice.isSpoken && isClicking(choice, form)}
        onChange={(isSpoken) =>
          choose(isSpoken && !isClicking(choice, form) ? { isSpoken, click: 'all' } : { isSpoken })
        }
      >
        {words.countAloud}
      </Check>
      <Choices
        label={words.gap}
        value={gap}
        choices={GAPS.map((each) => {
          const [on = 0, off = 0] = each.split('/').map(Number);
          return [each, words.gaps({ on, off })] as const;
        })}
        onChange={(each) => {
          const [soundingBars = 0, silentBars = 0] = each.split('/').map(Number);
          choose({ gap: silentBars === 0 ? null : { soundingBars, silentBars } });
        }}
      />
      <Choices
        label={words.guide}
        value={String(choice.guide)}
        choices={GUIDES.map((slots) => [String(slots), nameIn(words.guides, String(slots))] as const)}
        onChange={(slots) => choose({ guide: Number(slots) as Subdivision })}
      />
    </>
  );
}

interface SettingDialogProps {
  /** How its button looks. */
  readonly className: string | undefined;
  readonly pedal: PedalBoard;
  readonly onClose: () => void;
}

/** The button that opens the sheet, and the sheet; what happens after it. */
export function SettingDialog({ className, pedal, onClose }: SettingDialogProps) {
  const words = usePracticeWords();
  const { choice, choose, isFree } = usePracticeSession();
  return (
    <SheetButton
      className={classes(ledgeKey, className)}
      aria-label={words.setting.open}
      title={words.setting.title}
      done={words.setting.done}
      place="foot"
      onClose={onClose}
      opens={
        <>
          <Icon name="tune" />
          <span>{words.setting.open}</span>
        </>
      }
    >
      <div className={styles.grid}>
        {!isFree && <FormPick />}
        <Choices
          label={words.setting.staff}
          value={choice.staff}
          choices={[
            ['own', words.setting.staffs.own],
            ['full', words.setting.staffs.full],
          ]}
          onChange={(staff) => choose({ staff })}
        />
        {!isFree && (
          <>
            <MinePick />
            <LayersPick />
          </>
        )}
        <ClickPicks />
        {!isFree && (
          <Check checked={choice.ladder} onChange={(ladder) => choose({ ladder })}>
            {words.ladder.on}
          </Check>
        )}
      </div>
      <details className={styles.keys}>
        <summary>{words.stage.keys}</summary>
        <KeyList keys={words.stage.keyList} />
      </details>
      <PedalFold board={pedal} />
    </SheetButton>
  );
}
