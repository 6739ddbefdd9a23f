/** Texts of lessons, without title, that the composer's tests and its bench both compose pages of: grooves of common practice. */
export const COMPOSED_LESSONS = /** @type {const} */ ({
  waltz: `meter: 3/4
feel: triplet
groove: { ride: x x.x x, hihat-foot: . x ., bass: x . . }
vocabulary: [..., x.., ..x, x.x]`,
  shuffle: `meter: 12/8
groove: { ride: x.x x.x x.x x.x, hihat-foot: . x . x, bass: x . x . }
vocabulary: [..., x.., ..x, x.x, .xx]`,
  bossa: `feel: even
tempo: 112
comping: sidestick
groove: { hihat: xx xx xx xx, hihat-foot: . x . x, bass: x. .x x. .x }
vocabulary: [.., x., .x, xx]`,
  sixteenths: `feel: even
tempo: 72
groove: { hihat: x.x. x.x. x.x. x.x., bass: x . x . }
vocabulary: [...., x..., ..x., ...x, x..x, .x..]`,
  funk: `feel: even
tempo: 72
groove: { hihat: x.x. x.x. x.x. x.x., bass: x... ..x. x... ..x. }
vocabulary: [...., .g.., ...g, .g.g, ..g., X..., X..g, X.g.]
compose:
  limits:
    beats:
      1: [...., .g.., ...g, .g.g, ..g.]
      2: [X..., X..g, X.g.]
      3: [...., .g.., ...g, .g.g, ..g.]
      4: [X..., X..g, X.g.]`,
});
