/** Making sheets, files and packs beside the server, so that nothing of it holds up the keeping of lessons. */
import type { StandardFormat } from '@shedbook/core';
import { createThread, type OrderTerms, threadFile } from '@shedbook/host';
import type { KeptPlaying } from './kept-demonstrations.ts';
import type {
  BookOrder,
  HeardPlaying,
  Order,
  ProgressOrder,
  SheetAnswer,
  SheetOrder,
} from './sheet-messages.ts';

/** Who waits for what is made: aborted when nobody does any more. */
export type WhoWaits = Pick<OrderTerms, 'of' | 'signal'>;

/** A file that was made, and the title of the lesson that it was made of. */
export interface MadeFile {
  readonly title: string;
  readonly bytes: Uint8Array;
}

/** A lesson that is printed, and where the files lie that it shows. */
export type PrintedText = Pick<SheetOrder, 'text' | 'language' | 'dataDir'>;

/** A book, and what it is made of. */
export type BookText = Omit<BookOrder, 'want'>;

/** What a book came to; where lessons of it have errors, their ids. */
export type MadeBook =
  | { readonly kind: 'made'; readonly bytes: Uint8Array }
  | { readonly kind: 'unfinished'; readonly lessons: readonly string[] };

/** What a sheet came to; null where the text is no lesson. @throws TooMuchError where it takes too much */
export interface SheetMaker {
  /** Gets ready for a sheet that may be wanted soon. */
  warm(): void;
  pages(sheet: PrintedText, who: WhoWaits): Promise<readonly string[] | null>;
  pdf(sheet: PrintedText, who: WhoWaits): Promise<MadeFile | null>;
  /** The whole sheet as a standard file. */
  standard(text: string, format: StandardFormat, who: WhoWaits): Promise<MadeFile | null>;
  /** A take-home pack as a ZIP file; `name` is the lasting name of the lesson. */
  pack(
    request: Pick<SheetOrder, 'text' | 'name' | 'language' | 'dataDir'> &
      Partial<
        Pick<
          SheetOrder,
          'assignments' | 'level' | 'setUp' | 'demonstrations' | 'kept' | 'films' | 'isPrivate'
        >
      >,
    who: WhoWaits,
  ): Promise<MadeFile | null>;
  /** A performance as a demonstration that can be kept; null where the lesson has errors or no such exercise. */
  demonstrate(text: string, heard: HeardPlaying, who: WhoWaits): Promise<KeptPlaying | null>;
  /** The progress page of a student. */
  progress(order: Omit<ProgressOrder, 'want'>, who: WhoWaits): Promise<MadeFile>;
  /** A book as a PDF file, or the packs of its lessons as a ZIP file. */
  book(order: BookOrder, who: WhoWaits): Promise<MadeBook>;
  close(): Promise<void>;
}

/** Milliseconds that a sheet takes at most, and a pack, which has a recording of each exercise. */
const SHEET_MS = 90_000;
const PACK_MS = 900_000;

/** The same of a book's packs, one after another. */
const BOOK_PACK_MS = 3_600_000;

/** Bytes for the engraver's objects. */
const MEMORY_BYTES = 2 ** 30;

type Want = Partial<SheetOrder> & Pick<SheetOrder, 'text' | 'want'>;

/** A maker; its thread starts with the first sheet. */
export function createSheetMaker(): SheetMaker {
  const thread = createThread<Order, SheetAnswer>(threadFile(import.meta.url, 'sheet-worker'), {
    memoryBytes: MEMORY_BYTES,
  });
  const ask = async (order: Want, who: WhoWaits) => {
    const whole: SheetOrder = {
      language: 'en',
      dataDir: null,
      name: '',
      assignments: [],
      level: null,
      setUp: null,
      ...{ demonstrations: [], kept: [], films: [] },
      format: 'midi',
      isPrivate: false,
      ...order,
    };
    const isPack = order.want === 'pack';
    const terms = { ...who, deadlineMs: isPack ? PACK_MS : SHEET_MS, endsWhenLeft: isPack };
    const answer = await thread.ask(whole, terms);
    if (answer.kind === 'broken') throw new Error(answer.message);
    return answer;
  };
  const file = async (order: Want, who: WhoWaits) => {
    const answer = await ask(order, who);
    return answer.kind === 'file' ? { title: answer.title, bytes: answer.bytes } : null;
  };
  return {
    warm: thread.warm,
    pages: async (sheet, who) => {
      const answer = await ask({ ...sheet, want: 'pages' }, who);
      return answer.kind === 'pages' ? answer.pages : null;
    },
    pdf: (sheet, who) => file({ ...sheet, want: 'pdf' }, who),
    standard: (text, format, who) => file({ text, format, want: 'standard' }, who),
    pack: (request, who) => file({ ...request, want: 'pack' }, who),
    demonstrate: async (text, heard, who) => {
      const terms = { ...who, deadlineMs: PACK_MS, endsWhenLeft: true };
      const answer = await thread.ask({ want: 'demonstration', text, heard }, terms);
      if (answer.kind === 'broken') throw new Error(answer.message);
      return answer.kind === 'demonstration' ? answer.made : null;
    },
    progress: async (order, who) => {
      const answer = await thread.ask({ ...order, want: 'progress' }, { ...who, deadlineMs: SHEET_MS });
      if (answer.kind !== 'file') throw new Error(answer.kind === 'broken' ? answer.message : answer.kind);
      return { title: answer.title, bytes: answer.bytes };
    },
    book: async (order, who) => {
      const isPack = order.want === 'book-pack';
      const terms = { ...who, deadlineMs: isPack ? BOOK_PACK_MS : PACK_MS, endsWhenLeft: true };
      const answer = await thread.ask(order, terms);
      if (answer.kind === 'unfinished') return answer;
      if (answer.kind !== 'file') throw new Error(answer.kind === 'broken' ? answer.message : answer.kind);
      return { kind: 'made', bytes: answer.bytes };
    },
    close: thread.close,
  };
}
