/**
 * What a phrase of several bars gives to remember beyond its first bar.
 *
 * Conventions: beats of all bars in a row; a bar is compared with every bar before it, beat by beat.
 * Source: common practice: a bar that comes again is learnt already, so that only what differs in it is new.
 */

/** How many beats of later bars are new: for each bar those that differ from the bar before it that is most alike. */
export function newBeats(beats: ArrayLike<number | string>, inBar: number): number {
  let sum = 0;
  for (let start = inBar; start < beats.length; start += inBar) {
    let least = inBar;
    for (let before = 0; before < start && least > 0; before += inBar) {
      let apart = 0;
      for (let beat = 0; beat < inBar; beat += 1)
        if (beats[start + beat] !== beats[before + beat]) apart += 1;
      least = Math.min(least, apart);
    }
    sum += least;
  }
  return sum;
}
