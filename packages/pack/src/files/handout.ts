/** A handout as a file. */
import type { Paper } from '@shedbook/core';
import { type Fonts, type Handout, layOutHandout, writePdf } from '@shedbook/engrave';
import type { LanguageTag } from '@shedbook/words';

export type { Handout, HandoutLine, HandoutPart } from '@shedbook/engrave';

/** What a handout is printed with. */
export interface HandoutRequest {
  readonly fonts: Fonts;
  readonly paper: Paper;
  readonly language: LanguageTag;
}

/** A handout as a tagged PDF file. */
export function printHandout(
  handout: Handout,
  { fonts, paper, language }: HandoutRequest,
): Promise<Uint8Array> {
  return writePdf(layOutHandout(handout, { fonts, paper }), fonts, { title: handout.title, language });
}
