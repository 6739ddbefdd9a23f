/** Word that something changed, also where several servers share one database. */
import type { StorePlace } from '../store/place.ts';
import { type Changes, createChanges } from './changes.ts';

/** What tells of changes, until it is closed. */
export interface SharedChanges {
  readonly changes: Changes;
  close(): Promise<void>;
}

/** What tells of the changes of a store, whichever server they come by. */
export async function shareChanges({ address }: StorePlace): Promise<SharedChanges> {
  const changes = createChanges();
  if (address === null) return { changes, close: async () => undefined };
  const { hangBell } = await import('../store/postgres/bell.ts');
  const bell = await hangBell(address, changes.tell);
  const tell = (teacher: string | null) => {
    changes.tell(teacher);
    bell.ring(teacher);
  };
  return { changes: { ...changes, tell }, close: bell.close };
}
