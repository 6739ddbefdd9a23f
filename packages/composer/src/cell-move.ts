/** A move from one cell to the next. */
export interface CellMove {
  readonly from: string;
  readonly to: string;
}
