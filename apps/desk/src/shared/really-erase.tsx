/** Asks once more before something is erased for good. */
import { Button, closeSheet, Sheet } from '@shedbook/stand';

interface ReallyEraseProps {
  readonly title: string;
  readonly warning: string;
  /** What is pressed to leave everything as it is, and to erase. */
  readonly keep: string;
  readonly erase: string;
  readonly onErase: () => void;
  readonly onClose: () => void;
}

/** The question. */
export function ReallyErase({ title, warning, keep, erase, onErase, onClose }: ReallyEraseProps) {
  return (
    <Sheet
      title={title}
      onClose={onClose}
      actions={
        <>
          <Button onClick={closeSheet}>{keep}</Button>
          <Button
            dress="strong"
            onClick={(event) => {
              closeSheet(event);
              onErase();
            }}
          >
            {erase}
          </Button>
        </>
      }
    >
      <p>{warning}</p>
    </Sheet>
  );
}
