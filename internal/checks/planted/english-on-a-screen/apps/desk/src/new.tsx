/** A hint. */
export function Hint() {
  return <p title="Nothing to see">Press the key to play</p>;
}
