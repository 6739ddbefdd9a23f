/** What was erased of a student, to be kept as a file by whoever erased them. */
import type { Receipt } from '@shedbook/routes';
import { Button, closeSheet, Icon, Sheet } from '@shedbook/stand';
import { useLanguage } from '../words/students-words.tsx';
import { offer } from './offer.ts';

/** Who was erased, and what of them. */
export interface Erased {
  readonly name: string;
  readonly receipt: Receipt;
}

const MEGABYTE = 1e6;

/** The receipt in sentences. */
function useLines({ receipt }: Erased): readonly string[] {
  const { words, tag } = useLanguage();
  const { erasedAt, rows, assignments, takes, takeBytes, voices, hours, links } = receipt;
  const when = new Date(erasedAt).toLocaleString(tag, { dateStyle: 'long', timeStyle: 'short' });
  const megabytes = Math.ceil(takeBytes / MEGABYTE);
  const { receipt: said } = words;
  return [
    said.when({ when }),
    said.rows({ n: rows }),
    said.assignments({ n: assignments }),
    said.takes({ n: takes, megabytes }),
    said.voices({ n: voices }),
    said.hours({ n: hours }),
    said.links({ n: links }),
    said.copies,
  ];
}

/** The sheet; it is kept nowhere else. */
export function ReceiptSheet({ erased, onClose }: { readonly erased: Erased; readonly onClose: () => void }) {
  const { words } = useLanguage();
  const lines = useLines(erased);
  const { name, receipt } = erased;
  const title = words.students.erased({ name });
  const save = () =>
    offer(
      new Blob([`${[title, '', ...lines].join('\n')}\n`], { type: 'text/plain;charset=utf-8' }),
      `shedbook-${words.receipt.file}-${receipt.erasedAt.slice(0, 10)}.txt`,
    );
  return (
    <Sheet
      title={title}
      onClose={onClose}
      actions={
        <>
          <Button onClick={save}>
            <Icon name="file" />
            {words.receipt.save}
          </Button>
          <Button dress="strong" onClick={closeSheet}>
            {words.heading.close}
          </Button>
        </>
      }
    >
      <div data-part="receipt">
        {lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p className="quiet">{words.receipt.only}</p>
      </div>
    </Sheet>
  );
}
