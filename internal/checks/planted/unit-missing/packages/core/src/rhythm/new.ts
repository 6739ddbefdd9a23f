/** A note. */
export interface Note {
  readonly long: number;
}
