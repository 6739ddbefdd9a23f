/** Which hand leads: chosen here, and a plan of who plays what, as it is seen from the throne. */

import type { Lesson, Limb, SetUp, Voice } from '@shedbook/core';
import { Choices } from '@shedbook/stand';
import { useNamesInUse } from '../document/names-in-use.ts';
import { useDocument } from '../document/use-document.ts';
import { setSetUp } from '../edit/heading.ts';
import { type Side, sidesOf } from '../shared/sides-of.ts';
import { useWords } from '../words/words.tsx';
import styles from './set-up.module.css';

/** Voices that a limb plays: those of the groove, and the one that plays the exercises. */
function voicesOf(lesson: Lesson, limb: Limb): readonly Voice[] {
  const all = [...lesson.groove.map((part) => part.voice), lesson.comping];
  return [...new Set(all)].filter((voice) => lesson.limbs[voice] === limb);
}

interface PlanPlaceProps {
  readonly lesson: Lesson;
  readonly limb: Limb;
  readonly side: Side;
}

function PlanPlace({ lesson, limb, side }: PlanPlaceProps) {
  const words = useWords();
  const voices = voicesOf(lesson, limb).map((voice) => words.voices[voice]);
  return (
    <li
      data-side={side}
      data-foot={limb.endsWith('foot') || undefined}
      data-lead={limb.startsWith('lead') || undefined}
    >
      <span className="quiet">{words.groove.sides[side][limb.endsWith('foot') ? 'foot' : 'hand']}</span>
      <strong>{voices.join(', ') || '–'}</strong>
    </li>
  );
}

/** The choice and the plan. */
export function SetUpPlan({ lesson }: { readonly lesson: Lesson }) {
  const document = useDocument();
  const inUse = useNamesInUse(document.id);
  const words = useWords();
  return (
    <section className={styles.setUp} aria-label={words.heading.setUp}>
      <Choices<SetUp>
        label={words.heading.setUp}
        value={lesson.setUp}
        choices={[
          ['right-handed', words.heading['right-handed']],
          ['left-handed', words.heading['left-handed']],
        ]}
        onChange={(setUp) => document.edit(setSetUp(document.state().text, lesson, setUp, inUse))}
      />
      <ul className={styles.plan} aria-label={words.groove.plan}>
        {sidesOf(lesson.setUp).map(([limb, side]) => (
          <PlanPlace key={limb} lesson={lesson} limb={limb} side={side} />
        ))}
      </ul>
    </section>
  );
}
