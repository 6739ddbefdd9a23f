/** Every fact that there are sentences for: what the rooms under this one export. */
import type { ReasonFact } from '@shedbook/composer';
import type { PlaceFact } from '@shedbook/core';

/** A fact of any room. A new one needs a sentence in every language, or nothing compiles. */
export type Sayable = PlaceFact | ReasonFact;
