/** The few controls of the practice room, plain and native, so that they weigh nothing. */
import { type ReactNode, useId } from 'react';

interface PickProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
}

/** One of a few. */
export function Pick<T extends string>({ label, value, choices, onChange }: PickProps<T>) {
  const name = useId();
  return (
    <fieldset className="field pick">
      <legend className="label">{label}</legend>
      <div className="choices">
        {choices.map(([each, words]) => (
          <label key={each} className="choice" data-selected={each === value || undefined}>
            <input
              type="radio"
              className="hidden-words"
              name={name}
              value={each}
              checked={each === value}
              onChange={() => onChange(each)}
            />
            {words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

interface TickProps {
  readonly children: ReactNode;
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
}

/** A box to tick. */
export function Tick({ children, checked, onChange }: TickProps) {
  return (
    <label className="tick">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      <span>{children}</span>
    </label>
  );
}

interface SlideProps {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly says: string;
  readonly onChange: (value: number) => void;
}

/** A value on a line. */
export function Slide({ label, value, min, max, says, onChange }: SlideProps) {
  return (
    <input
      type="range"
      className="slide"
      aria-label={label}
      aria-valuetext={says}
      value={value}
      min={min}
      max={max}
      onChange={(event) => onChange(event.target.valueAsNumber)}
    />
  );
}
