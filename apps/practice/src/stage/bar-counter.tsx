/** The big counter: which bar and beat is heard, readable from the throne. */

import { leavesBars } from '@shedbook/core';
import { beatAt } from '@shedbook/playing';
import type { FlightClock, Heard } from '@shedbook/stand';
import type { PracticeWords } from '@shedbook/words';
import { useEffect, useRef } from 'react';
import { usePracticeWords } from '../page/words.tsx';
import { usePracticeSession } from '../session/practice-session.tsx';
import styles from './bar-counter.module.css';

/** What the counter shows. */
interface Count {
  readonly big: string;
  readonly beat: string;
  readonly says: string;
  readonly kind: string;
  /** What the large and the small number count. */
  readonly names: readonly [string, string];
}

/** What is said over a bar: whose turn it is, or what is played. */
function sayPlay(play: string, words: PracticeWords['stage'], trades: boolean): string {
  if (play === 'rest') return words.answer;
  if (play === 'time') return words.time;
  return trades ? words.listen : '';
}

function countOf(heard: Heard, words: PracticeWords['stage'], trades: boolean): Count | null {
  const { program, place, pass } = heard;
  const at = beatAt(program, place);
  if (!at) return null;
  if (at.bar < 1 || place < heard.fromPlace)
    return {
      ...{ big: String(at.beat), beat: '', says: words.countIn, kind: 'count-in' },
      names: [words.beat, ''],
    };
  const bar = program.bars.find((each) => each.bar === at.bar);
  const says = [
    sayPlay(bar?.play ?? 'pattern', words, trades),
    words.barOf({ bar: at.bar, bars: program.bars.length }),
    words.round({ n: pass + 1 }),
  ];
  const text = says.filter((each) => each !== '').join(' · ');
  return {
    ...{ big: String(at.bar), beat: String(at.beat), says: text, kind: bar?.play ?? 'pattern' },
    names: [words.bar, words.beat],
  };
}

/** Parts of the counter. */
type Part = 'bar' | 'beat' | 'says' | 'bar-name' | 'beat-name';

function partOf(element: Element, part: Part): Element | null {
  return element.querySelector(`[data-part="${part}"]`);
}

function show(element: Element | null, text: string): void {
  if (element && element.textContent !== text) element.textContent = text;
}

/** The counter; hidden from screen readers, which would never stop talking. */
export function BarCounter({ clock }: { readonly clock: FlightClock }) {
  const { status, form } = usePracticeSession();
  const words = usePracticeWords().stage;
  const root = useRef<HTMLDivElement>(null);
  const trades = leavesBars(form);
  useEffect(() => {
    const element = root.current;
    if (!element || clock.status() !== 'playing') return;
    let frame = 0;
    const draw = () => {
      frame = requestAnimationFrame(draw);
      const heard = clock.heard();
      const count = heard && countOf(heard, words, trades);
      show(partOf(element, 'bar'), count?.big ?? '');
      show(partOf(element, 'beat'), count?.beat ?? '');
      show(partOf(element, 'says'), count?.says ?? '');
      show(partOf(element, 'bar-name'), count ? count.names[0] : '');
      show(partOf(element, 'beat-name'), count ? count.names[1] : '');
      element.dataset['kind'] = count?.kind ?? 'silent';
    };
    draw();
    return () => {
      cancelAnimationFrame(frame);
      for (const part of element.querySelectorAll('span')) part.textContent = '';
      element.dataset['kind'] = 'silent';
    };
  }, [clock, status, words, trades]);
  return (
    <div className={styles.counter} data-part="counter" ref={root} data-kind="silent" aria-hidden="true">
      <span className={styles.barName} data-part="bar-name" />
      <span className={styles.beatName} data-part="beat-name" />
      <span className={styles.bar} data-part="bar" />
      <span className={styles.beat} data-part="beat" />
      <span className={styles.says} data-part="says" />
    </div>
  );
}
