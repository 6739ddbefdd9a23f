/** An address that is shown once: to be copied, and scanned where there is a code. */
import { Button, closeSheet, Icon, Sheet, useSay } from '@shedbook/stand';
import { useLanguage } from '../words/words.tsx';
import styles from './shown-once.module.css';

interface ShownOnceProps {
  readonly title: string;
  /** What is to be done with it. */
  readonly lead: string;
  readonly address: string;
  /** What the address is called. */
  readonly label: string;
  readonly code?: { readonly svg: string; readonly says: string };
  readonly onClose: () => void;
}

/** The sheet. */
export function ShownOnce({ title, lead, address, label, code, onClose }: ShownOnceProps) {
  const { words } = useLanguage();
  const say = useSay();
  const copy = () =>
    navigator.clipboard.writeText(address).then(
      () => say(words.shownOnce.copied),
      () => say(words.shownOnce.notCopied),
    );
  return (
    <Sheet
      title={title}
      onClose={onClose}
      actions={
        <>
          <Button onClick={() => void copy()}>
            <Icon name="copy" />
            {words.shownOnce.copy}
          </Button>
          <Button dress="strong" onClick={closeSheet}>
            {words.heading.close}
          </Button>
        </>
      }
    >
      <div className={styles.made}>
        <p>{lead}</p>
        {code && (
          <img
            src={`data:image/svg+xml,${encodeURIComponent(code.svg)}`}
            alt={code.says}
            width="240"
            height="240"
          />
        )}
        <input readOnly aria-label={label} value={address} onFocus={(event) => event.target.select()} />
      </div>
    </Sheet>
  );
}
