/**
 * One layer over many windows of its input: the hot loop of listening.
 *
 * Four windows and two rows at a time, the windows' numbers side by side, so that each number that is read serves
 * several products. The sums are the same, in the same order, as one window and one row at a time would give.
 */

/** One layer's weights, row by row (kernel position, then input), and one bias a row. */
export interface LayerWeights {
  readonly weights: Float64Array;
  readonly bias: Float64Array;
}

/** What a layer reads, and where its output goes. */
export interface LayerPass {
  readonly input: Float64Array;
  readonly inputAt: number;
  /** From one window to the next. */
  readonly step: number;
  /** Windows. */
  readonly count: number;
  /** Numbers in a window. */
  readonly width: number;
  /** Rows. */
  readonly rows: number;
  readonly output: Float64Array;
  readonly outputAt: number;
  /** From the output of one window to that of the next. */
  readonly outputStep: number;
  /** Whether negative outputs become 0. */
  readonly rectify: boolean;
}

/** Windows at a time. */
const LANES = 4;

let lanes = new Float64Array(LANES * 1024);

/** Puts four windows side by side; windows after the last repeat it. */
function gather(pass: LayerPass, at: number): Float64Array {
  const { input, width, step } = pass;
  if (lanes.length < LANES * width) lanes = new Float64Array(LANES * width);
  for (let lane = 0; lane < LANES; lane += 1) {
    const from = pass.inputAt + Math.min(at + lane, pass.count - 1) * step;
    for (let k = 0; k < width; k += 1) lanes[LANES * k + lane] = input[from + k]!;
  }
  return lanes;
}

/** Two rows over four windows: eight sums, first row first, into `sums`. */
function twoRows(
  { weights, bias }: LayerWeights,
  row: number,
  windows: Float64Array,
  width: number,
  sums: Float64Array,
): void {
  let a0 = bias[row]!;
  let a1 = a0;
  let a2 = a0;
  let a3 = a0;
  let b0 = bias[row + 1]!;
  let b1 = b0;
  let b2 = b0;
  let b3 = b0;
  const first = row * width;
  const second = first + width;
  let at = 0;
  for (let k = 0; k < width; k += 1) {
    const a = weights[first + k]!;
    const b = weights[second + k]!;
    const x0 = windows[at]!;
    const x1 = windows[at + 1]!;
    const x2 = windows[at + 2]!;
    const x3 = windows[at + 3]!;
    at += LANES;
    a0 += a * x0;
    b0 += b * x0;
    a1 += a * x1;
    b1 += b * x1;
    a2 += a * x2;
    b2 += b * x2;
    a3 += a * x3;
    b3 += b * x3;
  }
  sums[0] = a0;
  sums[1] = a1;
  sums[2] = a2;
  sums[3] = a3;
  sums[4] = b0;
  sums[5] = b1;
  sums[6] = b2;
  sums[7] = b3;
}

/** One row over four windows, for a layer with an odd number of rows. */
function oneRow(
  { weights, bias }: LayerWeights,
  row: number,
  windows: Float64Array,
  width: number,
  sums: Float64Array,
): void {
  for (let lane = 0; lane < LANES; lane += 1) {
    let sum = bias[row]!;
    for (let k = 0; k < width; k += 1) sum += weights[row * width + k]! * windows[LANES * k + lane]!;
    sums[lane] = sum;
  }
}

const sums = new Float64Array(2 * LANES);

/** Runs every row of a layer over every window. */
export function runLayer(layer: LayerWeights, pass: LayerPass): void {
  const { width, rows, output, outputStep, rectify } = pass;
  for (let at = 0; at < pass.count; at += LANES) {
    const windows = gather(pass, at);
    const more = Math.min(LANES, pass.count - at);
    const to = pass.outputAt + at * outputStep;
    for (let row = 0; row < rows; row += 2) {
      const pair = row + 1 < rows;
      if (pair) twoRows(layer, row, windows, width, sums);
      else oneRow(layer, row, windows, width, sums);
      for (let lane = 0; lane < more; lane += 1) {
        const first = sums[lane]!;
        const second = sums[LANES + lane]!;
        const place = to + lane * outputStep + row;
        output[place] = rectify && first < 0 ? 0 : first;
        if (pair) output[place + 1] = rectify && second < 0 ? 0 : second;
      }
    }
  }
}
