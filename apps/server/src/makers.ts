/** What works beside a server: it makes sheets and packs and reads files, each in a thread that starts with its first order. */
import { createImportMaker, type ImportMaker } from './files/import-maker.ts';
import { createSheetMaker, type SheetMaker } from './sheet/sheet-maker.ts';

/** Makers that keep nothing of one server from another: several of a process may share them. */
export interface Makers {
  readonly sheets: SheetMaker;
  /** Makes packs, which takes long, in a thread of its own. */
  readonly packs: SheetMaker;
  readonly imports: ImportMaker;
  /** Ends their threads. */
  close(): Promise<void>;
}

/** New makers. */
export function createMakers(): Makers {
  const makers = { sheets: createSheetMaker(), packs: createSheetMaker(), imports: createImportMaker() };
  return {
    ...makers,
    close: async () => {
      await Promise.all(Object.values(makers).map((maker) => maker.close()));
    },
  };
}
