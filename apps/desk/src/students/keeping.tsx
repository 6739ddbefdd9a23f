/** How long recordings are kept: for the whole desk. */
import { KEEPING_WEEKS } from '@shedbook/routes';
import { Select, useSay } from '@shedbook/stand';
import { useState } from 'react';
import { wordsFor } from '../document/error-words.ts';
import { useFresh } from '../document/use-fresh.ts';
import { useWords } from '../words/students-words.tsx';
import { readKeeping, saveKeeping } from './api.ts';

/** The setting, and what follows from it. @param props.isFixed whether somebody else sets it */
export function KeepingSetting({ isFixed }: { readonly isFixed: boolean }) {
  const all = useWords();
  const words = all.keeping;
  const say = useSay();
  const { value, refresh } = useFresh(readKeeping);
  const [isSaving, setSaving] = useState(false);
  if (!value) return null;
  const save = async (chosen: string) => {
    setSaving(true);
    try {
      await saveKeeping({ takeWeeks: chosen === '' ? null : Number(chosen) });
      say(words.saved);
    } catch (error) {
      say(wordsFor(error, all));
    }
    await refresh();
    setSaving(false);
  };
  const weeks = [...new Set([...KEEPING_WEEKS, ...(value.takeWeeks === null ? [] : [value.takeWeeks])])];
  return (
    <div data-part="keeping-setting">
      <Select
        label={words.label}
        value={String(value.takeWeeks ?? '')}
        disabled={isSaving || isFixed}
        onChange={(event) => void save(event.target.value)}
      >
        <option value="">{words.always}</option>
        {weeks
          .toSorted((a, b) => a - b)
          .map((n) => (
            <option key={n} value={n}>
              {words.weeks({ n })}
            </option>
          ))}
      </Select>
      <p className="quiet">
        {words.lead} {value.due > 0 && words.due({ n: value.due })}
      </p>
    </div>
  );
}
