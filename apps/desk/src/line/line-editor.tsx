/**
 * A line that is being written: every slot of its notation can be pressed, and everything can be done from the
 * keyboard. One slot at a time is a tab stop; arrow keys go to the others.
 */
import { isLooped, isStruck, type Meter, type NotatedBar, strikeOf, type Voice } from '@shedbook/core';
import { type KeyboardEvent, useEffect, useRef } from 'react';
import { type Line, markAt, type SlotPlace, setMark, toggleStroke } from '../edit/strokes.ts';
import { heightOf } from '../notation/exercise-drawing.tsx';
import { BAR_TAIL, layOutBar, type StaffKind } from '../notation/layout.ts';
import { lineAfterKey } from './keys.ts';
import styles from './line-editor.module.css';
import { barsAbreast, rowsOf } from './rows.ts';
import { SlotRow } from './slot-row.tsx';
import { isSame, slotsOf, stepFrom } from './slots.ts';
import { useWidth } from './use-width.ts';

interface LineEditorProps {
  readonly label: string;
  readonly line: Line;
  readonly voice: Voice;
  readonly meter: Meter;
  /** The bars as they are drawn, with any other voices. */
  readonly notated: readonly NotatedBar[];
  readonly staff: StaffKind;
  readonly active: SlotPlace | null;
  /** Whether the active slot takes the focus as soon as it is shown. */
  readonly takesFocus: boolean;
  readonly onActive: (place: SlotPlace) => void;
  readonly onChange: (line: Line) => void;
  /** Number of the exercise, where its bars can be looped one by one. */
  readonly loops?: number | undefined;
  /** Whether the slot that keys go to is marked only while the line is being written; always when left out. */
  readonly marksPlace?: 'while written';
  /** Keys that the line has no use for. */
  readonly onOtherKey?: (event: KeyboardEvent) => void;
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  Home: Number.NEGATIVE_INFINITY,
  End: Number.POSITIVE_INFINITY,
};

/** Bars' ends stand out a little on the right, in units. */
export const TAIL = 18;

/** The line. */
export function LineEditor(props: LineEditorProps) {
  const { line, voice, notated, staff, onChange, onActive } = props;
  const group = useRef<HTMLDivElement>(null);
  const width = useWidth(group);
  const first = slotsOf(line.pattern)[0] ?? null;
  const known = slotsOf(line.pattern).some((each) => isSame(each, props.active));
  const active = known ? props.active : first;

  const focusOn = (place: SlotPlace) => {
    const selector = `[data-slot="${place.bar} ${place.beat} ${place.slot}"]`;
    group.current?.querySelector<HTMLButtonElement>(selector)?.focus();
  };
  useEffect(() => {
    if (props.takesFocus && active) focusOn(active);
  });

  const press = (place: SlotPlace) => {
    const next = toggleStroke(markAt(line.pattern, place));
    onChange(setMark(line, place, next));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (!active) return;
    const step = STEPS[event.key];
    const plain = !event.ctrlKey && !event.metaKey && !event.altKey;
    if (plain && !event.shiftKey && step !== undefined) {
      event.preventDefault();
      const place = stepFrom(line.pattern, active, step);
      onActive(place);
      focusOn(place);
      return;
    }
    const playable = (mark: Parameters<typeof strikeOf>[1]) =>
      !isStruck(mark) || strikeOf(voice, mark) !== null;
    const changed = plain ? lineAfterKey(event.key, line, active, playable) : null;
    if (changed) {
      event.preventDefault();
      onChange(changed);
      return;
    }
    props.onOtherKey?.(event);
  };

  const layouts = notated.map((bar) => layOutBar(bar, staff, 'start'));
  const hands = layouts.some((layout) => layout.texts.some((text) => text.kind === 'sticking'));
  const { top, height } = heightOf(layouts, hands);
  const abreast = barsAbreast(line.pattern.bars, props.meter, width, TAIL);
  const columns = `repeat(${abreast}, minmax(0, 1fr))`;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset has a layout of its own
    <div
      className={styles.editor}
      data-part="line-editor"
      data-place={props.marksPlace}
      role="group"
      aria-label={props.label}
      ref={group}
      style={abreast > 1 ? { gridTemplateColumns: columns } : undefined}
      onKeyDown={onKeyDown}
    >
      {notated.flatMap((bar, index) => {
        const cells = line.pattern.bars[index] ?? [];
        const layout = layouts[index];
        if (!layout) return [];
        const endsRow = index % abreast === abreast - 1 || index === notated.length - 1;
        const tail = endsRow ? TAIL : BAR_TAIL;
        const rows = rowsOf(cells, props.meter, width / abreast, tail);
        const widest = Math.max(...rows.map((row) => row.right - row.left));
        return rows.map((row) => (
          <SlotRow
            key={`${index} ${row.fromBeat}`}
            bar={index}
            notated={bar}
            layout={rows.length === 1 ? layout : layOutBar(bar, staff, 'start', { span: row })}
            share={(row.right - row.left) / widest}
            row={row}
            staff={staff}
            top={top}
            height={height}
            pattern={line.pattern}
            voice={voice}
            repeats={index === notated.length - 1 && isLooped(notated.length)}
            active={active}
            onPress={press}
            onFocus={onActive}
            loops={props.loops}
          />
        ));
      })}
    </div>
  );
}
