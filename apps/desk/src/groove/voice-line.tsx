/** One voice of the groove: its line, its balance in decibels and in words. */

import { type GroovePart, type Lesson, notateBar } from '@shedbook/core';
import { Button, Icon, Range } from '@shedbook/stand';
import { sayPattern, spokenMark } from '@shedbook/words';
import { useDocument } from '../document/use-document.ts';
import { changeVoice, removeVoice, setLevel } from '../edit/groove.ts';
import type { SlotPlace } from '../edit/strokes.ts';
import { LineEditor } from '../line/line-editor.tsx';
import { useLive } from '../shared/use-live.ts';
import { useWords } from '../words/words.tsx';
import { balanceWord } from './balance-words.ts';
import styles from './voice-line.module.css';

interface VoiceLineProps {
  readonly lesson: Lesson;
  readonly part: GroovePart;
  readonly active: SlotPlace | null;
  readonly onActive: (place: SlotPlace) => void;
}

/** Softest and loudest level that the balance offers, in dB relative to the lead voice. */
const BALANCE_DB = { least: -30, most: 6 } as const;

/** The voice. */
export function VoiceLine({ lesson, part, active, onActive }: VoiceLineProps) {
  const document = useDocument();
  const words = useWords();
  const { voice, pattern } = part;
  const kept = lesson.balance[voice];
  const [level, setLive] = useLive<number>(kept);
  const said = sayPattern(words.counts, pattern, (mark) => spokenMark(words.marks, voice, mark)).join('; ');
  return (
    <div className={styles.line}>
      <div className={styles.head}>
        <h4>{words.voices[voice]}</h4>
        {voice === lesson.lead && <span className="quiet">{words.groove.leadVoice}</span>}
        <Button
          dress="bare"
          aria-label={words.groove.removeVoice({ voice })}
          onClick={() => document.edit(removeVoice(document.state().text, lesson, voice))}
        >
          <Icon name="close" />
        </Button>
      </div>
      <LineEditor
        label={`${words.voices[voice]}: ${said || words.counts.silent}`}
        line={{ pattern, sticking: null }}
        voice={voice}
        meter={lesson.meter}
        notated={pattern.bars.map((cells) => notateBar([{ voice, cells }], lesson.meter))}
        staff="one line"
        active={active}
        takesFocus={false}
        marksPlace="while written"
        onActive={onActive}
        onChange={(line) => document.edit(changeVoice(document.state().text, lesson, voice, line.pattern))}
      />
      <Range
        isNarrow
        label={words.groove.balance({ voice })}
        says={`${words.groove.db({ db: level })}, ${words.groove.words[balanceWord(level)]}`}
        value={level}
        min={BALANCE_DB.least}
        max={BALANCE_DB.most}
        step={1}
        onChange={setLive}
        onChangeEnd={(db) => db !== kept && document.edit(setLevel(document.state().text, voice, db))}
      />
    </div>
  );
}
