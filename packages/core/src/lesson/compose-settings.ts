/** What a lesson says to the composer: limits and weights, all optional. */
export interface ComposeSettings {
  readonly limits: Readonly<Record<string, unknown>>;
  readonly weights: Readonly<Record<string, number>>;
}
