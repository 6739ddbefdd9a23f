/** A field whose text is kept when it is left, not with every letter. */
import { Field, LongField } from '@shedbook/stand';
import { useDraft } from './use-draft.ts';

interface KeptFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onKeep: (value: string) => void;
  readonly isLong?: boolean;
  /** What is written: a tempo is a number, a day a date. */
  readonly type?: 'text' | 'number' | 'date';
}

/** The field. */
export function KeptField({ label, value, onKeep, isLong = false, type = 'text' }: KeptFieldProps) {
  const { field } = useDraft(value, onKeep);
  return isLong ? <LongField label={label} {...field} /> : <Field label={label} type={type} {...field} />;
}
