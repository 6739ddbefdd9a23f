/** What a preparation is called and says of itself, as facts. */
import type { Fact } from '@shedbook/core';
import type { StepName } from './steps.ts';

/** The heading over a preparation, that of the section it is for in it where it has one. */
export interface PreparationHeadingFact extends Fact {
  readonly fact: 'preparation-of';
  readonly heading: string;
}

/** A fact that is told by its name. */
interface PlainFact extends Fact {
  readonly fact: 'preparation' | 'preparation-text';
}

/** What a step is called. */
export interface PreparationStepFact extends Fact {
  readonly fact: `clap-${StepName}`;
}

/** What is written of a preparation. */
export type PreparationFact = PreparationHeadingFact | PlainFact | PreparationStepFact;
