/** Hearing the performances that the command line names. */
import type { Bpm, Form, Lesson } from '@shedbook/core';
import { type HeardPerformances, hearPerformances, type PerformanceFile } from '@shedbook/host/film';
import type { Speaker } from './terminal.ts';

/** In what performances are heard. */
export interface HearingTerms {
  readonly lesson: Lesson;
  readonly form: Form | null;
  readonly bpm: Bpm | undefined;
  readonly files: readonly PerformanceFile[];
  readonly signal: AbortSignal;
}

/** Hears performances; says which of several takes is shown. */
export async function hearAll(order: HearingTerms, terminal: Speaker): Promise<HeardPerformances> {
  const { words } = terminal.catalogue;
  const tell = (n: number) => terminal.progress(words.film.hearing({ n, of: order.files.length }));
  const heard = await hearPerformances({ ...order, tell });
  terminal.progress(null);
  for (const { exercise: n, path: file, faults, isShown } of heard.takes) {
    const take = words.film.take({ n, file, faults });
    terminal.warn(isShown ? words.film.chosen({ take }) : words.film.notChosen({ take }));
  }
  return heard;
}
