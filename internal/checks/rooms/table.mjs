/**
 * The part of CONTRIBUTING.md that shows the rooms, generated from the table that is enforced. With `--write` it is
 * written anew; the check fails where the committed one differs.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { OUTBUILDINGS, ROOMS } from '../rooms.data.mjs';
import { manifestOf, projectTree, ROOT } from '../tree.mjs';

const PAGE = 'CONTRIBUTING.md';
const COMMAND = 'node internal/checks/rooms/table.mjs --write';
const BEGIN = `<!-- rooms: written by ${COMMAND} -->`;
const END = '<!-- end of rooms -->';

/** The floors from the top, one a line, each room by its last name; what is not pure says so. */
function drawing() {
  const floors = [...new Set(ROOMS.map(({ floor }) => floor))].sort((a, b) => b - a);
  const label = ({ name, platform }) =>
    name.replace('packages/', '') + (platform === 'pure' ? '' : ` (${platform})`);
  const lines = floors.map((floor) => {
    const rooms = ROOMS.filter((room) => room.floor === floor).map(label);
    return `${floor}  ${rooms.join('  ')}`;
  });
  return ['```', '   bin', ...lines, '```'];
}

function layersOf(tree, name) {
  const layers = manifestOf(tree, name).shedbook?.layers ?? [];
  return layers.length === 0 ? '' : `: ${layers.map((layer) => [layer].flat().join(', ')).join(' ← ')}`;
}

function generate(tree) {
  const rows = ROOMS.map(
    ({ name, floor, platform, does }) => `| \`${name}\` | ${floor} | ${platform} | ${does} |`,
  );
  const others = OUTBUILDINGS.map(({ name, does }) => `| \`${name}\` | | | ${does} |`);
  const layered = ROOMS.filter(({ name }) => layersOf(tree, name) !== '').map(
    ({ name }) => `- \`${name}\`${layersOf(tree, name)}`,
  );
  return [
    BEGIN,
    '',
    ...drawing(),
    '',
    '| room | floor | knows | what it does |',
    '|---|---|---|---|',
    ...rows,
    ...others,
    '',
    ...(layered.length > 0 ? ['Layers inside a room, lowest first:', '', ...layered, ''] : []),
    END,
  ].join('\n');
}

function replaced(tree) {
  const page = tree.read(PAGE);
  const [from, to] = [page.indexOf('<!-- rooms'), page.indexOf(END)];
  if (from < 0 || to < 0) return null;
  return page.slice(0, from) + generate(tree) + page.slice(to + END.length);
}

/** Whether CONTRIBUTING.md shows the rooms as they are enforced. */
export function checkTable(tree) {
  if (!tree.has(PAGE)) return [];
  if (replaced(tree) === null) return [`${PAGE}: shows no rooms`];
  return replaced(tree) === tree.read(PAGE)
    ? []
    : [`${PAGE}: differs from the table of rooms; run ${COMMAND}`];
}

if (import.meta.url === pathToFileURL(process.argv[1]).href && process.argv.includes('--write'))
  writeFileSync(join(ROOT, PAGE), replaced(projectTree(ROOT)));
