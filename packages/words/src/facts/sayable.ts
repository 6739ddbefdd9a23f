/** Every fact that there are sentences for: what the rooms under this one export. */
import type { CoachFact, LogFact } from '@shedbook/coach';
import type {
  CellFact,
  ComparisonFact,
  DifferenceFact,
  IdeaFact,
  MoveFact,
  NoteFact,
  PassFact,
  PassNoteFact,
  PassPartFact,
  PreparationFact,
  ReasonFact,
  TermFact,
  ThemeFact,
  ThemePartFact,
  VariationFact,
  WorthFact,
} from '@shedbook/composer';
import type { ChangeFact, Fact, LessonFact, PlaceFact, UnheardFact } from '@shedbook/core';
import type { ExchangeFact } from '@shedbook/exchange';
import type { JudgeFact } from '@shedbook/judge';
import type { ListenFact } from '@shedbook/listen';
import type { SoundFontFact } from '@shedbook/sound';

/** A fact of what is heard and judged: all that students' pages and reports say, an unreadable log aside. */
export type HeardFact = PlaceFact | ListenFact | UnheardFact | JudgeFact | CoachFact;

/** A fact that the desk says of lessons. */
export type DeskFact =
  | PlaceFact
  | LessonFact
  | LogFact
  | ChangeFact
  | ReasonFact
  | IdeaFact
  | ThemeFact
  | ThemePartFact
  | CellFact
  | TermFact
  | PreparationFact
  | NoteFact
  | MoveFact
  | PassFact
  | PassNoteFact
  | PassPartFact
  | VariationFact;

/** A fact that the screens say: files from other programs are read by Node. */
export type ScreenFact = DeskFact | HeardFact;

/** A fact of any room under this one. */
export type RoomFact =
  | ScreenFact
  | ExchangeFact
  | SoundFontFact
  | DifferenceFact
  | WorthFact
  | ComparisonFact;

/** A place in a binary file. */
interface ByteFact extends Fact {
  readonly fact: 'byte';
  /** In bytes from the start of the file. */
  readonly offset: number;
}

/** A problem in what a person wrote, or a part of the line that tells of it. */
export type FaultFact =
  | (Fact & { readonly fact: 'error' | 'warning' })
  | (Fact & { readonly fact: 'fault'; readonly found: RoomFact; readonly expected: RoomFact })
  | (Fact & {
      readonly fact: 'fault-with-repair';
      readonly found: RoomFact;
      readonly expected: RoomFact;
      readonly repair: RoomFact;
    })
  | ByteFact;

/** A fact of any room. A new one needs a sentence in every language, or nothing compiles. */
export type Sayable = RoomFact | FaultFact;
