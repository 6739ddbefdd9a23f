/**
 * Which bar of the form is played in each bar of a take, asked once more when it is known how each voice sounds on this
 * kit. In a form of like bars a single stroke tells one from the next, and what a first look takes for that stroke
 * under every cymbal must not make a student leave bars out who went straight on.
 *
 * Conventions: natural logarithms. Bars in which nothing of the form is played stay so.
 */
import { alikeIn, likeliestWay, type PlacedBar, type WayCosts } from '../align/bars.ts';
import type { FormGrid } from '../align/form-grid.ts';
import { matchBar, toleranceSeconds } from '../align/match-bar.ts';
import { firstFrom, type Observations } from '../align/observations.ts';
import { type ChancesByVoice, logLikelihood } from './likelihood.ts';
import { type Placer, placerOf } from './places.ts';

/** A bar that comes elsewhere than where the form has it is so much less likely beforehand, as a logarithm. */
const COSTS: WayCosts = { jump: 4, nearJump: 3.5, loop: 0.1, middle: 0.75 };
/** So much before its line, in seconds, what is struck belongs to a bar. */
const EARLY_SECONDS = 0.04;

/** The chances of the bars, each by voice. */
function chancesOfBars(chances: ChancesByVoice, bars: readonly PlacedBar[]): readonly ChancesByVoice[] {
  const voices = [...chances].map(([voice, own]) => ({
    voice,
    own,
    times: Float64Array.from(own, ({ timeSeconds }) => timeSeconds),
  }));
  return bars.map(({ startSeconds, barSeconds }) => {
    const from = startSeconds - EARLY_SECONDS;
    return new Map(
      voices.map(({ voice, own, times }) => [
        voice,
        own.slice(firstFrom(times, from), firstFrom(times, from + barSeconds)),
      ]),
    );
  });
}

interface Asked {
  readonly grid: FormGrid;
  readonly placed: Placer;
  readonly alike: readonly number[];
}

/** How likely each bar of the form is in one of the take, and last that it is none. */
function emissionsOf(bar: PlacedBar, chances: ChancesByVoice, { grid, placed, alike }: Asked): Float64Array {
  const none = grid.bars.length;
  const emissions = new Float64Array(none + 1).fill(Number.NEGATIVE_INFINITY);
  if (bar.formBar === null) {
    emissions[none] = 0;
    return emissions;
  }
  const reach = toleranceSeconds(grid, bar.barSeconds);
  for (const [index, { strokes }] of grid.bars.entries()) {
    const first = alike[index]!;
    emissions[index] =
      first < index
        ? emissions[first]!
        : logLikelihood(
            chances,
            strokes.map((expected) => placed(bar, 0, expected)),
            reach,
          );
  }
  return emissions;
}

/** The same bars, each as the bar of the form that it is likeliest of. @param chances with this kit's eagerness in mind */
export function placeAgain(
  seen: Observations,
  grid: FormGrid,
  bars: readonly PlacedBar[],
  chances: ChancesByVoice,
): readonly PlacedBar[] {
  const asked = { grid, placed: placerOf(seen, grid, bars), alike: alikeIn(grid) };
  const inBars = chancesOfBars(chances, bars);
  const way = likeliestWay(
    bars.map((bar, index) => emissionsOf(bar, inBars[index]!, asked)),
    COSTS,
  );
  return bars.map((bar, index) => {
    const formBar = way.bars[index] ?? null;
    if (formBar === null || formBar === bar.formBar) return bar;
    return { ...bar, formBar, score: matchBar(seen, grid, grid.bars[formBar]!, bar) };
  });
}
