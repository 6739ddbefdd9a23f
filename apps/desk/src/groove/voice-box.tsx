/** What lies beside the voice of the groove that is being written: strokes, divisions, bars, its limb and its part. */

import { type GroovePart, howOf, type Lesson, LIMBS, type Limb } from '@shedbook/core';
import { Button, Choices, Icon } from '@shedbook/stand';
import { addBar, removeBar } from '../edit/bars.ts';
import type { Line, SlotPlace } from '../edit/strokes.ts';
import { BarTools } from '../line/bar-tools.tsx';
import { Division, Strokes } from '../line/stroke-tools.tsx';
import { ToolBox } from '../line/tool-box.tsx';
import { HowChoice } from '../shared/how-choice.tsx';
import { useWords } from '../words/words.tsx';
import type { GrooveWork } from './use-groove.ts';

interface VoiceBoxProps {
  readonly lesson: Lesson;
  readonly part: GroovePart;
  readonly place: SlotPlace;
  readonly work: GrooveWork;
  readonly onPlace: (place: SlotPlace) => void;
  readonly docked: boolean;
}

/** Who plays the voice, and whether it leads. */
function Role({ lesson, part, work }: Pick<VoiceBoxProps, 'lesson' | 'part' | 'work'>) {
  const words = useWords();
  const { voice } = part;
  const leads = voice === lesson.lead;
  return (
    <>
      <Choices<Limb>
        label={words.groove.limb}
        value={lesson.limbs[voice]}
        choices={LIMBS.map((limb) => [limb, words.limbs[limb]] as const)}
        onChange={(limb) => work.setLimb(voice, limb)}
      />
      <div>
        <Button aria-pressed={leads} disabled={leads} onClick={() => work.setLead(voice)}>
          {words.groove.leads}
        </Button>
      </div>
    </>
  );
}

/** The box. */
export function VoiceBox({ lesson, part, place, work, onPlace, docked }: VoiceBoxProps) {
  const words = useWords();
  const { voice, pattern } = part;
  const line: Line = { pattern, sticking: null };
  const tools = { line, place, onLine: (next: Line) => work.change(voice, next.pattern) };
  return (
    <ToolBox
      title={words.voices[voice]}
      docked={docked}
      written={`[data-voice="${voice}"]`}
      strokes={<Strokes {...tools} voice={voice} />}
    >
      <Division {...tools} />
      <BarTools
        bars={pattern.bars.length}
        onAdd={(how) => {
          work.change(voice, addBar(pattern, place.bar, how));
          onPlace({ bar: place.bar + 1, beat: 0, slot: 0 });
        }}
        onRemove={() => {
          work.change(voice, removeBar(pattern, place.bar));
          onPlace({ bar: Math.max(0, place.bar - 1), beat: 0, slot: 0 });
        }}
      />
      <Role lesson={lesson} part={part} work={work} />
      <HowChoice
        legend={words.groove.how}
        voice={voice}
        how={howOf(lesson, null, voice)}
        onHow={(how) => work.setHow(voice, how)}
      />
      <div>
        <Button onClick={() => work.remove(voice)}>
          <Icon name="bin" />
          {words.groove.removeVoice({ voice })}
        </Button>
      </div>
    </ToolBox>
  );
}
