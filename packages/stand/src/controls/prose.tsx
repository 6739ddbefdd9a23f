/** What a teacher writes to a lesson or a section: paragraphs, lists, emphasis and links. */
import { type ProseBlock, type ProseRun, readProse } from '@shedbook/core';

function Run({ text, strong, emphasis, link }: ProseRun) {
  const set = strong ? (
    <strong>{emphasis ? <em>{text}</em> : text}</strong>
  ) : emphasis ? (
    <em>{text}</em>
  ) : (
    text
  );
  return link === null ? set : <a href={link}>{set}</a>;
}

/* biome-ignore-start lint/suspicious/noArrayIndexKey: a text is drawn as a whole, nothing in it moves */
function Runs({ runs }: { readonly runs: readonly ProseRun[] }) {
  return runs.map((run, index) => <Run key={index} {...run} />);
}

function Block({ block }: { readonly block: ProseBlock }) {
  if (block.kind === 'paragraph') {
    return (
      <p>
        <Runs runs={block.runs} />
      </p>
    );
  }
  const items = block.items.map((runs, index) => (
    <li key={index}>
      <Runs runs={runs} />
    </li>
  ));
  return block.isNumbered ? <ol>{items}</ol> : <ul>{items}</ul>;
}

/** The text; nothing where there is none. */
export function Prose({ text }: { readonly text: string | null }) {
  return readProse(text ?? '').map((block, index) => <Block key={index} block={block} />);
}
/* biome-ignore-end lint/suspicious/noArrayIndexKey: see above */
