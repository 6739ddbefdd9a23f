/** The few controls that appear again and again, dressed once. */
import type { ReactNode } from 'react';
import {
  Checkbox,
  Label,
  Radio,
  RadioGroup,
  Slider,
  SliderOutput,
  SliderThumb,
  SliderTrack,
} from 'react-aria-components';

interface CheckProps {
  readonly children: ReactNode;
  readonly isSelected: boolean;
  readonly onChange: (selected: boolean) => void;
}

/** A box to tick. */
export function Check({ children, isSelected, onChange }: CheckProps) {
  return (
    <Checkbox className="check" isSelected={isSelected} onChange={onChange}>
      <span className="box" aria-hidden="true">
        {isSelected && (
          <svg viewBox="0 0 24 24" aria-hidden="true">
            <path d="M5 12l5 5 9-11" />
          </svg>
        )}
      </span>
      {children}
    </Checkbox>
  );
}

interface ChoicesProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly (readonly [T, string])[];
  readonly onChange: (value: T) => void;
}

/** One of a few. */
export function Choices<T extends string>({ label, value, choices, onChange }: ChoicesProps<T>) {
  return (
    <RadioGroup
      className="field"
      value={value}
      onChange={(next) => onChange(next as T)}
      orientation="horizontal"
    >
      <Label>{label}</Label>
      <div className="choices">
        {choices.map(([each, words]) => (
          <Radio key={each} value={each} className="choice">
            {words}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}

interface RangeProps {
  readonly label: string;
  /** What the value means, in words. */
  readonly says: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly onChange?: (value: number) => void;
  readonly onChangeEnd?: (value: number) => void;
}

/** A value on a line. */
export function Range({ label, says, value, min, max, step, onChange, onChangeEnd }: RangeProps) {
  return (
    <Slider
      className="slider"
      value={value}
      minValue={min}
      maxValue={max}
      step={step}
      onChange={(next) => onChange?.(next as number)}
      onChangeEnd={(next) => onChangeEnd?.(next as number)}
    >
      <Label>{label}</Label>
      <SliderOutput>{says}</SliderOutput>
      <SliderTrack className="track">
        <SliderThumb className="thumb" />
      </SliderTrack>
    </Slider>
  );
}
