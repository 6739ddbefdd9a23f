/**
 * One layer over many windows of its input: the hot loop of listening.
 *
 * Half of what a layer reads is nothing, for the layer before it made negative numbers 0. So of each window the
 * numbers that are not 0 are written down with their places, and then seven rows are summed side by side over those,
 * each number that is read serving seven products. The sums are the same, in the same order, as one row over a whole
 * window would give. Seven sums, their products and the number fit in sixteen registers; an eighth sum would go
 * through memory at every step, which takes twice as long. What the inner loop reads lies in memory that never moves.
 */

/** One layer's weights, row by row (kernel position, then input), and one bias a row. */
export interface LayerWeights {
  readonly weights: Float64Array;
  readonly bias: Float64Array;
}

/** A layer laid out for {@link runLayer}. */
export interface Layer {
  readonly rows: number;
  /** Numbers in a window. */
  readonly width: number;
  /** The weights of seven rows each, those of one input side by side; rows after the last are 0. */
  readonly panels: readonly Float64Array[];
  /** One a row, and 0 for rows after the last. */
  readonly bias: Float64Array;
}

/** What a layer reads, and where its output goes. */
export interface LayerPass {
  readonly input: Float64Array;
  /** Index in `input` at which the first window begins. */
  readonly inputAt: number;
  /** How many numbers from one window to the next. */
  readonly step: number;
  /** Number of windows. */
  readonly count: number;
  readonly output: Float64Array;
  /** Index in `output` at which the first result goes. */
  readonly outputAt: number;
  /** From the output of one window to that of the next. */
  readonly outputStep: number;
  /** Whether negative outputs become 0. */
  readonly rectify: boolean;
}

/** Rows at a time. */
const ROWS = 7;
/** Most numbers in a window. */
const WIDEST = 1024;
/** Numbers that are written down at a time. */
const ROOM = 1 << 15;

/** The weights of the rows at hand. */
const panel = new Float64Array(ROWS * WIDEST);
/** Numbers that are not 0, window after window. */
const values = new Float64Array(ROOM);
/** Where in the panel the weights of each of them begin. */
const places = new Uint16Array(ROOM);
/** Where the numbers of each window end. */
const ends = new Uint16Array(ROOM);
const sums = new Float64Array(ROWS);

/** Lays a layer out. @throws RangeError when its windows are wider than there is room for. */
export function layOut({ weights, bias }: LayerWeights): Layer {
  const rows = bias.length;
  const width = weights.length / rows;
  if (width > WIDEST) throw new RangeError(`Internal error: a layer of ${width} inputs`);
  const panels = Array.from({ length: Math.ceil(rows / ROWS) }, () => new Float64Array(ROWS * width));
  for (let row = 0; row < rows; row += 1) {
    const own = panels[Math.floor(row / ROWS)]!;
    let to = row % ROWS;
    for (let from = row * width; from < (row + 1) * width; from += 1) {
      own[to] = weights[from]!;
      to += ROWS;
    }
  }
  const padded = new Float64Array(ROWS * panels.length);
  padded.set(bias);
  return { rows, width, panels, bias: padded };
}

/** Writes down what is not 0 in some windows, from the first on. */
function writeDown({ input, inputAt, step }: LayerPass, width: number, first: number, count: number): void {
  let length = 0;
  for (let window = 0; window < count; window += 1) {
    const from = inputAt + (first + window) * step;
    for (let k = 0; k < width; k += 1) {
      const value = input[from + k]!;
      values[length] = value;
      places[length] = ROWS * k;
      // A 0 is written over by the next number: no branch, since none could be foreseen.
      length += Number(value !== 0);
    }
    ends[window] = length;
  }
}

/** Sums the panel's rows over the numbers of a window, into `sums`. */
function sumRows(bias: Float64Array, row: number, from: number, end: number): void {
  let s0 = bias[row]!;
  let s1 = bias[row + 1]!;
  let s2 = bias[row + 2]!;
  let s3 = bias[row + 3]!;
  let s4 = bias[row + 4]!;
  let s5 = bias[row + 5]!;
  let s6 = bias[row + 6]!;
  for (let i = from; i < end; i += 1) {
    const value = values[i]!;
    const at = places[i]!;
    s0 += panel[at]! * value;
    s1 += panel[at + 1]! * value;
    s2 += panel[at + 2]! * value;
    s3 += panel[at + 3]! * value;
    s4 += panel[at + 4]! * value;
    s5 += panel[at + 5]! * value;
    s6 += panel[at + 6]! * value;
  }
  sums[0] = s0;
  sums[1] = s1;
  sums[2] = s2;
  sums[3] = s3;
  sums[4] = s4;
  sums[5] = s5;
  sums[6] = s6;
}

/** Runs every row of a layer over every window. */
export function runLayer({ rows, width, panels, bias }: Layer, pass: LayerPass): void {
  const { output, outputStep } = pass;
  const least = pass.rectify ? 0 : Number.NEGATIVE_INFINITY;
  const most = Math.floor(ROOM / width);
  for (let first = 0; first < pass.count; first += most) {
    const count = Math.min(most, pass.count - first);
    writeDown(pass, width, first, count);
    for (let row = 0; row < rows; row += ROWS) {
      panel.set(panels[row / ROWS]!);
      const more = Math.min(ROWS, rows - row);
      let from = 0;
      for (let window = 0; window < count; window += 1) {
        const end = ends[window]!;
        sumRows(bias, row, from, end);
        from = end;
        const to = pass.outputAt + (first + window) * outputStep + row;
        for (let i = 0; i < more; i += 1) output[to + i] = Math.max(least, sums[i]!);
      }
    }
  }
}

/** Runs a layer over windows that follow one another. @returns `rows` numbers a window. */
export function runDense(layer: Layer, input: Float64Array, rectify: boolean): Float64Array {
  const [step, outputStep] = [layer.width, layer.rows];
  const count = input.length / step;
  const output = new Float64Array(count * outputStep);
  runLayer(layer, { input, inputAt: 0, step, count, output, outputAt: 0, outputStep, rectify });
  return output;
}
