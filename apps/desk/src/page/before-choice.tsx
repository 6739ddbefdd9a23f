/** What a student must have before a section: one of the sections above it. */
import { Select } from '@shedbook/stand';
import { useDocument, useDocumentState } from '../document/use-document.ts';
import { setPlayed } from '../edit/played.ts';
import { useWords } from '../words/words.tsx';

/** The choice; nothing where no section with a heading stands above. @param section its number among all, from 0 */
export function BeforeChoice({ section }: { readonly section: number }) {
  const document = useDocument();
  const words = useWords().page;
  const sections = useDocumentState().lesson?.sections ?? [];
  const above = sections.slice(0, section).flatMap(({ heading }) => heading ?? []);
  if (above.length === 0) return null;
  return (
    <Select
      label={words.comesFirst}
      value={sections[section]?.before ?? ''}
      onChange={({ target }) =>
        document.edit(setPlayed(document.state().text, section, 'before', target.value || undefined))
      }
    >
      <option value="">{words.nothingFirst}</option>
      {[...new Set(above)].map((heading) => (
        <option key={heading} value={heading}>
          {heading}
        </option>
      ))}
    </Select>
  );
}
