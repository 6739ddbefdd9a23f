/** What waits to be kept, put by in the browser until the server has it: a reload loses nothing. */

/** A text that has not reached the server, and the revision it was made from. */
export interface Waiting {
  readonly text: string;
  readonly revision: number;
}

/** A place to put by what waits. */
export interface Backup {
  read(id: string): Waiting | null;
  write(id: string, waiting: Waiting): void;
  clear(id: string): void;
}

function keyOf(id: string): string {
  return `shedbook.waiting.${id}`;
}

/** A backup in the browser's storage; where there is none, nothing is put by. */
export function createBackup(storage: Storage | null): Backup {
  return {
    read: (id) => {
      const found = storage?.getItem(keyOf(id));
      return found ? (JSON.parse(found) as Waiting) : null;
    },
    write: (id, waiting) => {
      try {
        storage?.setItem(keyOf(id), JSON.stringify(waiting));
      } catch {
        // Storage is full: the server still gets the change.
      }
    },
    clear: (id) => storage?.removeItem(keyOf(id)),
  };
}
